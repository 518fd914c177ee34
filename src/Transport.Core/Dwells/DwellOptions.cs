namespace Transport;

/// <summary>How a dwell is simulated.</summary>
public sealed record DwellOptions
{
    /// <summary>Which solutes to follow.</summary>
    public SolutePanel Panel { get; init; } = SolutePanel.Small;

    /// <summary>
    /// How often amylase cuts a polymer's chain of mean mass (5700 g/mol) in the cavity, per hour; longer chains in proportion to their mass. Zero, the
    /// default: never.
    /// </summary>
    /// <remarks>
    /// First order; each cut moves chains into the next lighter fraction, down to maltose, and keeps the mass (the water that a cut binds is left
    /// out). Published rates were not seen: any value is a choice. What amylase does in plasma is in the plasma's composition.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Negative or not finite.</exception>
    public double PolymerScissionPerHour
    {
        get;
        init => field = Require.NotNegative(value, "1/h");
    }

    /// <summary>How carefully to integrate.</summary>
    public IntegrationOptions Integration { get; init; } = IntegrationOptions.Default;

    /// <summary>The defaults.</summary>
    public static DwellOptions Default { get; } = new();
}
