using System.Net;
using System.Text;

namespace Transport.Reporting;

/// <summary>One result as a reader sees it: sentences and tables, as HTML and as plain text. Reads results, computes nothing.</summary>
public sealed class ReportBlock
{
    private readonly StringBuilder html = new();
    private readonly StringBuilder text = new();

    /// <summary>HTML with inline style, for light and dark, without script. Text in it is escaped.</summary>
    public string Html => $"<div class=\"report\">{html}</div>";

    /// <summary>The same in plain text, for terminals.</summary>
    public string Text => text.ToString().TrimEnd() + "\n";

    internal ReportBlock Heading(string words)
    {
        html.Append("<p style=\"margin:0.6rem 0 0.2rem;font-weight:600\">").Append(WebUtility.HtmlEncode(words)).Append("</p>");
        text.AppendLine(words);
        return this;
    }

    internal ReportBlock Sentence(string words)
    {
        if (words.Length > 0)
        {
            html.Append("<p style=\"margin:0.2rem 0\">").Append(WebUtility.HtmlEncode(words)).Append("</p>");
            text.AppendLine(words);
        }

        return this;
    }

    internal ReportBlock Small(string words)
    {
        html.Append("<p style=\"margin:0.2rem 0;font-size:0.86em;opacity:0.8\">").Append(WebUtility.HtmlEncode(words)).Append("</p>");
        text.AppendLine(words);
        return this;
    }

    internal ReportBlock Table(ReportTable table)
    {
        if (table.Rows.Count > 0)
        {
            table.AppendHtml(html);
            table.AppendText(text);
        }

        return this;
    }

    internal ReportBlock Folded(string summary, ReportTable table)
    {
        if (table.Rows.Count > 0)
        {
            html.Append("<details><summary>").Append(WebUtility.HtmlEncode(summary)).Append("</summary>");
            table.AppendHtml(html);
            html.Append("</details>");
            text.AppendLine(summary);
            table.AppendText(text);
        }

        return this;
    }

    internal ReportBlock FindingList(IEnumerable<Finding> findings)
    {
        var ordered = findings.OrderByDescending(finding => finding.Severity).ToList();
        if (ordered.Count == 0)
        {
            return this;
        }

        html.Append("<ul style=\"margin:0.3rem 0;padding-left:0;list-style:none\">");
        foreach (var finding in ordered)
        {
            // Told apart by word and by rule at the edge, not by color.
            var edge = finding.Severity switch { Severity.Error => "4px solid", Severity.Warning => "2px solid", _ => "1px dotted" };
            var word = finding.Severity switch { Severity.Error => "Error", Severity.Warning => "Read with care", _ => "Note" };
            html.Append("<li style=\"border-left:").Append(edge).Append(" currentColor;padding:0.1rem 0 0.1rem 0.6rem;margin:0.35rem 0\"><strong>").Append(word).Append("</strong> ")
                .Append(WebUtility.HtmlEncode(finding.ToString())).Append("</li>");
            text.Append(word).Append(": ").AppendLine(finding.ToString());
        }

        html.Append("</ul>");
        return this;
    }
}
