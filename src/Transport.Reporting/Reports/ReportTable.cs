using System.Text;

namespace Transport.Reporting;

/// <summary>A table of words and numbers that are already as they should be read.</summary>
/// <param name="Columns">Headings. A heading that begins with "#" (not shown) is of a column of numbers, set to the right. One that
/// begins with "^" is of words that stand on a line of their own above the row, so that they have room on any screen.</param>
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
            html.Append("<caption style=\"text-align:left;font-weight:600;padding:0.2rem 0\">").Append(Typeset.Html(Title)).Append("</caption>");
        }

        var leads = Columns.Select(IsLead).ToArray();
        html.Append("<thead><tr style=\"").Append(Line).Append("\">");
        for (var c = 0; c < Columns.Count; c++)
        {
            if (!leads[c])
            {
                Cell("th scope=\"col\"", "th", c, Name(Columns[c]));
            }
        }

        html.Append("</tr></thead>").Append(leads.Contains(true) ? "" : "<tbody>");
        foreach (var row in Rows)
        {
            if (leads.Contains(true))
            {
                html.Append("<tbody style=\"break-inside:avoid\"><tr style=\"border:0\"><th scope=\"rowgroup\" colspan=\"").Append(leads.Count(lead => !lead))
                    .Append("\" style=\"text-align:left;font-weight:400;color:inherit;padding:0.4rem 0 0\">")
                    .AppendJoin(' ', row.Where((_, c) => leads[c]).Select((cell, i) => i == 0 ? $"<strong>{Typeset.Html(cell)}</strong>&ensp;" : Typeset.Html(cell)))
                    .Append("</th></tr>");
            }

            html.Append("<tr style=\"").Append(Line).Append("\">");
            for (var c = 0; c < Columns.Count; c++)
            {
                if (!leads[c])
                {
                    Cell("td", "td", c, row[c]);
                }
            }

            html.Append("</tr>").Append(leads.Contains(true) ? "</tbody>" : "");
        }

        html.Append(leads.Contains(true) ? "" : "</tbody>").Append("</table></div>");

        void Cell(string open, string close, int column, string text) => html
            .Append('<').Append(open).Append(" style=\"text-align:").Append(Columns[column].StartsWith('#') ? "right;white-space:nowrap" : "left")
            .Append(";padding:0.15rem ").Append(column == Columns.Count - 1 ? "0" : "clamp(0.5rem,2vw,1.1rem)").Append(" 0.15rem 0;vertical-align:top\">")
            .Append(Lines(text)).Append("</").Append(close).Append('>');
    }

    private static bool IsLead(string heading) => heading.StartsWith('^');

    private static string Name(string heading) => heading.TrimStart('#', '^');

    // What follows a line break is the smaller second line of a cell: an interval below its median.
    private static string Lines(string text) => text.Split('\n') is [var first, var second]
        ? $"{Typeset.Cell(first)}<br><small style=\"opacity:0.8\">{Typeset.Cell(second)}</small>"
        : Typeset.Cell(text);

    internal void AppendText(StringBuilder text)
    {
        if (Title.Length > 0)
        {
            text.AppendLine(Title);
        }

        var lines = Rows.Prepend(Columns)
            .Select(row => row.Select(cell => (ReferenceEquals(row, Columns) ? Name(cell) : cell).Replace('\n', ' ')).ToArray())
            .ToList();
        var widths = Enumerable.Range(0, Columns.Count).Select(c => lines.Max(line => line[c].Length)).ToArray();
        foreach (var line in lines)
        {
            text.AppendLine(string.Join("  ", line.Select((cell, c) =>
                Columns[c].StartsWith('#') ? cell.PadLeft(widths[c]) : cell.PadRight(widths[c]))).TrimEnd());
        }
    }
}
