using System.Globalization;

namespace Transport;

/// <summary>An area: the surface of a body.</summary>
/// <remarks>Canonical unit m². The default value is zero and valid.</remarks>
public readonly record struct Area : IComparable<Area>
{
    private Area(double squareMeters) => SquareMeters = squareMeters;

    /// <summary>The value in m².</summary>
    public double SquareMeters { get; }

    /// <summary>From a value in m².</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static Area FromSquareMeters(double value) => new(Require.Finite(value, "m²"));

    /// <summary>Sum.</summary>
    public static Area operator +(Area left, Area right) => new(left.SquareMeters + right.SquareMeters);

    /// <summary>Difference.</summary>
    public static Area operator -(Area left, Area right) => new(left.SquareMeters - right.SquareMeters);

    /// <summary>Multiple.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The factor is NaN or infinite.</exception>
    public static Area operator *(Area left, double factor) => FromSquareMeters(left.SquareMeters * factor);

    /// <summary>Ratio, dimensionless.</summary>
    /// <exception cref="DivideByZeroException">The divisor is zero, or so small that the ratio is no number.</exception>
    public static double operator /(Area left, Area right) => Require.Ratio(left.SquareMeters, right.SquareMeters, left, right);

    /// <summary>Order by size.</summary>
    public static bool operator <(Area left, Area right) => left.SquareMeters < right.SquareMeters;

    /// <summary>Order by size.</summary>
    public static bool operator >(Area left, Area right) => left.SquareMeters > right.SquareMeters;

    /// <summary>Order by size.</summary>
    public static bool operator <=(Area left, Area right) => left.SquareMeters <= right.SquareMeters;

    /// <summary>Order by size.</summary>
    public static bool operator >=(Area left, Area right) => left.SquareMeters >= right.SquareMeters;

    /// <inheritdoc/>
    public int CompareTo(Area other) => SquareMeters.CompareTo(other.SquareMeters);

    /// <summary>The value with its unit, invariant culture.</summary>
    public override string ToString() => SquareMeters.ToString("0.00", CultureInfo.InvariantCulture) + " m²";
}
