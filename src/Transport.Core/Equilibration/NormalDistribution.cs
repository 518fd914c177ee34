namespace Transport;

/// <summary>The standard normal distribution.</summary>
internal static class NormalDistribution
{
    /// <summary>The 95 % quantile: 90 % of the distribution lie no further from its middle.</summary>
    public const double Quantile95 = 1.6448536269514722;

    /// <summary>Φ(z), with an absolute error below 1e-15.</summary>
    /// <remarks>Φ(z) = ½ + φ(z)·(z + z³/3 + z⁵/(3·5) + …), summed until it no longer changes (Marsaglia, J Stat Softw 2004;11(4); memory).</remarks>
    public static double Cumulative(double z)
    {
        if (Math.Abs(z) > 8.3)
        {
            return z < 0 ? 0.0 : 1.0;
        }

        var (term, sum, previous) = (z, z, 0.0);
        for (var k = 3; sum != previous; k += 2)
        {
            previous = sum;
            term *= z * z / k;
            sum += term;
        }

        return Math.Clamp(0.5 + sum * Math.Exp(-0.5 * z * z) / Math.Sqrt(2.0 * Math.PI), 0.0, 1.0);
    }
}
