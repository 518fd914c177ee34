namespace Transport;

/// <summary>Keeps every step with its dense output.</summary>
internal readonly struct StepRecorder(int dimension) : IStepObserver<Real>
{
    private readonly List<double> times = [];
    private readonly List<Real> values = [];

    public double Observe(ref DenseStep<Real> step)
    {
        if (times.Count == 0)
        {
            times.Add(step.Start);
        }

        times.Add(step.End);
        values.AddRange(step.StartState);
        values.AddRange(step.Terms());
        return double.NaN;
    }

    public Trajectory ToTrajectory() => new(dimension, [.. times], [.. values]);
}
