namespace Transport.Reporting;

/// <summary>One pair of axes and what is drawn between them. Drawing order: shaded ranges, bands, lines, series, points.</summary>
public sealed record Panel
{
    /// <summary>An empty panel; say what is in it in the initializer.</summary>
    public Panel(Axis xAxis, Axis yAxis)
    {
        ArgumentNullException.ThrowIfNull(xAxis);
        ArgumentNullException.ThrowIfNull(yAxis);
        XAxis = xAxis;
        YAxis = yAxis;
    }

    /// <summary>The horizontal axis.</summary>
    public Axis XAxis { get; private init; }

    /// <summary>The vertical axis.</summary>
    public Axis YAxis { get; private init; }

    /// <summary>A line above the panel; null for none. The figure has a title of its own.</summary>
    public string? Title { get; init; }

    /// <summary>Height as a multiple of the usual one (0.3 to 4); 1 unless said otherwise. In a row the tallest counts.</summary>
    /// <exception cref="ArgumentException">Outside 0.3 to 4.</exception>
    public double RelativeHeight
    {
        get;
        init => field = value is >= 0.3 and <= 4
            ? value
            : throw new ArgumentException(FormattableString.Invariant($"A panel's relative height of {value} is outside 0.3 to 4."));
    } = 1;

    /// <summary>The series, drawn in this order.</summary>
    /// <exception cref="ArgumentException">A value of zero or less on a logarithmic axis.</exception>
    public IReadOnlyList<Series> Series
    {
        get;
        init
        {
            ArgumentNullException.ThrowIfNull(value);
            foreach (var series in value)
            {
                Check(XAxis, series.X, $"Series \"{series.Name}\": x");
                Check(YAxis, series.Y, $"Series \"{series.Name}\": y");
                Check(XAxis, series.XWhiskers?.Select(w => w.Lower), $"Series \"{series.Name}\": lower x whisker");
                Check(YAxis, series.YWhiskers?.Select(w => w.Lower), $"Series \"{series.Name}\": lower y whisker");
            }
            field = [.. value];
        }
    } = [];

    /// <summary>The bands, drawn in this order, under the series.</summary>
    /// <exception cref="ArgumentException">A value of zero or less on a logarithmic axis.</exception>
    public IReadOnlyList<ShadedBand> Bands
    {
        get;
        init
        {
            ArgumentNullException.ThrowIfNull(value);
            foreach (var band in value)
            {
                Check(XAxis, band.X, $"Band \"{band.Name}\": x");
                Check(YAxis, band.Lower, $"Band \"{band.Name}\": lower");
            }
            field = [.. value];
        }
    } = [];

    /// <summary>Reference lines, shaded ranges and labeled points.</summary>
    /// <exception cref="ArgumentException">A value of zero or less on a logarithmic axis.</exception>
    public IReadOnlyList<Mark> Marks
    {
        get;
        init
        {
            ArgumentNullException.ThrowIfNull(value);
            foreach (var mark in value)
            {
                if (mark.X is { } x) ChartChecks.Fits(XAxis, x.Lower, $"Mark \"{mark.Label}\": x");
                if (mark.Y is { } y) ChartChecks.Fits(YAxis, y.Lower, $"Mark \"{mark.Label}\": y");
            }
            field = [.. value];
        }
    } = [];

    /// <summary>The same panel showing these ranges; null leaves an axis as it is.</summary>
    internal Panel OnAxes(Extent? x, Extent? y) => this with
    {
        XAxis = x is null ? XAxis : XAxis with { Range = x },
        YAxis = y is null ? YAxis : YAxis with { Range = y },
    };

    /// <summary>What the series and bands span horizontally.</summary>
    internal Extent XReach() => Reach([.. Series.SelectMany(series => series.X), .. Bands.SelectMany(band => band.X), .. Ends(Series.Select(series => series.XWhiskers))]);

    /// <summary>What the series, bands and marks at a value span vertically.</summary>
    internal Extent YReach() => Reach(
    [
        .. Series.SelectMany(series => series.Y), .. Bands.SelectMany(band => band.Lower.Concat(band.Upper)),
        .. Ends(Series.Select(series => series.YWhiskers)), .. Ends([[.. Marks.Where(mark => mark.Y is not null).Select(mark => mark.Y!.Value)]]),
    ]);

    private static IEnumerable<double> Ends(IEnumerable<IReadOnlyList<Extent>?> extents) =>
        extents.SelectMany(all => all ?? []).SelectMany(extent => new[] { extent.Lower, extent.Upper });

    private static Extent Reach(List<double> values) => new(values.Min(), values.Max());

    private static void Check(Axis axis, IEnumerable<double>? values, string what)
    {
        var i = 0;
        foreach (var value in values ?? []) ChartChecks.Fits(axis, value, FormattableString.Invariant($"{what}[{i++}]"));
    }
}
