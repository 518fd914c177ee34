namespace Transport;

/// <summary>One dwell with some model's equations at a list of times, over a lane, again and again in one workspace.</summary>
internal sealed class SampledDwell<T, TSystem>
    where T : struct, ILane<T>
    where TSystem : struct, IDwellSystem<T>
{
    private readonly double[] residual;
    private readonly T[] state;
    private readonly DormandPrince853<T, TSystem> integrator;

    public SampledDwell(Dwell dwell, PlasmaComposition plasma, SolutePanel panel, Func<SolutePanel, TSystem> room)
    {
        Panel = panel.With(dwell.Solution.Polymer);
        Plasma = CavityContents.Of(plasma, Panel);
        Fresh = CavityContents.Of(dwell.Solution, Panel);
        residual = CavityContents.Of(dwell.Residual, Panel);
        Fill = dwell.Fill.Milliliters;
        integrator = new(room(Panel));
        Dimension = integrator.System.Dimension;
        state = new T[Dimension];
    }

    /// <summary>The equations, to be set to a membrane before a run.</summary>
    public ref TSystem System => ref integrator.System;

    /// <summary>The solutes in the order of the state.</summary>
    public SolutePanel Panel { get; }

    /// <summary>Concentrations in plasma, mmol/L.</summary>
    public double[] Plasma { get; }

    /// <summary>Concentrations in the fresh fluid, mmol/L.</summary>
    public double[] Fresh { get; }

    /// <summary>Volume of the fresh fluid, mL.</summary>
    public double Fill { get; }

    /// <summary>Components of a state: volume, amounts, volumes through each path.</summary>
    public int Dimension { get; }

    /// <summary>States at the times, one after the other.</summary>
    /// <param name="residualVolume">Residual volume, mL.</param>
    /// <param name="minutes">When, min, in order, none negative.</param>
    /// <param name="states">Room for as many states.</param>
    /// <param name="options">How carefully.</param>
    /// <exception cref="IntegrationException">The dwell could not be integrated.</exception>
    public void Run(T residualVolume, ReadOnlySpan<double> minutes, Span<T> states, IntegrationOptions options)
    {
        DwellStart.Write<T>(state, Fill, Fresh, residualVolume, residual);
        var observer = new SampleObserver<T>(minutes, states, state, 0);
        integrator.Run(0, minutes[^1], state, options, ref observer);
    }
}
