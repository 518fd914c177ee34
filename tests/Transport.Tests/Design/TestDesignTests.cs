namespace Transport.Tests.Design;

public sealed class TestDesignTests
{
    private static readonly Patient Person = Patient.Example;

    private static readonly Dwell Night = new(
        DialysisSolution.Glucose386, Volume.FromLiters(2), TimeSpan.FromHours(4), ResidualFluid.Used(Volume.FromMilliliters(250), Patient.Example.Plasma));

    [Fact]
    public void What_is_known_now_is_the_fits_own_precision()
    {
        // Without samples the parameters are as precise as the fit says, to rounding.
        var fit = MembraneFit.Run(Fitting.InventedTests.Of(Membrane, DialysisSolution.Glucose227));
        var advice = TestDesign.Run(fit, DesignTarget.LogarithmOf(MembraneParameter.DiffusionArea));
        foreach (var parameter in fit.Parameters)
        {
            Assert.Equal(parameter.LogStandardError, advice.Now.Parameters[parameter.Parameter], 1e-9);
        }

        Assert.Equal(fit[MembraneParameter.DiffusionArea].LogStandardError, advice.Now.Target, 1e-3);
    }

    [Fact]
    public void A_planned_test_promises_what_the_fit_of_that_test_delivers()
    {
        // The same readings, planned from the prior at its center alone and then made without noise there: standard errors agree to 3 % (the fit's own errors are of the
        // observed values, its residual volume is measured; here planned as such).
        var test = Fitting.InventedTests.Of(Membrane, DialysisSolution.Glucose386);
        var exchange = ObservedExchange.From(test);
        var planned = new PlannedExchange("test", exchange.Dwell) { ResidualLogDeviation = exchange.ResidualLogDeviation };
        var sample = new PlannedSample("all", planned, [.. exchange.Observations.Where(one => one.IsFitted).Select(one => new PlannedReading(one.Quantity, one.Time))]);
        var advice = TestDesign.Run(
            Person, PopulationPrior.IncidentAdults(), DesignTarget.LogarithmOf(MembraneParameter.OsmoticConductance), [sample], new() { Membranes = 1 });
        var fit = MembraneFit.Run([exchange]);
        foreach (var parameter in fit.Parameters)
        {
            Assert.Equal(1, advice.Path[^1].Parameters[parameter.Parameter] / parameter.LogStandardError, 0.03);
        }
    }

    [Fact]
    public void Sodium_tells_the_ultrasmall_pores_and_a_volume_the_conductance()
    {
        var prior = PopulationPrior.IncidentAdults();
        var share = TestDesign.Run(Person, prior, DesignTarget.LogarithmOf(MembraneParameter.UltrasmallFraction), options: new() { Membranes = 4 });
        Assert.Contains("sodium", share.BestNext.Samples[0].Name, StringComparison.Ordinal);
        var conductance = TestDesign.Run(Person, prior, DesignTarget.LogarithmOf(MembraneParameter.OsmoticConductance), options: new() { Membranes = 4 });
        Assert.Matches("volume|drain", conductance.BestNext.Samples[0].Name);
        var area = TestDesign.Run(Person, prior, DesignTarget.LogarithmOf(MembraneParameter.DiffusionArea), options: new() { Membranes = 4 });
        Assert.Contains("creatinine", area.BestNext.Samples[0].Name, StringComparison.Ordinal);
    }

    [Fact]
    public void More_samples_never_make_it_less_precise_and_the_smallest_set_is_the_smallest()
    {
        var advice = TestDesign.Run(Person, PopulationPrior.IncidentAdults(), DesignTarget.UltrafiltrationOf(Person, Night), options: new() { Membranes = 4 });
        for (var i = 1; i < advice.Path.Count; i++)
        {
            Assert.Equal(i, advice.Path[i].Samples.Count);
            Assert.True(advice.Path[i].Target <= advice.Path[i - 1].Target * (1 + 1e-9));
        }

        Assert.Equal(advice.BestNext.Target, advice.Path[1].Target);
        var wanted = 0.5 * (advice.Path[1].Target + advice.Path[2].Target);
        var smallest = advice.Smallest(wanted);
        Assert.Equal(2, smallest!.Samples.Count);
        Assert.True(smallest.Target <= wanted && smallest.Target <= advice.Path[2].Target);
        Assert.Empty(advice.Smallest(advice.Now.Target)!.Samples);
        Assert.Null(advice.Smallest(0.99 * advice.Path[^1].Target));
    }

    [Fact]
    public void The_expected_precision_of_a_prediction_is_the_spread_that_draws_of_the_fit_have()
    {
        // Now: the Gaussian's spread through the tangent, against 1,000 draws (2.2 %) through the whole model: a tenth for the curvature.
        var fit = MembraneFit.Run(Fitting.InventedTests.Of(Membrane, DialysisSolution.Glucose386));
        var advice = TestDesign.Run(fit, DesignTarget.UltrafiltrationOf(Person, Night));
        var draws = fit.ToGaussianEnsemble(1000);
        var spread = MathNet.Numerics.Statistics.Statistics.StandardDeviation(Enumerable.Range(0, draws.Count)
            .Select(i => DwellSimulation.Run(Person, draws[i], Night).NetUltrafiltrationAt(Night.Duration).Milliliters));
        Assert.Equal(1, advice.Now.Target / spread, 0.1);
    }

    [Theory]
    [InlineData("merrow-01-average")]
    [InlineData("merrow-02-fast")]
    [InlineData("merrow-03-slow")]
    [InlineData("merrow-04-lost-dip")]
    public void The_page_says_of_each_example_what_the_library_says(string name)
    {
        var page = File.ReadAllText(Path.Combine(Repository.Root, "docs", "concepts", "test-design.md"));
        var test = SampleSheet.Read(Path.Combine(Repository.Root, "reference-data", "examples", name + ".csv")).ToTest();
        var fit = MembraneFit.Run(test);
        var night = new Dwell(
            DialysisSolution.Glucose227,
            Volume.FromLiters(2),
            TimeSpan.FromHours(8),
            ResidualFluid.Used(ObservedExchange.TypicalResidual(test.Patient), test.Patient.Plasma));
        var advice = TestDesign.Run(fit, DesignTarget.UltrafiltrationOf(test.Patient, night));
        Assert.Contains(advice.Words, page, StringComparison.Ordinal);
        Assert.Contains(TestDesign.Run(fit, DesignTarget.LogarithmOf(MembraneParameter.UltrasmallFraction)).Words, page, StringComparison.Ordinal);
        Assert.Contains(advice.Words, Transport.Reporting.DesignReports.Of(advice).Text, StringComparison.Ordinal);
        Assert.Equal(9, Transport.Reporting.DesignCharts.Precision(advice).Panels[0].Series[0].X.Count);
    }

    [Fact]
    public void Wrong_questions_are_refused()
    {
        var target = DesignTarget.LogarithmOf(MembraneParameter.DiffusionArea);
        Assert.Throws<ArgumentException>(() => TestDesign.Run(Person, PopulationPrior.IncidentAdults(), target, []));
        Assert.Throws<ArgumentException>(() => new PlannedSample("late", new("", Night), [new(ObservedQuantity.SodiumToPlasma, TimeSpan.FromHours(5))]));
        Assert.Throws<OperationCanceledException>(() =>
            TestDesign.Run(Person, PopulationPrior.IncidentAdults(), target, control: new() { Cancellation = new(canceled: true) }));
    }

    private static ThreePoreMembrane Membrane => ReferenceMembranes.MeanIncidentAdult().ScaledTo(Person.BodySurface);
}
