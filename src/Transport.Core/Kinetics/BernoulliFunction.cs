namespace Transport;

/// <summary>b(x) = x / (eˣ − 1), the weight of diffusion in a flux that also convects, and its derivative.</summary>
internal static class BernoulliFunction
{
    // Below this the quotient loses digits to cancellation (about eps / x) and the series is exact to rounding.
    private const double SeriesBelow = 0.05;

    public static double Of(double x)
    {
        if (x < SeriesBelow)
        {
            var x2 = x * x;
            return 1 - x / 2 + x2 / 12 * (1 - x2 / 60 * (1 - x2 / 42));
        }

        return x / (Math.Exp(x) - 1);
    }

    /// <summary>b′(x), given b(x).</summary>
    public static double Slope(double x, double b)
    {
        if (x < SeriesBelow)
        {
            var x2 = x * x;
            return -0.5 + x / 6 * (1 - x2 / 30 * (1 - x2 / 28));
        }

        return b * (1 - b - x) / x;
    }
}
