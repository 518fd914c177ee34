using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Xml.Linq;
using OxyPlot;
using static Transport.Reporting.SvgMarkup;

namespace Transport.Reporting;

/// <summary>
/// Draws a figure as a static SVG: for print, for a page without scripts, for a reader of the notebook's source. OxyPlot draws
/// the panels in managed code; title, labels and legend are set around them.
/// </summary>
public static class SvgRenderer
{
    private const double SwatchWidth = 28;
    private const double LegendLine = 20;
    private const double TextLeft = 8;

    /// <summary>The figure as one svg element, 720 pixels wide by its view box, which shrinks with its page; about 5 to 40 kB.</summary>
    /// <remarks>
    /// It holds a title and the alternative text. Colors are plain attributes; a page may rename them by the CSS custom
    /// properties --figure-ink, -axis, -grid, -paper, -strong, -middle, -light, -neutral and -attention, as for a dark screen.
    /// The same figure gives the same text.
    /// </remarks>
    public static string ToSvg(Figure figure) => ToSvg(figure, followsPage: true);

    /// <param name="figure">The figure.</param>
    /// <param name="followsPage">False for a picture that stands alone, where no page can rename its colors: it is smaller.</param>
    internal static string ToSvg(Figure figure, bool followsPage)
    {
        ArgumentNullException.ThrowIfNull(figure);
        var measure = new TextMeasure();
        var grid = new ChartGrid(figure, measure);
        var content = new List<object>();

        content.AddRange(grid.TitleLines.Select((line, i) =>
            Text(line, TextLeft, 20 + 20 * i, TextAnchor.Start, ChartColors.Ink, size: ChartGrid.TitleSize, isBold: true)));
        var models = Draw(figure, grid, measure);
        for (var i = 0; i < models.Length; i++) content.Add(Panel(figure, i, models[i], grid.Panels[i], measure));
        var height = grid.Bottom + 6;
        foreach (var entry in Legend(ChartKey.Of(figure), ref height, measure)) content.Add(entry);

        return Compose(figure, content, height, followsPage);
    }

    /// <summary>Panels that share a column share its margins, so that a time axis below another lines up with it.</summary>
    private static (PlotModel Model, string Svg)[] Draw(Figure figure, ChartGrid grid, TextMeasure measure)
    {
        (PlotModel, string) Draw(int i, double left, double right)
        {
            var model = OxyPanel.From(figure.Panels[i], left, right);
            return (model, SvgExporter.ExportToString(model, grid.Panels[i].Width, grid.Panels[i].Height, false, measure));
        }

        var all = Enumerable.Range(0, figure.Panels.Count).ToArray();
        var right = all.Select(i => ChartLabels.RoomAtEnd(figure, figure.Panels[i], measure)).ToArray();
        var left = all.Select(i => Draw(i, double.NaN, right[i]).Item1.ActualPlotMargins.Left + Indent(figure.Panels[i])).ToArray();
        double Widest(double[] margins, int column) => all.Where(i => i % figure.Columns == column).Max(i => margins[i]);
        return [.. all.Select(i => Draw(i, Widest(left, i % figure.Columns), Widest(right, i % figure.Columns)))];
    }

    /// <summary>Names of rows begin below the panel's title, not at the edge, where another font may cut their first letter.</summary>
    private static double Indent(Panel panel) => panel.YAxis.TickLabels is not null && panel.YAxis.Title.Length == 0 ? TextLeft : 0;

    private static XElement Panel(Figure figure, int index, (PlotModel Model, string Svg) drawn, ChartGrid.Box box, TextMeasure measure)
    {
        var panel = figure.Panels[index];
        var area = drawn.Model.PlotArea;
        var clipId = $"clip{index}";
        return new XElement(Svg + "g",
            new XAttribute("transform", $"translate({Number(box.Left)},{Number(box.Top)})"),
            string.IsNullOrEmpty(panel.Title) ? null : Text(panel.Title, TextLeft, -6, TextAnchor.Start, ChartColors.Ink, ChartGrid.PanelTitleSize, true),
            new XElement(Svg + "clipPath", new XAttribute("id", clipId),
                Rectangle(area.Left, area.Top - 1, area.Width, area.Height + 2)),
            Reduce(drawn.Svg, clipId),
            ChartLabels.Place(figure, panel, area.Width, area.Height, measure).Select(label =>
                Text(label.Text, area.Left + label.X, area.Top + label.Y + 4, label.Anchor, ChartColors.OfText(label.Tone), hasHalo: true)));
    }

    private static List<object> Legend(IReadOnlyList<ChartKey> entries, ref double height, TextMeasure measure)
    {
        var drawn = new List<object>();
        if (entries.Count == 0) return drawn;
        double left = TextLeft, top = height + LegendLine / 2;
        foreach (var entry in entries)
        {
            var width = SwatchWidth + 6 + measure.Width(entry.Name, ChartText.FontSize) + 22;
            if (left > TextLeft && left + width > ChartGrid.Width) (left, top) = (TextLeft, top + LegendLine);
            drawn.AddRange(Swatch(entry, left, top));
            drawn.Add(Text(entry.Name, left + SwatchWidth + 6, top + 4, TextAnchor.Start, ChartColors.Ink));
            left += width;
        }
        height = top + LegendLine / 2 + 4;
        return drawn;
    }

