using System.Diagnostics;
using System.Globalization;
using System.Text;
using MathNet.Numerics.LinearAlgebra;
using Transport.Analysis;

namespace Transport.Benchmarks;

/// <summary>Times fits and their posterior, SciPy on the same test beside them.</summary>
internal static class FitTable
{
    private const int Tests = 10_000;
    private const int Failing = 4711;

    public static string Make()
    {
        var test = FitCases.Of(PopulationPrior.IncidentAdults().ToEnsemble(FitCases.Person.BodySurface, 1, seed: 21)[0]);
        var fit = MembraneFit.Run(test);
        var problem = fit.Problem;
        (double Area, double Glucose, double Conductance)[] places = [(0, 0, 0), (1, 0.5, -1), (-1, -0.5, 1), (1, 0.5, 1), (-1, -0.5, -1)];
        double[][] starts = [.. places.Select(place => (double[])[place.Area, place.Glucose, place.Conductance, .. new double[problem.Dimension - 3]])];
        var integration = MembraneFitOptions.Default.Integration;
        FitProblem squares = null!;
        var single = Best(400, () => squares = One(problem, starts[0], integration));
        var full = Best(200, () => MembraneFit.Run(test));
        MembranePosterior? posterior = null;
        var sampling = new PosteriorOptions { DrawsPerChain = 5500, EffectiveDraws = 4000 };
        var draws = Best(3, () => posterior = MembraneSampling.Run(fit, sampling));
        var peer = FitPeer.Run(problem, starts, integration.RelativeTolerance);
        var text = new StringBuilder();
        Line($"| fits | ours, ms | peer | peer, ms | ratio | reach |");
        Line($"| --- | ---: | --- | ---: | ---: | ---: |");
        Line($"| one start, with covariance | {single / 1e3:0.000} | SciPy least_squares | {Peer(peer?.Single, single)} | 0.3 ms, ratio 500 |");
        Line($"| the full fit, starts until two agree | {full / 1e3:0.00} | SciPy least_squares | {Peer(peer?.Full, full)} | 2 ms, ratio 500 |");
        Line($"| posterior of one test, four chains | {draws / 1e3:0} | | | | 1000 ms |");
        Line($"");
        Line($"One test at 2.27 % of a person drawn from the population (creatinine, glucose at 0, 2 and 4 h, drained volume), eight coordinates. From one start ours takes {squares.Evaluations} dwells with derivatives, {((FitProblem)squares.Coarse!).Evaluations} of them coarse, on the way.");
        if (peer is not null)
        {
            var apart = peer.Point.Select((u, j) => Math.Abs(u - fit.Optimum.Coordinates[j])).Max();
            Line($"SciPy: `least_squares(method=\"lm\")` with its differences, from the same starts (tolerances 1e-8), dwells by `odeint` (LSODA) at our tolerance with the equations in plain numbers, its fastest form; its optimum is within {apart:0.0e0} of ours in units of the prior.");
        }

        Line($"The posterior has R-hat {posterior!.LargestRHat:0.000} at most and {posterior.FewestBulkEffectiveDraws:0} (bulk) and {posterior.FewestTailEffectiveDraws:0} (tail) effective draws at least, of {posterior.DrawCount}.");
        Line($"");
        Many(text);
        return text.ToString();

        void Line(FormattableString line) => text.Append(line.ToString(CultureInfo.InvariantCulture)).Append('\n');
    }

    private static string Peer(double? theirs, double ours) => theirs is { } time
        ? FormattableString.Invariant($"{time / 1e3:0.0} | {time / ours:0}")
        : "missing | ";

    private static FitProblem One(EstimationProblem problem, double[] start, IntegrationOptions integration)
    {
        var squares = new FitProblem(problem, integration);
        var found = LeastSquares.Run(squares, [Vector<double>.Build.DenseOfArray(start)], new() { AgreeingStarts = 1 });
        found.Covariance();
        return squares;
    }

    private static void Many(StringBuilder text)
    {
        var tests = FitCases.Many(Tests, Failing);
        var reports = 0;
        var watch = Stopwatch.StartNew();
        var outcomes = FitBatch.Run(tests, null, new() { Progress = new Counting(_ => reports++) });
        var seconds = watch.Elapsed.TotalSeconds;
        var stays = Enumerable.Range(0, Tests).Where(i => i != Failing && i % 100 == 0).All(i =>
            outcomes[i].Fit!.Membrane.DiffusionArea == MembraneFit.Run(tests[i]).Membrane.DiffusionArea);
        using var stop = new CancellationTokenSource();
        var asked = 0.0;
        watch.Restart();
        try
        {
            FitBatch.Run(tests, null, new()
            {
                Cancellation = stop.Token,
                Progress = new Counting(_ =>
                {
                    if (!stop.IsCancellationRequested)
                    {
                        asked = watch.Elapsed.TotalMilliseconds;
                        stop.Cancel();
                    }
                }),
            });
        }
        catch (OperationCanceledException)
        {
            asked = watch.Elapsed.TotalMilliseconds - asked;
        }

        text.Append(CultureInfo.InvariantCulture, $"{Tests:N0} tests of as many people in one call on {Environment.ProcessorCount} cores: {seconds:0.0} s, {1e3 * seconds / Tests:0.00} ms a test, {reports} reports of progress. ");
        text.Append(CultureInfo.InvariantCulture, $"One of them has a fluid that cannot be fitted: {outcomes.Count(outcome => outcome.Failure is not null)} failure, {outcomes.Count(outcome => outcome.Fit is not null):N0} fits, ");
        text.Append(CultureInfo.InvariantCulture, $"each hundredth of them {(stays ? "to the bit" : "NOT")} what it is alone. Stopped after a hundredth, the call ended {asked:0.0} ms after it was asked to.\n");
    }

    private static double Best(int times, Action work)
    {
        // Compiled at its best before it is timed: the runtime does that behind the first calls.
        for (var warm = Stopwatch.StartNew(); warm.ElapsedMilliseconds < 500;)
        {
            work();
        }

        var best = double.PositiveInfinity;
        for (var i = 0; i < times; i++)
        {
            var start = Stopwatch.GetTimestamp();
            work();
            best = Math.Min(best, Stopwatch.GetElapsedTime(start).TotalMicroseconds);
        }

        return best;
    }

    private sealed class Counting(Action<double> action) : IProgress<double>
    {
        public void Report(double value) => action(value);
    }
}
