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
        // Comparisons that a NaN fails would lose it; the integrator has to see it.
        var halves = Vector128.Max(x.Values.GetLower(), x.Values.GetUpper());
        return Math.Max(halves.ToScalar(), halves.GetElement(1));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool AllPositive(Lanes4 x) => Vector256.GreaterThanAll(x.Values, Vector256<double>.Zero);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool AnyAbove(Lanes4 x, double limit) => Vector256.GreaterThanAny(x.Values, Vector256.Create(limit));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes4 WhereAbove(Lanes4 x, double limit, Lanes4 then, Lanes4 otherwise) =>
        new(Vector256.ConditionalSelect(Vector256.GreaterThan(x.Values, Vector256.Create(limit)), then.Values, otherwise.Values));

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
    public static Lanes4 MultiplyAdd(Lanes4 x, Lanes4 y, Lanes4 z) => new(Vector256.MultiplyAddEstimate(x.Values, y.Values, z.Values));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes4 Sqrt(Lanes4 x) => new(Vector256.Sqrt(x.Values));

    public static Lanes4 Exp(Lanes4 x) => new(Vector256.Exp(x.Values));

    public static Lanes4 Log(Lanes4 x) => new(Vector256.Log(x.Values));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes4 PositivePart(Lanes4 x) => new(Vector256.Max(x.Values, Vector256<double>.Zero));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes4 AtMost(Lanes4 x, Lanes4 limit) => new(Vector256.Min(x.Values, limit.Values));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes4 Max(Lanes4 left, Lanes4 right) => new(Vector256.Max(left.Values, right.Values));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes4 Abs(Lanes4 x) => new(Vector256.Abs(x.Values));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes4 DiffusionGains(Lanes4 ps1, Lanes4 y1, Lanes4 ps2, Lanes4 y2) => DiffusionGain.Sum(ps1, y1, ps2, y2);
}
