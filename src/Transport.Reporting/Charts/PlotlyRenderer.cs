using System.Globalization;
using Plotly.NET;
using PlotlyChart = Plotly.NET.CSharp.Chart;
using Properties = System.Collections.Generic.Dictionary<string, object>;

namespace Transport.Reporting;

/// <summary>Draws a figure as an interactive Plotly chart: a small specification, without the script that shows it.</summary>
/// <remarks>
/// Plotly.NET makes, joins and writes the traces; its default template, 8 kB in every chart, stays out. Property names are those of
/// the Plotly reference.
/// </remarks>
public static class PlotlyRenderer
{
    private const double TopOfArea = 10;
    private const double BottomOfArea = 48;
    private const double LegendLine = 20;

    private static readonly string[] UnusedButtons = ["select2d", "lasso2d", "autoScale2d", "zoomIn2d", "zoomOut2d"];

    /// <summary>JSON with <c>data</c>, <c>layout</c> and <c>config</c>, as Plotly.newPlot takes them; about 2 to 40 kB.</summary>
    /// <remarks>
    /// Numbers have five significant digits. The alternative text is <c>layout.meta</c>. No "&lt;" occurs, so that the text can
    /// stand in a script element. The same figure gives the same text.
    /// </remarks>
    public static string ToSpec(Figure figure)
    {
        ArgumentNullException.ThrowIfNull(figure);
        var measure = new TextMeasure();
        var grid = new ChartGrid(figure, measure);
        var chart = GenericChart.setConfig(Buttons(), GenericChart.setLayout(Layout(figure, grid, measure), Traces(figure)));
        return GenericChart.toJson(chart).Replace("<", "\\u003c", StringComparison.Ordinal);
    }

    private static GenericChart Traces(Figure figure)
    {
        // A name enters the legend once, with the first trace that carries it.
        var unnamed = ChartKey.Of(figure).Select((entry, rank) => (entry.Name, rank)).ToDictionary(e => e.Name, e => e.rank);
        int? RankOf(string name) => unnamed.Remove(name, out var rank) ? rank : null;

        var traces = new List<GenericChart>();
        for (var i = 0; i < figure.Panels.Count; i++)
        {
            var panel = figure.Panels[i];
            // A band whose line has the same name leaves the legend to the line, which shows how it is drawn.
            foreach (var band in panel.Bands) traces.Add(Trace(band, i, panel.Series.Any(s => s.Name == band.Name) ? null : RankOf(band.Name)));
            foreach (var series in panel.Series) traces.Add(Trace(series, panel, i, RankOf(series.Name)));
            foreach (var mark in panel.Marks.Where(IsRing)) traces.Add(Ring(mark, i));
        }
        return PlotlyChart.Combine(traces);
    }

    private static GenericChart Trace(ShadedBand band, int panel, int? legendRank) => Trace(
        band.Name, [.. band.X, .. band.X.Reverse()], [.. band.Lower, .. band.Upper.Reverse()], StyleParam.Mode.None, panel, legendRank,
        new Properties
        {
            ["fill"] = "toself",
            ["fillcolor"] = Wash(band.Tone, ChartColors.BandOpacity),
            ["hoverinfo"] = "skip",
        });

    /// <summary>A trace and not a shape: a shape of fixed size is misplaced on a logarithmic axis.</summary>
    private static GenericChart Ring(Mark mark, int panel) => Trace(
        mark.Label, [mark.X!.Value.Lower], [mark.Y!.Value.Lower], StyleParam.Mode.Markers, panel, null,
        new Properties
        {
            ["hoverinfo"] = "skip",
            ["marker"] = new Properties
            {
                ["symbol"] = "circle-open",
                ["size"] = 16,
                ["color"] = ChartColors.Of(mark.Tone),
                ["line"] = new Properties { ["width"] = 1.5 },
            },
        });

    private static bool IsRing(Mark mark) => mark is { X: not null, Y: not null, IsNote: false };

