namespace Transport;

/// <summary>Nobody watches.</summary>
internal readonly struct Unwatched<T> : IStepObserver<T>
    where T : struct, ILane<T>
{
    public double Observe(ref DenseStep<T> step) => double.NaN;
}
