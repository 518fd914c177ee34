using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;

namespace Transport.Tests.Fitting.Statistics;

/// <summary>
/// Densities whose quantiles are known. A share of draws below a known quantile p has the Monte Carlo error √(p (1 − p) / effective draws); four of them are allowed
/// (once in 16,000), with a fixed seed.
/// </summary>
public sealed class PosteriorSamplerTests
{
    private static readonly double[] Probabilities = [0.05, 0.25, 0.5, 0.75, 0.95];

    private static MatrixBuilder<double> Matrices => Matrix<double>.Build;

    [Theory]
    [InlineData(1)]
    [InlineData(4)]
    [InlineData(9)]
    public void A_Gaussian_is_returned_from_a_center_and_a_covariance_that_are_off(int dimension)
    {
        // Neighbors correlate by 0.9; the start is off by half a deviation in each coordinate and twice too wide in variance.
        var covariance = Matrices.Dense(dimension, dimension, (i, j) => Math.Pow(0.9, Math.Abs(i - j)));
        var chains = PosteriorSampler.Run(Gaussian(covariance), Vector<double>.Build.Dense(dimension, 0.5), 2 * covariance);
        for (var j = 0; j < dimension; j++)
        {
            CheckQuantiles(chains[j], p => Normal.InvCDF(0, 1, p));
        }

        Assert.All(chains.Diagnostics(), one => Assert.True(one.IsConverged));
    }

    [Fact]
    public void A_pair_that_correlates_by_0_996_is_returned_along_and_across()
    {
        // Sum and difference have variances 2 (1 ± 0.996).
        var covariance = Matrices.DenseOfArray(new[,] { { 1, 0.996 }, { 0.996, 1 } });
        var chains = PosteriorSampler.Run(Gaussian(covariance), Vector<double>.Build.Dense(2), covariance);
        CheckQuantiles(Combined(chains, (a, b) => a + b), p => Normal.InvCDF(0, Math.Sqrt(3.992), p));
        CheckQuantiles(Combined(chains, (a, b) => a - b), p => Normal.InvCDF(0, Math.Sqrt(0.008), p));
    }

    [Fact]
    public void A_banana_is_returned_by_both_its_straight_coordinates()
    {
        // x and y + (x² − 1)/2 are independent unit Gaussians; the optimum, (0, 1/2), and its curvature know nothing of the bend.
        var density = new TestDensity(2, x => -0.5 * (x[0] * x[0] + Math.Pow(x[1] + 0.5 * (x[0] * x[0] - 1), 2)));
        var chains = PosteriorSampler.Run(density, Vector<double>.Build.DenseOfArray([0, 0.5]), Matrices.DenseIdentity(2), new() { Draws = 4000 });
        CheckQuantiles(chains[0], p => Normal.InvCDF(0, 1, p));
        CheckQuantiles(Combined(chains, (x, y) => y + 0.5 * (x * x - 1)), p => Normal.InvCDF(0, 1, p));
        Assert.All(chains.Diagnostics(), one => Assert.True(one.IsConverged));
    }

    [Fact]
    public void Heavy_tails_are_returned_although_the_optimum_promises_light_ones()
    {
        // Student's t with 5 degrees of freedom in 4 dimensions: at the optimum its curvature is 9/5 of what its scale says. Each coordinate is a t of its own.
        var density = new TestDensity(4, x => -4.5 * Math.Log(1 + x.Sum(v => v * v) / 5));
        var chains = PosteriorSampler.Run(density, Vector<double>.Build.Dense(4), Matrices.DenseDiagonal(4, 5.0 / 9));
        for (var j = 0; j < 4; j++)
        {
            CheckQuantiles(chains[j], p => StudentT.InvCDF(0, 1, 5, p));
        }
    }

