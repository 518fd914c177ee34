using System.Collections.Immutable;

namespace Transport;

/// <summary>Plasma concentrations during a dwell or a regimen, per litre of plasma.</summary>
/// <remarks>
/// Kept constant by the body within a dwell. Which correction towards plasma water a simulation applies belongs to the
/// membrane (<see cref="PlasmaLevel"/>), because its parameters are only true together with it.
/// </remarks>
public sealed record PlasmaComposition
{
    /// <summary>Plasma concentrations.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A concentration is negative, or creatinine or sodium zero.</exception>
    public PlasmaComposition(Concentration urea, Concentration creatinine, Concentration glucose, Concentration sodium)
    {
        Urea = urea;
        Creatinine = creatinine;
        Glucose = glucose;
        Sodium = sodium;
    }

    /// <summary>Urea.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public Concentration Urea
    {
        get;
        init => field = Require.ZeroOrMore(value, nameof(Urea));
    }

    /// <summary>Creatinine.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero or negative.</exception>
    public Concentration Creatinine
    {
        get;
        init => field = Require.MoreThanZero(value, nameof(Creatinine));
    }

    /// <summary>Glucose.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public Concentration Glucose
    {
        get;
        init => field = Require.ZeroOrMore(value, nameof(Glucose));
    }

    /// <summary>Sodium.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero or negative.</exception>
    public Concentration Sodium
    {
        get;
        init => field = Require.MoreThanZero(value, nameof(Sodium));
    }

    /// <summary>Other solutes that a panel may ask for; per litre of plasma, and of calcium and magnesium what protein does not bind.</summary>
    /// <remarks>There are no defaults: what is not measured is not made up, and the plasma of none of them is predicted.</remarks>
    /// <exception cref="ArgumentException">A solute has a property of its own.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A concentration is negative.</exception>
    public ImmutableDictionary<Solute, Concentration> Others
    {
        get;
        init => field = OtherSolutes.Check(value);
    }
    = OtherSolutes.None;

    /// <summary>
    /// The usual constants of simulations: urea 20, glucose 6, sodium 140 mmol/L (memory), creatinine 800 µmol/L (choice;
    /// nothing but its own D/P depends on it).
    /// </summary>
    public static PlasmaComposition Typical { get; } = new(
        Concentration.FromMillimolesPerLiter(20),
        Concentration.FromMicromolesPerLiter(800),
        Concentration.FromMillimolesPerLiter(6),
        Concentration.FromMillimolesPerLiter(140));
}
