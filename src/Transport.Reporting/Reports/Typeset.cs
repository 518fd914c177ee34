using System.Net;
using System.Text.RegularExpressions;

namespace Transport.Reporting;

/// <summary>Words as they are set in print: escaped, a number never parted from its unit, apostrophes instead of tick marks.</summary>
internal static partial class Typeset
{
    public static string Html(string words) =>
        WebUtility.HtmlEncode(Apostrophe().Replace(BeforeNumber().Replace(BeforeUnit().Replace(words, "\u00a0"), "\u00a0"), "’"))
            .Replace("&#160;", "&nbsp;", StringComparison.Ordinal);

    /// <summary>Words in a cell, where a narrow column would break a date at its hyphens and an interval at its spaces.</summary>
    public static string Cell(string words) => Whole(Html(words));

    /// <summary>Escaped words with every date and every interval kept on one line: "2025-03-18", "03-18" where the year has been said, and "1168 (845 to 1490)".</summary>
    public static string Whole(string html) => Date().Replace(
        Interval().Replace(html, interval => interval.Value.Replace(' ', '\u00a0')), "<span style=\"white-space:nowrap\">$0</span>");

    [GeneratedRegex(@"[+−]?\d[\d.]* \([+−]?\d[\d.]* to [+−]?\d[\d.]*\)")]
    private static partial Regex Interval();

    [GeneratedRegex(@"(?<![\w-])(?:\d{4}-)?\d{2}-\d{2}(?![\w-])")]
    private static partial Regex Date();

    // "2.27 %", "1.73 m²", "9 h", "4 × 2.0 L", "10 in 10".
    [GeneratedRegex(@"(?<=\d) (?=(?:%|×|±|(?:[mµ]?mol|mg|g|kg|[mµd]?L|m²|cm|mmHg|h|min|kcal|SD)\b))")]
    private static partial Regex BeforeUnit();

    // What leans on the number after it.
    [GeneratedRegex(@"(?<=[×±]|\babout|\bD/P creatinine|\bKt/V|\bper) (?=[\d−])")]
    private static partial Regex BeforeNumber();

    [GeneratedRegex(@"(?<=\w)'(?=\w)")]
    private static partial Regex Apostrophe();
}
