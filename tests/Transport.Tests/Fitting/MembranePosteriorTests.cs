using MathNet.Numerics.Integration;
using MathNet.Numerics.LinearAlgebra;
using Transport.Reporting;

namespace Transport.Tests.Fitting;

public sealed class MembranePosteriorTests
{
    private static readonly ThreePoreMembrane Average = ReferenceMembranes.MeanIncidentAdult().ScaledTo(Patient.Example.BodySurface);

    public static TheoryData<string> Examples => [.. Directory.GetFiles(Path.Combine(Repository.Root, "reference-data", "examples"), "*.csv")
        .Select(Path.GetFileName).OfType<string>().Where(name => SheetCanBeFitted(name))];

    [Theory]
    [MemberData(nameof(Examples))]
    public void Four_chains_tell_one_story_of_every_example_sheet(string sheet)
    {
        // Asked for: at least 4,000 effective draws in the middle and in the tails, R-hat at most 1.01, in every coordinate. The seed is fixed.
        var posterior = MembraneSampling.Run(MembraneFit.Run(Read(sheet)));
        Assert.InRange(posterior.LargestRHat, 0.99, 1.01);
        Assert.InRange(posterior.FewestBulkEffectiveDraws, 4000, double.MaxValue);
        Assert.InRange(posterior.FewestTailEffectiveDraws, 4000, double.MaxValue);
        Assert.True(posterior.IsConverged);
        Assert.DoesNotContain(posterior.Findings, finding => finding.Code == "posterior-not-converged");
    }

    [Fact]
    public void Draws_of_one_free_parameter_have_the_quantiles_of_its_density_by_quadrature()
    {
        // All but A0/Δx is held by tight priors; its density is then exp(−½ (prior + data)) in one dimension, computed here from the public simulation and
        // integrated by Gauss and Legendre. A share below a quantile has the Monte Carlo error √(p (1 − p) / effective draws); four of them.
        const double tight = 1e-4;
        var prior = PopulationPrior.IncidentAdults() with
        {
            GlucosePermeabilityLogDeviation = tight,
            OsmoticConductanceLogDeviation = tight,
            TransientAmplitudeLogDeviation = tight,
            LymphaticRemovalLogDeviation = tight,
            UltrasmallFractionLogDeviation = tight,
            SodiumPermeabilityLogDeviation = tight,
        };
        var test = InventedTests.Of(Average, DialysisSolution.Glucose227, withVolume: false);
        var all = ObservedExchange.From(test);
        var exchange = all with
        {
            ResidualLogDeviation = tight,
            Observations =
            [
                .. all.Observations
                    .Where(o => o.Quantity == ObservedQuantity.CreatinineToPlasma && o.Time == TimeSpan.FromHours(4))
                    .Select(o => o with { Value = 1.1 * o.Value, OwnDeviation = 0.06, SharedDeviation = 0 }),
            ],
        };
        var observation = exchange.Observations.Single();
        var posterior = MembraneSampling.Run(MembraneFit.Run([exchange], new() { Prior = prior }));
        var median = Average.DiffusionArea.Centimeters / Patient.Example.SurfaceFactor;

        double Density(double u)
        {
            var membrane = Average with { DiffusionArea = Average.DiffusionArea * Math.Exp(0.36 * u) };
            // Errors of a ratio are in proportion: logarithms are compared, on the scale of what was observed.
            var ratio = DwellSimulation.Run(Patient.Example, membrane, exchange.Dwell).DialysateToPlasmaAt(Solutes.Creatinine, observation.Time);
            var miss = observation.Value * Math.Log(ratio / observation.Value);
            return Math.Exp(-0.5 * (u * u + miss * miss / (observation.OwnDeviation * observation.OwnDeviation)));
        }

        var parameter = posterior[MembraneParameter.DiffusionArea];
        var whole = GaussLegendreRule.Integrate(Density, -6, 6, 128);
        foreach (var (value, share) in new[] { (parameter.Posterior.Low, 0.05), (parameter.Posterior.Median, 0.5), (parameter.Posterior.High, 0.95) })
        {
            var below = GaussLegendreRule.Integrate(Density, -6, Math.Log(value / median) / 0.36, 128) / whole;
            var effective = share == 0.5 ? parameter.BulkEffectiveDraws : parameter.TailEffectiveDraws;
            Assert.Equal(share, below, 4 * Math.Sqrt(share * (1 - share) / effective));
        }
    }

