namespace Transport.Reporting;

/// <summary>Finds a place for the labels inside a panel where they cover neither each other nor, if it can be helped, the data.</summary>
internal sealed class ChartLabels
{
    private const double Gap = 6;
    private readonly Panel panel;
    private readonly ChartScale x;
    private readonly ChartScale y;
    private readonly double width;
    private readonly double height;
    private readonly TextMeasure measure;
    private readonly List<(double X, double Y)> obstacles = [];
    private readonly List<(double Left, double Top, double Right, double Bottom)> taken = [];
    private readonly List<ChartText> placed = [];

    private ChartLabels(Panel panel, double width, double height, TextMeasure measure)
    {
        (this.panel, this.width, this.height, this.measure) = (panel, width, height, measure);
        x = ChartScale.OfX(panel);
        y = ChartScale.OfY(panel);
    }

    /// <summary>Series that carry their name at the right end of their line.</summary>
    public static IEnumerable<Series> NamedAtEnd(Figure figure, Panel panel) =>
        figure.Key == KeyPlacement.LineEnds ? panel.Series.Where(IsLine) : [];

    /// <summary>Room to the right of the plot area for the names at line ends, in pixels.</summary>
    public static double RoomAtEnd(Figure figure, Panel panel, TextMeasure measure) =>
        NamedAtEnd(figure, panel).Select(s => measure.Width(s.Name, ChartText.FontSize) + GapAfter(s) + 4).DefaultIfEmpty(14).Max();

    /// <summary>The labels of a panel whose plot area has this size in pixels.</summary>
    public static IReadOnlyList<ChartText> Place(Figure figure, Panel panel, double width, double height, TextMeasure measure)
    {
        var labels = new ChartLabels(panel, width, height, measure);
        labels.FindObstacles();
        labels.NameLineEnds([.. NamedAtEnd(figure, panel)]);
        foreach (var mark in panel.Marks.Where(m => m.IsNote)) labels.PlaceNote(mark);
        foreach (var mark in panel.Marks.Where(m => !m.IsNote)) labels.PlaceMark(mark);
        return labels.placed;
    }

    private static bool IsLine(Series series) => series.Pattern != LinePattern.None && series.X.Count > 1;

    private static double GapAfter(Series series) => series.Marker == MarkerShape.None ? Gap : Gap + 4;

    private double AtX(double value) => x.Fraction(value) * width;

    private double AtY(double value) => (1 - y.Fraction(value)) * height;

    /// <summary>Points every few pixels along what is drawn.</summary>
    private void FindObstacles()
    {
        foreach (var series in panel.Series)
        {
            for (var i = 0; i < series.X.Count; i++)
            {
                var (x1, y1) = (AtX(series.X[i]), AtY(series.Y[i]));
                obstacles.Add((x1, y1));
                if (series.Marker != MarkerShape.None) obstacles.AddRange([(x1 - 4, y1), (x1 + 4, y1), (x1, y1 - 4), (x1, y1 + 4)]);
                if (series.XWhiskers is { } across) for (var at = AtX(across[i].Lower); at < AtX(across[i].Upper); at += 4) obstacles.Add((at, y1));
                if (series.YWhiskers is { } along) for (var at = AtY(along[i].Upper); at < AtY(along[i].Lower); at += 4) obstacles.Add((x1, at));
                if (i == 0 || !IsLine(series)) continue;
                var (x0, y0) = (AtX(series.X[i - 1]), AtY(series.Y[i - 1]));
                var steps = Math.Min(200, (int)(Math.Max(Math.Abs(x1 - x0), Math.Abs(y1 - y0)) / 4));
                for (var k = 1; k < steps; k++)
                    obstacles.Add((x0 + (x1 - x0) * k / steps, y0 + (y1 - y0) * k / steps));
            }
        }
        foreach (var mark in panel.Marks)
        {
            if (mark.X is { } mx && mark.Y is null && mx.IsPoint)
                for (double at = 0; at < height; at += 4) obstacles.Add((AtX(mx.Lower), at));
            if (mark.Y is { } my && mark.X is null && my.IsPoint)
                for (double at = 0; at < width; at += 4) obstacles.Add((at, AtY(my.Lower)));
        }
    }

