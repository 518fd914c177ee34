using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.Random;
using MathNet.Numerics.Statistics;

namespace Transport.Tests.Fitting;

/// <summary>The classical membrane fitted to what pores are fitted to.</summary>
public sealed class LumpedFitTests
{
    private static readonly LumpedMembrane Mean = LumpedMembrane.MeanIncidentAdult.ScaledTo(Patient.Example.BodySurface);

    [Fact]
    public void A_test_of_the_prior_s_own_membrane_returns_it()
    {
        // Without errors the optimum is the center itself, where neither data nor prior pull: 1e-6 is the search's distance to an optimum, in standard errors.
        // The test is made by DwellSimulation, so the fit's dwell is that one's.
        var fit = LumpedFit.Run(InventedTests.Of(Mean, DialysisSolution.Glucose386));

        Assert.Equal(FitStatus.Converged, fit.Status);
        Assert.All(fit.Optimum.Coordinates, u => Assert.Equal(0, u, 1e-5));
        Assert.All(fit.Residuals, residual => Assert.Equal(0, residual.Standardized, 1e-5));
        Assert.Equal(Mean.SievingCoefficient, fit.Membrane.SievingCoefficient, 1e-5);
        Assert.Equal(14.15, fit[LumpedParameter.CreatinineTransfer].Value, 1e-3);
        Assert.Equal(1.5, fit[LumpedParameter.FluidAbsorption].Value, 1e-3);
    }

    [Fact]
    public void What_the_data_decide_is_found_away_from_the_center_and_what_they_do_not_tell_stays()
    {
        // Coefficient of creatinine half as large again and conductance a quarter smaller. The prior pulls both by a share of their standard errors: within one of them.
        var truth = Mean with
        {
            MassTransfer = Mean.MassTransfer
                .SetItem(Solutes.Creatinine, Mean.MassTransfer[Solutes.Creatinine] * 1.5)
                .SetItem(Solutes.Glucose, Mean.MassTransfer[Solutes.Glucose] * 1.5),
            OsmoticConductanceToGlucose = Mean.OsmoticConductanceToGlucose * 0.75,
            OsmoticConductanceToSodium = Mean.OsmoticConductanceToSodium * 0.75,
        };
        var fit = LumpedFit.Run(InventedTests.Of(truth, DialysisSolution.Glucose386));

        Assert.Equal(FitStatus.Converged, fit.Status);
        foreach (var (parameter, expected) in new[] { (LumpedParameter.CreatinineTransfer, 1.5), (LumpedParameter.OsmoticConductance, 0.75) })
        {
            var found = fit[parameter];
            Assert.True(found.SpreadLeft < 0.75);
            Assert.Equal(Math.Log(expected), Math.Log(found.Value / found.PriorMedian), found.LogStandardError);
        }

        Assert.Equal(ParameterVerdict.FromPrior, fit[LumpedParameter.SievingCoefficient].Verdict);
    }

    [Fact]
    public void Its_derivatives_are_those_of_differences()
    {
        // Central differences of 1e-4 have an error of the order of 1e-8 of the third derivative, and the integration's tolerance of 1e-8 over 1e-4.
        var fit = LumpedFit.Run(InventedTests.Of(Mean, DialysisSolution.Glucose227));
        var problem = new FitProblem(fit.Estimation, new() { RelativeTolerance = 1e-10 });
        var at = Vector<double>.Build.Dense(problem.ParameterCount, j => 0.3 - 0.1 * j);
        var (_, slopes) = Evaluate(at);
        for (var j = 0; j < at.Count; j++)
        {
            var step = Vector<double>.Build.Dense(at.Count, i => i == j ? 1e-4 : 0);
            var difference = (Evaluate(at + step).Residuals - Evaluate(at - step).Residuals) / 2e-4;
            Assert.True((difference - slopes.Column(j)).InfinityNorm() < 1e-4, $"coordinate {j}");
        }

        (Vector<double> Residuals, Matrix<double> Slopes) Evaluate(Vector<double> u)
        {
            var residuals = Vector<double>.Build.Dense(problem.RowCount);
            var matrix = Matrix<double>.Build.Dense(problem.RowCount, problem.ParameterCount);
            Assert.True(problem.Evaluate(u, residuals, matrix));
            return (residuals, matrix);
        }
    }

