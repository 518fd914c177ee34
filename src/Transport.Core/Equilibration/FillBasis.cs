namespace Transport;

/// <summary>How the instilled volume of a test is known.</summary>
public enum FillBasis
{
    /// <summary>Weighed, or otherwise measured, less the flush: overfill is inside it.</summary>
    Measured,

    /// <summary>What the bag's label says: bags hold 2-5 % more (overfill), which then counts as ultrafiltration.</summary>
    Label,
}