    private static GenericChart Trace(Series series, Panel panel, int index, int? legendRank)
    {
        var color = ChartColors.Of(series.Tone);
        var hasLine = series.Pattern != LinePattern.None;
        var hasMarker = series.Marker != MarkerShape.None;
        var style = new Properties
        {
            ["cliponaxis"] = !hasMarker,
            ["hovertemplate"] = series.Notes is null
                ? $"{Hover("x", panel.XAxis)}<br>{Hover("y", panel.YAxis)}<extra>{Escaped(series.Name)}</extra>"
                : "%{text}<extra></extra>",
        };
        if (hasLine)
            style["line"] = new Properties { ["color"] = color, ["width"] = series.Weight, ["dash"] = Dash(series.Pattern) };
        if (hasMarker)
            style["marker"] = Marker(series.Marker, color);
        if (series.Notes is { } notes) style["text"] = notes.Select(Escaped).ToArray();
        if (series.XWhiskers is { } across) style["error_x"] = Whiskers(series, series.X, across);
        if (series.YWhiskers is { } along) style["error_y"] = Whiskers(series, series.Y, along);
        var mode = (hasLine, hasMarker) switch
        {
            (true, true) => StyleParam.Mode.Lines_Markers,
            (true, false) => StyleParam.Mode.Lines,
            _ => StyleParam.Mode.Markers,
        };
        return Trace(series.Name, series.X, series.Y, mode, index, legendRank, style);
    }

    private static GenericChart Trace(
        string name, IReadOnlyList<double> x, IReadOnlyList<double> y, StyleParam.Mode mode, int panel, int? legendRank, Properties style)
    {
        var chart = PlotlyChart.Scatter<double, double, string>(
            x.Select(Rounded).ToArray(), y.Select(Rounded).ToArray(), mode, Name: Escaped(name), ShowLegend: legendRank is not null, UseDefaults: false);
        var trace = GenericChart.getTraces(chart)[0];
        trace.RemoveProperty("line");
        trace.RemoveProperty("marker");
        trace.SetProperty("legendgroup", Escaped(name));
        if (legendRank is { } rank) trace.SetProperty("legendrank", rank);
        trace.SetProperty("xaxis", AxisName("x", panel));
        trace.SetProperty("yaxis", AxisName("y", panel));
        foreach (var (property, value) in style) trace.SetProperty(property, value);
        return chart;
    }

    private static Properties Marker(MarkerShape shape, string color) => new()
    {
        ["symbol"] = shape switch
        {
            MarkerShape.Square => "square",
            MarkerShape.Triangle => "triangle-up",
            MarkerShape.Diamond => "diamond",
            MarkerShape.Tick => "line-ns",
            _ => "circle",
        },
        ["size"] = shape == MarkerShape.Tick ? 13 : 8,
        ["color"] = shape == MarkerShape.Ring ? ChartColors.Paper : color,
        ["line"] = new Properties
        {
            ["color"] = color,
            ["width"] = shape switch { MarkerShape.Tick => 2, MarkerShape.Ring => 1.5, _ => 0 },
        },
    };

    private static Properties Whiskers(Series series, IReadOnlyList<double> values, IReadOnlyList<Extent> whiskers)
    {
        var isBar = series.Weight >= ChartColors.BarWeight;
        return new Properties
        {
            ["type"] = "data",
            ["symmetric"] = false,
            ["array"] = whiskers.Select((w, i) => Rounded(w.Upper - values[i])).ToArray(),
            ["arrayminus"] = whiskers.Select((w, i) => Rounded(values[i] - w.Lower)).ToArray(),
            ["color"] = isBar ? Wash(series.Tone, ChartColors.BarOpacity) : ChartColors.Of(series.Tone),
            ["thickness"] = isBar ? series.Weight : Math.Min(series.Weight, 1.5),
            ["width"] = 0,
        };
    }

