using OxyPlot;

namespace Transport.Reporting;

/// <summary>
/// The width of a line of text in CSS pixels, from the Arial metrics that OxyPlot carries for PDF. Used as it is, that measure
/// gives points, a quarter too few, and no width at all to characters such as "−" or "≥"; both are mended here.
/// </summary>
internal sealed class TextMeasure : PdfRenderContext
{
    public const string Font = "Arial";
    private const double PixelsPerPoint = 4.0 / 3.0;
    private const double LineHeight = 1.25;

    public TextMeasure() : base(1, 1, OxyColors.Undefined)
    {
    }

    public double Width(string text, double fontSize, bool bold = false) =>
        MeasureText(text, Font, fontSize, bold ? FontWeights.Bold : FontWeights.Normal).Width;

    public override OxySize MeasureText(string text, string fontFamily, double fontSize, double fontWeight)
    {
        if (string.IsNullOrEmpty(text)) return OxySize.Empty;
        var lines = text.Split('\n');
        var width = lines.Max(line => base.MeasureText(Known(line), Font, fontSize, fontWeight).Width) * PixelsPerPoint;
        return new OxySize(width, lines.Length * LineHeight * fontSize);
    }

    /// <summary>Greedy lines no wider than asked; a single word may be wider.</summary>
    public IReadOnlyList<string> Wrap(string text, double width, double fontSize, bool bold)
    {
        var lines = new List<string>();
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (lines.Count > 0 && Width($"{lines[^1]} {word}", fontSize, bold) <= width) lines[^1] += $" {word}";
            else lines.Add(word);
        }
        return lines;
    }

    /// <summary>Characters beyond Latin-1 are about as wide as a plus sign.</summary>
    private static string Known(string text) => string.Concat(text.Select(c => c < 256 ? c : '+'));
}
