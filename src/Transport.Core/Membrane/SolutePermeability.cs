namespace Transport;

/// <summary>A solute's permeability over all pores, where its radius does not decide.</summary>
/// <remarks>Two kinds: a multiple of creatinine's, which a fitted membrane carries along; or a value that was given.</remarks>
public sealed record SolutePermeability
{
    private SolutePermeability()
    {
    }

    /// <summary>As a multiple of creatinine's; null where a value was given.</summary>
    public double? ToCreatinineRatio { get; private init; }

    /// <summary>The value that was given, at the size of the membrane; null where creatinine's decides.</summary>
    public Clearance? Given { get; private init; }

    /// <summary>A multiple of creatinine's.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero or negative.</exception>
    public static SolutePermeability OfCreatinine(double ratio) => new() { ToCreatinineRatio = Require.Positive(ratio, "") };

    /// <summary>A value, at the size of the membrane that it is written into.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public static SolutePermeability Of(Clearance given)
    {
        Require.NotNegative(given.MillilitersPerMinute, "mL/min", nameof(given));
        return new() { Given = given };
    }

    internal SolutePermeability Scaled(double factor) => Given is { } given ? Of(given * factor) : this;
}
