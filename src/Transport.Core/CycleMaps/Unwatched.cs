namespace Transport;

/// <summary>Nobody watches.</summary>
internal readonly struct Unwatched<T> : IStepObserver<T>
    where T : struct, ILane<T>
{
    public double Wanted(double from, double reach) => double.PositiveInfinity;

    public double Observe(ref DenseStep<T> step) => double.NaN;
}
