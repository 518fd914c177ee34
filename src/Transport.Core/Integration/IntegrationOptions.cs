namespace Transport;

/// <summary>How carefully a dwell is integrated.</summary>
public sealed record IntegrationOptions
{
    /// <summary>Error allowed per step, relative to each component and to its usual size.</summary>
    /// <value>The default is 1e-8. Range 1e-13 to 1e-3.</value>
    /// <exception cref="ArgumentOutOfRangeException">Outside the range.</exception>
    public double RelativeTolerance
    {
        get;
        init => field = Require.InRange(value, 1e-13, 1e-3, "");
    }
    = 1e-8;

    /// <summary>Steps after which an integration is given up.</summary>
    /// <value>The default is 10,000; a 4-h dwell takes about 10.</value>
    public int MaximumSteps { get; init; } = 10_000;

    /// <summary>The defaults.</summary>
    public static IntegrationOptions Default { get; } = new();
}
