namespace Transport;

/// <summary>One dwell at a list of times, over a lane, again and again in one workspace: what fits and ensembles call.</summary>
internal sealed class DwellKernel<T>
    where T : struct, ILane<T>
{
    private readonly SolutePanel panel;
    private readonly double[] plasma;
    private readonly double[] fresh;
    private readonly double[] residual;
    private readonly double fill;
    private readonly IntegrationOptions options;
    private readonly T[] state;
    private DormandPrince853<T, ThreePoreSystem<T>>? integrator;
    private PoreCoefficients? pores;

    public DwellKernel(Dwell dwell, PlasmaComposition plasma, SolutePanel panel, IntegrationOptions options)
    {
        panel = panel.With(dwell.Solution.Polymer);
        this.panel = panel;
        this.options = options;
        this.plasma = CavityContents.Of(plasma, panel);
        fresh = CavityContents.Of(dwell.Solution, panel);
        residual = CavityContents.Of(dwell.Residual, panel);
        fill = dwell.Fill.Milliliters;
        Dimension = 4 + panel.Count;
        state = new T[Dimension];
    }

    /// <summary>Components of a state: volume, amounts, three pore volumes.</summary>
    public int Dimension { get; }

    /// <summary>States at the times, one after the other.</summary>
    /// <param name="membrane">Everything that is not free.</param>
    /// <param name="free">What carries derivatives or was drawn.</param>
    /// <param name="residualVolume">Residual volume, mL.</param>
    /// <param name="minutes">When, min, in order, none negative.</param>
    /// <param name="states">Room for as many states.</param>
    /// <exception cref="IntegrationException">The dwell could not be integrated.</exception>
    public void Run(
        ThreePoreMembrane membrane, in FreeParameters<T> free, T residualVolume, ReadOnlySpan<double> minutes, Span<T> states)
    {
        pores = PoreCoefficients.Of(membrane, panel, pores);
        integrator ??= new(new(panel));
        ref var system = ref integrator.System;
        system.Set(membrane, free, pores, panel, plasma);
        fresh.CopyTo(system.Fresh);
        DwellStart.Write<T>(state, fill, fresh, residualVolume, residual);
        var observer = new SampleObserver<T>(minutes, states, state, 0);
        integrator.Run(0, minutes[^1], state, options, ref observer);
    }
}
