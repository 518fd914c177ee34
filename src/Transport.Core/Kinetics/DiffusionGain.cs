using System.Runtime.CompilerServices;

namespace Transport;

/// <summary>
/// y coth y at z = y², y = Pe/2: by how much a flow through the pore, in either direction, steepens the gradient that drives diffusion.
/// 1 without flow, |y| where the flow carries all.
/// </summary>
/// <remarks>
/// Up to z = 4 by nine levels of the continued fraction y coth y = 1 + z/(3 + z/(5 + z/(7 + …))) (Lambert), as a quotient of two polynomials, relative
/// error at most 2e-14. Small solutes in small pores have z below 0.3. Proteins in large pores go beyond 4: there an eighth of y is doubled three
/// times, 2x coth 2x = x coth x + x² / (x coth x); from y = 16 on the gain is |y| to 3e-14. No exponential anywhere, and arithmetic alone.
/// </remarks>
internal static class DiffusionGain
{
    /// <summary>Where the fraction ends and doubling begins.</summary>
    public const double FractionUpTo = 4;

    /// <summary>Where |y| begins.</summary>
    public const double DoublingUpTo = 256;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T Of<T>(T z)
        where T : struct, ILane<T>
    {
        var near = Fraction(z);
        return T.AnyAbove(z, FractionUpTo) ? T.WhereAbove(z, FractionUpTo, Beyond(z), near) : near;
    }

    public static double Of(double z) => Of(Real.Of(z)).Value;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T Fraction<T>(T z)
        where T : struct, ILane<T> => Numerator(z) / Denominator(z);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T Beyond<T>(T z)
        where T : struct, ILane<T>
    {
        var square = (1.0 / 64) * z;
        var gain = Fraction(square);
        gain += square / gain;
        square = (1.0 / 16) * z;
        gain += square / gain;
        square = (1.0 / 4) * z;
        gain += square / gain;
        return T.WhereAbove(z, DoublingUpTo, T.Sqrt(z), gain);
    }

    /// <summary>The derivative by z, given the value.</summary>
    public static double Slope(double z, double value)
    {
        if (z <= FractionUpTo)
        {
            return (NumeratorSlope(z) - value * DenominatorSlope(z)) / Denominator(Real.Of(z)).Value;
        }

        return (value * (1 - value) + z) / (2 * z);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T Numerator<T>(T z)
        where T : struct, ILane<T>
    {
        var sum = z + T.Of(1485);
        sum = T.MultiplyAdd(sum, z, T.Of(315315));
        sum = T.MultiplyAdd(sum, z, T.Of(18918900));
        sum = T.MultiplyAdd(sum, z, T.Of(310134825));
        return T.MultiplyAdd(sum, z, T.Of(654729075));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T Denominator<T>(T z)
        where T : struct, ILane<T>
    {
        var sum = T.MultiplyAdd(T.Of(55), z, T.Of(25740));
        sum = T.MultiplyAdd(sum, z, T.Of(2837835));
        sum = T.MultiplyAdd(sum, z, T.Of(91891800));
        return T.MultiplyAdd(sum, z, T.Of(654729075));
    }

    private static double NumeratorSlope(double z) => 310134825 + z * (2 * 18918900 + z * (3 * 315315 + z * (4 * 1485 + z * 5)));

    private static double DenominatorSlope(double z) => 91891800 + z * (2 * 2837835 + z * (3 * 25740 + z * (4 * 55)));
}