    private static Layout Layout(Figure figure, ChartGrid grid, TextMeasure measure)
    {
        var areas = Areas(figure, grid, measure);
        var height = grid.Bottom + 6 + LegendLine * LegendLines(figure, measure);
        var (left, right) = (areas.Min(a => a.Left), areas.Max(a => a.Left + a.Width));
        var (top, bottom) = (areas.Min(a => a.Top), areas.Max(a => a.Top + a.Height));

        var layout = new Layout();
        layout.SetProperty("meta", Escaped(figure.AltText));
        layout.SetProperty("height", Math.Round(height));
        layout.SetProperty("autosize", true);
        layout.SetProperty("margin", new Properties
        {
            ["l"] = Math.Round(left),
            ["r"] = Math.Round(ChartGrid.Width - right),
            ["t"] = Math.Round(top),
            ["b"] = Math.Round(height - bottom),
        });
        layout.SetProperty("paper_bgcolor", ChartColors.Paper);
        layout.SetProperty("plot_bgcolor", ChartColors.Paper);
        layout.SetProperty("font", new Properties
        {
            ["family"] = "Arial, Helvetica, sans-serif",
            ["size"] = ChartText.FontSize,
            ["color"] = ChartColors.Ink,
        });
        layout.SetProperty("hovermode", "closest");
        layout.SetProperty("hoverlabel", new Properties
        {
            ["bgcolor"] = ChartColors.Paper,
            ["bordercolor"] = ChartColors.Axis,
            ["font"] = new Properties { ["color"] = ChartColors.Ink },
        });
        layout.SetProperty("title", new Properties
        {
            ["text"] = $"<b>{string.Join("<br>", grid.TitleLines.Select(Escaped))}</b>",
            ["font"] = new Properties { ["size"] = ChartGrid.TitleSize },
            ["x"] = 0,
            ["xanchor"] = "left",
            ["y"] = 1,
            ["yanchor"] = "top",
            ["pad"] = new Properties { ["l"] = 8, ["t"] = 8 + 10 * (grid.TitleLines.Count - 1) },
        });
        layout.SetProperty("legend", new Properties
        {
            ["orientation"] = "h",
            ["xref"] = "container",
            ["yref"] = "container",
            ["x"] = 0,
            ["y"] = 0,
            ["yanchor"] = "bottom",
        });

        var annotations = new List<object>();
        var shapes = new List<object>();
        for (var i = 0; i < figure.Panels.Count; i++)
        {
            var panel = figure.Panels[i];
            var area = areas[i];
            double[] across = [Rounded((area.Left - left) / (right - left)), Rounded((area.Left + area.Width - left) / (right - left))];
            double[] up = [Rounded((bottom - area.Top - area.Height) / (bottom - top)), Rounded((bottom - area.Top) / (bottom - top))];
            layout.SetProperty(AxisName("xaxis", i), XAxis(panel.XAxis, ChartScale.OfX(panel), AxisName("y", i), across, panel.YAxis.TickValues is not null && panel.XAxis.TickValues is null));
            layout.SetProperty(AxisName("yaxis", i), YAxis(panel.YAxis, ChartScale.OfY(panel), AxisName("x", i), up));
            if (!string.IsNullOrEmpty(panel.Title)) annotations.Add(PanelTitle(panel.Title, across[0], up[1], grid.Panels[i].Left + 8 - area.Left));
            annotations.AddRange(ChartLabels.Place(figure, panel, area.Width, area.Height, measure).Select(label => Label(label, panel, i, area)));
            shapes.AddRange(panel.Marks.Where(m => m.X is null || m.Y is null).Select(m => Shape(m, i)));
        }
        if (annotations.Count > 0) layout.SetProperty("annotations", annotations);
        if (shapes.Count > 0) layout.SetProperty("shapes", shapes);
        return layout;
    }

    private static Properties XAxis(Axis axis, ChartScale scale, string anchor, double[] domain, bool besideNames)
    {
        var drawn = AxisOf(axis, scale, anchor, domain);
        // Beside names the numbers are read downwards.
        drawn["showgrid"] = besideNames;
        drawn["zeroline"] = besideNames && !axis.IsLogarithmic;
        drawn["tickangle"] = 0;
        drawn["automargin"] = true;
        if (axis.TickValues is null)
        {
            drawn["showline"] = true;
            drawn["linecolor"] = ChartColors.Axis;
            drawn["ticks"] = "outside";
            drawn["ticklen"] = 4;
            drawn["tickcolor"] = ChartColors.Axis;
            if (drawn.ContainsKey("nticks")) drawn["nticks"] = 6;
        }
        return drawn;
    }

    private static Properties YAxis(Axis axis, ChartScale scale, string anchor, double[] domain)
    {
        var drawn = AxisOf(axis, scale, anchor, domain);
        drawn["showgrid"] = axis.TickValues is null;
        drawn["zeroline"] = axis.TickValues is null && !axis.IsLogarithmic;
        drawn["automargin"] = true;
        drawn["ticks"] = "outside";
        drawn["ticklen"] = 4;
        drawn["tickcolor"] = "rgba(0,0,0,0)";
        return drawn;
    }

