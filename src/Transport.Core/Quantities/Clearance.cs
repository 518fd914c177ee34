using System.Globalization;

namespace Transport;

/// <summary>A volume cleared of a solute in a time: a mass transfer area coefficient, a renal or a whole-regimen clearance.</summary>
/// <remarks>Canonical unit mL/min. The default value is zero and valid.</remarks>
public readonly record struct Clearance : IComparable<Clearance>
{
    private Clearance(double millilitersPerMinute) => MillilitersPerMinute = millilitersPerMinute;

    /// <summary>The value in mL/min.</summary>
    public double MillilitersPerMinute { get; }

    /// <summary>The value in L/day.</summary>
    public double LitersPerDay => MillilitersPerMinute * 1.44;

    /// <summary>The value in L/week.</summary>
    public double LitersPerWeek => MillilitersPerMinute * 10.08;

    /// <summary>From a value in mL/min.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static Clearance FromMillilitersPerMinute(double value) => new(Require.Finite(value, "mL/min"));

    /// <summary>From a value in L/day.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static Clearance FromLitersPerDay(double value) => new(Require.Finite(value, "L/day") / 1.44);

    /// <summary>From a value in L/week.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static Clearance FromLitersPerWeek(double value) => new(Require.Finite(value, "L/week") / 10.08);

    /// <summary>Sum.</summary>
    public static Clearance operator +(Clearance left, Clearance right) => new(left.MillilitersPerMinute + right.MillilitersPerMinute);

    /// <summary>Difference.</summary>
    public static Clearance operator -(Clearance left, Clearance right) => new(left.MillilitersPerMinute - right.MillilitersPerMinute);

    /// <summary>Multiple.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The factor is NaN or infinite.</exception>
    public static Clearance operator *(Clearance left, double factor) => FromMillilitersPerMinute(left.MillilitersPerMinute * factor);

    /// <summary>Ratio, dimensionless.</summary>
    /// <exception cref="DivideByZeroException">The divisor is zero, or so small that the ratio is no number.</exception>
    public static double operator /(Clearance left, Clearance right) => Require.Ratio(left.MillilitersPerMinute, right.MillilitersPerMinute, left, right);

    /// <summary>Order by size.</summary>
    public static bool operator <(Clearance left, Clearance right) => left.MillilitersPerMinute < right.MillilitersPerMinute;

    /// <summary>Order by size.</summary>
    public static bool operator >(Clearance left, Clearance right) => left.MillilitersPerMinute > right.MillilitersPerMinute;

    /// <summary>Order by size.</summary>
    public static bool operator <=(Clearance left, Clearance right) => left.MillilitersPerMinute <= right.MillilitersPerMinute;

    /// <summary>Order by size.</summary>
    public static bool operator >=(Clearance left, Clearance right) => left.MillilitersPerMinute >= right.MillilitersPerMinute;

    /// <inheritdoc/>
    public int CompareTo(Clearance other) => MillilitersPerMinute.CompareTo(other.MillilitersPerMinute);

    /// <summary>The value with its unit, invariant culture.</summary>
    public override string ToString() => MillilitersPerMinute.ToString("0.0", CultureInfo.InvariantCulture) + " mL/min";
}
