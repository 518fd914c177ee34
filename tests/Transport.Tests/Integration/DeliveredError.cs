namespace Transport.Tests.Integration;

/// <summary>Compares a run with the solution: error over tolerance times (scale + size), root mean square of the components.</summary>
internal struct DeliveredError(Problem problem, double tolerance) : IStepObserver<Real>
{
    private readonly Func<double, double[]> solution = problem.Solution ?? Reference(problem);

    /// <summary>The largest at the ends of all steps.</summary>
    public double AtEnds { get; private set; }

    /// <summary>The largest in the middle of a step: of the dense output.</summary>
    public double AtMiddles { get; private set; }

    public double Longest { get; private set; }

    public double Shortest { get; private set; } = double.PositiveInfinity;

    public readonly double Wanted(double from, double reach) => double.PositiveInfinity;

    public double Observe(ref DenseStep<Real> step)
    {
        Longest = Math.Max(Longest, step.Length);

        // The last step is as long as what is left.
        Shortest = step.End < problem.End ? Math.Min(Shortest, step.Length) : Shortest;
        AtEnds = Math.Max(AtEnds, Ratio(ref step, step.End));
        AtMiddles = Math.Max(AtMiddles, Ratio(ref step, step.Start + 0.5 * step.Length));
        return double.NaN;
    }

    private readonly double Ratio(ref DenseStep<Real> step, double t)
    {
        var found = new Real[problem.Dimension];
        step.State(t, found);
        var expected = solution(t);
        var squares = 0.0;
        for (var i = 0; i < expected.Length; i++)
        {
            squares += Math.Pow((found[i].Value - expected[i]) / (tolerance * (problem.Scale + Math.Abs(expected[i]))), 2);
        }

        return Math.Sqrt(squares / expected.Length);
    }

    private static Func<double, double[]> Reference(Problem problem)
    {
        var recorder = new StepRecorder();
        new DormandPrince853<Real, Problem>(problem).Run(0, problem.End, problem.Start(), new() { RelativeTolerance = 1e-13 }, ref recorder);
        var trajectory = recorder.ToTrajectory();
        return t => [.. Enumerable.Range(0, problem.Dimension).Select(i => trajectory.At(i, Math.Min(t, trajectory.End)))];
    }
}
