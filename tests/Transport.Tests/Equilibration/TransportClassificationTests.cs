namespace Transport.Tests.Equilibration;

public sealed class TransportClassificationTests
{
    private static readonly CategoryCuts Cuts = CategoryCuts.Twardowski1987Creatinine;

    [Theory]
    [InlineData(0.4999, TransportCategory.Slow)]
    [InlineData(0.50, TransportCategory.SlowAverage)]
    [InlineData(0.6499, TransportCategory.SlowAverage)]
    [InlineData(0.65, TransportCategory.FastAverage)]
    [InlineData(0.81, TransportCategory.FastAverage)]
    [InlineData(0.8101, TransportCategory.Fast)]
    public void Borders_of_1987_are_half_open_on_unrounded_values(double value, TransportCategory expected) =>
        Assert.Equal(expected, Cuts.Of(value));

    [Fact]
    public void The_upper_border_can_be_moved_to_the_registrys_side_and_says_so()
    {
        var registry = Cuts with { IsFastBorderFast = true };

        Assert.Equal(TransportCategory.Fast, registry.Of(0.81));
        Assert.Equal(TransportCategory.FastAverage, registry.Of(0.8099));
        Assert.Equal("0.81 itself counts as fast-average (High-average)", Cuts.BorderRule);
        Assert.Equal("0.81 itself counts as fast transfer (High)", registry.BorderRule);
    }

    [Theory]
    [InlineData(0.2599, TransportCategory.Fast)]
    [InlineData(0.26, TransportCategory.FastAverage)]
    [InlineData(0.3799, TransportCategory.FastAverage)]
    [InlineData(0.38, TransportCategory.SlowAverage)]
    [InlineData(0.4899, TransportCategory.SlowAverage)]
    [InlineData(0.49, TransportCategory.Slow)]
    public void Glucose_runs_the_other_way(double value, TransportCategory expected) =>
        Assert.Equal(expected, CategoryCuts.Twardowski1987Glucose.Of(value));

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(-0.01)]
    [InlineData(1.1001)]
    [InlineData(double.PositiveInfinity)]
    public void What_no_dialysate_can_be_is_refused(double value)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Cuts.Of(value));
        Assert.Throws<ArgumentOutOfRangeException>(() => Cuts.ProbabilitiesOf(value, 0.05));
    }

    [Fact]
    public void A_published_maximum_above_one_is_classed() => Assert.Equal(TransportCategory.Fast, Cuts.Of(1.03));

    [Fact]
    public void Z_and_percentile_follow_the_worked_cases()
    {
        // Normal tables: mean 0.65 SD 0.16: 0.79 -> z 0.875, 80.92 %; 0.81 -> 84.13 %. Against 0.73, 0.10: 0.79 -> z 0.60, 72.57 %.
        static TransportClassification Of(double value, ReferencePopulation population) =>
            TransportClassification.Of(value, Cuts, population, 0.05);

        Assert.Equal(0.875, Of(0.79, ReferencePopulations.NorthAmerica1987).ZScore, 1e-12);
        Assert.Equal(80.92, Of(0.79, ReferencePopulations.NorthAmerica1987).Percentile, 0.005);
        Assert.Equal(84.13, Of(0.81, ReferencePopulations.NorthAmerica1987).Percentile, 0.005);
        Assert.Equal(0.60, Of(0.79, ReferencePopulations.Italy2019).ZScore, 1e-12);
        Assert.Equal(72.57, Of(0.79, ReferencePopulations.Italy2019).Percentile, 0.005);
    }

    [Fact]
    public void On_a_border_both_neighbours_are_equally_probable()
    {
        // At 0.65 with SD 0.05: half below; below 0.50 is three SD away, 0.00135; above 0.81 is 3.2 SD away, 0.00069 (normal tables).
        var probabilities = Cuts.ProbabilitiesOf(0.65, 0.05);

        Assert.Equal(0.00135, probabilities.Slow, 5e-6);
        Assert.Equal(0.49865, probabilities.SlowAverage, 5e-6);
        Assert.Equal(0.49931, probabilities.FastAverage, 5e-6);
        Assert.Equal(0.00069, probabilities.Fast, 5e-6);
    }

    [Fact]
    public void The_normal_distribution_agrees_with_twelve_figures_of_a_table()
    {
        // Abramowitz and Stegun, table 26.1 (memory; and any statistics package): Φ(0), Φ(1), Φ(2), Φ(3), Φ(−5).
        Assert.Equal(0.5, NormalDistribution.Cumulative(0), 1e-15);
        Assert.Equal(0.841344746068543, NormalDistribution.Cumulative(1), 1e-14);
        Assert.Equal(0.977249868051821, NormalDistribution.Cumulative(2), 1e-14);
        Assert.Equal(0.998650101968370, NormalDistribution.Cumulative(3), 1e-14);
        Assert.Equal(2.866515719e-7, NormalDistribution.Cumulative(-5), 1e-15);
        Assert.Equal(0, NormalDistribution.Cumulative(double.NegativeInfinity));
        Assert.Equal(1, NormalDistribution.Cumulative(40));
    }

    [Theory]
    [InlineData(0.45, false)]
    [InlineData(0.4501, true)]
    [InlineData(0.575, false)]
    [InlineData(0.77, true)]
    [InlineData(0.87, false)]
    public void Borderline_means_within_one_standard_deviation_of_a_border(double value, bool expected) =>
        Assert.Equal(expected, TransportClassification.Of(value, Cuts, ReferencePopulations.NorthAmerica1987, 0.0499).IsBorderline);

    [Fact]
    public void Names_put_todays_word_first_and_the_class_of_1987_in_brackets() =>
        Assert.Equal(
            ["slow (Low)", "slow-average (Low-average)", "fast-average (High-average)", "fast transfer (High)"],
            TransportCategories.All.Select(category => category.Name()));

    [Theory]
    [InlineData(0.50, 0.81, 0.65)]
    [InlineData(0.65, 0.65, 0.81)]
    [InlineData(0, 0.65, 0.81)]
    [InlineData(0.50, double.NaN, 0.81)]
    public void Borders_out_of_order_make_no_classes(double slow, double middle, double fast) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new CategoryCuts(slow, middle, fast) { Name = "x", Evidence = Evidence.Choice, Source = "x" });

    [Fact]
    public void Borders_say_themselves_which_way_their_index_goes()
    {
        Assert.False(Cuts.IsFalling);
        Assert.True(CategoryCuts.Twardowski1987Glucose.IsFalling);
        Assert.Throws<ArgumentOutOfRangeException>(() => Cuts with { LargestValue = 0 });
    }
}
