using System.Globalization;

namespace Transport;

/// <summary>An amount-of-substance concentration in plasma or dialysate.</summary>
/// <remarks>
/// Canonical unit mmol/L. Mass units need to know the solute, so their factories ask for it. A difference of two may be
/// negative; a measured one may not, which is checked where measurements are read. The default value is zero and valid.
/// </remarks>
public readonly record struct Concentration : IComparable<Concentration>
{
    private Concentration(double millimolesPerLiter) => MillimolesPerLiter = millimolesPerLiter;

    /// <summary>The value in mmol/L.</summary>
    public double MillimolesPerLiter { get; }

    /// <summary>The value in µmol/L, the usual unit of creatinine.</summary>
    public double MicromolesPerLiter => MillimolesPerLiter * 1000.0;

    /// <summary>The value in g/L of the solute.</summary>
    public double GramsPerLiter(Solute solute)
    {
        ArgumentNullException.ThrowIfNull(solute);
        return MillimolesPerLiter * solute.MolarMassGramsPerMole / 1000.0;
    }

    /// <summary>The value in mg/dL of the solute.</summary>
    public double MilligramsPerDeciliter(Solute solute) => GramsPerLiter(solute) * 100.0;

    /// <summary>From a value in mmol/L.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static Concentration FromMillimolesPerLiter(double value) => new(Require.Finite(value, "mmol/L"));

    /// <summary>From a value in µmol/L.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static Concentration FromMicromolesPerLiter(double value) => new(Require.Finite(value, "µmol/L") / 1000.0);

    /// <summary>From a value in g/L of the solute. For glucose: anhydrous.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static Concentration FromGramsPerLiter(double value, Solute solute)
    {
        ArgumentNullException.ThrowIfNull(solute);
        return new(Require.Finite(value, "g/L") * 1000.0 / solute.MolarMassGramsPerMole);
    }

    /// <summary>From a value in mg/dL of the solute. For glucose: anhydrous.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static Concentration FromMilligramsPerDeciliter(double value, Solute solute) => FromGramsPerLiter(value / 100.0, solute);

    /// <summary>Sum.</summary>
    public static Concentration operator +(Concentration left, Concentration right) =>
        new(left.MillimolesPerLiter + right.MillimolesPerLiter);

    /// <summary>Difference.</summary>
    public static Concentration operator -(Concentration left, Concentration right) =>
        new(left.MillimolesPerLiter - right.MillimolesPerLiter);

    /// <summary>Multiple.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The factor is NaN or infinite.</exception>
    public static Concentration operator *(Concentration left, double factor) => FromMillimolesPerLiter(left.MillimolesPerLiter * factor);

    /// <summary>Amount in a volume.</summary>
    public static AmountOfSubstance operator *(Concentration left, Volume right) =>
        AmountOfSubstance.FromMillimoles(left.MillimolesPerLiter * right.Liters);

    /// <summary>Ratio, dimensionless: D/P, D/D0.</summary>
    /// <exception cref="DivideByZeroException">The divisor is zero, or so small that the ratio is no number.</exception>
    public static double operator /(Concentration left, Concentration right) => Require.Ratio(left.MillimolesPerLiter, right.MillimolesPerLiter, left, right);

    /// <summary>Order by size.</summary>
    public static bool operator <(Concentration left, Concentration right) => left.MillimolesPerLiter < right.MillimolesPerLiter;

    /// <summary>Order by size.</summary>
    public static bool operator >(Concentration left, Concentration right) => left.MillimolesPerLiter > right.MillimolesPerLiter;

    /// <summary>Order by size.</summary>
    public static bool operator <=(Concentration left, Concentration right) => left.MillimolesPerLiter <= right.MillimolesPerLiter;

    /// <summary>Order by size.</summary>
    public static bool operator >=(Concentration left, Concentration right) => left.MillimolesPerLiter >= right.MillimolesPerLiter;

    /// <inheritdoc/>
    public int CompareTo(Concentration other) => MillimolesPerLiter.CompareTo(other.MillimolesPerLiter);

    /// <summary>The value in mmol/L, invariant culture.</summary>
    public override string ToString() => MillimolesPerLiter.ToString("0.0##", CultureInfo.InvariantCulture) + " mmol/L";
}