    [Theory]
    [InlineData(true, null)]
    [InlineData(false, null)]
    [InlineData(true, 4.0)]
    public void The_density_in_lanes_is_that_of_the_fit_and_an_emptied_cavity_has_none_alone(bool usesPrior, double? degrees)
    {
        // Minus half the sum of squares that the fit minimizes, at four points, one of which empties the cavity: the three others keep theirs. The two
        // integrate with their own tolerances, 1e-6 and 1e-8: of the order of 1e-4 of a log-density of some hundred.
        var test = InventedTests.Of(Average, DialysisSolution.Glucose136) with { Dwell = TimeSpan.FromHours(14) };
        IReadOnlyList<ObservedExchange> exchanges = [ObservedExchange.From(test)];
        var coordinates = new MembraneCoordinates(Average, PopulationPrior.IncidentAdults(), Enum.GetValues<MembraneParameter>());
        var estimation = new EstimationProblem(exchanges, coordinates, usesPrior, degrees);
        var problem = new FitProblem(estimation, new() { RelativeTolerance = 1e-8 });
        var density = new PosteriorDensity(estimation, new() { RelativeTolerance = 1e-6 });
        double[][] points =
        [
            [0, 0, 0, 0, 0, 0, 0, 0, 0],
            [0.5, -1, 0.5, 1, -0.5, 1, -1, 0.3, 0.2],
            [2, 1, 0, 0, 6, 0, 0, 0, -2],
            [-1, 0.3, 0.2, -0.6, 1, -1, 0.5, -1, 0.7],
        ];
        var lanes = new double[36];
        for (var l = 0; l < 4; l++)
        {
            for (var j = 0; j < 9; j++)
            {
                lanes[4 * j + l] = points[l][j];
            }
        }

        var found = new double[4];
        density.Evaluate(lanes, found);
        var residuals = Vector<double>.Build.Dense(problem.RowCount);
        var slopes = Matrix<double>.Build.Dense(problem.RowCount, problem.ParameterCount);
        for (var l = 0; l < 4; l++)
        {
            var isDefined = problem.Evaluate(Vector<double>.Build.Dense(points[l]), residuals, slopes);
            Assert.Equal(l != 2, isDefined);
            Assert.Equal(isDefined ? -0.5 * residuals.DotProduct(residuals) : double.NegativeInfinity, found[l], 1e-3);
        }
    }

    [Fact]
    public void The_top_and_the_curvature_agree_with_the_draws_where_the_data_decide()
    {
        // A0/Δx of a full test is nearly Gaussian: the standard error at the optimum and the draws' spread agree to a tenth.
        var fit = MembraneFit.Run(InventedTests.Of(Average, DialysisSolution.Glucose227));
        var posterior = MembraneSampling.Run(fit);
        var area = fit[MembraneParameter.DiffusionArea];
        Assert.Equal(1, posterior[MembraneParameter.DiffusionArea].SpreadLeft * area.PriorLogDeviation / area.LogStandardError, 0.1);
        Assert.Equal(ParameterVerdict.FromData, posterior[MembraneParameter.DiffusionArea].Verdict);
    }

    [Fact]
    public void A_sheet_without_a_volume_says_little_about_conductance_and_draws_keep_its_spread()
    {
        var test = InventedTests.Of(Average, DialysisSolution.Glucose386, withVolume: false);
        var posterior = MembraneSampling.Run(MembraneFit.Run(test with { Dialysate = [.. test.Dialysate.Select(sample => sample with { Sodium = null })] }));
        var conductance = posterior[MembraneParameter.OsmoticConductance];
        Assert.Equal(ParameterVerdict.FromPrior, conductance.Verdict);
        Assert.Equal("say little about it", conductance.Verdict.Words());
        Assert.Contains("osmotic conductance to glucose: the data say little about it", PosteriorCharts.Contraction(posterior).AltText, StringComparison.Ordinal);
        Assert.Contains("say little about it", PosteriorReports.Of(posterior).Text, StringComparison.Ordinal);
    }

    [Fact]
    public void An_ensemble_is_made_of_the_draws_and_the_same_seed_gives_the_same()
    {
        var fit = MembraneFit.Run(InventedTests.Of(Average, DialysisSolution.Glucose386));
        var options = new PosteriorOptions { DrawsPerChain = 500, MostDrawsPerChain = 500, Seed = 5 };
        var posterior = MembraneSampling.Run(fit, options);
        var ensemble = posterior.ToEnsemble(2000);
        Assert.Equal(EnsembleSource.Posterior, ensemble.Source);
        Assert.Equal(
            posterior.Draws(MembraneParameter.DiffusionArea).Order(),
            ensemble.DiffusionAreas.Select(area => area / Patient.Example.SurfaceFactor).Order(),
            (a, b) => Math.Abs(a / b - 1) < 1e-12);
        Assert.Equal(MembraneSampling.Run(fit, options).ToEnsemble(70).DiffusionAreas.ToArray(), posterior.ToEnsemble(70).DiffusionAreas.ToArray());
        Assert.Throws<ArgumentOutOfRangeException>(() => posterior.ToEnsemble(2001));
    }

    [Fact]
    public void Chains_that_are_too_fewsay_so_and_a_stopped_run_throws()
    {
        var fit = MembraneFit.Run(InventedTests.Of(Average, DialysisSolution.Glucose386));
        var few = MembraneSampling.Run(fit, new() { DrawsPerChain = 100, MostDrawsPerChain = 100 });
        Assert.Contains(few.Findings, finding => finding.Code == "posterior-not-converged");
        Assert.Throws<OperationCanceledException>(() => MembraneSampling.Run(fit, null, new() { Cancellation = new(canceled: true) }));
        Assert.Throws<ArgumentOutOfRangeException>(() => new PosteriorOptions { DrawsPerChain = 99 });
    }

    private static EquilibrationTest Read(string sheet) => SampleSheet.Read(Path.Combine(Repository.Root, "reference-data", "examples", sheet)).ToTest();

    private static bool SheetCanBeFitted(string sheet)
    {
        try
        {
            return ObservedExchange.From(Read(sheet)).Observations.Any(o => o.IsFitted);
        }
        catch (Exception failure) when (failure is SampleSheetException or ArgumentException)
        {
            return false;
        }
    }
}
