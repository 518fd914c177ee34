using MathNet.Numerics.Distributions;

namespace Transport.Tests.Fitting.Statistics;

public sealed class UniformityTests
{
    [Fact]
    public void Ranks_are_counted_in_bins_of_equal_width()
    {
        Assert.Equal(2, Uniformity.RankOf(0.5, [0.1, 0.4, 0.6, 0.5]));
        Assert.Equal([3, 0, 2, 1, 0], Uniformity.Histogram([0, 1, 1, 4, 5, 7], 9, 5).ToArray());
        Assert.Throws<ArgumentException>(() => Uniformity.Histogram([1], 9, 3));
        Assert.Throws<ArgumentException>(() => Uniformity.Histogram([10], 9, 5));
    }

    [Fact]
    public void Tolerance_of_a_coverage_is_that_of_the_binomial()
    {
        // 100 intervals of 90 %: 84 to 95 hold 95 % of the distribution (P(X ≤ 83) = 0.0206, P(X ≤ 84) = 0.0399; P(X ≤ 94) = 0.9424, P(X ≤ 95) = 0.9763; tables of
        // the binomial). Ten throws of a coin: 2 to 8.
        Assert.Equal((84, 95), Uniformity.Tolerance(100, 0.9, 0.95));
        Assert.Equal((2, 8), Uniformity.Tolerance(10, 0.5, 0.95));
        Assert.Equal((0, 0), Uniformity.Tolerance(10, 0, 0.95));
        Assert.Equal((10, 10), Uniformity.Tolerance(10, 1, 0.95));
    }

    [Fact]
    public void Chi_square_is_Pearsons()
    {
        // A die thrown 60 times: 5, 8, 9, 8, 10, 20 gives χ² = (25 + 4 + 1 + 4 + 0 + 100) / 10 = 13.4, p = 0.020 with five degrees of freedom (a textbook's example).
        Assert.Equal(0.0199, Uniformity.ChiSquareProbability([5, 8, 9, 8, 10, 20]), 1e-4);
        Assert.Equal(1, Uniformity.ChiSquareProbability([10, 10, 10]), 1e-12);
    }

    [Fact]
    public void A_band_of_two_bins_is_the_binomials_own()
    {
        // The second bin's cumulated count is the whole, so only the first can stray.
        var band = Uniformity.CumulatedBand(10, 2, 0.95);
        Assert.Equal((2, 8), band[0]);
        Assert.Equal((10, 10), band[1]);

        // P(2 ≤ X ≤ 8) of ten throws: 1 − 2 (1 + 10) / 1024.
        Assert.Equal(1 - 22.0 / 1024, Uniformity.ProbabilityWithin(band, 10), 1e-12);
    }

    [Fact]
    public void The_band_holds_as_often_as_it_says()
    {
        // 4000 sets of 100 ranks in 20 bins: their share within the band against its exact probability, four standard errors.
        var band = Uniformity.CumulatedBand(100, 20, 0.95);
        var exact = Uniformity.ProbabilityWithin(band, 100);
        Assert.InRange(exact, 0.95, 0.97);
        var random = new Random(3);
        var within = Enumerable.Range(0, 4000).Count(_ => Uniformity.IsWithin(
            Uniformity.Histogram(Enumerable.Range(0, 100).Select(_ => random.Next(100)), 99, 20), band));
        Assert.Equal(exact, within / 4000.0, 4 * Math.Sqrt(exact * (1 - exact) / 4000));
    }

    [Theory]
    [InlineData(1.0, 0.0, true)]
    [InlineData(0.7, 0.0, false)]
    [InlineData(1.4, 0.0, false)]
    [InlineData(1.0, 0.4, false)]
    public void A_right_posterior_is_calibrated_and_one_too_narrow_too_wide_or_shifted_is_not(double width, double shift, bool isCalibrated)
    {
        // Truth from a unit Gaussian, one observation with a unit error: the posterior is Gaussian around half the observation with variance 1/2. 400 truths, 99 draws.
        var random = new Random(20261125);
        var ranks = new List<int>();
        for (var i = 0; i < 400; i++)
        {
            var truth = Normal.Sample(random, 0, 1);
            var observed = truth + Normal.Sample(random, 0, 1);
            var posterior = new Normal(observed / 2 + shift, width * Math.Sqrt(0.5), random);
            ranks.Add(Uniformity.RankOf(truth, Enumerable.Range(0, 99).Select(_ => posterior.Sample())));
        }

        var counts = Uniformity.Histogram(ranks, 99, 20);
        Assert.Equal(isCalibrated, Uniformity.IsWithin(counts, Uniformity.CumulatedBand(400, 20, 0.99)));
        Assert.Equal(isCalibrated, Uniformity.ChiSquareProbability(counts) > 0.01);
    }
}
