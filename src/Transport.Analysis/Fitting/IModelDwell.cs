namespace Transport.Analysis;

/// <summary>One exchange's dwell with some model of the membrane, over a lane. A state begins with the volume and the amounts of the panel's solutes.</summary>
internal interface IModelDwell<T>
    where T : struct, ILane<T>
{
    /// <summary>Components of a state.</summary>
    public int Dimension { get; }

    /// <summary>States at the times, one after the other.</summary>
    /// <param name="point">The membrane's coordinates.</param>
    /// <param name="residualVolume">mL.</param>
    /// <param name="minutes">When, min, in order, none negative.</param>
    /// <param name="states">Room for as many states.</param>
    /// <param name="integration">How carefully.</param>
    /// <exception cref="IntegrationException">The dwell cannot be integrated there.</exception>
    public void Run(ReadOnlySpan<T> point, T residualVolume, ReadOnlySpan<double> minutes, Span<T> states, IntegrationOptions integration);
}
