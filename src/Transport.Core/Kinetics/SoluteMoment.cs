namespace Transport;

/// <summary>What a moment of a dwell is to all solutes alike.</summary>
internal struct SoluteMoment<T>
    where T : struct, ILane<T>
{
    /// <summary>J of the small and of the large pores, mL/min.</summary>
    public T Flow_S, Flow_L;

    /// <summary>J/a of the two.</summary>
    public T FlowPerArea_S, FlowPerArea_L;

    /// <summary>a, by which diffusion exceeds PS.</summary>
    public T Area;

    /// <summary>1/V, per mL.</summary>
    public T PerVolume;

    /// <summary>Fluid that leaves as it is, mL/min.</summary>
    public T Outward;
}
