using System.Runtime.Intrinsics;

namespace Transport;

/// <summary>A number with its derivatives by up to eight parameters: what a fit integrates to get exact sensitivities.</summary>
internal readonly struct Dual : ILane<Dual>
{
    /// <summary>How many parameters one integration can differentiate by.</summary>
    public const int Width = 8;

    public readonly double Value;
    public readonly Vector512<double> Slopes;

    public Dual(double value, Vector512<double> slopes)
    {
        Value = value;
        Slopes = slopes;
    }

    /// <summary>A parameter: its derivative by itself is 1.</summary>
    public static Dual Parameter(double value, int index) => new(value, Vector512<double>.Zero.WithElement(index, 1.0));

    public static Dual Of(double value) => new(value, Vector512<double>.Zero);

    public static double Largest(Dual x) => x.Value;

    public static bool AllPositive(Dual x) => x.Value > 0;

    public static bool AnyAbove(Dual x, double limit) => x.Value > limit;

    public static Dual WhereAbove(Dual x, double limit, Dual then, Dual otherwise) => x.Value > limit ? then : otherwise;

    public static Dual operator +(Dual left, Dual right) => new(left.Value + right.Value, left.Slopes + right.Slopes);

    public static Dual operator -(Dual left, Dual right) => new(left.Value - right.Value, left.Slopes - right.Slopes);

    public static Dual operator *(Dual left, Dual right) =>
        new(left.Value * right.Value, left.Slopes * right.Value + right.Slopes * left.Value);

    public static Dual operator *(double left, Dual right) => new(left * right.Value, right.Slopes * left);

    public static Dual operator /(Dual left, Dual right)
    {
        var quotient = left.Value / right.Value;
        return new(quotient, (left.Slopes - right.Slopes * quotient) * (1 / right.Value));
    }

    public static Dual MultiplyAdd(Dual x, Dual y, Dual z) => new(
        double.MultiplyAddEstimate(x.Value, y.Value, z.Value), x.Slopes * y.Value + y.Slopes * x.Value + z.Slopes);

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

    public static Dual PositivePart(Dual x) => x.Value > 0 ? x : Of(0);

    public static Dual AtMost(Dual x, Dual limit) => x.Value < limit.Value ? x : limit;

    public static Dual Abs(Dual x) => x.Value < 0 ? -1.0 * x : x;

    public static Dual Max(Dual left, Dual right) => left.Value > right.Value ? left : right;

    public static Dual DiffusionGains(Dual ps1, Dual y1, Dual ps2, Dual y2)
    {
        // The value as one patient's, to the bit.
        var sum = DiffusionGain.Sum(Real.Of(ps1.Value), Real.Of(y1.Value), Real.Of(ps2.Value), Real.Of(y2.Value));
        return new(sum.Value, By(ps1, y1) + By(ps2, y2));

        static Vector512<double> By(Dual ps, Dual y)
        {
            var z = y.Value * y.Value;
            var gain = DiffusionGain.Of(z);
            return ps.Slopes * gain + y.Slopes * (2 * y.Value * ps.Value * DiffusionGain.Slope(z, gain));
        }
    }
}
