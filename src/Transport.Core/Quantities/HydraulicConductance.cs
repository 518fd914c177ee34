using System.Globalization;

namespace Transport;

/// <summary>Volume flow per pressure: an ultrafiltration coefficient LpS, or an osmotic conductance.</summary>
/// <remarks>Canonical unit mL/min/mmHg. The default value is zero and valid.</remarks>
public readonly record struct HydraulicConductance : IComparable<HydraulicConductance>
{
    private HydraulicConductance(double millilitersPerMinutePerMillimeterOfMercury) => MillilitersPerMinutePerMillimeterOfMercury = millilitersPerMinutePerMillimeterOfMercury;

    /// <summary>The value in mL/min/mmHg.</summary>
    public double MillilitersPerMinutePerMillimeterOfMercury { get; }

    /// <summary>The value in µL/min/mmHg.</summary>
    public double MicrolitersPerMinutePerMillimeterOfMercury => MillilitersPerMinutePerMillimeterOfMercury * 1000.0;

    /// <summary>From a value in mL/min/mmHg.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static HydraulicConductance FromMillilitersPerMinutePerMillimeterOfMercury(double value) => new(Require.Finite(value, "mL/min/mmHg"));

    /// <summary>From a value in µL/min/mmHg.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static HydraulicConductance FromMicrolitersPerMinutePerMillimeterOfMercury(double value) => new(Require.Finite(value, "µL/min/mmHg") / 1000.0);

    /// <summary>Sum.</summary>
    public static HydraulicConductance operator +(HydraulicConductance left, HydraulicConductance right) => new(left.MillilitersPerMinutePerMillimeterOfMercury + right.MillilitersPerMinutePerMillimeterOfMercury);

    /// <summary>Difference.</summary>
    public static HydraulicConductance operator -(HydraulicConductance left, HydraulicConductance right) => new(left.MillilitersPerMinutePerMillimeterOfMercury - right.MillilitersPerMinutePerMillimeterOfMercury);

    /// <summary>Multiple.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The factor is NaN or infinite.</exception>
    public static HydraulicConductance operator *(HydraulicConductance left, double factor) => FromMillilitersPerMinutePerMillimeterOfMercury(left.MillilitersPerMinutePerMillimeterOfMercury * factor);

    /// <summary>Ratio, dimensionless.</summary>
    /// <exception cref="DivideByZeroException">The divisor is zero, or so small that the ratio is no number.</exception>
    public static double operator /(HydraulicConductance left, HydraulicConductance right) => Require.Ratio(left.MillilitersPerMinutePerMillimeterOfMercury, right.MillilitersPerMinutePerMillimeterOfMercury, left, right);

    /// <summary>Order by size.</summary>
    public static bool operator <(HydraulicConductance left, HydraulicConductance right) => left.MillilitersPerMinutePerMillimeterOfMercury < right.MillilitersPerMinutePerMillimeterOfMercury;

    /// <summary>Order by size.</summary>
    public static bool operator >(HydraulicConductance left, HydraulicConductance right) => left.MillilitersPerMinutePerMillimeterOfMercury > right.MillilitersPerMinutePerMillimeterOfMercury;

    /// <summary>Order by size.</summary>
    public static bool operator <=(HydraulicConductance left, HydraulicConductance right) => left.MillilitersPerMinutePerMillimeterOfMercury <= right.MillilitersPerMinutePerMillimeterOfMercury;

    /// <summary>Order by size.</summary>
    public static bool operator >=(HydraulicConductance left, HydraulicConductance right) => left.MillilitersPerMinutePerMillimeterOfMercury >= right.MillilitersPerMinutePerMillimeterOfMercury;

    /// <inheritdoc/>
    public int CompareTo(HydraulicConductance other) => MillilitersPerMinutePerMillimeterOfMercury.CompareTo(other.MillilitersPerMinutePerMillimeterOfMercury);

    /// <summary>The value with its unit, invariant culture.</summary>
    public override string ToString() => MillilitersPerMinutePerMillimeterOfMercury.ToString("0.0000", CultureInfo.InvariantCulture) + " mL/min/mmHg";
}
