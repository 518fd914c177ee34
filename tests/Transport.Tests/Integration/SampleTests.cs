namespace Transport.Tests.Integration;

/// <summary>States at given times: a few of them are ends of steps, many are read from the dense output.</summary>
public sealed class SampleTests
{
    private const double Tolerance = 1e-6;

    [Fact]
    public void A_few_samples_have_the_error_of_ends_of_steps()
    {
        // The bound of the ends, twenty tolerances in the norm of the control, and not of the dense output, a hundred of them; solutions in closed form.
        foreach (var problem in new[] { Problem.Oscillator, Problem.A2, Problem.A3, Problem.A4, Problem.B2, Problem.B4, Problem.B5 })
        {
            double[] times = [0, 2.5, 5, 10, 17, problem.End];
            Assert.InRange(Worst(problem, times, Sampled(problem, times, out _)) / Tolerance, 0, 20);
        }
    }

    [Fact]
    public void Many_samples_are_read_from_the_dense_output()
    {
        // A hundred of them in 20 minutes, where a run without any takes 16 steps: three evaluations a step for the dense output, and five steps that end on one
        // where they lie apart (the first, short steps and the end). To end on each would take 1200.
        var problem = Problem.B2;
        double[] times = [.. Enumerable.Range(1, 100).Select(i => 0.2 * i)];
        var found = Sampled(problem, times, out var evaluations);
        Assert.InRange(Worst(problem, times, found) / Tolerance, 0, 100);
        var alone = new DormandPrince853<Real, Problem>(problem);
        var count = new StepCount();
        alone.Run(0, problem.End, problem.Start(), new() { RelativeTolerance = Tolerance }, ref count);
        Assert.InRange(evaluations - alone.Evaluations, 0, 3 * count.Steps + 5 * 12);
    }

    private static Real[] Sampled(Problem problem, double[] times, out long evaluations)
    {
        var states = new Real[times.Length * problem.Dimension];
        var start = problem.Start();
        var observer = new SampleObserver<Real>(times, states, start, 0);
        var integrator = new DormandPrince853<Real, Problem>(problem);
        integrator.Run(0, problem.End, problem.Start(), new() { RelativeTolerance = Tolerance }, ref observer);
        evaluations = integrator.Evaluations;
        return states;
    }

    private static double Worst(Problem problem, double[] times, Real[] found) => times.SelectMany((time, k) => problem.Solution!(time).Select(
        (exact, i) => Math.Abs(found[k * problem.Dimension + i].Value - exact) / (1 + Math.Abs(exact)))).Max();
}
