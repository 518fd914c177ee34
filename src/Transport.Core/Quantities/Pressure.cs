using System.Globalization;

namespace Transport;

/// <summary>A pressure or pressure difference.</summary>
/// <remarks>Canonical unit mmHg. The default value is zero and valid. 1 cmH2O = 0.7356 mmHg at 37 °C.</remarks>
public readonly record struct Pressure : IComparable<Pressure>
{
    private Pressure(double millimetersOfMercury) => MillimetersOfMercury = millimetersOfMercury;

    /// <summary>The value in mmHg.</summary>
    public double MillimetersOfMercury { get; }

    /// <summary>The value in cmH2O.</summary>
    public double CentimetersOfWater => MillimetersOfMercury / 0.7356;

    /// <summary>From a value in mmHg.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static Pressure FromMillimetersOfMercury(double value) => new(Require.Finite(value, "mmHg"));

    /// <summary>From a value in cmH2O.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static Pressure FromCentimetersOfWater(double value) => new(Require.Finite(value, "cmH2O") * 0.7356);

    /// <summary>Sum.</summary>
    public static Pressure operator +(Pressure left, Pressure right) => new(left.MillimetersOfMercury + right.MillimetersOfMercury);

    /// <summary>Difference.</summary>
    public static Pressure operator -(Pressure left, Pressure right) => new(left.MillimetersOfMercury - right.MillimetersOfMercury);

    /// <summary>Multiple.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The factor is NaN or infinite.</exception>
    public static Pressure operator *(Pressure left, double factor) => FromMillimetersOfMercury(left.MillimetersOfMercury * factor);

    /// <summary>Ratio, dimensionless.</summary>
    /// <exception cref="DivideByZeroException">The divisor is zero, or so small that the ratio is no number.</exception>
    public static double operator /(Pressure left, Pressure right) => Require.Ratio(left.MillimetersOfMercury, right.MillimetersOfMercury, left, right);

    /// <summary>Order by size.</summary>
    public static bool operator <(Pressure left, Pressure right) => left.MillimetersOfMercury < right.MillimetersOfMercury;

    /// <summary>Order by size.</summary>
    public static bool operator >(Pressure left, Pressure right) => left.MillimetersOfMercury > right.MillimetersOfMercury;

    /// <summary>Order by size.</summary>
    public static bool operator <=(Pressure left, Pressure right) => left.MillimetersOfMercury <= right.MillimetersOfMercury;

    /// <summary>Order by size.</summary>
    public static bool operator >=(Pressure left, Pressure right) => left.MillimetersOfMercury >= right.MillimetersOfMercury;

    /// <inheritdoc/>
    public int CompareTo(Pressure other) => MillimetersOfMercury.CompareTo(other.MillimetersOfMercury);

    /// <summary>The value with its unit, invariant culture.</summary>
    public override string ToString() => MillimetersOfMercury.ToString("0.0", CultureInfo.InvariantCulture) + " mmHg";
}
