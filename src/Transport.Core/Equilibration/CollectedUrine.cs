namespace Transport;

/// <summary>The urine of a collection.</summary>
/// <param name="Volume">Volume collected; zero where there was none.</param>
public sealed record CollectedUrine(Volume Volume)
{
    /// <summary>Volume collected.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public Volume Volume
    {
        get;
        init => field = Require.ZeroOrMore(value, nameof(Volume));
    }
    = Require.ZeroOrMore(Volume, nameof(Volume));

    /// <summary>Creatinine; null where not measured.</summary>
    public Concentration? Creatinine { get; init; }

    /// <summary>Urea; null where not measured.</summary>
    public Concentration? Urea { get; init; }

    /// <summary>Sodium; null where not measured.</summary>
    public Concentration? Sodium { get; init; }

    /// <summary>Total protein; null where not measured.</summary>
    public MassConcentration? Protein { get; init; }
}
