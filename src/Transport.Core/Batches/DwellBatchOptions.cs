namespace Transport;

/// <summary>How many dwells are simulated at once.</summary>
public sealed record DwellBatchOptions
{
    /// <summary>Which solutes to follow.</summary>
    public SolutePanel Panel { get; init; } = SolutePanel.Small;

    /// <summary>How carefully to integrate.</summary>
    public IntegrationOptions Integration { get; init; } = IntegrationOptions.Default;

    /// <summary>Cores to use at most. It changes no result.</summary>
    /// <value>The default is all there are.</value>
    /// <exception cref="ArgumentOutOfRangeException">Below 1.</exception>
    public int Workers
    {
        get;
        init => field = (int)Require.InRange(value, 1, int.MaxValue, "");
    }
    = Environment.ProcessorCount;

    /// <summary>The defaults.</summary>
    public static DwellBatchOptions Default { get; } = new();
}
