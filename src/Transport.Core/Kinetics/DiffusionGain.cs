using System.Runtime.CompilerServices;

namespace Transport;

/// <summary>
/// y coth y at z = y², y = Pe/2: by how much a flow through the pore, in either direction, steepens the gradient that drives diffusion.
/// 1 without flow, |y| where the flow carries all.
/// </summary>
/// <remarks>
/// Each by the form that needs least: up to z = 3/16, where small solutes are in small pores, a polynomial of degree 6; up to 1, where
/// they are in large ones, a polynomial of degree 9; up to 16 a quotient of polynomials of degrees 6 and 5. All three are 1 at zero and have the least relative error, at most 3e-16
/// (computed with 50 digits by Remez' exchange). Proteins go beyond: there a quarter of y is doubled twice, 2x coth 2x = x coth x + x² / (x coth x); from
/// y = 16 on the gain is |y| to 3e-14. No exponential anywhere, arithmetic alone, and numerator and denominator apart to the end: so one division
/// serves both pore classes.
/// </remarks>
internal static class DiffusionGain
{
    /// <summary>Where the polynomial for small solutes in small pores ends.</summary>
    public const double ShortPolynomialUpTo = 0.1875;

    /// <summary>Where the polynomial ends and the quotient begins.</summary>
    public const double PolynomialUpTo = 1;

    /// <summary>Where the quotient ends and doubling begins.</summary>
    public const double QuotientUpTo = 16;

    /// <summary>Where |y| begins.</summary>
    public const double DoublingUpTo = 256;

    /// <summary>ps_S y_S coth y_S + ps_L y_L coth y_L, of small and large pores.</summary>
    /// <remarks>
    /// Four in a vector may be solutes of one patient, as different as they are. They go one way together, so that a patient's numbers are the same to the bit
    /// whether his solutes are taken four at a time or, with derivatives, one by one.
    /// </remarks>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T Sum<T>(T ps_S, T y_S, T ps_L, T y_L)
        where T : struct, ILane<T>
    {
        var (z_S, z_L) = (y_S * y_S, y_L * y_L);
        return T.AnyAbove(z_S + z_L, PolynomialUpTo)
            ? OfQuotients(ps_S, y_S, z_S, ps_L, y_L, z_L)
            : T.MultiplyAdd(ps_S, Polynomial(z_S), ps_L * Polynomial(z_L));
    }

    /// <summary>The same of one solute in several patients, which mostly needs less in small pores.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T SumOfPatients<T>(T ps_S, T y_S, T ps_L, T y_L)
        where T : struct, ILane<T>
    {
        var (z_S, z_L) = (y_S * y_S, y_L * y_L);
        if (T.AnyAbove(z_S, ShortPolynomialUpTo))
        {
            return OfQuotients(ps_S, y_S, z_S, ps_L, y_L, z_L);
        }

        if (T.AnyAbove(z_L, PolynomialUpTo))
        {
            var (above, below) = Quotient(y_L, z_L);
            return T.MultiplyAdd(ps_S, ShortPolynomial(z_S), ps_L * above / below);
        }

        return T.MultiplyAdd(ps_S, ShortPolynomial(z_S), ps_L * Polynomial(z_L));
    }

    /// <summary>y coth y and its derivative by y.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static (T Value, T Slope) WithSlope<T>(T y)
        where T : struct, ILane<T>
    {
        var z = y * y;
        return T.AnyAbove(z, PolynomialUpTo) ? QuotientWithSlope(y, z) : (Polynomial(z), 2.0 * y * PolynomialSlope(z));
    }