    private static Properties AxisOf(Axis axis, ChartScale scale, string anchor, double[] domain)
    {
        var drawn = new Properties
        {
            ["anchor"] = anchor,
            ["domain"] = domain,
            ["type"] = scale.IsLogarithmic ? "log" : "linear",
            ["range"] = new[] { OnAxis(scale.Range.Lower, scale), OnAxis(scale.Range.Upper, scale) },
            ["gridcolor"] = ChartColors.Grid,
            ["zerolinecolor"] = ChartColors.Axis,
            ["hoverformat"] = ".4~g",
            ["exponentformat"] = "none",
        };
        if (axis.Title.Length > 0)
        {
            var title = new Properties { ["text"] = Escaped(axis.Title), ["font"] = new Properties { ["size"] = ChartText.FontSize } };
            // Without tick labels there is nothing to stand off from, and Plotly would put the title above the chart.
            if (axis.TickLabels is not { Count: 0 }) title["standoff"] = 8;
            drawn["title"] = title;
        }
        if (axis.TickValues is { } ticks)
        {
            drawn["tickvals"] = ticks;
            drawn["ticktext"] = axis.TickLabels!.Select(Escaped).ToArray();
            drawn["fixedrange"] = true;
            drawn["showticklabels"] = ticks.Count > 0;
        }
        else if (axis.Unit is "h" or "min" && !scale.IsLogarithmic) drawn["dtick"] = scale.Step(axis.Unit);
        else if (scale.SpansDecades) drawn["dtick"] = 1;
        else drawn["nticks"] = scale.HasFewTicks ? 4 : 8;
        return drawn;
    }

    private static Properties PanelTitle(string title, double x, double y, double shift) => new()
    {
        ["text"] = $"<b>{Escaped(title)}</b>",
        ["font"] = new Properties { ["size"] = ChartGrid.PanelTitleSize },
        ["xref"] = "paper",
        ["yref"] = "paper",
        ["x"] = x,
        ["y"] = y,
        ["xshift"] = Math.Round(shift),
        ["yshift"] = TopOfArea,
        ["xanchor"] = "left",
        ["yanchor"] = "bottom",
        ["showarrow"] = false,
    };

    /// <summary>A label stays with its value when the chart is resized or zoomed; what lies outside the axes is a fixed shift.</summary>
    private static Properties Label(ChartText label, Panel panel, int index, ChartGrid.Box area)
    {
        var (x, y) = (ChartScale.OfX(panel), ChartScale.OfY(panel));
        var right = Math.Clamp(label.X / area.Width, 0.0001, 0.9999);
        var down = Math.Clamp(label.Y / area.Height, 0.0001, 0.9999);
        return new Properties
        {
            ["text"] = Escaped(label.Text),
            ["font"] = new Properties { ["color"] = ChartColors.OfText(label.Tone) },
            ["xref"] = AxisName("x", index),
            ["yref"] = AxisName("y", index),
            ["x"] = OnAxis(x.Value(right), x),
            ["y"] = OnAxis(y.Value(1 - down), y),
            ["xshift"] = Math.Round(label.X - right * area.Width),
            ["yshift"] = Math.Round(down * area.Height - label.Y),
            ["xanchor"] = label.Anchor switch { TextAnchor.Start => "left", TextAnchor.Middle => "center", _ => "right" },
            ["yanchor"] = "middle",
            ["showarrow"] = false,
            ["borderpad"] = 0,
        };
    }

    private static Properties Shape(Mark mark, int index)
    {
        var color = ChartColors.Of(mark.Tone);
        var shape = new Properties
        {
            ["xref"] = mark.X is null ? AxisName("x", index) + " domain" : AxisName("x", index),
            ["yref"] = mark.Y is null ? AxisName("y", index) + " domain" : AxisName("y", index),
        };
        var isLine = (mark.X ?? mark.Y)!.Value.IsPoint;
        shape["type"] = isLine ? "line" : "rect";
        shape["layer"] = "below";
        (shape["x0"], shape["x1"]) = (Rounded(mark.X?.Lower ?? 0), Rounded(mark.X?.Upper ?? 1));
        (shape["y0"], shape["y1"]) = (Rounded(mark.Y?.Lower ?? 0), Rounded(mark.Y?.Upper ?? 1));
        shape["line"] = new Properties { ["color"] = color, ["width"] = isLine ? 1 : 0 };
        if (!isLine) shape["fillcolor"] = Wash(mark.Tone, ChartColors.BandOpacity);
        return shape;
    }

