using MathNet.Numerics.Distributions;

namespace Transport.Analysis;

/// <summary>A two-sided chart of the exponentially weighted mean of standardised values: E = λz + (1 − λ)E, signal beyond ±L √(λ/(2 − λ)).</summary>
/// <remarks>Roberts, Technometrics 1959;1:239-250; constants as in Lucas and Saccucci, Technometrics 1990;32:1-12 (memory).</remarks>
public sealed record EwmaChart
{
    /// <summary>A chart.</summary>
    /// <param name="weight">λ, of the newest value.</param>
    /// <param name="limitFactor">L, in standard deviations of the mean's steady state.</param>
    /// <exception cref="ArgumentOutOfRangeException">λ is not above 0.005 and up to 1, or L not between 0 and 10.</exception>
    public EwmaChart(double weight, double limitFactor)
    {
        Weight = Require.InRange(weight, 0.005, 1, "");
        LimitFactor = Require.InRange(limitFactor, 0.05, 10, "SD");
    }

    /// <summary>λ.</summary>
    public double Weight { get; }

    /// <summary>L.</summary>
    public double LimitFactor { get; }

    /// <summary>The limit on the weighted mean, in standard deviations of one value.</summary>
    public double Limit => LimitFactor * Math.Sqrt(Weight / (2 - Weight));

    /// <summary>Mean number of nights until it signals, from zero, where values are independent with standard deviation 1.</summary>
    /// <param name="shift">Their mean.</param>
    /// <exception cref="ArgumentOutOfRangeException">The shift is not −10 to 10.</exception>
    public double RunLength(double shift)
    {
        Require.InRange(shift, -10, 10, "SD");

        // L(x) = 1 + (1/λ) ∫ φ((y − (1 − λ)x)/λ − µ) L(y) dy over −c to c
        double Density(double from, double to) => Normal.PDF(0, 1, (to - (1 - Weight) * from) / Weight - shift) / Weight;
        return RunLengthEquation.Solve(-Limit, Limit, Density, null, start: 0);
    }

    /// <summary>The chart with this weight that signals once in so many nights though nothing has changed.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The run length is not 10 to 1,000,000 nights.</exception>
    public static EwmaChart Of(double weight, double inControlRunLength)
    {
        Require.InRange(inControlRunLength, 10, 1e6, "nights");
        var factor = MathNet.Numerics.RootFinding.Brent.FindRoot(
            l => Math.Log(new EwmaChart(weight, l).RunLength(0) / inControlRunLength), 0.5, 6, 1e-7);
        return new(weight, factor);
    }
}
