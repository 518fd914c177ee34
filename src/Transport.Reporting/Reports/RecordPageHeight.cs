using System.Globalization;
using System.Net;
using System.Text.RegularExpressions;

namespace Transport.Reporting;

/// <summary>How much paper the parts of a page of nights take, so that its picture gets what is left of one sheet.</summary>
/// <remarks>Letters to a line are those of the page's fonts in a browser, counted on the safe side.</remarks>
internal static partial class RecordPageHeight
{
    /// <summary>What one sheet holds by these counts, mm: they come out some 20 mm above the 275 mm that a browser fills, of which half is kept for fonts that run wider.</summary>
    public const double Paper = 284;

    private const double Line = 4.55;
    private const double SmallLine = 3.8;

    /// <summary>Of text and tables, mm.</summary>
    public static double Of(string html) => Block().Matches(html).Sum(block => Of(block.Groups["tag"].Value, block.Groups["class"].Value, block.Groups["inside"].Value));

    /// <summary>Of a picture as wide as the page, mm.</summary>
    public static double OfPicture(string svg) => ViewBox().Match(svg) is { Success: true } box
        ? 184 * double.Parse(box.Groups["height"].Value, CultureInfo.InvariantCulture) / double.Parse(box.Groups["width"].Value, CultureInfo.InvariantCulture) + 2
        : 0;

    private static double Of(string tag, string style, string inside) => (tag, style) switch
    {
        ("tr", _) => inside.Contains("<th", StringComparison.Ordinal) ? 2 * Line + 2.5 : Line + 0.9,
        ("p", "first") => Line * Lines(inside, 97) + 4.5,
        ("p", "small") => SmallLine * Lines(inside, 132) + 2.2,
        ("li", _) => Line * Lines(inside, 102) + 0.9,
        ("h1", _) => 9,
        _ => Line * Lines(inside, 104) + 2.4,
    };

    private static double Lines(string inside, int letters) => Math.Ceiling((double)WebUtility.HtmlDecode(Tag().Replace(inside, "")).Length / letters);

    [GeneratedRegex("<(?<tag>p|li|tr|h1)(?: class=\"(?<class>[a-z]*)\")?>(?<inside>.*?)</\\k<tag>>", RegexOptions.Singleline)]
    private static partial Regex Block();

    [GeneratedRegex("<[^>]*>")]
    private static partial Regex Tag();

    [GeneratedRegex("viewBox=\"0 0 (?<width>[0-9.]+) (?<height>[0-9.]+)\"")]
    private static partial Regex ViewBox();
}