    private static Config Buttons()
    {
        var config = new Config();
        config.SetProperty("responsive", true);
        config.SetProperty("displaylogo", false);
        config.SetProperty("modeBarButtonsToRemove", UnusedButtons);
        return config;
    }

    /// <summary>Where the plot areas lie on a page of the usual width; panels of one column share their margins.</summary>
    private static ChartGrid.Box[] Areas(Figure figure, ChartGrid grid, TextMeasure measure)
    {
        var all = Enumerable.Range(0, figure.Panels.Count).ToArray();
        double Widest(int column, Func<Panel, double> margin) =>
            all.Where(i => i % figure.Columns == column).Max(i => margin(figure.Panels[i]));
        return
        [
            .. all.Select(i =>
            {
                var box = grid.Panels[i];
                var left = Widest(i % figure.Columns, p => LeftMargin(p, measure));
                var right = Widest(i % figure.Columns, p => ChartLabels.RoomAtEnd(figure, p, measure));
                return new ChartGrid.Box(
                    box.Left + left, box.Top + TopOfArea, box.Width - left - right, box.Height - TopOfArea - BottomOfArea);
            }),
        ];
    }

    private static double LeftMargin(Panel panel, TextMeasure measure)
    {
        var scale = ChartScale.OfY(panel);
        var labels = panel.YAxis.TickLabels ??
            [.. new[] { scale.Range.Lower, scale.Range.Upper, scale.Step(panel.YAxis.Unit) }.Select(v => v.ToString("G3", CultureInfo.InvariantCulture))];
        var title = panel.YAxis.Title.Length > 0 ? 28 : 4;
        return labels.Max(label => label.Split('\n').Max(line => measure.Width(line, ChartText.FontSize))) + 8 + title;
    }

    private static int LegendLines(Figure figure, TextMeasure measure)
    {
        var wide = ChartKey.Of(figure).Sum(entry => measure.Width(entry.Name, ChartText.FontSize) + 56);
        return (int)Math.Ceiling(wide / ChartGrid.Width);
    }

    private static string AxisName(string letter, int panel) =>
        panel == 0 ? letter : letter + (panel + 1).ToString(CultureInfo.InvariantCulture);

    private static string Hover(string letter, Axis axis) =>
        axis.TickLabels is not null ? "%{" + letter + "}"
        : axis.Unit.Length == 0 ? $"{Escaped(axis.Label)} %{{{letter}}}"
        : $"{Escaped(axis.Label)} %{{{letter}}} {Escaped(axis.Unit)}";

    private static string Dash(LinePattern pattern) =>
        ChartColors.Dashes(pattern) is { Count: > 0 } dashes
            ? string.Join(',', dashes.Select(d => d.ToString(CultureInfo.InvariantCulture) + "px"))
            : "solid";

    /// <summary>The color with its opacity as the last two digits.</summary>
    private static string Wash(Tone tone, double opacity) =>
        ChartColors.Of(tone) + ((int)Math.Round(255 * opacity)).ToString("x2", CultureInfo.InvariantCulture);

    /// <summary>Ranges and labels of a logarithmic axis are given as powers of ten.</summary>
    private static double OnAxis(double value, ChartScale scale) => Rounded(scale.IsLogarithmic ? Math.Log10(value) : value);

    /// <summary>Plotly reads a few HTML tags in texts; ours are words, except that a line break stays one.</summary>
    private static string Escaped(string text) => text
        .Replace("&", "&amp;", StringComparison.Ordinal)
        .Replace("<", "&lt;", StringComparison.Ordinal)
        .Replace(">", "&gt;", StringComparison.Ordinal)
        .Replace("\n", "<br>", StringComparison.Ordinal);

    private static double Rounded(double value) =>
        double.Parse(value.ToString("G5", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
}
