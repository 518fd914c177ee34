using System.Runtime.CompilerServices;

namespace Transport;

/// <summary>
/// y coth y at z = y², y = Pe/2: by how much a flow through the pore, in either direction, steepens the gradient that drives diffusion.
/// 1 without flow, |y| where the flow carries all.
/// </summary>
/// <remarks>
/// Up to z = 4 by nine levels of the continued fraction y coth y = 1 + z/(3 + z/(5 + z/(7 + …))) (Lambert), as a quotient of two polynomials: no
/// exponential, no branch, relative error at most 2e-14. Small solutes in small pores have z below 0.3; only proteins in large pores go
/// beyond 4, where |y| (1 + 2/(e^2|y| − 1)) takes over.
/// </remarks>
internal static class DiffusionGain
{
    /// <summary>Where the two forms meet.</summary>
    public const double FractionUpTo = 4;

    public static double Of(double z)
    {
        if (z <= FractionUpTo)
        {
            return Fraction(Real.Of(z)).Value;
        }

        var y = Math.Sqrt(z);
        return y * (1 + 2 / (Math.Exp(2 * y) - 1));
    }

    /// <summary>The fraction alone, over a lane.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T Fraction<T>(T z)
        where T : struct, ILane<T> => Numerator(z) / Denominator(z);

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
        sum = T.MultiplyAdd(sum, z, 315315);
        sum = T.MultiplyAdd(sum, z, 18918900);
        sum = T.MultiplyAdd(sum, z, 310134825);
        return T.MultiplyAdd(sum, z, 654729075);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T Denominator<T>(T z)
        where T : struct, ILane<T>
    {
        var sum = T.MultiplyAdd(T.Of(55), z, 25740);
        sum = T.MultiplyAdd(sum, z, 2837835);
        sum = T.MultiplyAdd(sum, z, 91891800);
        return T.MultiplyAdd(sum, z, 654729075);
    }

    private static double NumeratorSlope(double z) => 310134825 + z * (2 * 18918900 + z * (3 * 315315 + z * (4 * 1485 + z * 5)));

    private static double DenominatorSlope(double z) => 91891800 + z * (2 * 2837835 + z * (3 * 25740 + z * (4 * 55)));
}
