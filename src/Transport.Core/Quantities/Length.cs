using System.Globalization;

namespace Transport;

/// <summary>A length: the height of a person.</summary>
/// <remarks>Canonical unit cm. The default value is zero and valid.</remarks>
public readonly record struct Length : IComparable<Length>
{
    private Length(double centimeters) => Centimeters = centimeters;

    /// <summary>The value in cm.</summary>
    public double Centimeters { get; }

    /// <summary>The value in m.</summary>
    public double Meters => Centimeters / 100.0;

    /// <summary>From a value in cm.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static Length FromCentimeters(double value) => new(Require.Finite(value, "cm"));

    /// <summary>From a value in m.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static Length FromMeters(double value) => new(Require.Finite(value, "m") * 100.0);

    /// <summary>Sum.</summary>
    public static Length operator +(Length left, Length right) => new(left.Centimeters + right.Centimeters);

    /// <summary>Difference.</summary>
    public static Length operator -(Length left, Length right) => new(left.Centimeters - right.Centimeters);

    /// <summary>Multiple.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The factor is NaN or infinite.</exception>
    public static Length operator *(Length left, double factor) => FromCentimeters(left.Centimeters * factor);

    /// <summary>Ratio, dimensionless.</summary>
    /// <exception cref="DivideByZeroException">The divisor is zero, or so small that the ratio is no number.</exception>
    public static double operator /(Length left, Length right) => Require.Ratio(left.Centimeters, right.Centimeters, left, right);

    /// <summary>Order by size.</summary>
    public static bool operator <(Length left, Length right) => left.Centimeters < right.Centimeters;

    /// <summary>Order by size.</summary>
    public static bool operator >(Length left, Length right) => left.Centimeters > right.Centimeters;

    /// <summary>Order by size.</summary>
    public static bool operator <=(Length left, Length right) => left.Centimeters <= right.Centimeters;

    /// <summary>Order by size.</summary>
    public static bool operator >=(Length left, Length right) => left.Centimeters >= right.Centimeters;

    /// <inheritdoc/>
    public int CompareTo(Length other) => Centimeters.CompareTo(other.Centimeters);

    /// <summary>The value with its unit, invariant culture.</summary>
    public override string ToString() => Centimeters.ToString("0", CultureInfo.InvariantCulture) + " cm";
}
