using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Transport;

/// <summary>Eight patients side by side in one vector; without 512-bit hardware the same results, more slowly.</summary>
internal readonly struct Lanes8 : ILane<Lanes8>
{
    /// <summary>How many patients.</summary>
    public const int Width = 8;

    public readonly Vector512<double> Values;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Lanes8(Vector512<double> values) => Values = values;

    /// <summary>The value of one patient.</summary>
    public double this[int lane] => Values.GetElement(lane);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes8 Of(double value) => new(Vector512.Create(value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double Largest(Lanes8 x)
    {
        // Comparisons that a NaN fails would lose it; the integrator has to see it.
        var halves = Vector256.Max(x.Values.GetLower(), x.Values.GetUpper());
        return Lanes4.Largest(new(halves));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool AllPositive(Lanes8 x) => Vector512.GreaterThanAll(x.Values, Vector512<double>.Zero);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool AnyAbove(Lanes8 x, double limit) => Vector512.GreaterThanAny(x.Values, Vector512.Create(limit));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes8 WhereAbove(Lanes8 x, double limit, Lanes8 then, Lanes8 otherwise) =>
        new(Vector512.ConditionalSelect(Vector512.GreaterThan(x.Values, Vector512.Create(limit)), then.Values, otherwise.Values));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes8 operator +(Lanes8 left, Lanes8 right) => new(left.Values + right.Values);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes8 operator -(Lanes8 left, Lanes8 right) => new(left.Values - right.Values);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes8 operator *(Lanes8 left, Lanes8 right) => new(left.Values * right.Values);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes8 operator *(double left, Lanes8 right) => new(right.Values * left);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes8 operator /(Lanes8 left, Lanes8 right) => new(left.Values / right.Values);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes8 MultiplyAdd(Lanes8 x, Lanes8 y, Lanes8 z) => new(Vector512.MultiplyAddEstimate(x.Values, y.Values, z.Values));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes8 Sqrt(Lanes8 x) => new(Vector512.Sqrt(x.Values));

    public static Lanes8 Exp(Lanes8 x) => new(Vector512.Exp(x.Values));

    public static Lanes8 Log(Lanes8 x) => new(Vector512.Log(x.Values));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes8 PositivePart(Lanes8 x) => new(Vector512.Max(x.Values, Vector512<double>.Zero));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes8 AtMost(Lanes8 x, Lanes8 limit) => new(Vector512.Min(x.Values, limit.Values));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes8 Max(Lanes8 left, Lanes8 right) => new(Vector512.Max(left.Values, right.Values));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes8 Abs(Lanes8 x) => new(Vector512.Abs(x.Values));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes8 DiffusionGains(Lanes8 ps1, Lanes8 y1, Lanes8 ps2, Lanes8 y2) => DiffusionGain.SumOfPatients(ps1, y1, ps2, y2);
}
