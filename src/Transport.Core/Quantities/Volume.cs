using System.Globalization;

namespace Transport;

/// <summary>A volume of fluid, or a difference of two (ultrafiltration may be negative).</summary>
/// <remarks>Canonical unit mL. The default value is zero and valid.</remarks>
public readonly record struct Volume : IComparable<Volume>
{
    private Volume(double milliliters) => Milliliters = milliliters;

    /// <summary>The value in mL.</summary>
    public double Milliliters { get; }

    /// <summary>The value in L.</summary>
    public double Liters => Milliliters / 1000.0;

    /// <summary>From a value in mL.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static Volume FromMilliliters(double value) => new(Require.Finite(value, "mL"));

    /// <summary>From a value in L.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static Volume FromLiters(double value) => new(Require.Finite(value, "L") * 1000.0);

    /// <summary>Sum.</summary>
    public static Volume operator +(Volume left, Volume right) => new(left.Milliliters + right.Milliliters);

    /// <summary>Difference.</summary>
    public static Volume operator -(Volume left, Volume right) => new(left.Milliliters - right.Milliliters);

    /// <summary>Multiple.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The factor is NaN or infinite.</exception>
    public static Volume operator *(Volume left, double factor) => FromMilliliters(left.Milliliters * factor);

    /// <summary>Ratio, dimensionless.</summary>
    /// <exception cref="DivideByZeroException">The divisor is zero, or so small that the ratio is no number.</exception>
    public static double operator /(Volume left, Volume right) => Require.Ratio(left.Milliliters, right.Milliliters, left, right);

    /// <summary>Order by size.</summary>
    public static bool operator <(Volume left, Volume right) => left.Milliliters < right.Milliliters;

    /// <summary>Order by size.</summary>
    public static bool operator >(Volume left, Volume right) => left.Milliliters > right.Milliliters;

    /// <summary>Order by size.</summary>
    public static bool operator <=(Volume left, Volume right) => left.Milliliters <= right.Milliliters;

    /// <summary>Order by size.</summary>
    public static bool operator >=(Volume left, Volume right) => left.Milliliters >= right.Milliliters;

    /// <inheritdoc/>
    public int CompareTo(Volume other) => Milliliters.CompareTo(other.Milliliters);

    /// <summary>The value with its unit, invariant culture.</summary>
    public override string ToString() => Milliliters.ToString("0", CultureInfo.InvariantCulture) + " mL";
}
