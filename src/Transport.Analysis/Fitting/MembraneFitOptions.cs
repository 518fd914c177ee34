namespace Transport.Analysis;

/// <summary>How a membrane is fitted.</summary>
public sealed record MembraneFitOptions
{
    /// <summary>What is known before the test. Its centre's plasma level is the fit's.</summary>
    public PopulationPrior Prior { get; init; } = PopulationPrior.IncidentAdults();

    /// <summary>How carefully dwells are integrated.</summary>
    public IntegrationOptions Integration { get; init; } = new() { RelativeTolerance = 1e-8 };

    /// <summary>Iterations allowed from each start.</summary>
    /// <value>The default is 100; a usual test takes 5 to 10.</value>
    public int MaximumIterations { get; init; } = 100;

    /// <summary>The defaults.</summary>
    public static MembraneFitOptions Default { get; } = new();
}
