using System.Globalization;

namespace Transport;

/// <summary>A mass: of glucose absorbed, of protein lost, of a person.</summary>
/// <remarks>Canonical unit g. The default value is zero and valid.</remarks>
public readonly record struct Mass : IComparable<Mass>
{
    private Mass(double grams) => Grams = grams;

    /// <summary>The value in g.</summary>
    public double Grams { get; }

    /// <summary>The value in kg.</summary>
    public double Kilograms => Grams / 1000.0;

    /// <summary>From a value in g.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static Mass FromGrams(double value) => new(Require.Finite(value, "g"));

    /// <summary>From a value in kg.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static Mass FromKilograms(double value) => new(Require.Finite(value, "kg") * 1000.0);

    /// <summary>Sum.</summary>
    public static Mass operator +(Mass left, Mass right) => new(left.Grams + right.Grams);

    /// <summary>Difference.</summary>
    public static Mass operator -(Mass left, Mass right) => new(left.Grams - right.Grams);

    /// <summary>Multiple.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The factor is NaN or infinite.</exception>
    public static Mass operator *(Mass left, double factor) => FromGrams(left.Grams * factor);

    /// <summary>Ratio, dimensionless.</summary>
    /// <exception cref="DivideByZeroException">The divisor is zero, or so small that the ratio is no number.</exception>
    public static double operator /(Mass left, Mass right) => Require.Ratio(left.Grams, right.Grams, left, right);

    /// <summary>Order by size.</summary>
    public static bool operator <(Mass left, Mass right) => left.Grams < right.Grams;

    /// <summary>Order by size.</summary>
    public static bool operator >(Mass left, Mass right) => left.Grams > right.Grams;

    /// <summary>Order by size.</summary>
    public static bool operator <=(Mass left, Mass right) => left.Grams <= right.Grams;

    /// <summary>Order by size.</summary>
    public static bool operator >=(Mass left, Mass right) => left.Grams >= right.Grams;

    /// <inheritdoc/>
    public int CompareTo(Mass other) => Grams.CompareTo(other.Grams);

    /// <summary>The value with its unit, from 1 kg on in kg, invariant culture.</summary>
    public override string ToString() => Math.Abs(Grams) < 1000
        ? Grams.ToString("0.0", CultureInfo.InvariantCulture) + " g"
        : (Grams / 1000).ToString("0.0", CultureInfo.InvariantCulture) + " kg";
}
