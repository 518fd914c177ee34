namespace Transport;

/// <summary>Keeps every step with its dense output.</summary>
internal readonly struct StepRecorder() : IStepObserver<Real>
{
    private readonly List<double> times = [];
    private readonly List<Real[]> steps = [];

    public double Wanted(double from, double reach) => double.PositiveInfinity;

    public double Observe(ref DenseStep<Real> step)
    {
        if (times.Count == 0)
        {
            times.Add(step.Start);
        }

        // A block of its own for each step: nothing is copied when there are more than were expected.
        times.Add(step.End);
        steps.Add([.. step.StartState, .. step.Terms()]);
        return double.NaN;
    }

    public Trajectory ToTrajectory() => new([.. times], [.. steps]);
}
