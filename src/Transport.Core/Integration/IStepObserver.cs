namespace Transport;

/// <summary>Sees each accepted step and may stop the integration at a time within it.</summary>
internal interface IStepObserver<T>
    where T : struct, ILane<T>
{
    /// <summary>Where the next step should end, to the bit, if it comes so far: its end is far more exact than its inside, and costs no dense output.</summary>
    /// <param name="from">Where the step starts, min.</param>
    /// <param name="reach">Where it can end at the latest, min.</param>
    /// <returns>A time after the start, min; beyond reach or infinite where it does not matter.</returns>
    public double Wanted(double from, double reach);

    /// <summary>Called after each accepted step.</summary>
    /// <param name="step">The step; dense output costs three more evaluations the first time it is asked for.</param>
    /// <returns>The time at which to stop, inside the step; or NaN to go on.</returns>
    public double Observe(ref DenseStep<T> step);
}
