namespace Transport.Tests;

/// <summary>Counts steps and never stops.</summary>
internal struct StepCount : IStepObserver<Real>
{
    public int Steps { get; private set; }

    public readonly double Wanted(double from, double reach) => double.PositiveInfinity;

    public double Observe(ref DenseStep<Real> step)
    {
        Steps++;
        return double.NaN;
    }
}
