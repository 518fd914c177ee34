using Transport.Reporting;

namespace Transport.Tests.Charts;

/// <summary>A figure that exists is valid; one that cannot exist says what is wrong, where, and with which value.</summary>
public sealed class FigureTests
{
    private static readonly Axis Dwell = new("dwell", "h");
    private static readonly Axis Volume = new("volume", "mL");
    private static readonly Axis Ratio = new("D/P", "") { IsLogarithmic = true };

    public static TheoryData<string, Action, string[]> Impossible { get; } = new()
    {
        { "unequal numbers", () => _ = new Series("2 L", [0, 1, 2], [0, 1]), ["2 L", "x has 3", "y has 2"] },
        { "no values", () => _ = new Series("2 L", [], []), ["2 L", "no values"] },
        { "not a number", () => _ = new Series("2 L", [0, 1], [0, double.NaN]), ["2 L", "y[1]", "NaN"] },
        { "infinite", () => _ = new Series("2 L", [0, double.PositiveInfinity], [0, 1]), ["2 L", "x[1]", "finite"] },
        { "no name", () => _ = new Series(" ", [0], [0]), ["name of a series"] },
        { "too heavy", () => _ = new Series("2 L", [0], [0]) { Weight = 40 }, ["2 L", "40"] },
        { "too few whiskers", () => _ = new Series("2 L", [0, 1], [0, 1]) { YWhiskers = [new Extent(0, 1)] }, ["2 L", "y whiskers has 1"] },
        { "too many notes", () => _ = new Series("2 L", [0], [0]) { Notes = ["a", "b"] }, ["2 L", "notes has 2"] },
        { "band not ascending", () => _ = new ShadedBand("90 %", [0, 2, 1], [0, 0, 0], [1, 1, 1]), ["90 %", "x[2] is 1", "ascend"] },
        { "band upside down", () => _ = new ShadedBand("90 %", [0, 1], [0, 5], [1, 4]), ["90 %", "upper[1] is 4", "lower[1], 5"] },
        { "band of one value", () => _ = new ShadedBand("90 %", [0], [0], [1]), ["90 %", "two"] },
        { "band unequal", () => _ = new ShadedBand("90 %", [0, 1], [0], [1, 1]), ["90 %", "lower has 1"] },
        { "extent reversed", () => _ = new Extent(2, 1), ["2", "above", "1"] },
        { "extent not finite", () => _ = new Extent(0, double.NaN), ["upper end", "NaN"] },
        { "axis of one value", () => _ = new Axis("dwell", "h") { Range = new Extent(3, 3) }, ["dwell", "3"] },
        { "axis without label", () => _ = new Axis("", "h"), ["label of an axis"] },
        { "axis without categories", () => Axis.OfCategories(), ["no category"] },
        { "logarithmic range from zero", () => _ = new Axis("D/P", "") { IsLogarithmic = true, Range = new Extent(0, 1) }, ["D/P", "0", "above zero"] },
        { "logarithm after range", () => _ = new Axis("D/P", "") { Range = new Extent(0, 1), IsLogarithmic = true }, ["D/P", "above zero"] },
        { "zero on logarithmic axis", () => _ = new Panel(Dwell, Ratio) { Series = [new Series("urea", [0, 1], [0, 0.5])] }, ["urea", "y[0]", "D/P"] },
        { "mark on logarithmic axis", () => _ = new Panel(Dwell, Ratio) { Marks = [Mark.AtY(0, "none")] }, ["none", "D/P"] },
        { "shade over one value", () => Mark.OverX(new Extent(2, 2), "peak"), ["peak", "2"] },
        { "mark without label", () => Mark.AtX(1, ""), ["label of a mark"] },
        { "panel height", () => _ = new Panel(Dwell, Volume) { RelativeHeight = 0 }, ["0", "0.3 to 4"] },
        { "no panel", () => _ = new Figure("Dwell", "", "Nothing."), ["Dwell", "no panel"] },
        { "empty panel", () => _ = new Figure("Dwell", "", "Nothing.", new Panel(Dwell, Volume)), ["Dwell", "panel 1 of 1"] },
        { "no alternative text", () => _ = new Figure("Dwell", "", "", Drawn()), ["Dwell", "alternative text"] },
        { "no title", () => _ = new Figure("", "", "A line.", Drawn()), ["title of a figure"] },
        { "columns", () => _ = new Figure("Dwell", "", "A line.", Drawn()) { Columns = 9 }, ["Dwell", "9"] },
        { "value outside its uncertainty", () => _ = new StripRow("dip", "mmol/L", 9, new Extent(2, 4), new Extent(6, 11), 8), ["dip", "9", "2 to 4"] },
        { "population of one value", () => _ = new StripRow("dip", "mmol/L", 3, new Extent(2, 4), new Extent(8, 8), 8), ["dip", "8"] },
        { "strips without rows", () => StripPanel.Of([], "population", "observed"), ["no row"] },
    };

    [Theory]
    [MemberData(nameof(Impossible))]
    public void What_cannot_be_drawn_cannot_be_made_and_the_message_says_what_and_which(string what, Action make, string[] said)
    {
        var message = Assert.Throws<ArgumentException>(make).Message;
        Assert.All(said, part => Assert.True(message.Contains(part, StringComparison.Ordinal), $"{what}: \"{part}\" is not in: {message}"));
    }

    [Fact]
    public void A_series_keeps_its_values_when_the_callers_array_changes()
    {
        double[] x = [1, 2], y = [3, 4];
        var series = new Series("volume", x, y);
        x[0] = y[0] = 99;
        Assert.Equal([1, 2], series.X);
        Assert.Equal([3, 4], series.Y);
    }

    [Fact]
    public void An_axis_title_carries_the_unit_in_brackets_and_a_dimensionless_one_has_none()
    {
        Assert.Equal("dwell (h)", Dwell.Title);
        Assert.Equal("D/P", Ratio.Title);
    }

    [Fact]
    public void A_figure_of_one_panel_names_lines_at_their_ends_and_one_of_several_below()
    {
        Assert.Equal(KeyPlacement.LineEnds, new Figure("One", "", "A line.", Drawn()).Key);
        Assert.Equal(KeyPlacement.Below, new Figure("Two", "", "Two lines.", Drawn(), Drawn()).Key);
    }

    private static Panel Drawn() => new(Dwell, Volume) { Series = [new Series("volume", [0, 1], [2000, 2100])] };
}
