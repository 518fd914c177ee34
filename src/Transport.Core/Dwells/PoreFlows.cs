namespace Transport;

/// <summary>What passes the three pore classes at a moment, blood to cavity; negative where fluid is reabsorbed.</summary>
/// <param name="Ultrasmall">Free water.</param>
/// <param name="Small">Small-pore flow.</param>
/// <param name="Large">Large-pore flow, which brings the protein.</param>
public readonly record struct PoreFlows(FlowRate Ultrasmall, FlowRate Small, FlowRate Large)
{
    /// <summary>All three.</summary>
    public FlowRate Total => Ultrasmall + Small + Large;
}
