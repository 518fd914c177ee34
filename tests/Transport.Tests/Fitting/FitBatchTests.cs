namespace Transport.Tests.Fitting;

public sealed class FitBatchTests
{
    private static readonly ThreePoreMembrane Average = ReferenceMembranes.MeanIncidentAdult().ScaledTo(Patient.Example.BodySurface);

    [Fact]
    public void Many_tests_are_fitted_as_each_alone_and_one_that_cannot_be_costs_the_others_nothing()
    {
        // To the bit. Among the good ones: nothing measured that can be fitted, icodextrin, and a cavity that every membrane empties.
        var good = InventedTests.Of(Average, DialysisSolution.Glucose227);
        var fast = InventedTests.Of(Average with { DiffusionArea = Average.DiffusionArea * 1.5 }, DialysisSolution.Glucose386);
        var bare = good with { Dialysate = [], DrainedVolume = null };
        var empty = good with { InstilledVolume = Volume.FromMilliliters(300), DrainedVolume = Volume.FromMilliliters(10), Dwell = TimeSpan.FromHours(18) };
        var tests = new[] { good, bare, fast, good with { Solution = DialysisSolution.Icodextrin }, empty, good };
        var outcomes = FitBatch.Run(tests);
        Assert.Equal([false, true, false, true, true, false], outcomes.Select(outcome => outcome.Fit is null));
        Assert.All(outcomes.Where(outcome => outcome.Fit is null), outcome => Assert.Equal("fit-not-possible", outcome.Failure!.Code));
        Assert.All(outcomes.Where(outcome => outcome.Fit is not null), outcome =>
            Assert.Equal(MembraneFit.Run(tests[outcome.Index]).Parameters, outcome.Fit!.Parameters));
    }

    [Fact]
    public void It_tells_how_far_it_is_and_stops_when_asked()
    {
        var test = InventedTests.Of(Average, DialysisSolution.Glucose227);
        var watch = new Watch();
        FitBatch.Run([.. Enumerable.Repeat(test, 20)], null, new() { Progress = watch });
        Assert.Equal(1, watch.Last);
        using var stop = new CancellationTokenSource();
        Assert.ThrowsAny<OperationCanceledException>(() =>
            FitBatch.Run([.. Enumerable.Repeat(test, 1000)], null, new() { Cancellation = stop.Token, Progress = new Stop(stop) }));
    }

    private sealed class Watch : IProgress<double>
    {
        public double Last { get; private set; }

        public void Report(double value) => Last = value;
    }

    private sealed class Stop(CancellationTokenSource source) : IProgress<double>
    {
        public void Report(double value) => source.Cancel();
    }
}
