namespace Transport;

/// <summary>The equations of one dwell with some membrane, and what they say of a state. Its order: V; M of each solute; ∫J of each path.</summary>
/// <remarks>
/// What a model of the membrane has to bring. Paths are ways through it for fluid: three kinds of pores, or one barrier. Callers are generic over
/// the implementing struct, so nothing is called through an interface within an integration.
/// </remarks>
internal interface IDwellSystem<T> : IOdeSystem<T>
    where T : struct, ILane<T>
{
    /// <summary>Concentration of a solute on the blood side, mmol/L; a protein's relative to plasma.</summary>
    public T PlasmaOf(int solute);

    /// <summary>How many paths.</summary>
    public int PathCount { get; }

    /// <summary>Writes J of each path, mL/min.</summary>
    public void PathFlows(ReadOnlySpan<T> state, Span<T> flows);

    /// <summary>What part of a solute a path's fluid carries: 1 − σ.</summary>
    public double Passed(int path, int solute);

    /// <summary>Fluid that leaves the cavity as it is, with all it holds, mL/min.</summary>
    public T BulkRemoval(ReadOnlySpan<T> state);

    /// <summary>The membrane in contact with the fluid, over that to which its numbers belong.</summary>
    public T ContactArea(ReadOnlySpan<T> state);
}
