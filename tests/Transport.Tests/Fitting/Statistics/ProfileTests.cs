using MathNet.Numerics.LinearAlgebra;

namespace Transport.Tests.Fitting.Statistics;

/// <summary>Profiles with a closed form. 1.959964 is the root of the 95 % quantile of χ² with one degree of freedom.</summary>
public sealed class ProfileTests
{
    private const double Root = 1.959964;

    [Fact]
    public void A_linear_problem_has_the_interval_of_its_standard_error()
    {
        // y = a + b x at x = 0, 1, 2, errors of one: the slope's variance is 1/2, the intercept's 5/6.
        var line = new SumOfSquares(2, 3, u => [u[0] - 1, u[0] + u[1] - 3, u[0] + 2 * u[1] - 4]);
        var optimum = LeastSquares.Run(line, [At(0, 0)]);
        Check(Profile.Run(line, optimum, 1), 1.5, Math.Sqrt(0.5));
        Check(Profile.Run(line, optimum, 0), 7.0 / 6, Math.Sqrt(5.0 / 6));

        static void Check(ProfileInterval interval, double estimate, double error)
        {
            // Ends are found to 0.001 of a standard error.
            Assert.Equal(estimate, interval.Optimum, 1e-5);
            Assert.Equal(estimate - Root * error, interval.Low!.Value, 1e-3);
            Assert.Equal(estimate + Root * error, interval.High!.Value, 1e-3);
            Assert.False(interval.FoundBetter);
        }
    }

    [Theory]
    [InlineData(6.0, 3.0)]
    [InlineData(-4.0, 2.5)]
    public void A_ratio_has_Fiellers_interval(double first, double second)
    {
        // Observed ρ b and b with unit errors. By Fieller the ends solve (first − ρ second)² = q² (1 + ρ²), q the quantile's root.
        var problem = Ratio(first, second);
        var interval = Profile.Run(problem, LeastSquares.Run(problem, [At(first / second, second)]), 0, new() { Reach = 100 });
        var (a, b, c) = (second * second - Root * Root, first * second, first * first - Root * Root);
        var half = Math.Sqrt(b * b - a * c);

        // 0.001 of the deviance's root is what is aimed at; it rises by 0.08 to 1 for each unit of ρ.
        Assert.Equal((b - half) / a, interval.Low!.Value, 0.015);
        Assert.Equal((b + half) / a, interval.High!.Value, 0.015);
        foreach (var end in new[] { interval.Low.Value, interval.High.Value })
        {
            Assert.Equal(Root, Math.Abs(first - end * second) / Math.Sqrt(1 + end * end), 1.1e-3);
        }

        foreach (var (rho, rise) in interval.Points)
        {
            Assert.Equal(Math.Pow(first - rho * second, 2) / (1 + rho * rho), rise, 1e-5);
        }
    }

    [Fact]
    public void A_ratio_over_what_may_be_zero_is_open_above()
    {
        // 6 ± 1 over 1.5 ± 1: the rise for an infinite ratio is 1.5² = 2.25, under 3.84, so no upper end exists. The lower one is Fieller's.
        var problem = Ratio(6, 1.5);
        var interval = Profile.Run(problem, LeastSquares.Run(problem, [At(4, 1.5)]), 0, new() { Reach = 1000 });
        Assert.True(interval.IsOpenAbove);
        Assert.False(interval.IsOpenBelow);
        var (a, b, c) = (2.25 - Root * Root, 9.0, 36 - Root * Root);
        Assert.Equal((b - Math.Sqrt(b * b - a * c)) / a, interval.Low!.Value, 0.01);
    }

    [Fact]
    public void A_logarithm_whose_observation_reaches_zero_is_open_below()
    {
        // e^u observed as y ± 1: the ends are ln(y ± 1.96). With y = 3 both exist, with y = 1.5 the lower does not: e^u = 0 is within the error.
        Assert.Equal(Math.Log(3 - Root), Run(3).Low!.Value, 2e-3);
        Assert.Equal(Math.Log(3 + Root), Run(3).High!.Value, 2e-3);
        Assert.Null(Run(1.5).Low);
        Assert.Equal(Math.Log(1.5 + Root), Run(1.5).High!.Value, 2e-3);

        static ProfileInterval Run(double y)
        {
            var problem = new SumOfSquares(1, 1, u => [Slopes.Exp(u[0]) - y]);
            return Profile.Run(problem, LeastSquares.Run(problem, [At(0)]), 0, new() { Reach = 30 });
        }
    }

    [Fact]
    public void A_profile_that_leads_deeper_than_the_optimum_says_so()
    {
        // Two valleys of which the right one, at +1, is deeper by 0.04 · 4. With a reach of 2 the last point looked at from the left one is near +1.
        var problem = new SumOfSquares(2, 3, u => [2 * (u[0] * u[0] - 1), 0.2 * (u[0] - 1), u[1]]);
        var options = new ProfileOptions { Confidence = 0.9999999, Reach = 2 };
        var shallow = LeastSquares.Run(problem, [At(-1.2, 0)]);
        Assert.Equal(-0.99, shallow.Coordinates[0], 0.02);
        Assert.True(Profile.Run(problem, shallow, 0, options).FoundBetter);
        Assert.False(Profile.Run(problem, LeastSquares.Run(problem, [At(1.2, 0)]), 0, options).FoundBetter);
    }

    private static SumOfSquares Ratio(double first, double second) => new(2, 2, u => [u[0] * u[1] - first, u[1] - second]);

    private static Vector<double> At(params double[] coordinates) => Vector<double>.Build.DenseOfArray(coordinates);
}
