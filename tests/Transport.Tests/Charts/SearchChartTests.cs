using Transport.Reporting;
using static Transport.Tests.Regimens.RegimenTests;

namespace Transport.Tests.Charts;

/// <summary>Charts of a search and of a study: what is picked out is what is drawn. Invented patients.</summary>
public sealed class SearchChartTests
{
    private static readonly ThreePoreMembrane Membrane = ReferenceMembranes.MeanIncidentAdult().ScaledTo(Patient.Example.BodySurface);
    private static readonly RegimenGoals Goals = new(FluidTarget.Between(Milliliters(500), Milliliters(1_400))) { Clearance = null };
    private static readonly RegimenSpace Space = new()
    {
        NightLengths = [TimeSpan.FromHours(9)],
        Cycles = [3, 5],
        VolumesPerCycle = [Milliliters(1_500), Milliliters(2_000)],
        NightSolutions = [DialysisSolution.Glucose136, DialysisSolution.Glucose227],
    };

    private static readonly Regimen Present = Regimen.Cycling(TimeSpan.FromHours(9), 4, Milliliters(2_000), DialysisSolution.Glucose227);
    private static readonly RegimenSearchOptions WithDays = new()
    {
        EnsembleMembers = 5,
        Simulation = new() { Integration = new() { RelativeTolerance = 1e-5 }, Timeline = TimeSpan.FromMinutes(10) },
    };

    [Fact]
    public void The_option_that_is_picked_out_is_the_one_whose_day_stands_beside_it()
    {
        var front = Front(WithDays);
        Assert.True(front.Options.Length >= 2);
        for (var i = 0; i < front.Options.Length; i++)
        {
            var option = front.Options[i];
            var figure = RegimenCharts.Chosen(front, i);
            var picked = figure.Panels[0].Series.Single(series => series.Name == "picked out");
            Assert.Equal((option.GlucoseAbsorbed.Median.Grams, option.Ultrafiltration.Median.Milliliters), (Assert.Single(picked.X), Assert.Single(picked.Y)));
            Assert.Equal(Tone.Attention, picked.Tone);
            Assert.Equal(option.Ultrafiltration.High.Milliliters, picked.YWhiskers![0].Upper);

            // Everything else is there once, and the day is the option's own.
            Assert.Equal(front.Options.Length + 1, figure.Panels[0].Series.Sum(series => series.X.Count));
            Assert.Equal(option.Outcome.Timeline.Select(point => point.Volume.Milliliters), figure.Panels[1].Series[0].Y);
            Assert.Contains(option.Regimen.Describe(), figure.Caption, StringComparison.Ordinal);
        }

        var steps = RegimenCharts.Options(front);
        Assert.Equal(front.Options.Length, steps.Steps.Count);
        Assert.Equal(["A", "B"], steps.Steps.Take(2).Select(step => step.Label));
        Assert.Throws<ArgumentException>(() => RegimenCharts.Chosen(Front(new() { EnsembleMembers = 5 }), 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => RegimenCharts.Chosen(front, front.Options.Length));
    }

    [Fact]
    public void The_dwells_of_a_search_are_marked_on_the_curves_of_their_solutions()
    {
        // 5 × 2 L in 9 h: one ring, at the planned dwell, on the curve of that strength (linear between its points).
        var curves = DwellCurves.Run(Patient.Example, MembraneEnsemble.Of(Membrane));
        var night = Regimen.Cycling(TimeSpan.FromHours(9), 5, Milliliters(2_000), DialysisSolution.Glucose227);
        var figure = DwellCharts.Ultrafiltration(curves, "option A", night);
        var ring = Assert.Single(figure.Panels[0].Marks, mark => mark.Label.StartsWith("option A", StringComparison.Ordinal));
        var minutes = Math.Round(night.DwellTimes[0].TotalMinutes);
        Assert.Equal(minutes / 60, ring.X!.Value.Lower, 9);
        var curve = curves.Single(one => one.Solution == night.Night[0].Solution).NetUltrafiltration.Median;
        var before = (int)(minutes / 10);
        Assert.InRange(ring.Y!.Value.Lower, Math.Min(curve[before], curve[before + 1]), Math.Max(curve[before], curve[before + 1]));
        Assert.Contains("5 × ", ring.Label, StringComparison.Ordinal);
        Assert.DoesNotContain("it fills", figure.Caption, StringComparison.Ordinal);
        Assert.Contains("it fills 1500 mL", DwellCharts.Ultrafiltration(curves, "B", Regimen.Cycling(TimeSpan.FromHours(9), 5, Milliliters(1_500), DialysisSolution.Glucose136)).Caption, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => DwellCharts.Ultrafiltration(curves, "C", Regimen.Cycling(TimeSpan.FromHours(9), 4, Milliliters(2_000), DialysisSolution.OfGlucose(100))));
    }

    [Fact]
    public void A_comparison_of_strategies_shows_the_means_of_its_table()
    {
        var loss = new StrategyLoss(Goals.Fluid);
        var study = StrategyStudy.Run(new()
        {
            Population = VirtualPopulation.OfPrior(PopulationPrior.IncidentAdults(), Patient.Example),
            Strategies = [new FixedStrategy("one for all", Present), new LeastLossStrategy("by fit", loss)],
            Loss = loss,
            Limits = Goals,
            Space = Space,
            Patients = 4,
        });
        var figure = StrategyCharts.Comparison(study);
        Assert.Equal(study.Summaries.Select(row => row.UltrafiltrationMilliliters.Mean), figure.Panels[0].Series[0].X);
        Assert.Equal(study.Summaries.Select(row => row.RegretGrams.High), figure.Panels[3].Series[0].XWhiskers!.Select(whisker => whisker.Upper));
        Assert.Equal(["by fit", "one for all"], figure.Panels[0].YAxis.TickLabels);
        var patients = StrategyCharts.Patients(study);
        Assert.Equal(study.Of("by fit").Select(row => row.RegretGrams), patients.Panels[1].Series[1].Y);
        Assert.Contains("by fit", StrategyReports.Of(study).Text, StringComparison.Ordinal);
    }

    private static RegimenFront Front(RegimenSearchOptions options) =>
        RegimenSearch.Run(Patient.Example, PopulationPrior.IncidentAdults().ToEnsemble(Patient.Example.BodySurface, 5, 2), Goals, Space, Present, options);
}
