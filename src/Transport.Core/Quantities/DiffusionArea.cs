using System.Globalization;

namespace Transport;

/// <summary>Total unrestricted pore area over unit diffusion distance, A0/Δx (written cm²/cm in some papers).</summary>
/// <remarks>Canonical unit cm. The default value is zero and valid.</remarks>
public readonly record struct DiffusionArea : IComparable<DiffusionArea>
{
    private DiffusionArea(double centimeters) => Centimeters = centimeters;

    /// <summary>The value in cm.</summary>
    public double Centimeters { get; }

    /// <summary>From a value in cm.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static DiffusionArea FromCentimeters(double value) => new(Require.Finite(value, "cm"));

    /// <summary>Sum.</summary>
    public static DiffusionArea operator +(DiffusionArea left, DiffusionArea right) => new(left.Centimeters + right.Centimeters);

    /// <summary>Difference.</summary>
    public static DiffusionArea operator -(DiffusionArea left, DiffusionArea right) => new(left.Centimeters - right.Centimeters);

    /// <summary>Multiple.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The factor is NaN or infinite.</exception>
    public static DiffusionArea operator *(DiffusionArea left, double factor) => FromCentimeters(left.Centimeters * factor);

    /// <summary>Ratio, dimensionless.</summary>
    /// <exception cref="DivideByZeroException">The divisor is zero, or so small that the ratio is no number.</exception>
    public static double operator /(DiffusionArea left, DiffusionArea right) => Require.Ratio(left.Centimeters, right.Centimeters, left, right);

    /// <summary>Order by size.</summary>
    public static bool operator <(DiffusionArea left, DiffusionArea right) => left.Centimeters < right.Centimeters;

    /// <summary>Order by size.</summary>
    public static bool operator >(DiffusionArea left, DiffusionArea right) => left.Centimeters > right.Centimeters;

    /// <summary>Order by size.</summary>
    public static bool operator <=(DiffusionArea left, DiffusionArea right) => left.Centimeters <= right.Centimeters;

    /// <summary>Order by size.</summary>
    public static bool operator >=(DiffusionArea left, DiffusionArea right) => left.Centimeters >= right.Centimeters;

    /// <inheritdoc/>
    public int CompareTo(DiffusionArea other) => Centimeters.CompareTo(other.Centimeters);

    /// <summary>The value with its unit, invariant culture.</summary>
    public override string ToString() => Centimeters.ToString("0", CultureInfo.InvariantCulture) + " cm";
}
