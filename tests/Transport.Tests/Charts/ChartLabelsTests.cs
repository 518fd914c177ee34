using FsCheck.Xunit;
using Transport.Reporting;

namespace Transport.Tests.Charts;

/// <summary>Where names and labels stand.</summary>
public sealed class ChartLabelsTests
{
    private static readonly TextMeasure Measure = new();

    /// <summary>Names are pushed apart by whole lines; a thousandth of a pixel allows for rounding.</summary>
    [Property(MaxTest = 200)]
    public void Names_at_line_ends_keep_the_order_of_the_lines_and_never_cover_each_other(byte[] ends)
    {
        double[] levels = [.. (ends ?? []).Distinct().Take(8).Select(e => (double)e)];
        if (levels.Length == 0) return;
        var panel = new Panel(new Axis("dwell", "h"), new Axis("volume", "mL"))
        {
            Series = [.. levels.Select(level => new Series(level.ToString("F0"), [0, 1], [0, level]))],
        };
        var labels = ChartLabels.Place(new Figure("Ends", "", "Lines.", panel), panel, 500, 250, Measure);

        Assert.Equal(levels.OrderDescending().Select(l => l.ToString("F0")), labels.Select(l => l.Text));
        for (var i = 1; i < labels.Count; i++)
            Assert.True(labels[i].Y - labels[i - 1].Y >= ChartText.LineHeight - 0.001, $"{labels[i - 1]} and {labels[i]} overlap");
    }

    [Fact]
    public void A_name_stands_at_the_height_of_its_line_when_nothing_is_in_the_way()
    {
        // The y axis is fixed from 0 to 100, so a line ending at 25 ends three quarters of the way down: 150 of 200 pixels.
        var panel = new Panel(new Axis("dwell", "h"), new Axis("volume", "mL") { Range = new Extent(0, 100) })
        {
            Series = [new Series("low", [0, 1], [0, 25]), new Series("high", [0, 1], [0, 75])],
        };
        var labels = ChartLabels.Place(new Figure("Ends", "", "Lines.", panel), panel, 500, 200, Measure);
        Assert.Equal([("high", 50.0), ("low", 150.0)], labels.Select(l => (l.Text, Math.Round(l.Y, 9))));
    }

    [Fact]
    public void Labels_of_neighboring_reference_lines_do_not_cover_each_other_and_stay_on_the_panel()
    {
        var panel = new Panel(new Axis("dwell", "h"), new Axis("volume", "mL"))
        {
            Series = [new Series("volume", [0, 10], [2000, 2000])],
            Marks = [Mark.AtX(4, "equilibration test"), Mark.AtX(4.2, "planned drain"), Mark.AtX(9.8, "end of the night")],
        };
        var labels = ChartLabels.Place(new Figure("Marks", "", "A line.", panel), panel, 400, 250, Measure)
            .Where(l => panel.Marks.Any(m => m.Label == l.Text))
            .Select(l => (l.Text, Left: Left(l), Right: Left(l) + Measure.Width(l.Text, ChartText.FontSize), l.Y))
            .ToArray();
        Assert.Equal(3, labels.Length);
        Assert.All(labels, l => Assert.True(l.Left >= 0 && l.Right <= 400, $"{l.Text} leaves the panel"));
        foreach (var a in labels)
        {
            foreach (var b in labels.Where(b => b.Text != a.Text))
            {
                var apart = a.Right < b.Left || b.Right < a.Left || Math.Abs(a.Y - b.Y) >= ChartText.LineHeight - 0.001;
                Assert.True(apart, $"{a.Text} covers {b.Text}");
            }
        }
    }

    /// <summary>
    /// Arial's advance widths in units of 1/1000 em, from its public metrics (memory): h 556, e 556, l 222, o 556. At 12 px "hello"
    /// is (556+556+222+222+556)/1000*12 = 25.3 px; half a pixel allows for rounding in the metrics that OxyPlot carries.
    /// </summary>
    [Fact]
    public void Text_is_measured_in_pixels_and_signs_beyond_Latin_1_have_a_width()
    {
        Assert.InRange(Measure.Width("hello", 12), 24.8, 25.8);
        Assert.True(Measure.Width("−5 ≥ 3", 12) > Measure.Width("5 3", 12), "minus and at-least signs take room");
    }

    private static double Left(ChartText label) => label.Anchor switch
    {
        TextAnchor.Start => label.X,
        TextAnchor.Middle => label.X - Measure.Width(label.Text, ChartText.FontSize) / 2,
        _ => label.X - Measure.Width(label.Text, ChartText.FontSize),
    };
}