    [Fact]
    public void A_half_without_density_is_never_entered()
    {
        // e^−x for positive x; started in the void as often as not.
        var density = new TestDensity(1, x => x[0] > 0 ? -x[0] : double.NegativeInfinity);
        var chains = PosteriorSampler.Run(density, Vector<double>.Build.Dense(1), Matrices.DenseIdentity(1), new() { Draws = 4000 });
        Assert.All(chains[0], chain => Assert.All(chain, x => Assert.True(x > 0)));
        CheckQuantiles(chains[0], p => -Math.Log(1 - p));

        var nowhere = new TestDensity(1, _ => double.NegativeInfinity);
        Assert.Throws<InvalidOperationException>(() => PosteriorSampler.Run(nowhere, Vector<double>.Build.Dense(1), Matrices.DenseIdentity(1)));
    }

    [Fact]
    public void An_evaluation_of_four_points_is_worth_more_than_one_draw_of_a_Gaussian_in_nine_dimensions()
    {
        // 1.4 to 2 effective draws an evaluation were measured, over seeds; a random walk alone gives 0.1 (docs/decisions/0007).
        var covariance = Matrices.Dense(9, 9, (i, j) => Math.Pow(0.9, Math.Abs(i - j)));
        var density = Gaussian(covariance);
        var chains = PosteriorSampler.Run(density, Vector<double>.Build.Dense(9), covariance);
        Assert.True(chains.Diagnostics().Min(one => one.BulkEffectiveDraws) > 1000);
        Assert.InRange(chains.AcceptedShare, 0.4, 0.8);
        Assert.Equal(1500, chains.Evaluations);
        Assert.Equal(1500, density.Evaluations);
    }

    [Fact]
    public void A_seed_gives_the_same_draws_and_another_gives_others()
    {
        var one = PosteriorSampler.Run(Gaussian(Matrices.DenseIdentity(2)), Vector<double>.Build.Dense(2), Matrices.DenseIdentity(2), new() { Draws = 50 });
        var same = PosteriorSampler.Run(Gaussian(Matrices.DenseIdentity(2)), Vector<double>.Build.Dense(2), Matrices.DenseIdentity(2), new() { Draws = 50 });
        var other = PosteriorSampler.Run(Gaussian(Matrices.DenseIdentity(2)), Vector<double>.Build.Dense(2), Matrices.DenseIdentity(2), new() { Draws = 50, Seed = 2 });
        Assert.Equal(one[1], same[1]);
        Assert.NotEqual(one[1], other[1]);
    }

    [Fact]
    public void A_run_is_stopped_before_its_next_evaluation()
    {
        using var source = new CancellationTokenSource();
        var evaluations = 0;
        var density = new TestDensity(1, x =>
        {
            if (++evaluations == 40)
            {
                source.Cancel();
            }

            return -x[0] * x[0];
        });
        Assert.Throws<OperationCanceledException>(() => PosteriorSampler.Run(
            density, Vector<double>.Build.Dense(1), Matrices.DenseIdentity(1), null, new() { Cancellation = source.Token }));
        Assert.Equal(10, density.Evaluations);
    }

    private static TestDensity Gaussian(Matrix<double> covariance)
    {
        var precision = covariance.Inverse();
        return new(covariance.RowCount, point =>
        {
            var x = Vector<double>.Build.DenseOfArray(point);
            return -0.5 * x.DotProduct(precision * x);
        });
    }

    private static double[][] Combined(Chains chains, Func<double, double, double> combine) =>
        [.. chains[0].Zip(chains[1], (first, second) => first.Zip(second, combine).ToArray())];

    private static void CheckQuantiles(IReadOnlyList<double[]> chains, Func<double, double> quantile)
    {
        foreach (var p in Probabilities)
        {
            var limit = quantile(p);
            var share = chains.Average(chain => chain.Average(draw => draw <= limit ? 1.0 : 0));
            var effective = ChainDiagnostics.EffectiveDrawsBelow(chains, limit);
            Assert.True(effective > 100, $"{effective:0} effective draws at {p}");
            Assert.Equal(p, share, 4 * Math.Sqrt(p * (1 - p) / effective));
        }
    }
}
