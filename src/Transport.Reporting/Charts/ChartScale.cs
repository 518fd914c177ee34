namespace Transport.Reporting;

/// <summary>What an axis shows, and how its values become positions. Both renderers use it, so that they show the same.</summary>
internal readonly record struct ChartScale(Extent Range, bool IsLogarithmic)
{
    private const int IntervalsWanted = 6;
    private const int FewIntervals = 4;
    private const double LowPanel = 0.5;
    private const double Thousands = 1000;
    private const double MarkerRoom = 0.03;

    /// <summary>Whether the numbers of many ticks would touch: up a low panel, or along an axis of thousands on both sides of zero.</summary>
    public bool HasFewTicks { get; private init; }

    /// <summary>Whether powers of ten are ticks enough.</summary>
    public bool SpansDecades => IsLogarithmic && Range.Upper >= 100 * Range.Lower;

    public static ChartScale OfX(Panel panel)
    {
        var values = panel.Series.SelectMany(s => s.X.Concat(Ends(s.XWhiskers)))
            .Concat(panel.Bands.SelectMany(b => b.X))
            .Concat(Ends(panel.Marks.Select(m => m.X)));
        var scale = Of(panel.XAxis, values, 0, startsAtZero: false);
        scale = scale with { HasFewTicks = scale.Range.Lower <= -Thousands || (scale.Range.Lower < 0 && scale.Range.Upper >= Thousands) };
        if (panel.XAxis.Range is not null) return scale;

        // Lines run from edge to edge; a marker near an edge needs room for half of itself.
        var markers = panel.Series.Where(s => s.Marker != MarkerShape.None).SelectMany(s => s.X).Select(scale.Fraction).ToArray();
        return scale with
        {
            Range = new Extent(
                scale.Value(markers.Any(f => f < MarkerRoom) ? -MarkerRoom : 0),
                scale.Value(markers.Any(f => f > 1 - MarkerRoom) ? 1 + MarkerRoom : 1)),
        };
    }

    public static ChartScale OfY(Panel panel)
    {
        var values = panel.Series.SelectMany(s => s.Y.Concat(Ends(s.YWhiskers)))
            .Concat(panel.Bands.SelectMany(b => b.Lower.Concat(b.Upper)))
            .Concat(Ends(panel.Marks.Select(m => m.Y)));
        return Of(panel.YAxis, values, 0.06, startsAtZero: true) with { HasFewTicks = panel.RelativeHeight < LowPanel };
    }

    /// <summary>Position from 0 (lower end) to 1 (upper end).</summary>
    public double Fraction(double value) => (Map(value) - Map(Range.Lower)) / (Map(Range.Upper) - Map(Range.Lower));

    /// <summary>The value at a position from 0 to 1.</summary>
    public double Value(double fraction)
    {
        var mapped = Map(Range.Lower) + fraction * (Map(Range.Upper) - Map(Range.Lower));
        return IsLogarithmic ? Math.Pow(10, mapped) : mapped;
    }

    /// <summary>Distance of the ticks: 1, 2 or 5 times a power of ten; on an axis in hours or minutes, parts of a day.</summary>
    public double Step(string unit)
    {
        double[] clock = unit switch
        {
            "h" => [1, 2, 3, 4, 6, 12, 24],
            "min" => [15, 30, 60, 120, 240, 480],
            _ => [],
        };
        var wanted = Range.Width / (HasFewTicks ? FewIntervals : IntervalsWanted);
        if (clock.Length > 0 && wanted >= clock[0] / 2 && wanted <= clock[^1]) return clock.First(step => step >= wanted * 0.8);
        var power = Math.Pow(10, Math.Floor(Math.Log10(wanted)));
        return power * new double[] { 1, 2, 5, 10 }.First(step => step * power >= wanted * 0.8);
    }

    private static ChartScale Of(Axis axis, IEnumerable<double> values, double padding, bool startsAtZero)
    {
        if (axis.Range is { } range) return new(range, axis.IsLogarithmic);
        var log = axis.IsLogarithmic;
        var lower = values.Min();
        var upper = values.Max();
        if (log) (lower, upper) = (Math.Log10(lower), Math.Log10(upper));
        if (lower == upper)
        {
            var half = lower == 0 ? 1 : Math.Abs(lower) * 0.1;
            (lower, upper) = (lower - half, upper + half);
        }
        var room = padding * (upper - lower);
        var fromZero = startsAtZero && !log && lower >= 0 && lower <= 0.4 * upper;
        (lower, upper) = (fromZero ? 0 : lower - room, upper + room);
        return new(log ? new Extent(Math.Pow(10, lower), Math.Pow(10, upper)) : new Extent(lower, upper), log);
    }

    private double Map(double value) => IsLogarithmic ? Math.Log10(value) : value;

    private static IEnumerable<double> Ends(IEnumerable<Extent>? extents) =>
        (extents ?? []).SelectMany(e => new[] { e.Lower, e.Upper });

    private static IEnumerable<double> Ends(IEnumerable<Extent?> extents) => Ends(extents.OfType<Extent>());
}
