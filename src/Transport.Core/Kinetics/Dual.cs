using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Transport;

/// <summary>A number with its derivatives by up to eight parameters: what a fit integrates to get exact sensitivities.</summary>
internal readonly struct Dual : ILane<Dual>
{
    /// <summary>How many parameters one integration can differentiate by.</summary>
    public const int Width = 8;

    public readonly double Value;
    public readonly Vector512<double> Slopes;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Dual(double value, Vector512<double> slopes)
    {
        Value = value;
        Slopes = slopes;
    }

    /// <summary>A parameter: its derivative by itself is 1.</summary>
    public static Dual Parameter(double value, int index) => new(value, Vector512<double>.Zero.WithElement(index, 1.0));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual Of(double value) => new(value, Vector512<double>.Zero);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double Largest(Dual x) => x.Value;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool AllPositive(Dual x) => x.Value > 0;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool AnyAbove(Dual x, double limit) => x.Value > limit;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual WhereAbove(Dual x, double limit, Dual then, Dual otherwise) => x.Value > limit ? then : otherwise;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual operator +(Dual left, Dual right) => new(left.Value + right.Value, left.Slopes + right.Slopes);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual operator -(Dual left, Dual right) => new(left.Value - right.Value, left.Slopes - right.Slopes);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual operator *(Dual left, Dual right) =>
        new(left.Value * right.Value, Vector512.MultiplyAddEstimate(left.Slopes, Vector512.Create(right.Value), right.Slopes * left.Value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual operator *(double left, Dual right) => new(left * right.Value, right.Slopes * left);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual operator /(Dual left, Dual right)
    {
        var quotient = left.Value / right.Value;
        return new(quotient, (left.Slopes - right.Slopes * quotient) * (1 / right.Value));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual MultiplyAdd(Dual x, Dual y, Dual z) => new(
        double.MultiplyAddEstimate(x.Value, y.Value, z.Value), Vector512.MultiplyAddEstimate(x.Slopes, Vector512.Create(y.Value), Vector512.MultiplyAddEstimate(y.Slopes, Vector512.Create(x.Value), z.Slopes)));

    public static Dual Sqrt(Dual x)
    {
        var value = Math.Sqrt(x.Value);
        return new(value, x.Slopes * (0.5 / value));
    }

    public static Dual Exp(Dual x)
    {
        var value = Math.Exp(x.Value);
        return new(value, x.Slopes * value);
    }

    public static Dual Log(Dual x) => new(Math.Log(x.Value), x.Slopes * (1 / x.Value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual PositivePart(Dual x) => x.Value > 0 ? x : Of(0);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual AtMost(Dual x, Dual limit) => x.Value < limit.Value ? x : limit;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual Abs(Dual x) => x.Value < 0 ? -1.0 * x : x;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual Max(Dual left, Dual right) => left.Value > right.Value ? left : right;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Dual DiffusionGains(Dual ps1, Dual y1, Dual ps2, Dual y2)
    {
        // The value as one patient's, to the bit.
        var sum = Sum(ps1.Value, y1.Value, ps2.Value, y2.Value);
        var (gain, slope) = DiffusionGain.WithSlope(new Lanes4(Vector256.Create(y1.Value, y2.Value, 0, 0)));
        var steeper = slope * new Lanes4(Vector256.Create(ps1.Value, ps2.Value, 0, 0));
        return new(sum.Value, Add(Add(ps1.Slopes * gain[0], y1, steeper[0]), y2, steeper[1]) + ps2.Slopes * gain[1]);
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static Real Sum(double ps1, double y1, double ps2, double y2) =>
        DiffusionGain.Sum(Real.Of(ps1), Real.Of(y1), Real.Of(ps2), Real.Of(y2));

    /// <summary>A sum and the slopes of an argument, times the partial derivative by it.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector512<double> Add(Vector512<double> sum, in Dual argument, double partial) =>
        Vector512.MultiplyAddEstimate(argument.Slopes, Vector512.Create(partial), sum);
}
