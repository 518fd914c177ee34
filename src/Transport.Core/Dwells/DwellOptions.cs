namespace Transport;

/// <summary>How a dwell is simulated.</summary>
public sealed record DwellOptions
{
    /// <summary>Which solutes to follow.</summary>
    public SolutePanel Panel { get; init; } = SolutePanel.Small;

    /// <summary>How carefully to integrate.</summary>
    public IntegrationOptions Integration { get; init; } = IntegrationOptions.Default;

    /// <summary>The defaults.</summary>
    public static DwellOptions Default { get; } = new();
}
