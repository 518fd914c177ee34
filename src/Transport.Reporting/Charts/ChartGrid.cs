namespace Transport.Reporting;

/// <summary>Where title and panels stand on a figure 720 pixels wide; both renderers start from it.</summary>
internal sealed class ChartGrid
{
    public const double Width = 720;
    public const double TitleSize = 15;
    public const double PanelTitleSize = 13;
    private const double RoomForButtons = 120;
    private const double ColumnGap = 20;
    private const double RowGap = 14;

    public ChartGrid(Figure figure, TextMeasure measure)
    {
        TitleLines = measure.Wrap(figure.Title, Width - RoomForButtons, TitleSize, bold: true);
        var columnWidth = (Width - ColumnGap * (figure.Columns - 1)) / figure.Columns;
        var usualHeight = figure.Columns == 1 ? 330 : 290;
        var top = TitleLines.Count * 20 + 12.0;
        var panels = new List<Box>();
        foreach (var row in figure.Panels.Chunk(figure.Columns))
        {
            var titleHeight = row.Any(p => !string.IsNullOrEmpty(p.Title)) ? 22 : 0;
            var height = row.Max(p => p.RelativeHeight) * usualHeight;
            for (var column = 0; column < row.Length; column++)
                panels.Add(new Box(column * (columnWidth + ColumnGap), top + titleHeight, columnWidth, height));
            top += titleHeight + height + RowGap;
        }
        Panels = panels;
        Bottom = top - RowGap;
    }

    /// <summary>The figure's title, broken into lines.</summary>
    public IReadOnlyList<string> TitleLines { get; }

    /// <summary>One box for each panel: plot area, tick labels and axis titles, without the panel's title, which stands above.</summary>
    public IReadOnlyList<Box> Panels { get; }

    /// <summary>Lower end of the last row; the legend begins here.</summary>
    public double Bottom { get; }

    /// <summary>A rectangle in pixels.</summary>
    internal sealed record Box(double Left, double Top, double Width, double Height);
}
