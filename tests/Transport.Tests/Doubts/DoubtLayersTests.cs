using MathNet.Numerics.Statistics;
using static Transport.Tests.Regimens.RegimenTests;
using Part = Transport.Analysis.DoubtDraws.Part;

namespace Transport.Tests.Doubts;

/// <summary>Parameters, model form, night to night: each with a seed of its own, and every band says which it holds.</summary>
public sealed class DoubtLayersTests
{
    private static readonly Patient Person = Patient.Example;
    private static readonly ThreePoreMembrane Average = ReferenceMembranes.MeanIncidentAdult().ScaledTo(Person.BodySurface);
    private static readonly MembraneEnsemble Known = MembraneEnsemble.Of(Average);
    private static readonly Part[] OfModelForm = [Part.Weak, Part.Middle, Part.Strong, Part.Icodextrin, Part.Sodium];

    [Fact]
    public void The_same_seed_gives_the_same_draws_of_a_layer_whatever_the_other_seeds_are()
    {
        var layers = new DoubtLayers();
        var all = Draws(layers, seed: 1);
        var otherNights = Draws(layers with { NightToNightSeed = 5, Holds = Doubt.Parameters }, seed: 1);
        var otherModel = Draws(layers with { ModelFormSeed = 5 }, seed: 1);
        var otherParameters = Draws(layers, seed: 2);
        var otherPosture = Draws(layers with { PostureSeed = 5 }, seed: 1);
        foreach (var part in Enum.GetValues<Part>())
        {
            var isOfModelForm = OfModelForm.Contains(part);
            Assert.Equal(part != Part.Night, all[part].SequenceEqual(otherNights[part]));
            Assert.Equal(!isOfModelForm, all[part].SequenceEqual(otherModel[part]));
            Assert.Equal(part != Part.Pressure, all[part].SequenceEqual(otherParameters[part]));
            Assert.Equal(part is not (Part.LyingArea or Part.LyingConductance), all[part].SequenceEqual(otherPosture[part]));
        }
    }

    [Fact]
    public void The_draws_of_every_part_are_standard_normal_and_go_their_own_ways()
    {
        // 1000 draws on an even grid: quantiles to 1 % of the line, so the median to 0.025 and the deviation to 2 %. Two parts correlate by 0.06 at most, where
        // random numbers would do so by 0.03.
        var draws = Draws(new(), seed: 1);
        foreach (var part in Enum.GetValues<Part>())
        {
            Assert.Equal(0, draws[part].Median(), 0.025);
            Assert.Equal(1, draws[part].StandardDeviation(), 0.02);
            Assert.All(Enum.GetValues<Part>().Where(other => other > part), other => Assert.InRange(Correlation.Pearson(draws[part], draws[other]), -0.06, 0.06));
        }
    }

    [Fact]
    public void A_curve_is_moved_by_the_seeds_of_the_layers_it_holds_and_of_no_other()
    {
        var held = new DoubtLayers { Holds = Doubt.Parameters | Doubt.ModelForm };
        var first = Curve(held);
        Assert.Equal(first.High, Curve(held with { NightToNightSeed = 9 }).High.AsEnumerable());
        Assert.NotEqual(first.High, Curve(held with { ModelFormSeed = 9 }).High.AsEnumerable());
        Assert.Equal(Doubt.Parameters | Doubt.ModelForm, first.Doubt);
        Assert.Equal(Doubt.Parameters | Doubt.ModelForm | Doubt.NightToNight, Curve(DoubtLayers.OfSingleNight).Doubt);

        // 92 mL of model form, 20 % of 0.83 · 700 mL or 150 mL of nights, in quadrature; 3 % for the draws.
        Assert.Equal(2 * 1.645 * 92, Width(first), 0.03 * 303);
        Assert.Equal(2 * 1.645 * Math.Sqrt(92 * 92 + 150 * 150), Width(Curve(DoubtLayers.OfSingleNight)), 0.03 * 579);
        Assert.Equal(0, Width(Curve(DoubtLayers.ParametersAlone)), 1e-9);

        static double Width(CurveBand band) => band.High[^1] - band.Low[^1];
    }

    [Fact]
    public void An_outlook_holds_what_was_asked_for_and_says_so()
    {
        var single = Outlook(DoubtLayers.OfSingleNight);
        var mean = Outlook(DoubtLayers.Default);
        var bare = Outlook(DoubtLayers.ParametersAlone);
        var measure = OutcomeMeasures.Ultrafiltration;
        Assert.Equal(
            [Doubt.Parameters, Doubt.Parameters | Doubt.ModelForm, Doubt.Parameters | Doubt.ModelForm | Doubt.NightToNight],
            new[] { bare, mean, single }.Select(one => one[measure].Value!.Value.Doubt));
        Assert.Equal(Doubt.Parameters, bare[OutcomeMeasures.KtOverV].Value!.Value.Doubt);

        // Sodium's calibration is part of the simulation.
        Assert.Equal(Doubt.Parameters | Doubt.ModelForm, bare[OutcomeMeasures.SodiumRemoved].Value!.Value.Doubt);
        Assert.True(Width(bare) < 1e-6 && Width(single) > Width(mean) + 100);

        double Width(RegimenOutlook outlook) => outlook[measure].Value!.Value.High - outlook[measure].Value!.Value.Low;
    }