    // (y coth y)′ = coth y − y/sinh² y = (v + y² − v²) / y for the value v. For small y, where that cancels, by the polynomial.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private static (T Value, T Slope) QuotientWithSlope<T>(T y, T z)
        where T : struct, ILane<T>
    {
        var (above, below) = Quotient(y, z);
        var value = above / below;
        return (value, T.WhereAbove(z, PolynomialUpTo, T.MultiplyAdd(y - value, y + value, value) / y, 2.0 * y * PolynomialSlope(z)));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T OfQuotients<T>(T ps_S, T y_S, T z_S, T ps_L, T y_L, T z_L)
        where T : struct, ILane<T>
    {
        var (above_S, below_S) = Quotient(y_S, z_S);
        var (above_L, below_L) = Quotient(y_L, z_L);
        return T.MultiplyAdd(ps_S * above_S, below_L, ps_L * above_L * below_S) / (below_S * below_L);
    }

    // In both, even and odd powers apart, so that neither waits for the other.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T ShortPolynomial<T>(T z)
        where T : struct, ILane<T>
    {
        var square = z * z;
        var even = T.MultiplyAdd(T.Of(-2.0282119269615334e-6), square, T.Of(-2.1163602443564650e-4));
        var odd = T.MultiplyAdd(T.Of(2.1343854408305685e-5), square, T.Of(2.1164018547831457e-3));
        even = T.MultiplyAdd(even, square, T.Of(-2.2222222214705486e-2));
        odd = T.MultiplyAdd(odd, square, T.Of(0.33333333333326148));
        even = T.MultiplyAdd(even, square, T.Of(1));
        return T.MultiplyAdd(odd, z, even);
    }

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
    private static (T Above, T Below) Quotient<T>(T y, T z)
        where T : struct, ILane<T>
    {
        if (!T.AnyAbove(z, QuotientUpTo))
        {
            return (Numerator(z), Denominator(z));
        }

        if (T.AllPositive(z - T.Of(DoublingUpTo)))
        {
            return (T.Abs(y), T.Of(1));
        }

        // Of those who need no doubling z itself, of the others that of a quarter of y: one quotient for all.
        var own = T.WhereAbove(z, QuotientUpTo, 0.0625 * z, z);
        var (above, below) = (Numerator(own), Denominator(own));
        var (twiceAbove, twiceBelow) = (T.MultiplyAdd(own * below, below, above * above), above * below);
        var (farAbove, farBelow) = (T.MultiplyAdd(0.25 * z * twiceBelow, twiceBelow, twiceAbove * twiceAbove), twiceAbove * twiceBelow);
        farAbove = T.WhereAbove(z, DoublingUpTo, T.Abs(y), farAbove);
        farBelow = T.WhereAbove(z, DoublingUpTo, T.Of(1), farBelow);
        return (T.WhereAbove(z, QuotientUpTo, farAbove, above), T.WhereAbove(z, QuotientUpTo, farBelow, below));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T Numerator<T>(T z)
        where T : struct, ILane<T>
    {
        var sum = T.MultiplyAdd(T.Of(3.5393433058516566e-12), z, T.Of(1.0173235222058794e-8));
        sum = T.MultiplyAdd(sum, z, T.Of(4.4301164521663184e-6));
        sum = T.MultiplyAdd(sum, z, T.Of(6.2000205469112438e-4));
        sum = T.MultiplyAdd(sum, z, T.Of(3.1218572526927276e-2));
        sum = T.MultiplyAdd(sum, z, T.Of(0.47860503114949149));
        return T.MultiplyAdd(sum, z, T.Of(1));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T Denominator<T>(T z)
        where T : struct, ILane<T>
    {
        var sum = T.MultiplyAdd(T.Of(2.6987919001982733e-10), z, T.Of(2.4976641702792876e-7));
        sum = T.MultiplyAdd(sum, z, T.Of(5.9561397382450575e-5));
        sum = T.MultiplyAdd(sum, z, T.Of(5.0168954771040363e-3));
        sum = T.MultiplyAdd(sum, z, T.Of(0.14527169781615640));
        return T.MultiplyAdd(sum, z, T.Of(1));
    }

    // Of the polynomial of degree 9.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static T PolynomialSlope<T>(T z)
        where T : struct, ILane<T>
    {
        var square = z * z;
        var even = T.MultiplyAdd(T.Of(9 * 1.3914574891014527e-9), square, T.Of(7 * 2.1746887291422269e-7));
        var odd = T.MultiplyAdd(T.Of(8 * -2.0584405492657279e-8), square, T.Of(6 * -2.1631975701753816e-6));
        even = T.MultiplyAdd(even, square, T.Of(5 * 2.1377294164786737e-5));
        odd = T.MultiplyAdd(odd, square, T.Of(4 * -2.1164008357884700e-4));
        even = T.MultiplyAdd(even, square, T.Of(3 * 2.1164020980188831e-3));
        odd = T.MultiplyAdd(odd, square, T.Of(2 * -2.2222222220930100e-2));
        even = T.MultiplyAdd(even, square, T.Of(0.33333333333330216));
        return T.MultiplyAdd(odd, z, even);
    }
}