    private static IEnumerable<XElement> Swatch(ChartKey entry, double left, double middle)
    {
        if (entry.Band is { } band)
            yield return With(Rectangle(left, middle - 6, SwatchWidth, 12), ("fill", ChartColors.Of(band.Tone)), ("fill-opacity", Opacity(ChartColors.BandOpacity)));
        if (entry.Series is not { } series) yield break;

        var color = ChartColors.Of(series.Tone);
        var hasWhiskers = series.XWhiskers is not null || series.YWhiskers is not null;
        if (series.Pattern != LinePattern.None || hasWhiskers)
        {
            var isBar = hasWhiskers && series.Weight >= ChartColors.BarWeight;
            var line = With(new XElement(Svg + "path"), ("d", $"M{Number(left)},{Number(middle)}h{Number(SwatchWidth)}"), ("stroke", color),
                ("stroke-width", Number(hasWhiskers && !isBar ? Math.Min(series.Weight, 1.5) : series.Weight)));
            if (isBar) line = With(line, ("stroke-opacity", Opacity(ChartColors.BarOpacity)));
            if (ChartColors.Dashes(series.Pattern) is { Count: > 0 } dashes) line = With(line, ("stroke-dasharray", string.Join(',', dashes.Select(Number))));
            yield return line;
        }
        if (Marker(series.Marker, left + SwatchWidth / 2, middle) is not { } outline) yield break;
        var isRing = series.Marker == MarkerShape.Ring;
        var marker = With(new XElement(Svg + "path"), ("d", outline), ("fill", isRing ? ChartColors.Paper : color));
        yield return isRing ? With(marker, ("stroke", color), ("stroke-width", "1.5")) : marker;
    }

    private static string? Marker(MarkerShape shape, double x, double y)
    {
        var at = $"M{Number(x)},{Number(y)}";
        return shape switch
        {
            MarkerShape.Circle or MarkerShape.Ring => at + "m-4,0a4,4 0 1 0 8,0a4,4 0 1 0 -8,0z",
            MarkerShape.Square => at + "m-4,-4h8v8h-8z",
            MarkerShape.Triangle => at + "m-4,3.5h8l-4,-7z",
            MarkerShape.Diamond => at + "m-5,0l5,-5l5,5l-5,5z",
            MarkerShape.Tick => at + "m-1,-6h2v12h-2z",
            _ => null,
        };
    }

    private static string Compose(Figure figure, List<object> content, double height, bool followsPage)
    {
        var body = new XElement(Svg + "svg",
            new XAttribute("class", "transport-figure"),
            new XAttribute("viewBox", $"0 0 {Number(ChartGrid.Width)} {Number(height)}"),
            new XAttribute("width", Number(ChartGrid.Width)),
            new XAttribute("style", "max-width:100%;height:auto"),
            new XAttribute("role", "img"),
            new XAttribute("font-family", "Arial,Helvetica,'Liberation Sans',sans-serif"),
            new XAttribute("font-size", Number(ChartText.FontSize)),
            new XElement(Svg + "title", figure.Title),
            new XElement(Svg + "desc", figure.AltText),
            followsPage ? new XElement(Svg + "style", Recoloring()) : null,
            With(Rectangle(0, 0, ChartGrid.Width, height), ("fill", ChartColors.Paper)),
            content);

        // Ids must differ between the figures of one page, and be the same in every run: they carry a hash of the figure itself.
        var text = body.ToString(SaveOptions.DisableFormatting);
        var hash = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)))[..8];
        return text.Replace("id=\"clip", $"id=\"f{hash}-", StringComparison.Ordinal)
            .Replace("url(#clip", $"url(#f{hash}-", StringComparison.Ordinal);
    }

    /// <summary>Rules that let a page rename the colors; a renderer that knows no custom properties draws the attributes.</summary>
    private static string Recoloring() => string.Concat(ChartColors.All.Select(color =>
        Recoloring("fill", color.Name, color.Light) + Recoloring("stroke", color.Name, color.Light)));

    private static string Recoloring(string paint, string name, string color) =>
        $".transport-figure [{paint}=\"{color}\"]{{{paint}:var(--figure-{name},{color})}}";

    private static XElement Text(
        string text, double x, double y, TextAnchor anchor, string color, double? size = null, bool isBold = false, bool hasHalo = false)
    {
        var drawn = With(new XElement(Svg + "text", text), ("x", Number(x)), ("y", Number(y)), ("fill", color));
        if (anchor != TextAnchor.Start) drawn = With(drawn, ("text-anchor", anchor == TextAnchor.Middle ? "middle" : "end"));
        if (size is { } given) drawn = With(drawn, ("font-size", Number(given)));
        if (isBold) drawn = With(drawn, ("font-weight", "bold"));
        return hasHalo ? With(drawn, ("stroke", ChartColors.Paper), ("stroke-width", "3"), ("stroke-linejoin", "round"), ("paint-order", "stroke")) : drawn;
    }

    private static XElement Rectangle(double x, double y, double width, double height) =>
        With(new XElement(Svg + "rect"), ("x", Number(x)), ("y", Number(y)), ("width", Number(width)), ("height", Number(height)));

    private static XElement With(XElement element, params ReadOnlySpan<(string Name, string Value)> attributes)
    {
        foreach (var (name, value) in attributes) element.SetAttributeValue(name, value);
        return element;
    }

    private static string Opacity(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}