    [Fact]
    public void Five_thousand_draws_of_its_prior_return_the_published_test()
    {
        // 3.86 %, 4 h, n 758: D/P creatinine 0.73 ± 0.10, D/D0 glucose 0.25 ± 0.08, ultrafiltration 675 ± 308 mL (Perit Dial Int 2019,
        // doi 10.3747/pdi.2017.00004, read); the same rules as for the pores' prior (PopulationPriorTests): medians within a quarter of the published spread,
        // spreads within a third.
        var patient = Patient.Example;
        var membrane = new LumpedCoordinates(LumpedMembrane.MeanIncidentAdult, LumpedPrior.IncidentAdults);
        var exchange = ObservedExchange.FromDrain(
            patient, new(DialysisSolution.Glucose386, Volume.FromLiters(2), TimeSpan.FromHours(4), ResidualFluid.Used(Volume.FromMilliliters(250), patient.Plasma)), Volume.FromLiters(2.5));
        var dwell = membrane.Dwell<Real>(exchange, SolutePanel.Small);
        var states = new Real[3 * dwell.Dimension];
        var random = new MersenneTwister(1987);
        var rows = Enumerable.Range(0, 5000).Select(_ =>
        {
            dwell.Run([.. Enumerable.Range(0, membrane.Count).Select(_ => Real.Of(Normal.Sample(random, 0, 1)))], Real.Of(250), [0, 60, 240], states, new() { RelativeTolerance = 1e-6 });
            return (
                Creatinine: At(2, SolutePanel.Creatinine) / patient.Plasma.Creatinine.MillimolesPerLiter,
                Glucose: At(2, SolutePanel.Glucose) / At(0, SolutePanel.Glucose),
                Ultrafiltration: states[2 * dwell.Dimension].Value - states[0].Value,
                Dip: At(0, SolutePanel.Sodium) - At(1, SolutePanel.Sodium));
        }).ToArray();

        Assert.Equal(0.73, rows.Select(row => row.Creatinine).Median(), 0.025);
        Assert.Equal(0.25, rows.Select(row => row.Glucose).Median(), 0.02);
        Assert.Equal(675, rows.Select(row => row.Ultrafiltration).Median(), 77.0);
        Assert.InRange(rows.Select(row => row.Creatinine).StandardDeviation(), 0.10 * 2 / 3, 0.10 * 4 / 3);
        Assert.InRange(rows.Select(row => row.Glucose).StandardDeviation(), 0.08 * 2 / 3, 0.08 * 4 / 3);
        Assert.InRange(rows.Select(row => row.Ultrafiltration).StandardDeviation(), 308 * 2.0 / 3, 308 * 4.0 / 3);

        // Its dip lies above the published 8.4 ± 3.8 mmol/L, where the pores' lies below: nothing in either was fitted to it.
        Assert.InRange(rows.Select(row => row.Dip).Median(), 8.4, 8.4 + 3.8 / 2);

        double At(int at, int solute) => states[at * dwell.Dimension + 1 + solute].Value / states[at * dwell.Dimension].Value;
    }

    [Fact]
    public void What_one_barrier_cannot_say_is_refused_and_data_that_no_barrier_makes_are_said_to_contradict_it()
    {
        var test = InventedTests.Of(Mean, DialysisSolution.Glucose386);
        var observed = ObservedExchange.From(test);
        var protein = observed with { Observations = [.. observed.Observations, new(ObservedQuantity.AlbuminToPlasma, test.Dwell, 0.01, 0.001, 0, IsFitted: true)] };
        Assert.Contains("proteins", Assert.Throws<ArgumentException>(() => LumpedFit.Run([protein])).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => LumpedFit.Run([]));
        Assert.Contains("one person", Assert.Throws<ArgumentException>(() => LumpedFit.Run(
            [observed, observed with { Patient = observed.Patient with { Code = "another" } }])).Message, StringComparison.Ordinal);

        // Two liters more than a barrier with such a creatinine and glucose gives: 20 standard deviations.
        var absurd = LumpedFit.Run(test with { DrainedVolume = test.DrainedVolume + Volume.FromLiters(2) });
        Assert.Equal(FitStatus.DataContradictModel, absurd.Status);
    }

    [Fact]
    public void Without_ultrasmall_pores_the_share_is_not_free_and_the_conductance_is_the_same()
    {
        var prior = PopulationPrior.IncidentAdults();
        var without = prior.WithoutUltrasmallPores();
        Assert.Equal(
            prior.Center.OsmoticConductanceToGlucose.MillilitersPerMinutePerMillimeterOfMercury,
            without.Center.OsmoticConductanceToGlucose.MillilitersPerMinutePerMillimeterOfMercury,
            1e-15);

        var fit = MembraneFit.Run(InventedTests.Of(without.Center.ScaledTo(Patient.Example.BodySurface), DialysisSolution.Glucose386), new() { Prior = without });
        Assert.Equal(FitStatus.Converged, fit.Status);
        Assert.Equal(0, fit.Membrane.Pores.UltrasmallFraction);
        Assert.DoesNotContain(fit.Parameters, parameter => parameter.Parameter == MembraneParameter.UltrasmallFraction);
        Assert.All(fit.Optimum.Coordinates, u => Assert.Equal(0, u, 1e-5));
    }
}
