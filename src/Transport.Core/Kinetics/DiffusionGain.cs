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
            return Numerator(z) / Denominator(z);
        }

        var y = Math.Sqrt(z);
        return y * (1 + 2 / (Math.Exp(2 * y) - 1));
    }

    /// <summary>The derivative by z, given the value.</summary>
    public static double Slope(double z, double value)
    {
        if (z <= FractionUpTo)
        {
            return (NumeratorSlope(z) - value * DenominatorSlope(z)) / Denominator(z);
        }

        return (value * (1 - value) + z) / (2 * z);
    }

    private static double Numerator(double z) => 654729075 + z * (310134825 + z * (18918900 + z * (315315 + z * (1485 + z))));

    private static double Denominator(double z) => 654729075 + z * (91891800 + z * (2837835 + z * (25740 + z * 55)));

    private static double NumeratorSlope(double z) => 310134825 + z * (2 * 18918900 + z * (3 * 315315 + z * (4 * 1485 + z * 5)));

    private static double DenominatorSlope(double z) => 91891800 + z * (2 * 2837835 + z * (3 * 25740 + z * (4 * 55)));
}
