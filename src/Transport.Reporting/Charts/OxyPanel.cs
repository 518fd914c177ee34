using System.Globalization;
using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;
using OxyPlot.Series;

namespace Transport.Reporting;

/// <summary>A panel as an OxyPlot model: axes, bands, series and marks, without any of the labels, which are placed later.</summary>
internal static class OxyPanel
{
    private static readonly ScreenPoint[] TickOutline = [new(-0.25, -1.6), new(0.25, -1.6), new(0.25, 1.6), new(-0.25, 1.6)];

    public static PlotModel From(Panel panel, double leftMargin, double rightMargin)
    {
        var model = new PlotModel
        {
            Culture = CultureInfo.InvariantCulture,
            DefaultFont = TextMeasure.Font,
            DefaultFontSize = ChartText.FontSize,
            TextColor = Color(ChartColors.Ink),
            PlotAreaBorderThickness = new OxyThickness(0),
            Padding = new OxyThickness(0),
            PlotMargins = new OxyThickness(leftMargin, 10, rightMargin, double.NaN),
        };
        var x = ChartScale.OfX(panel);
        var y = ChartScale.OfY(panel);
        model.Axes.Add(XAxis(panel.XAxis, x));
        model.Axes.Add(YAxis(panel.YAxis, y));

        foreach (var mark in panel.Marks.Where(m => !m.IsNote)) model.Annotations.Add(Drawn(mark));
        if (!y.IsLogarithmic && panel.YAxis.TickValues is null && y.Range is { Lower: < 0, Upper: > 0 })
            model.Annotations.Add(ZeroLine());
        foreach (var band in panel.Bands) model.Series.Add(Drawn(band));
        foreach (var series in panel.Series)
        {
            foreach (var whiskers in Whiskers(series)) model.Series.Add(whiskers);
            model.Series.Add(Drawn(series));
        }
        return model;
    }

    private static OxyPlot.Axes.Axis XAxis(Axis axis, ChartScale scale)
    {
        var drawn = Scaled(axis, scale, AxisPosition.Bottom);
        drawn.TickStyle = axis.TickValues is null ? TickStyle.Outside : TickStyle.None;
        drawn.AxislineStyle = axis.TickValues is null ? LineStyle.Solid : LineStyle.None;
        drawn.MajorTickSize = 4;
        drawn.AxisTickToLabelDistance = 2;
        drawn.AxisTitleDistance = 2;
        drawn.MajorGridlineStyle = LineStyle.None;
        return drawn;
    }

    private static OxyPlot.Axes.Axis YAxis(Axis axis, ChartScale scale)
    {
        var drawn = Scaled(axis, scale, AxisPosition.Left);
        drawn.TickStyle = TickStyle.None;
        drawn.MajorTickSize = 0;
        drawn.AxisTitleDistance = 8;
        return drawn;
    }

    private static OxyPlot.Axes.Axis Scaled(Axis axis, ChartScale scale, AxisPosition position)
    {
        OxyPlot.Axes.Axis drawn = scale.IsLogarithmic ? new LogarithmicAxis() : new LinearAxis { MajorStep = scale.Step(axis.Unit) };
        drawn.Position = position;
        drawn.Title = axis.Title.Length == 0 ? null : axis.Title;
        drawn.Minimum = scale.Range.Lower;
        drawn.Maximum = scale.Range.Upper;
        drawn.MinimumPadding = drawn.MaximumPadding = 0;
        drawn.MinorTickSize = 0;
        drawn.AxislineColor = drawn.TicklineColor = Color(ChartColors.Axis);
        drawn.MajorGridlineColor = Color(ChartColors.Grid);
        drawn.MajorGridlineThickness = 1;
        drawn.MajorGridlineStyle = LineStyle.Solid;
        drawn.LabelFormatter = Number;
        if (axis.TickValues is { } ticks)
        {
            drawn.MajorStep = ticks.Count > 1 ? ticks[1] - ticks[0] : 1;
            drawn.MajorGridlineStyle = LineStyle.None;
            drawn.LabelFormatter = value =>
            {
                var at = Enumerable.Range(0, ticks.Count).FirstOrDefault(i => Math.Abs(ticks[i] - value) < 1e-6, -1);
                return at < 0 ? "" : axis.TickLabels![at];
            };
        }
        return drawn;
    }

    /// <summary>Six significant digits, without an exponent wherever the number is of a readable size.</summary>
    private static string Number(double value)
    {
        var text = Math.Abs(value) switch
        {
            < 1e-12 => "0",
            >= 1e-7 and < 1e9 => ((decimal)value).ToString("0.############", CultureInfo.InvariantCulture),
            _ => value.ToString("G6", CultureInfo.InvariantCulture),
        };
        return text.Replace('-', '−');
    }

