using System.Globalization;

namespace Transport;

/// <summary>A volume flow; positive from blood to cavity, or as the member says.</summary>
/// <remarks>Canonical unit mL/min. The default value is zero and valid.</remarks>
public readonly record struct FlowRate : IComparable<FlowRate>
{
    private FlowRate(double millilitersPerMinute) => MillilitersPerMinute = millilitersPerMinute;

    /// <summary>The value in mL/min.</summary>
    public double MillilitersPerMinute { get; }

    /// <summary>From a value in mL/min.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static FlowRate FromMillilitersPerMinute(double value) => new(Require.Finite(value, "mL/min"));

    /// <summary>Sum.</summary>
    public static FlowRate operator +(FlowRate left, FlowRate right) => new(left.MillilitersPerMinute + right.MillilitersPerMinute);

    /// <summary>Difference.</summary>
    public static FlowRate operator -(FlowRate left, FlowRate right) => new(left.MillilitersPerMinute - right.MillilitersPerMinute);

    /// <summary>Multiple.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The factor is NaN or infinite.</exception>
    public static FlowRate operator *(FlowRate left, double factor) => FromMillilitersPerMinute(left.MillilitersPerMinute * factor);

    /// <summary>Ratio, dimensionless.</summary>
    /// <exception cref="DivideByZeroException">The divisor is zero, or so small that the ratio is no number.</exception>
    public static double operator /(FlowRate left, FlowRate right) => Require.Ratio(left.MillilitersPerMinute, right.MillilitersPerMinute, left, right);

    /// <summary>Order by size.</summary>
    public static bool operator <(FlowRate left, FlowRate right) => left.MillilitersPerMinute < right.MillilitersPerMinute;

    /// <summary>Order by size.</summary>
    public static bool operator >(FlowRate left, FlowRate right) => left.MillilitersPerMinute > right.MillilitersPerMinute;

    /// <summary>Order by size.</summary>
    public static bool operator <=(FlowRate left, FlowRate right) => left.MillilitersPerMinute <= right.MillilitersPerMinute;

    /// <summary>Order by size.</summary>
    public static bool operator >=(FlowRate left, FlowRate right) => left.MillilitersPerMinute >= right.MillilitersPerMinute;

    /// <inheritdoc/>
    public int CompareTo(FlowRate other) => MillilitersPerMinute.CompareTo(other.MillilitersPerMinute);

    /// <summary>The value with its unit, invariant culture.</summary>
    public override string ToString() => MillilitersPerMinute.ToString("0.00", CultureInfo.InvariantCulture) + " mL/min";
}
