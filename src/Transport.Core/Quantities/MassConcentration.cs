using System.Globalization;

namespace Transport;

/// <summary>A mass concentration: of a protein or a volume marker, whose molar mass is no single number.</summary>
/// <remarks>Canonical unit g/L. The default value is zero and valid.</remarks>
public readonly record struct MassConcentration : IComparable<MassConcentration>
{
    private MassConcentration(double gramsPerLiter) => GramsPerLiter = gramsPerLiter;

    /// <summary>The value in g/L.</summary>
    public double GramsPerLiter { get; }

    /// <summary>The value in mg/dL.</summary>
    public double MilligramsPerDeciliter => GramsPerLiter * 100.0;

    /// <summary>From a value in g/L.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static MassConcentration FromGramsPerLiter(double value) => new(Require.Finite(value, "g/L"));

    /// <summary>From a value in mg/dL.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static MassConcentration FromMilligramsPerDeciliter(double value) => new(Require.Finite(value, "mg/dL") / 100.0);

    /// <summary>Sum.</summary>
    public static MassConcentration operator +(MassConcentration left, MassConcentration right) => new(left.GramsPerLiter + right.GramsPerLiter);

    /// <summary>Difference.</summary>
    public static MassConcentration operator -(MassConcentration left, MassConcentration right) => new(left.GramsPerLiter - right.GramsPerLiter);

    /// <summary>Multiple.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The factor is NaN or infinite.</exception>
    public static MassConcentration operator *(MassConcentration left, double factor) => FromGramsPerLiter(left.GramsPerLiter * factor);

    /// <summary>Ratio, dimensionless.</summary>
    /// <exception cref="DivideByZeroException">The divisor is zero, or so small that the ratio is no number.</exception>
    public static double operator /(MassConcentration left, MassConcentration right) => Require.Ratio(left.GramsPerLiter, right.GramsPerLiter, left, right);

    /// <summary>Order by size.</summary>
    public static bool operator <(MassConcentration left, MassConcentration right) => left.GramsPerLiter < right.GramsPerLiter;

    /// <summary>Order by size.</summary>
    public static bool operator >(MassConcentration left, MassConcentration right) => left.GramsPerLiter > right.GramsPerLiter;

    /// <summary>Order by size.</summary>
    public static bool operator <=(MassConcentration left, MassConcentration right) => left.GramsPerLiter <= right.GramsPerLiter;

    /// <summary>Order by size.</summary>
    public static bool operator >=(MassConcentration left, MassConcentration right) => left.GramsPerLiter >= right.GramsPerLiter;

    /// <inheritdoc/>
    public int CompareTo(MassConcentration other) => GramsPerLiter.CompareTo(other.GramsPerLiter);

    /// <summary>The value in g/L, invariant culture.</summary>
    public override string ToString() => GramsPerLiter.ToString("0.0###", CultureInfo.InvariantCulture) + " g/L";
}
