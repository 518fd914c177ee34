namespace Transport.Analysis;

/// <summary>How a membrane is fitted.</summary>
public sealed record MembraneFitOptions
{
    /// <summary>What is known before the test. Its centre's plasma level is the fit's.</summary>
    public PopulationPrior Prior { get; init; } = PopulationPrior.IncidentAdults();

    /// <summary>
    /// Whether the prior of the membrane counts. Without it only the data speak, and a parameter that they do not tell makes the fit
    /// <see cref="FitStatus.NotIdentifiable"/>. A residual volume keeps its own.
    /// </summary>
    public bool UsesPrior { get; init; } = true;

    /// <summary>
    /// The parameters to free; null: all but the share of the large pores, and that too where protein was measured, and never that of pores which the
    /// prior's membrane lacks. What is not free is held at the prior's centre. The data have to tell each parameter that is named here, or the fit says that they do not.
    /// </summary>
    /// <exception cref="ArgumentException">Empty, or a parameter twice.</exception>
    public IReadOnlyList<MembraneParameter>? Free
    {
        get;
        init => field = value is null ? null
            : value.Count > 0 && value.Distinct().Count() == value.Count ? [.. value.Order()]
            : throw new ArgumentException("Expected at least one parameter, each once.", nameof(value));
    }

    /// <summary>How far from a Gaussian the errors may be: degrees of freedom of Student's t, against outliers; null: Gaussian.</summary>
    /// <exception cref="ArgumentOutOfRangeException">2 or less: no variance.</exception>
    public double? StudentDegreesOfFreedom
    {
        get;
        init => field = value is null or > 2
            ? value
            : throw new ArgumentOutOfRangeException(nameof(value), value, "Expected more than 2 degrees of freedom, or none for Gaussian errors.");
    }

    /// <summary>How carefully dwells are integrated near an optimum, where it counts; on the way to it 1e-4 is enough.</summary>
    public IntegrationOptions Integration { get; init; } = new() { RelativeTolerance = 1e-8 };

    /// <summary>Iterations allowed from each start.</summary>
    /// <value>The default is 100; a usual test takes 5 to 10.</value>
    public int MaximumIterations { get; init; } = 100;

    /// <summary>The defaults.</summary>
    public static MembraneFitOptions Default { get; } = new();
}