    [Fact]
    public void A_goal_has_a_probability_for_the_mean_of_many_days_and_one_for_a_single_day()
    {
        // A known membrane: 100 mL below its own ultrafiltration the mean is certain, and a single day with 150 mL of scatter comes up to it with Φ(100/150) = 0.7475,
        // with 50 mL of a patient's own with Φ(2) = 0.9772.
        var outlook = Outlook(DoubtLayers.ParametersAlone);
        var least = outlook.Outcome.Ultrafiltration.Milliliters - 100;
        Assert.Equal(new Probability(1, Doubt.Parameters), outlook.ProbabilityAtLeast(OutcomeMeasures.Ultrafiltration, least));
        var day = outlook.ProbabilityOfSingleDayAtLeast(OutcomeMeasures.Ultrafiltration, least)!.Value;
        Assert.Equal(0.7475, day.Value, 0.0005);
        Assert.Equal(Doubt.Parameters | Doubt.NightToNight, day.Doubt);
        var own = Outlook(DoubtLayers.ParametersAlone with { NightToNight = NightVariation.OfPatient(Milliliters(50)) });
        Assert.Equal(0.9772, own.ProbabilityOfSingleDayAtLeast(OutcomeMeasures.Ultrafiltration, least)!.Value.Value, 0.0005);

        // Of a dose, a single collection scatters by 4.4 % (Virga et al. 2002, read); of glucose nobody knows.
        var dose = outlook[OutcomeMeasures.KtOverV].Value!.Value.Median;
        Assert.Equal(0.8413, outlook.ProbabilityOfSingleDayAtLeast(OutcomeMeasures.KtOverV, dose * (1 - 0.044))!.Value.Value, 0.0005);
        Assert.Null(outlook.ProbabilityOfSingleDayAtLeast(OutcomeMeasures.GlucoseAbsorbed, 10));
        var assessed = GuidelineTargets.Of(outlook, [GuidelineTargets.Kdoqi2006])[0];
        Assert.NotNull(assessed.ProbabilityOfSingleDay);
        Assert.Matches("measured days? in 10 comes? up to it, and the mean of many days comes up to it with a probability of [01]\\.\\d\\d, which holds doubt of parameters\\.", assessed.Text);
    }

    [Fact]
    public void A_search_takes_the_patients_own_nights()
    {
        var goals = new RegimenGoals(FluidTarget.Between(Milliliters(-500), Milliliters(3_000)));
        var space = new RegimenSpace { Cycles = [5], VolumesPerCycle = [Milliliters(2_000)], NightLengths = [TimeSpan.FromHours(9)], NightSolutions = [DialysisSolution.Glucose227] };
        var layers = DoubtLayers.ParametersAlone with { NightToNight = NightVariation.OfPatient(Milliliters(60)) };
        var option = RegimenSearch.Run(Person, Known, goals, space, null, new() { Layers = layers }).Options[0];
        Assert.Equal(2 * 1.645 * 60, (option.UltrafiltrationOfOneDay.High - option.UltrafiltrationOfOneDay.Low).Milliliters, 0.03 * 197);
        Assert.Equal(Doubt.Parameters | Doubt.NightToNight, option.ProbabilityOfDayInRange.Doubt);
    }

