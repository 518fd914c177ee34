using System.Globalization;

namespace Transport;

/// <summary>An amount of substance, or a difference of two (removal may be negative).</summary>
/// <remarks>Canonical unit mmol. The default value is zero and valid.</remarks>
public readonly record struct AmountOfSubstance : IComparable<AmountOfSubstance>
{
    private AmountOfSubstance(double millimoles) => Millimoles = millimoles;

    /// <summary>The value in mmol.</summary>
    public double Millimoles { get; }

    /// <summary>The value in µmol.</summary>
    public double Micromoles => Millimoles * 1000.0;

    /// <summary>From a value in mmol.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static AmountOfSubstance FromMillimoles(double value) => new(Require.Finite(value, "mmol"));

    /// <summary>From a value in µmol.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static AmountOfSubstance FromMicromoles(double value) => new(Require.Finite(value, "µmol") / 1000.0);

    /// <summary>Sum.</summary>
    public static AmountOfSubstance operator +(AmountOfSubstance left, AmountOfSubstance right) => new(left.Millimoles + right.Millimoles);

    /// <summary>Difference.</summary>
    public static AmountOfSubstance operator -(AmountOfSubstance left, AmountOfSubstance right) => new(left.Millimoles - right.Millimoles);

    /// <summary>Multiple.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The factor is NaN or infinite.</exception>
    public static AmountOfSubstance operator *(AmountOfSubstance left, double factor) => FromMillimoles(left.Millimoles * factor);

    /// <summary>Ratio, dimensionless.</summary>
    /// <exception cref="DivideByZeroException">The divisor is zero, or so small that the ratio is no number.</exception>
    public static double operator /(AmountOfSubstance left, AmountOfSubstance right) => Require.Ratio(left.Millimoles, right.Millimoles, left, right);

    /// <summary>Order by size.</summary>
    public static bool operator <(AmountOfSubstance left, AmountOfSubstance right) => left.Millimoles < right.Millimoles;

    /// <summary>Order by size.</summary>
    public static bool operator >(AmountOfSubstance left, AmountOfSubstance right) => left.Millimoles > right.Millimoles;

    /// <summary>Order by size.</summary>
    public static bool operator <=(AmountOfSubstance left, AmountOfSubstance right) => left.Millimoles <= right.Millimoles;

    /// <summary>Order by size.</summary>
    public static bool operator >=(AmountOfSubstance left, AmountOfSubstance right) => left.Millimoles >= right.Millimoles;

    /// <inheritdoc/>
    public int CompareTo(AmountOfSubstance other) => Millimoles.CompareTo(other.Millimoles);

    /// <summary>The value with its unit, invariant culture.</summary>
    public override string ToString() => Millimoles.ToString("0.0", CultureInfo.InvariantCulture) + " mmol";
}
