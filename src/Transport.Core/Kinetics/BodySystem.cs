namespace Transport;

/// <summary>The cavity, and behind its membrane a pool for each solute that is not held constant, over a lane.</summary>
/// <remarks>
/// <para>dA/dt = G − K c − (N − L d), c = A / V_b: what the membrane takes out of the pool is to the bit what the cavity's own equations
/// put into it, so that amounts are conserved at every step. A cavity that has emptied is closed: only the pools go on.</para>
/// <para>State: the cavity's; then A of each pool, µmol; then ∫c dt of each, mmol/L·min. Without pools it is the cavity and nothing else.</para>
/// </remarks>
internal struct BodySystem<T> : IOdeSystem<T>
    where T : struct, ILane<T>
{
    private readonly BodyPool[] pools;

    public BodySystem(in ThreePoreSystem<T> cavity, BodyPool[] pools)
    {
        Cavity = cavity;
        this.pools = pools;
    }

    /// <summary>The equations of the cavity, whose flows change from phase to phase.</summary>
    public ThreePoreSystem<T> Cavity;

    /// <summary>Whether the cavity is empty and nothing crosses the membrane.</summary>
    public bool IsClosed { readonly get; set; }

    /// <summary>Whether the pools stay as they are: constant plasma.</summary>
    public bool HoldsPools { readonly get; set; }

    public readonly int Dimension => Cavity.Dimension + 2 * pools.Length;

    /// <summary>Slot of the first pool's amount.</summary>
    public readonly int PoolSlot => Cavity.Dimension;

    /// <summary>Slot of the first ∫c dt.</summary>
    public readonly int ExposureSlot => Cavity.Dimension + pools.Length;

    public readonly void Derivatives(double minutes, ReadOnlySpan<T> state, Span<T> rates)
    {
        if (pools.Length == 0)
        {
            Cavity.Derivatives(minutes, state, rates);
            return;
        }

        var (pool, exposure) = (PoolSlot, ExposureSlot);
        FacePools(state);
        if (IsClosed)
        {
            rates[..pool].Clear();
        }
        else
        {
            Cavity.Derivatives(minutes, state[..pool], rates[..pool]);
        }

        for (var k = 0; k < pools.Length; k++)
        {
            ref readonly var here = ref pools[k];
            var c = (1 / here.Volume) * state[pool + k];
            rates[exposure + k] = c;
            rates[pool + k] = HoldsPools
                ? T.Of(0)
                : T.Of(here.Generation + Infused(here.Solute)) - here.OtherClearance * c - rates[1 + here.Solute] - Drained(here.Solute, rates);
        }
    }

    /// <summary>What passes the pore classes, mL/min; nothing while the cavity is closed.</summary>
    public readonly (T Ultrasmall, T Small, T Large) PoreFlows(ReadOnlySpan<T> state)
    {
        if (IsClosed)
        {
            return (T.Of(0), T.Of(0), T.Of(0));
        }

        FacePools(state);
        return Cavity.PoreFlows(state);
    }

    /// <summary>Net flow into the cavity, lymph and tissue counted, without what flows through the catheter, mL/min.</summary>
    public readonly T MembraneFlow(ReadOnlySpan<T> state)
    {
        FacePools(state);
        var flows = Cavity.PoreFlows(state);
        return flows.Ultrasmall + flows.Small + flows.Large - Cavity.BulkRemoval(state);
    }

    public readonly int KinkCount => IsClosed ? 0 : Cavity.KinkCount;

    public readonly T Kink(int index, ReadOnlySpan<T> state) => Cavity.Kink(index, state);

    public readonly T Bend(ReadOnlySpan<T> rates) => IsClosed ? T.Of(0) : Cavity.Bend(rates);

    public readonly void AbsoluteScale(Span<double> scale)
    {
        Cavity.AbsoluteScale(scale);
        for (var k = 0; k < pools.Length; k++)
        {
            scale[PoolSlot + k] = 1e-3 * pools[k].Volume * pools[k].UsualLevel;
            scale[ExposureSlot + k] = pools[k].UsualLevel;
        }
    }

    private readonly void FacePools(ReadOnlySpan<T> state)
    {
        for (var k = 0; k < pools.Length; k++)
        {
            Cavity.Plasma(pools[k].Solute) = (pools[k].BloodSide / pools[k].Volume) * state[PoolSlot + k];
        }
    }

    private readonly double Infused(int solute) => IsClosed ? 0 : Cavity.Inflow * Cavity.Fresh[solute];

    private readonly T Drained(int solute, ReadOnlySpan<T> rates) =>
        Cavity.CollectsDrain ? rates[Cavity.DrainSlot + solute] : T.Of(0);
}
