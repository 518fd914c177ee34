using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Transport;

/// <summary>Four patients side by side in one vector; without 256-bit hardware the same results, more slowly.</summary>
internal readonly struct Lanes4 : ILane<Lanes4>
{
    /// <summary>How many patients.</summary>
    public const int Width = 4;

    public readonly Vector256<double> Values;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Lanes4(Vector256<double> values) => Values = values;

    /// <summary>The value of one patient.</summary>
    public double this[int lane] => Values.GetElement(lane);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes4 Of(double value) => new(Vector256.Create(value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double Largest(Lanes4 x)
    {
        var halves = Vector128.Max(x.Values.GetLower(), x.Values.GetUpper());
        return Math.Max(halves.ToScalar(), halves.GetElement(1));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes4 operator +(Lanes4 left, Lanes4 right) => new(left.Values + right.Values);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes4 operator -(Lanes4 left, Lanes4 right) => new(left.Values - right.Values);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes4 operator *(Lanes4 left, Lanes4 right) => new(left.Values * right.Values);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes4 operator *(double left, Lanes4 right) => new(right.Values * left);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes4 operator /(Lanes4 left, Lanes4 right) => new(left.Values / right.Values);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes4 MultiplyAdd(Lanes4 x, Lanes4 y, double constant) => new(Vector256.MultiplyAddEstimate(x.Values, y.Values, Vector256.Create(constant)));

    public static Lanes4 Exp(Lanes4 x) => new(Vector256.Exp(x.Values));

    public static Lanes4 Log(Lanes4 x) => new(Vector256.Log(x.Values));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes4 PositivePart(Lanes4 x) => new(Vector256.Max(x.Values, Vector256<double>.Zero));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes4 AtMost(Lanes4 x, double limit) => new(Vector256.Min(x.Values, Vector256.Create(limit)));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes4 Max(Lanes4 left, Lanes4 right) => new(Vector256.Max(left.Values, right.Values));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes4 Abs(Lanes4 x) => new(Vector256.Abs(x.Values));

    // Lanes beyond the fraction's reach are rare, and then all four are done one by one.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes4 DiffusionGain(Lanes4 z) =>
        Vector256.GreaterThanAny(z.Values, Vector256.Create(Transport.DiffusionGain.FractionUpTo)) ? Beyond(z.Values) : Transport.DiffusionGain.Fraction(z);

    private static Lanes4 Beyond(Vector256<double> z) => new(Vector256.Create(
        Transport.DiffusionGain.Of(z.GetElement(0)),
        Transport.DiffusionGain.Of(z.GetElement(1)),
        Transport.DiffusionGain.Of(z.GetElement(2)),
        Transport.DiffusionGain.Of(z.GetElement(3))));
}
