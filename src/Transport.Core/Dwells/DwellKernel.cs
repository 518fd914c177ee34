namespace Transport;

/// <summary>One dwell with the three-pore equations at a list of times, over a lane, again and again in one workspace: what fits and ensembles call.</summary>
internal sealed class DwellKernel<T>(Dwell dwell, PlasmaComposition plasma, SolutePanel panel)
    where T : struct, ILane<T>
{
    private readonly SampledDwell<T, ThreePoreSystem<T>> dwell = new(dwell, plasma, panel, followed => new(followed));
    private PoreCoefficients? pores;

    /// <summary>Components of a state: volume, amounts, three pore volumes.</summary>
    public int Dimension => dwell.Dimension;

    /// <summary>States at the times, one after the other.</summary>
    /// <param name="membrane">Everything that is not free.</param>
    /// <param name="free">What carries derivatives or was drawn.</param>
    /// <param name="residualVolume">Residual volume, mL.</param>
    /// <param name="minutes">When, min, in order, none negative.</param>
    /// <param name="states">Room for as many states.</param>
    /// <param name="options">How carefully.</param>
    /// <exception cref="IntegrationException">The dwell could not be integrated.</exception>
    public void Run(
        ThreePoreMembrane membrane, in FreeParameters<T> free, T residualVolume, ReadOnlySpan<double> minutes, Span<T> states, IntegrationOptions options)
    {
        pores = PoreCoefficients.Of(membrane, dwell.Panel, pores);
        dwell.System.Set(membrane, free, pores, dwell.Panel, dwell.Plasma);
        dwell.Fresh.CopyTo(dwell.System.Fresh);
        dwell.Run(residualVolume, minutes, states, options);
    }
}