    /// <summary>
    /// Names at line ends, pushed apart until none covers another: neighbors that would overlap form a group, centered on where
    /// its members would like to be.
    /// </summary>
    private void NameLineEnds(IReadOnlyList<Series> named)
    {
        var wishes = named
            .Select(s => (Series: s, X: Math.Min(AtX(s.X[^1]), width), Y: Math.Clamp(AtY(s.Y[^1]), 0, height)))
            .OrderBy(w => w.Y)
            .ToArray();
        var groups = new List<(int First, int Count, double Middle)>();
        for (var i = 0; i < wishes.Length; i++)
        {
            var group = (First: i, Count: 1, Middle: wishes[i].Y);
            while (groups.Count > 0 && groups[^1] is var above &&
                   group.Middle - above.Middle < (above.Count + group.Count) * ChartText.LineHeight / 2)
            {
                var count = above.Count + group.Count;
                group = (above.First, count, Enumerable.Range(above.First, count).Average(k => wishes[k].Y));
                groups.RemoveAt(groups.Count - 1);
            }
            groups.Add(group);
        }
        foreach (var (first, count, middle) in groups)
        {
            for (var k = 0; k < count; k++)
            {
                var (series, at, _) = wishes[first + k];
                var text = new ChartText(series.Name, at + GapAfter(series), middle + (k - (count - 1) / 2.0) * ChartText.LineHeight,
                    TextAnchor.Start, series.Tone);
                Keep(text);
            }
        }
    }

    private void PlaceNote(Mark mark) =>
        Keep(new ChartText(mark.Label, AtX(mark.X!.Value.Lower), AtY(mark.Y!.Value.Lower), TextAnchor.Middle, mark.Tone));

    private void PlaceMark(Mark mark)
    {
        ChartText At(double left, double top, TextAnchor anchor) => new(mark.Label, left, top, anchor, mark.Tone);

        var wide = measure.Width(mark.Label, ChartText.FontSize);
        double Within(double middle, double half) => half * 2 >= width ? width / 2 : Math.Clamp(middle, half, width - half);

        var candidates = (mark.X, mark.Y) switch
        {
            // beside the upper part of a vertical line, or inside the top of a shaded range
            ({ } at, null) => Enumerable.Range(0, 6).SelectMany(row => new[]
            {
                at.IsPoint
                    ? At(AtX(at.Lower) + Gap, 9 + row * ChartText.LineHeight, TextAnchor.Start)
                    : At(Within((AtX(at.Lower) + AtX(at.Upper)) / 2, wide / 2), 9 + row * ChartText.LineHeight, TextAnchor.Middle),
                At(AtX(at.Lower) - Gap, 9 + row * ChartText.LineHeight, TextAnchor.End),
            }),
            // above or below a horizontal line, or inside a shaded range, near either end
            (null, { } at) => new[] { AtY(at.Upper) + (at.IsPoint ? -9 : 9), AtY(at.Lower) + (at.IsPoint ? 9 : -9) }.SelectMany(top => new[]
            {
                At(Gap, top, TextAnchor.Start), At(width - Gap, top, TextAnchor.End), At(width / 2, top, TextAnchor.Middle),
            }),
            ({ } at, { } up) => new[] { 10.0, 18 }.SelectMany(away => new[]
            {
                At(AtX(at.Lower) + away, AtY(up.Lower), TextAnchor.Start),
                At(AtX(at.Lower) - away, AtY(up.Lower), TextAnchor.End),
                At(AtX(at.Lower), AtY(up.Lower) - away - 6, TextAnchor.Middle),
                At(AtX(at.Lower), AtY(up.Lower) + away + 6, TextAnchor.Middle),
                At(AtX(at.Lower) + away, AtY(up.Lower) - away, TextAnchor.Start),
                At(AtX(at.Lower) + away, AtY(up.Lower) + away, TextAnchor.Start),
                At(AtX(at.Lower) - away, AtY(up.Lower) - away, TextAnchor.End),
                At(AtX(at.Lower) - away, AtY(up.Lower) + away, TextAnchor.End),
            }),
            _ => [],
        };
        Keep(candidates.Select((text, rank) => (text, cost: Cost(text) + 0.1 * rank)).MinBy(c => c.cost).text);
    }

    private double Cost(ChartText text)
    {
        var (left, top, right, bottom) = Box(text);
        var outside = left < 0 || top < 0 || right > width || bottom > height ? 1000 : 0;
        var onText = 100 * taken.Count(t => left < t.Right && right > t.Left && top < t.Bottom && bottom > t.Top);
        var onData = obstacles.Count(o => o.X > left - 2 && o.X < right + 2 && o.Y > top && o.Y < bottom);
        return outside + onText + onData;
    }

    private void Keep(ChartText text)
    {
        placed.Add(text);
        taken.Add(Box(text));
    }

    private (double Left, double Top, double Right, double Bottom) Box(ChartText text)
    {
        var wide = measure.Width(text.Text, ChartText.FontSize);
        var left = text.Anchor switch { TextAnchor.Start => text.X, TextAnchor.Middle => text.X - wide / 2, _ => text.X - wide };
        return (left, text.Y - ChartText.LineHeight / 2, left + wide, text.Y + ChartText.LineHeight / 2);
    }
}
