namespace Transport.Analysis;

/// <summary>How a test is designed.</summary>
public sealed record TestDesignOptions
{
    /// <summary>Errors of what would be measured.</summary>
    public AssayErrors Errors { get; init; } = AssayErrors.Default;

    /// <summary>Whether plasma and the sample at time zero are taken as exact, so that the readings of one quantity share no error.</summary>
    public bool ExactDenominators { get; init; }

    /// <summary>Membranes, drawn from what is known, over which information is averaged.</summary>
    /// <value>The default is 24.</value>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than 1.</exception>
    public int Membranes
    {
        get;
        init => field = value >= 1 ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "Expected at least 1.");
    }
    = 24;

    /// <summary>Seed of the draw.</summary>
    public int Seed { get; init; } = 20261125;

    /// <summary>How carefully dwells are integrated.</summary>
    public IntegrationOptions Integration { get; init; } = new() { RelativeTolerance = 1e-7 };

    /// <summary>The defaults.</summary>
    public static TestDesignOptions Default { get; } = new();
}