    private static AreaSeries Drawn(ShadedBand band)
    {
        var area = new AreaSeries { Color = OxyColors.Transparent, Color2 = OxyColors.Transparent, Fill = Wash(band.Tone), LineStyle = LineStyle.None };
        for (var i = 0; i < band.X.Count; i++)
        {
            area.Points.Add(new DataPoint(band.X[i], band.Lower[i]));
            area.Points2.Add(new DataPoint(band.X[i], band.Upper[i]));
        }
        return area;
    }

    private static LineSeries Drawn(Series series)
    {
        var line = new LineSeries
        {
            Color = Color(ChartColors.Of(series.Tone)),
            StrokeThickness = series.Weight,
            LineStyle = series.Pattern == LinePattern.None ? LineStyle.None : LineStyle.Solid,
            LineJoin = LineJoin.Round,
            MinimumSegmentLength = 1,
            MarkerSize = 4,
            MarkerType = series.Marker switch
            {
                MarkerShape.None => MarkerType.None,
                MarkerShape.Circle or MarkerShape.Ring => MarkerType.Circle,
                MarkerShape.Square => MarkerType.Square,
                MarkerShape.Triangle => MarkerType.Triangle,
                MarkerShape.Diamond => MarkerType.Diamond,
                _ => MarkerType.Custom,
            },
            MarkerFill = Color(series.Marker == MarkerShape.Ring ? ChartColors.Paper : ChartColors.Of(series.Tone)),
        };
        if (ChartColors.Dashes(series.Pattern) is { Count: > 0 } dashes) line.Dashes = [.. dashes];
        if (series.Marker == MarkerShape.Ring)
        {
            line.MarkerStroke = Color(ChartColors.Of(series.Tone));
            line.MarkerStrokeThickness = 1.5;
        }
        if (series.Marker == MarkerShape.Tick) line.MarkerOutline = TickOutline;
        for (var i = 0; i < series.X.Count; i++) line.Points.Add(new DataPoint(series.X[i], series.Y[i]));
        return line;
    }

    private static IEnumerable<LineSeries> Whiskers(Series series)
    {
        LineSeries Line(double x1, double y1, double x2, double y2)
        {
            var bar = series.Weight >= ChartColors.BarWeight;
            var line = new LineSeries
            {
                Color = bar ? OxyColor.FromAColor((byte)(255 * ChartColors.BarOpacity), Color(ChartColors.Of(series.Tone))) : Color(ChartColors.Of(series.Tone)),
                StrokeThickness = bar ? series.Weight : Math.Min(series.Weight, 1.5),
            };
            line.Points.AddRange([new DataPoint(x1, y1), new DataPoint(x2, y2)]);
            return line;
        }

        for (var i = 0; i < series.X.Count; i++)
        {
            if (series.XWhiskers is { } across) yield return Line(across[i].Lower, series.Y[i], across[i].Upper, series.Y[i]);
            if (series.YWhiskers is { } along) yield return Line(series.X[i], along[i].Lower, series.X[i], along[i].Upper);
        }
    }

    private static Annotation Drawn(Mark mark) => (mark.X, mark.Y) switch
    {
        ({ IsPoint: true } x, null) => Line(mark, LineAnnotationType.Vertical, x.Lower),
        (null, { IsPoint: true } y) => Line(mark, LineAnnotationType.Horizontal, y.Lower),
        ({ } x, null) => new RectangleAnnotation { MinimumX = x.Lower, MaximumX = x.Upper, Fill = Wash(mark.Tone), Layer = AnnotationLayer.BelowSeries },
        (null, { } y) => new RectangleAnnotation { MinimumY = y.Lower, MaximumY = y.Upper, Fill = Wash(mark.Tone), Layer = AnnotationLayer.BelowSeries },
        ({ } x, { } y) => new PointAnnotation
        {
            X = x.Lower,
            Y = y.Lower,
            Size = 8,
            Shape = MarkerType.Circle,
            Fill = OxyColors.Transparent,
            Stroke = Color(ChartColors.Of(mark.Tone)),
            StrokeThickness = 1.5,
        },
        _ => throw new InvalidOperationException($"Mark \"{mark.Label}\" stands nowhere."),
    };

    private static LineAnnotation Line(Mark mark, LineAnnotationType type, double at) => new()
    {
        Type = type,
        X = at,
        Y = at,
        Color = Color(ChartColors.Of(mark.Tone)),
        StrokeThickness = 1,
        LineStyle = LineStyle.Solid,
        Layer = AnnotationLayer.BelowSeries,
    };

    private static LineAnnotation ZeroLine() => new()
    {
        Type = LineAnnotationType.Horizontal,
        Y = 0,
        Color = Color(ChartColors.Axis),
        StrokeThickness = 1,
        LineStyle = LineStyle.Solid,
        Layer = AnnotationLayer.BelowSeries,
    };

    private static OxyColor Color(string hex) => OxyColor.Parse(hex);

    private static OxyColor Wash(Tone tone) => OxyColor.FromAColor((byte)(255 * ChartColors.BandOpacity), Color(ChartColors.Of(tone)));
}
