using System.Runtime.CompilerServices;

namespace Transport;

/// <summary>
/// y coth y at z = y², y = Pe/2: by how much a flow through the pore, in either direction, steepens the gradient that drives diffusion.
/// 1 without flow, |y| where the flow carries all.
/// </summary>
/// <remarks>
/// Up to z = 1, where small solutes are, by the polynomial of degree 9 that is 1 at zero and has the least relative error, 3e-16 (computed with 40
/// digits by Remez' exchange). Up to z = 4 by nine levels of the continued fraction y coth y = 1 + z/(3 + z/(5 + z/(7 + …))) (Lambert), as a quotient of two polynomials, relative
/// error at most 2e-14. Proteins in large pores go beyond 4: there an eighth of y is doubled three
/// times, 2x coth 2x = x coth x + x² / (x coth x); from y = 16 on the gain is |y| to 3e-14. No exponential anywhere, arithmetic alone, and numerator and
/// denominator apart to the end: so one division serves both pore classes.
/// </remarks>
internal static class DiffusionGain
{
    /// <summary>Where the polynomial ends and the fraction begins.</summary>
    public const double PolynomialUpTo = 1;

    /// <summary>Where the fraction ends and doubling begins.</summary>
    public const double FractionUpTo = 4;

    /// <summary>Where |y| begins.</summary>
    public const double DoublingUpTo = 256;

    /// <summary>ps₁ y₁ coth y₁ + ps₂ y₂ coth y₂.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T Sum<T>(T ps1, T y1, T ps2, T y2)
        where T : struct, ILane<T>
    {
        var (z1, z2) = (y1 * y1, y2 * y2);
        if (!T.AnyAbove(z1 + z2, PolynomialUpTo))
        {
            return T.MultiplyAdd(ps1, Polynomial(z1), ps2 * Polynomial(z2));
        }

        var (above1, below1) = Quotient(y1);
        var (above2, below2) = Quotient(y2);
        return T.MultiplyAdd(ps1 * above1, below2, (ps2 * above2) * below1) / (below1 * below2);
    }

    /// <summary>y coth y by z = y².</summary>
    public static double Of(double z)
    {
        if (z <= PolynomialUpTo)
        {
            return Polynomial(Real.Of(z)).Value;
        }

        var (above, below) = Quotient(Real.Of(Math.Sqrt(z)));
        return (above / below).Value;
    }

    // Even and odd powers apart, so that neither waits for the other.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T Polynomial<T>(T z)
        where T : struct, ILane<T>
    {
        var square = z * z;
        var even = T.MultiplyAdd(T.Of(-2.0584405492657279e-8), square, T.Of(-2.1631975701753816e-6));
        var odd = T.MultiplyAdd(T.Of(1.3914574891014527e-9), square, T.Of(2.1746887291422269e-7));
        even = T.MultiplyAdd(even, square, T.Of(-2.1164008357884700e-4));
        odd = T.MultiplyAdd(odd, square, T.Of(2.1377294164786737e-5));
        even = T.MultiplyAdd(even, square, T.Of(-2.2222222220930100e-2));
        odd = T.MultiplyAdd(odd, square, T.Of(2.1164020980188831e-3));
        even = T.MultiplyAdd(even, square, T.Of(1));
        odd = T.MultiplyAdd(odd, square, T.Of(0.33333333333330216));
        return T.MultiplyAdd(odd, z, even);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static (T Above, T Below) Quotient<T>(T y)
        where T : struct, ILane<T>
    {
        var z = y * y;
        var (above, below) = (Numerator(z), Denominator(z));
        if (T.AnyAbove(z, FractionUpTo))
        {
            var (farAbove, farBelow) = Beyond(y, z);
            above = T.WhereAbove(z, FractionUpTo, farAbove, above);
            below = T.WhereAbove(z, FractionUpTo, farBelow, below);
        }

        return (above, below);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static (T Above, T Below) Beyond<T>(T y, T z)
        where T : struct, ILane<T>
    {
        // The largest number on the way is about 1e75.
        var square = (1.0 / 64) * z;
        var (above, below) = (Numerator(square), Denominator(square));
        (above, below) = (T.MultiplyAdd(square * below, below, above * above), above * below);
        square = (1.0 / 16) * z;
        (above, below) = (T.MultiplyAdd(square * below, below, above * above), above * below);
        square = (1.0 / 4) * z;
        (above, below) = (T.MultiplyAdd(square * below, below, above * above), above * below);
        return (T.WhereAbove(z, DoublingUpTo, T.Abs(y), above), T.WhereAbove(z, DoublingUpTo, T.Of(1), below));
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
