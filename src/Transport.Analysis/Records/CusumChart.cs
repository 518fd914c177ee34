using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;

namespace Transport.Analysis;

/// <summary>A two-sided cumulative-sum chart of standardised values: S⁺ = max(0, S⁺ + z − k), S⁻ = max(0, S⁻ − z − k), signal above h.</summary>
/// <remarks>Page, Biometrika 1954;41:100-115; constants as in Hawkins and Olwell 1998 and Montgomery's textbook (memory).</remarks>
public sealed record CusumChart
{
    private const int Settling = 500;

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

    /// <summary>How likely it signals a lasting shift within so many nights of its beginning, where it has run for long without one; the side of the shift alone.</summary>
    /// <param name="shift">Of the mean, upward.</param>
    /// <param name="nights">How many.</param>
    /// <exception cref="ArgumentOutOfRangeException">The shift is not 0 to 10, or the nights are not 1 to 3650.</exception>
    public double FoundWithin(double shift, int nights)
    {
        Require.InRange(shift, 0, 10, "SD");
        Require.InRange(nights, 1, 3650, "nights");

        // Where a chart stands that has not signalled: it forgets its start within its run length, most of it within days.
        var (before, after) = (StepsOf(0), StepsOf(shift));
        var place = Vector<double>.Build.Dense(before.RowCount, i => i == before.RowCount - 1 ? 1 : 0);
        for (var night = 0; night < Settling; night++)
        {
            place = before.LeftMultiply(place);
            place /= place.Sum();
        }

        for (var night = 0; night < nights; night++)
        {
            place = after.LeftMultiply(place);
        }

        return 1 - place.Sum();
    }

    private double OneSided(double shift) => RunLengthEquation.Solve(0, Limit, Density(shift), AtZero(shift), start: 0);

    private Matrix<double> StepsOf(double shift) => RunLengthEquation.Steps(0, Limit, Density(shift), AtZero(shift), start: 0);

    // L(x) = 1 + Φ(k − x − µ) L(0) + ∫₀ʰ φ(y − x + k − µ) L(y) dy
    private Func<double, double, double> Density(double shift) => (from, to) => Normal.PDF(0, 1, to - from + Reference - shift);

    private Func<double, double> AtZero(double shift) => from => Normal.CDF(0, 1, Reference - from - shift);
}
