using Transport.Reporting;

namespace Transport.Tests.Charts;

public sealed class StripPanelTests
{
    private static readonly Panel Panel = StripPanel.Of(
        [
            new StripRow("first", "mL", 500, new Extent(400, 600), new Extent(400, 800), 600) { Decimals = 0 },
            new StripRow("second", "", 0.9, new Extent(0.9, 0.9), new Extent(0.5, 0.7), 0.58),
        ],
        "population", "observed");

    [Fact]
    public void Each_row_lies_on_its_own_scale_on_which_the_population_reaches_from_minus_one_to_one()
    {
        // By hand: 500 is a quarter of the way from 400 to 800, which is -0.5 on a scale of length two; 400 and 600 are its lower
        // end and middle. 0.9 lies one whole range (0.2) above the upper end 0.7, two units above 1. Exact but for rounding.
        var observed = Panel.Series.Single(s => s.Name == "observed");
        Assert.Equal(3.0, observed.X[0], 12);
        Assert.Equal(-0.5, observed.X[1], 12);
        Assert.Equal((-1.0, 0.0), (observed.XWhiskers![1].Lower, observed.XWhiskers[1].Upper));
        Assert.All(Panel.Series.Single(s => s.Name == "population").XWhiskers!, w => Assert.Equal(new Extent(-1, 1), w));
    }

    [Fact]
    public void The_first_row_stands_on_top_and_its_numbers_stand_beside_it_in_their_unit()
    {
        Assert.Equal(["second\n0.90", "first\n500 (400 to 600) mL"], Panel.YAxis.TickLabels);
        Assert.Equal(["0.50", "0.70", "400", "800"], Panel.Marks.Select(m => m.Label));
    }

    [Fact]
    public void A_value_far_outside_the_population_is_still_on_the_panel()
    {
        Assert.True(Panel.XAxis.Range!.Value.Upper > 3, "the observed value at 3 lies within the range");
    }
}
