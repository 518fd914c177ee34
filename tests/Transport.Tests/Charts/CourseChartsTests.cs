using Transport.Reporting;

namespace Transport.Tests.Charts;

/// <summary>Figures of dwells show the numbers of their courses, whatever the model of the membrane.</summary>
public sealed class CourseChartsTests
{
    private static readonly DwellCourse[] Strengths =
        [.. new[] { DialysisSolution.Glucose136, DialysisSolution.Glucose227, DialysisSolution.Glucose386 }.Select(solution => Run(ReferenceMembranes.Textbook, solution))];

    private static readonly DwellCourse Classical = Run(LumpedMembrane.Typical, DialysisSolution.Glucose386);

    [Fact]
    public void Each_strength_has_its_line_in_both_panels_and_its_words()
    {
        var figure = CourseCharts.ByStrength(Strengths);
        Assert.Equal(2, figure.Panels.Count);
        for (var i = 0; i < 3; i++)
        {
            Assert.Equal(Strengths[i].VolumeAt(TimeSpan.FromHours(6)).Milliliters, figure.Panels[0].Series[i].Y[^1]);
            Assert.Equal(Strengths[i].DialysateAt(Solutes.Sodium, TimeSpan.FromHours(3)).MillimolesPerLiter, figure.Panels[1].Series[i].Y[60], 1e-9);
            Assert.Contains(Strengths[i].Dwell.Solution.Name, figure.AltText, StringComparison.Ordinal);
        }

        Assert.Equal(3, figure.Panels[0].Series.Select(series => series.Tone).Distinct().Count());
        Assert.Throws<ArgumentException>(() => CourseCharts.ByStrength([]));
        Assert.Throws<ArgumentException>(() => CourseCharts.ByStrength([Strengths[0], Classical]));
    }

    [Fact]
    public void Two_models_are_shaded_where_they_part_and_the_widest_gap_is_named()
    {
        // The band's edges are the two curves; the gap in words is its widest.
        var figure = CourseCharts.TwoModels(Strengths[2], "three pores", Classical, "classical");
        Assert.Equal(3, figure.Panels.Count);
        foreach (var panel in figure.Panels)
        {
            var band = Assert.Single(panel.Bands);
            var widths = band.Upper.Zip(band.Lower, (high, low) => high - low).ToList();
            Assert.Equal(panel.Series[0].Y.Zip(panel.Series[1].Y, (a, b) => Math.Abs(a - b)), widths);
            Assert.Equal(band.X[widths.IndexOf(widths.Max())], Assert.Single(panel.Marks).X!.Value.Lower);
        }

        var volumes = figure.Panels[0].Bands[0];
        var most = volumes.Upper.Zip(volumes.Lower, (high, low) => high - low).Max();
        Assert.Contains(FormattableString.Invariant($"volume {most:0} mL at"), figure.AltText, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => CourseCharts.TwoModels(Strengths[0], "three pores", Classical, "classical"));
    }

    private static DwellCourse Run(IMembrane membrane, DialysisSolution solution) => DwellSimulation.Run(
        Patient.Example with { Plasma = PlasmaComposition.Typical },
        membrane,
        new(solution, Volume.FromLiters(2), TimeSpan.FromHours(6), ResidualFluid.Used(Volume.FromMilliliters(250), PlasmaComposition.Typical)));
}
