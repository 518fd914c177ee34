using System.Runtime.CompilerServices;

namespace Transport;

/// <summary>One patient: a plain number.</summary>
internal readonly struct Real : ILane<Real>
{
    public readonly double Value;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Real(double value) => Value = value;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real Of(double value) => new(value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double Largest(Real x) => x.Value;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool AllPositive(Real x) => x.Value > 0;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool AnyAbove(Real x, double limit) => x.Value > limit;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real WhereAbove(Real x, double limit, Real then, Real otherwise) => x.Value > limit ? then : otherwise;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real operator +(Real left, Real right) => new(left.Value + right.Value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real operator -(Real left, Real right) => new(left.Value - right.Value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real operator *(Real left, Real right) => new(left.Value * right.Value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real operator *(double left, Real right) => new(left * right.Value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real operator /(Real left, Real right) => new(left.Value / right.Value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real MultiplyAdd(Real x, Real y, Real z) => new(double.MultiplyAddEstimate(x.Value, y.Value, z.Value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real Sqrt(Real x) => new(Math.Sqrt(x.Value));

    public static Real Exp(Real x) => new(Math.Exp(x.Value));

    public static Real Log(Real x) => new(Math.Log(x.Value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real PositivePart(Real x) => new(x.Value > 0 ? x.Value : 0);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real AtMost(Real x, Real limit) => new(x.Value < limit.Value ? x.Value : limit.Value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real Abs(Real x) => new(Math.Abs(x.Value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real Max(Real left, Real right) => new(left.Value > right.Value ? left.Value : right.Value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Real DiffusionGains(Real ps1, Real y1, Real ps2, Real y2) => DiffusionGain.Sum(ps1, y1, ps2, y2);
}
