namespace Transport.Tests.Records;

/// <summary>Mean run lengths of the charts against the tables in print.</summary>
public sealed class RunLengthTests
{
    // Montgomery, Introduction to Statistical Quality Control, ARL table of the tabular CUSUM with k = 1/2, h = 4 and 5 (memory); Hawkins and Olwell 1998:
    // h = 4.77 gives 370 at k = 1/2, h = 8.01 gives 370 at k = 1/4 (memory). Decimals beyond print are a Markov chain's (computed, apart from this code).
    [Theory]
    [InlineData(0.5, 4, 0, 168, 167.7)]
    [InlineData(0.5, 4, 0.5, 26.6, 26.6)]
    [InlineData(0.5, 4, 1, 8.38, 8.38)]
    [InlineData(0.5, 4, 1.5, 4.75, 4.75)]
    [InlineData(0.5, 4, 2, 3.34, 3.34)]
    [InlineData(0.5, 5, 0, 465, 465.4)]
    [InlineData(0.5, 5, 0.5, 38.0, 38.0)]
    [InlineData(0.5, 5, 1, 10.4, 10.38)]
    [InlineData(0.5, 5, 1.5, 5.75, 5.75)]
    [InlineData(0.5, 5, 2, 4.01, 4.01)]
    [InlineData(0.5, 4.77, 0, 370, 368.6)]
    [InlineData(0.25, 8.01, 0, 370, 370.3)]
    public void A_cumulative_sum_runs_as_long_as_printed(double k, double h, double shift, double printed, double chain)
    {
        // 0.5 % of each: print has three digits, the chain four.
        var run = new CusumChart(k, h).RunLength(shift);
        Assert.Equal(1, run / printed, 0.005);
        Assert.Equal(1, run / chain, 0.005);
    }

    // Lucas and Saccucci 1990, the five schemes with an in-control run length of about 500 and their shifts (memory); chain as above.
    [Theory]
    [InlineData(0.05, 2.615, 0, 500)]
    [InlineData(0.05, 2.615, 0.5, 28.7)]
    [InlineData(0.05, 2.615, 1, 11.4)]
    [InlineData(0.10, 2.814, 0, 500)]
    [InlineData(0.10, 2.814, 0.5, 31.3)]
    [InlineData(0.10, 2.814, 1, 10.3)]
    [InlineData(0.20, 2.962, 0, 500)]
    [InlineData(0.20, 2.962, 0.5, 41.8)]
    [InlineData(0.20, 2.962, 1, 10.5)]
    [InlineData(0.25, 2.998, 0, 500)]
    [InlineData(0.25, 2.998, 0.5, 48.2)]
    [InlineData(0.25, 2.998, 1, 11.1)]
    [InlineData(0.40, 3.054, 0, 500)]
    [InlineData(0.40, 3.054, 0.5, 71.2)]
    [InlineData(0.40, 3.054, 1, 14.3)]
    public void A_weighted_mean_runs_as_long_as_printed(double weight, double limit, double shift, double printed) =>
        Assert.Equal(1, new EwmaChart(weight, limit).RunLength(shift) / printed, 0.01); // 1 %: print rounds to a tenth of a night

    [Theory]
    [InlineData(0, 370.4)]
    [InlineData(0.5, 155.2)]
    [InlineData(1, 43.9)]
    [InlineData(2, 6.3)]
    public void A_weighted_mean_of_the_last_value_alone_is_a_chart_of_single_values(double shift, double printed)
    {
        // λ = 1 is Shewhart's chart at 3 SD, whose run length is 1/(1 − Φ(3 − µ) + Φ(−3 − µ)) exactly.
        var exact = 1 / (1 - MathNet.Numerics.Distributions.Normal.CDF(0, 1, 3 - shift) + MathNet.Numerics.Distributions.Normal.CDF(0, 1, -3 - shift));
        var run = new EwmaChart(1, 3).RunLength(shift);
        Assert.Equal(1, run / exact, 1e-9);
        Assert.Equal(1, run / printed, 0.01);
    }

    [Theory]
    [InlineData(0.25, 9.318)]
    [InlineData(0.5, 5.445)]
    [InlineData(0.75, 3.790)]
    [InlineData(1, 2.853)]
    public void Limits_for_one_false_alarm_in_two_years_are_found(double k, double limit) =>
        Assert.Equal(limit, CusumChart.Of(k, 730).Limit, 0.005); // computed apart from this code with a Markov chain, three decimals

    [Theory]
    [InlineData(0.05, 2.766)]
    [InlineData(0.10, 2.951)]
    [InlineData(0.20, 3.087)]
    public void And_those_of_the_weighted_mean(double weight, double factor) =>
        Assert.Equal(factor, EwmaChart.Of(weight, 730).LimitFactor, 0.002);

    // By the best of k = 0.25 to 1 at a run length of 730 (1.25 besides stays within the tolerance); computed apart from this code with a Markov chain (Brook and Evans, Biometrika 1972;59:539-549, memory), two decimals.
    [Theory]
    [InlineData(1, 0.08, 0.21, 0.35)]
    [InlineData(1.33, 0.20, 0.45, 0.67)]
    [InlineData(2, 0.59, 0.90, 0.98)]
    [InlineData(2.5, 0.86, 0.99, 1.0)]
    public void What_a_sum_finds_within_three_five_and_seven_nights_is_what_a_chain_finds(double shift, double three, double five, double seven)
    {
        CusumChart[] charts = [.. new[] { 0.25, 0.5, 0.75, 1, 1.25 }.Select(k => CusumChart.Of(k, 730))];
        Assert.Equal(three, charts.Max(chart => chart.FoundWithin(shift, 3)), 0.015);
        Assert.Equal(five, charts.Max(chart => chart.FoundWithin(shift, 5)), 0.015);
        Assert.Equal(seven, charts.Max(chart => chart.FoundWithin(shift, 7)), 0.015);
    }

    [Fact]
    public void A_simulated_chart_signals_as_often_as_the_equation_says()
    {
        // 4,000 runs of k = 0.5, h = 4 without a shift: mean 167.7, standard error 167.7/√4000 = 2.7; three of them.
        var random = new MathNet.Numerics.Random.MersenneTwister(7);
        double total = 0;
        for (var run = 0; run < 4000; run++)
        {
            double up = 0, down = 0;
            while (up <= 4 && down <= 4)
            {
                var z = MathNet.Numerics.Distributions.Normal.Sample(random, 0, 1);
                up = Math.Max(0, up + z - 0.5);
                down = Math.Max(0, down - z - 0.5);
                total++;
            }
        }

        Assert.Equal(new CusumChart(0.5, 4).RunLength(0), total / 4000, 8.0);
    }
}
