namespace Transport;

/// <summary>Keeps every step with its dense output.</summary>
internal readonly struct StepRecorder(int dimension) : IStepObserver<Real>
{
    private readonly List<double> times = [];
    private readonly List<double> values = [];

    public double Observe(ref DenseStep<Real> step)
    {
        if (times.Count == 0)
        {
            times.Add(step.Start);
        }

        times.Add(step.End);
        Append(step.StartState);
        Append(step.Terms());
        return double.NaN;
    }

    public Trajectory ToTrajectory() => new(dimension, [.. times], [.. values]);

    private void Append(ReadOnlySpan<Real> block)
    {
        foreach (var value in block)
        {
            values.Add(value.Value);
        }
    }
}
