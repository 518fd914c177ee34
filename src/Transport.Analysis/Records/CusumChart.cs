using MathNet.Numerics.Distributions;

namespace Transport.Analysis;

/// <summary>A two-sided cumulative-sum chart of standardised values: S⁺ = max(0, S⁺ + z − k), S⁻ = max(0, S⁻ − z − k), signal above h.</summary>
/// <remarks>Page, Biometrika 1954;41:100-115; constants as in Hawkins and Olwell 1998 and Montgomery's textbook (memory).</remarks>
public sealed record CusumChart
{
    /// <summary>A chart.</summary>
    /// <param name="reference">k, in standard deviations: half of the shift that is looked for.</param>
    /// <param name="limit">h, in standard deviations.</param>
    /// <exception cref="ArgumentOutOfRangeException">k is not 0 to 3, or h not between 0 and 50.</exception>
    public CusumChart(double reference, double limit)
    {
        Reference = Require.InRange(reference, 0, 3, "SD");
        Limit = Require.InRange(limit, 0.01, 50, "SD");
    }

    /// <summary>k.</summary>
    public double Reference { get; }

    /// <summary>h.</summary>
    public double Limit { get; }

    /// <summary>Mean number of nights until it signals, from an empty sum, where values are independent with standard deviation 1.</summary>
    /// <param name="shift">Their mean.</param>
    /// <remarks>Two one-sided charts, 1/ARL = 1/ARL⁺ + 1/ARL⁻, each by its integral equation (<see cref="RunLengthEquation"/>).</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The shift is not −10 to 10.</exception>
    public double RunLength(double shift)
    {
        Require.InRange(shift, -10, 10, "SD");
        return 1 / (1 / OneSided(shift) + 1 / OneSided(-shift));
    }

    /// <summary>The chart with this reference that signals once in so many nights though nothing has changed.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The run length is not 10 to 1,000,000 nights.</exception>
    public static CusumChart Of(double reference, double inControlRunLength)
    {
        Require.InRange(inControlRunLength, 10, 1e6, "nights");
        var limit = MathNet.Numerics.RootFinding.Brent.FindRoot(
            h => Math.Log(new CusumChart(reference, h).RunLength(0) / inControlRunLength), 0.1, 40, 1e-6);
        return new(reference, limit);
    }

    // L(x) = 1 + Φ(k − x − µ) L(0) + ∫₀ʰ φ(y − x + k − µ) L(y) dy
    private double OneSided(double shift)
    {
        double Density(double from, double to) => Normal.PDF(0, 1, to - from + Reference - shift);
        double AtZero(double from) => Normal.CDF(0, 1, Reference - from - shift);
        return RunLengthEquation.Solve(0, Limit, Density, AtZero, start: 0);
    }
}
