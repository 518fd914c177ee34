using System.Net;
using System.Text;

namespace Transport.Reporting;

/// <summary>A table of words and numbers that are already as they should be read.</summary>
/// <param name="Columns">Headings. A heading that begins with "#" (not shown) is of a column of numbers, set to the right.</param>
/// <param name="Rows">Rows, each as long as the headings. A line break in a cell begins a smaller second line.</param>
public sealed record ReportTable(IReadOnlyList<string> Columns, IReadOnlyList<IReadOnlyList<string>> Rows)
{
    // A translucent gray and no other color: the table follows light and dark.
    private const string Line = "border-bottom:1px solid #8884;background:none";

    /// <summary>What stands above the table; empty for nothing.</summary>
    public string Title { get; init; } = "";

    internal void AppendHtml(StringBuilder html)
    {
        html.Append("<div style=\"overflow-x:auto\"><table style=\"border-collapse:collapse;font-variant-numeric:tabular-nums;margin:0.4rem 0\">");
        if (Title.Length > 0)
        {
            html.Append("<caption style=\"text-align:left;font-weight:600;padding:0.2rem 0\">").Append(WebUtility.HtmlEncode(Title)).Append("</caption>");
        }

        html.Append("<thead><tr style=\"").Append(Line).Append("\">");
        for (var c = 0; c < Columns.Count; c++)
        {
            Cell("th scope=\"col\"", "th", c, Columns[c].TrimStart('#'));
        }

        html.Append("</tr></thead><tbody>");
        foreach (var row in Rows)
        {
            html.Append("<tr style=\"").Append(Line).Append("\">");
            for (var c = 0; c < Columns.Count; c++)
            {
                Cell("td", "td", c, row[c]);
            }

            html.Append("</tr>");
        }

        html.Append("</tbody></table></div>");

        void Cell(string open, string close, int column, string text) => html
            .Append('<').Append(open).Append(" style=\"text-align:").Append(Columns[column].StartsWith('#') ? "right;white-space:nowrap" : "left")
            .Append(";padding:0.15rem 1.1rem 0.15rem 0;vertical-align:top\">").Append(Lines(text)).Append("</").Append(close).Append('>');
    }

    // What follows a line break is the smaller second line of a cell: an interval below its median.
    private static string Lines(string text) => text.Split('\n') is [var first, var second]
        ? $"{WebUtility.HtmlEncode(first)}<br><small style=\"opacity:0.8\">{WebUtility.HtmlEncode(second)}</small>"
        : WebUtility.HtmlEncode(text);

    internal void AppendText(StringBuilder text)
    {
        if (Title.Length > 0)
        {
            text.AppendLine(Title);
        }

        var lines = Rows.Prepend(Columns)
            .Select(row => row.Select(cell => cell.TrimStart('#').Replace('\n', ' ')).ToArray())
            .ToList();
        var widths = Enumerable.Range(0, Columns.Count).Select(c => lines.Max(line => line[c].Length)).ToArray();
        foreach (var line in lines)
        {
            text.AppendLine(string.Join("  ", line.Select((cell, c) =>
                Columns[c].StartsWith('#') ? cell.PadLeft(widths[c]) : cell.PadRight(widths[c]))).TrimEnd());
        }
    }
}