    [Fact]
    public void Posture_moves_nights_and_their_bands_and_no_dwell_that_stands_alone()
    {
        // 400 times one membrane: all that differs is how it works lying. A0/Δx is between 1 and 29,400/21,900 times that of the test (children, read), LpS between as in the test
        // and in proportion. Clearance rises with both, so that the two ends bound every draw; of ultrafiltration one end is the least and the other the most.
        var many = Many(400);
        var layers = DoubtLayers.ParametersAlone with { Holds = Doubt.Parameters | Doubt.Posture };
        var outlook = RegimenComparison.Run(Person, many, Night(5), OutlookOptions.Default with { Layers = layers, EnsembleMembers = 400 });
        const double most = 29_400.0 / 21_900;
        foreach (var (measure, least, largest) in new[]
        {
            (OutcomeMeasures.CreatinineClearance, At(1, 1), At(most, most)),
            (OutcomeMeasures.Ultrafiltration, At(most, 1), At(most, most)),
        })
        {
            var band = outlook[measure].Value!.Value;
            var (low, high) = (least[measure].Value!.Value.Median, largest[measure].Value!.Value.Median);
            Assert.InRange(band.Low, low, low + 0.4 * (high - low));
            Assert.InRange(band.High, high - 0.4 * (high - low), high);
            Assert.InRange(At(1, 1)[measure].Value!.Value.Median, low, high);
            Assert.Equal("parameters and posture", band.Doubt.Words());
        }

        // The middle of glucose absorbed is that of the middle membrane: it hardly depends on water.
        var glucose = outlook[OutcomeMeasures.GlucoseAbsorbed].Value!.Value;
        Assert.Equal(At(Math.Sqrt(most), Math.Pow(most, 0.25))[OutcomeMeasures.GlucoseAbsorbed].Value!.Value.Median, glucose.Median, 0.1 * (glucose.High - glucose.Low));
        Assert.Equal(Doubt.Parameters, At(1, 1)[OutcomeMeasures.GlucoseAbsorbed].Value!.Value.Doubt);

        Assert.Equal(Curve(DoubtLayers.Default).High, Curve(DoubtLayers.Default with { Holds = DoubtLayers.Default.Holds | Doubt.Posture }).High.AsEnumerable());
        Assert.Equal(many.LyingAreaFactors, Enumerable.Repeat(1.0, 400));
        Assert.Throws<ArgumentOutOfRangeException>(() => new PostureShift(0.9));

        RegimenOutlook At(double area, double conductance) => RegimenComparison.Run(
            Person,
            MembraneEnsemble.Of(Average with { LyingAreaFactor = area, LyingConductanceFactor = conductance }),
            Night(5),
            OutlookOptions.Default with { Layers = DoubtLayers.ParametersAlone });
    }

    [Fact]
    public void A_search_whose_bands_hold_posture_says_so()
    {
        var goals = new RegimenGoals(FluidTarget.Between(Milliliters(-500), Milliliters(3_000)));
        var space = new RegimenSpace { Cycles = [5], VolumesPerCycle = [Milliliters(2_000)], NightLengths = [TimeSpan.FromHours(9)], NightSolutions = [DialysisSolution.Glucose227] };
        RegimenFront Search(Doubt holds) => RegimenSearch.Run(Person, Many(100), goals, space, null, new() { Layers = new() { Holds = holds } });
        var (held, not) = (Search(Doubt.Parameters | Doubt.Posture), Search(Doubt.Parameters));
        Assert.EndsWith("The bands hold this, as posture.", held.Findings.Single(finding => finding.Code == "night-is-supine").Message, StringComparison.Ordinal);
        Assert.EndsWith("The bands do not hold this.", not.Findings.Single(finding => finding.Code == "night-is-supine").Message, StringComparison.Ordinal);
        Assert.Equal(0, not.Options[0].UreaDose.High - not.Options[0].UreaDose.Low, 1e-9);
        Assert.True(held.Options[0].UreaDose.High - held.Options[0].UreaDose.Low > 0.05);
        Assert.Equal(Doubt.Parameters | Doubt.Posture, held.Options[0].UreaDose.Doubt);
        Assert.Equal(Doubt.Parameters | Doubt.Posture | Doubt.NightToNight, held.Options[0].ProbabilityOfDayInRange.Doubt);
    }

    [Fact]
    public void Layers_without_parameters_are_refused_and_words_name_what_is_held()
    {
        Assert.Throws<ArgumentException>(() => new DoubtLayers { Holds = Doubt.ModelForm });
        Assert.Equal("parameters", Doubt.Parameters.Words());
        Assert.Equal("parameters, model form and night to night", DoubtLayers.OfSingleNight.Holds.Words());
        Assert.Equal("no doubt", Doubt.None.Words());
    }

    private static Dictionary<Part, double[]> Draws(DoubtLayers layers, int seed)
    {
        var draws = new DoubtDraws(layers, seed);
        return Enum.GetValues<Part>().ToDictionary(part => part, part => Enumerable.Range(0, 1000).Select(i => draws[part, i]).ToArray());
    }

    private static MembraneEnsemble Many(int count) => new(
        EnsembleSource.Point,
        0,
        Average,
        [.. Enumerable.Repeat(Average.UltrafiltrationCoefficient.MillilitersPerMinutePerMillimeterOfMercury, count)],
        [.. Enumerable.Repeat(Average.DiffusionArea.Centimeters, count)],
        [.. Enumerable.Repeat(Average.GlucosePermeabilityScale, count)]);

    private static CurveBand Curve(DoubtLayers layers) => DwellCurves.Run(Person, Known, new()
    {
        Solutions = [DialysisSolution.Glucose386],
        Tested = DialysisSolution.Glucose227,
        Longest = TimeSpan.FromHours(4),
        Layers = layers,
    })[0].NetUltrafiltration;

    private static RegimenOutlook Outlook(DoubtLayers layers) =>
        RegimenComparison.Run(Person, Known, Night(5), OutlookOptions.Default with { Tested = DialysisSolution.Glucose227, Layers = layers });
}
