namespace Transport.Tests.Curves;

public sealed class DwellCurvesTests
{
    private static readonly Patient Person = Patient.Example;
    private static readonly ThreePoreMembrane Average = ReferenceMembranes.MeanIncidentAdult().ScaledTo(Person.BodySurface);
    private static readonly MembraneEnsemble Posterior =
        MembraneFit.Run(Fitting.InventedTests.Of(Average, DialysisSolution.Glucose227)).ToGaussianEnsemble(60, seed: 3);

    private static readonly IReadOnlyList<DwellCurve> Curves = DwellCurves.Run(Person, Posterior, new() { Tested = DialysisSolution.Glucose227 });

    [Fact]
    public void One_membrane_without_model_doubt_gives_the_simulated_dwell()
    {
        var curve = Assert.Single(DwellCurves.Run(
            Person, MembraneEnsemble.Of(Average), new() { Solutions = [DialysisSolution.Glucose386], Layers = DoubtLayers.ParametersAlone }));
        var residual = ResidualFluid.Used(ObservedExchange.TypicalResidual(Person), Person.Plasma);
        var course = DwellSimulation.Run(Person, Average, new(DialysisSolution.Glucose386, Volume.FromLiters(2), TimeSpan.FromHours(10), residual));
        for (var i = 0; i < curve.Minutes.Length; i++)
        {
            // Integrated to 1e-6 and to 1e-8 of 2.3 L: 0.01 mL is ten times the difference.
            var time = TimeSpan.FromMinutes(curve.Minutes[i]);
            Assert.Equal(course.NetUltrafiltrationAt(time).Milliliters, curve.NetUltrafiltration.Median[i], 0.01);
            Assert.Equal(course.GlucoseAbsorbedAt(time).Grams, curve.GlucoseAbsorbed.Median[i], 0.001);
            Assert.Equal(course.RemovedAt(Solutes.Sodium, time).Millimoles, curve.SodiumRemoved.Median[i], 0.01);
        }

        // The peak of the course lies in the window within 5 % of the largest value, whose ends are on a grid of 10 min.
        var (peakTime, peak) = course.PeakUltrafiltration();
        Assert.Equal(peak.Milliliters, curve.PeakUltrafiltration.Milliliters, 1.0);
        Assert.InRange(peakTime, curve.PeakWindow.From, curve.PeakWindow.To);
    }

    [Fact]
    public void A_cavity_that_runs_empty_stays_empty_and_its_curve_ends_in_a_line()
    {
        // 3 mL/min lost from 1 L of the weakest bag: gone within a day (by a single dwell, which says when). The curve must not fail for one such member.
        var leaky = Average with { LymphaticRemoval = FlowRate.FromMillilitersPerMinute(3) };
        var fill = Volume.FromLiters(1);
        var residual = ResidualFluid.Used(ObservedExchange.TypicalResidual(Person), Person.Plasma);
        var stopped = Assert.Throws<IntegrationException>(() => DwellSimulation.Run(Person, leaky, new(DialysisSolution.Glucose136, fill, TimeSpan.FromHours(24), residual)));
        var curve = Assert.Single(DwellCurves.Run(Person, MembraneEnsemble.Of(leaky), new()
        {
            Solutions = [DialysisSolution.Glucose136],
            Fill = fill,
            Longest = TimeSpan.FromHours(24),
            Layers = DoubtLayers.ParametersAlone,
        }));

        // All that was in it: the fill and what was left before, to the few mL that a last minute takes.
        Assert.Equal(-(fill + residual.Volume).Milliliters, curve.NetUltrafiltration.Median[^1], 10.0);
        var after = Enumerable.Range(0, curve.Minutes.Length).Where(i => curve.Minutes[i] >= stopped.Time.TotalMinutes).ToArray();
        Assert.NotEmpty(after);
        Assert.All(after, i => Assert.Equal(curve.NetUltrafiltration.Median[^1], curve.NetUltrafiltration.Median[i]));
        Assert.True(curve.Minutes.Zip(curve.GlucoseAbsorbed.Median).All(at => at.Second is >= 0 and < 20)); // a litre of 1.36 % holds 13.6 g
    }

    [Fact]
    public void Only_the_tested_strength_is_called_tested_and_only_the_others_hold_the_models_doubt()
    {
        Assert.Equal([false, true, false], Curves.Select(curve => curve.IsTested));
        Assert.Equal(
            [Doubt.Parameters | Doubt.ModelForm, Doubt.Parameters, Doubt.Parameters | Doubt.ModelForm],
            Curves.Select(curve => curve.NetUltrafiltration.Doubt));
    }

    [Fact]
    public void An_untested_strength_is_wider_than_its_parameters_alone_make_it()
    {
        var without = DwellCurves.Run(Person, Posterior, new() { Tested = DialysisSolution.Glucose227, Layers = DoubtLayers.ParametersAlone });

        // At 4 h the gain of 0.83 narrows the parameters' part, and 92 mL (303 mL between 5 and 95 %) add to it in quadrature. 60 draws: 20 %.
        var expected = Math.Sqrt(Math.Pow(0.83 * Width(without[2]), 2) + Math.Pow(2 * 1.645 * 92, 2));
        Assert.InRange(Width(Curves[2]), 0.8 * expected, 1.2 * expected);
        Assert.True(Width(Curves[0]) > 1.5 * Width(without[0]));
        Assert.Equal(Width(without[1]), Width(Curves[1]), 9);

        static double Width(DwellCurve curve) => curve.NetUltrafiltration.High[24] - curve.NetUltrafiltration.Low[24];
    }

    [Fact]
    public void A_weak_solution_gives_its_water_back_and_a_strong_one_does_not_within_ten_hours()
    {
        Assert.NotNull(Curves[0].ReturnToZero);
        Assert.Null(Curves[2].ReturnToZero);
    }

    [Fact]
    public void Bands_are_in_order_start_at_nothing_and_absorbed_glucose_only_grows()
    {
        Assert.All(Curves, curve =>
        {
            foreach (var band in new[] { curve.NetUltrafiltration, curve.SodiumRemoved, curve.GlucoseAbsorbed })
            {
                Assert.Equal(0, band.Median[0], 9);
                Assert.All(Enumerable.Range(0, curve.Minutes.Length), i => Assert.True(band.Low[i] <= band.Median[i] && band.Median[i] <= band.High[i]));
            }

            Assert.Equal(curve.GlucoseAbsorbed.Median.Order(), curve.GlucoseAbsorbed.Median);
        });
    }

    [Fact]
    public void The_same_seed_gives_the_same_curves_and_a_cancelled_run_stops()
    {
        var again = DwellCurves.Run(Person, Posterior, new() { Tested = DialysisSolution.Glucose227 });
        Assert.Equal(Curves[0].NetUltrafiltration.Median.AsEnumerable(), again[0].NetUltrafiltration.Median);
        using var source = new CancellationTokenSource();
        source.Cancel();
        Assert.Throws<OperationCanceledException>(() => DwellCurves.Run(Person, Posterior, control: new() { Cancellation = source.Token }));
    }
}
