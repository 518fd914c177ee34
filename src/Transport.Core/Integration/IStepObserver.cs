namespace Transport;

/// <summary>Sees each accepted step and may stop the integration at a time within it.</summary>
internal interface IStepObserver<T>
    where T : struct, ILane<T>
{
    /// <summary>Called after each accepted step.</summary>
    /// <param name="step">The step; dense output costs three more evaluations the first time it is asked for.</param>
    /// <returns>The time at which to stop, inside the step; or NaN to go on.</returns>
    public double Observe(ref DenseStep<T> step);
}
