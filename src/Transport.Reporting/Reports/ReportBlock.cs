using System.Text;
using static System.FormattableString;

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
        html.Append("<p style=\"margin:0.6rem 0 0.2rem;font-weight:600\">").Append(Typeset.Html(words)).Append("</p>");
        text.AppendLine(words);
        return this;
    }

    internal ReportBlock Sentence(string words)
    {
        if (words.Length > 0)
        {
            html.Append("<p style=\"margin:0.2rem 0;max-width:46rem\">").Append(Typeset.Html(words)).Append("</p>");
            text.AppendLine(words);
        }

        return this;
    }

    /// <summary>One sentence of several that stand below each other.</summary>
    internal ReportBlock Item(string words)
    {
        html.Append("<p style=\"margin:0.45rem 0;max-width:46rem;break-inside:avoid\">").Append(Typeset.Html(words)).Append("</p>");
        text.AppendLine(words);
        return this;
    }

    /// <summary>Whose page this is. The page that a notebook becomes repeats it at its head and on every sheet of paper.</summary>
    internal ReportBlock Identity(string words)
    {
        html.Append("<p class=\"identity\" style=\"margin:0.6rem 0 0.2rem;font-weight:600\">").Append(Typeset.Html(words)).Append("</p>");
        text.AppendLine(words);
        return this;
    }

    /// <summary>A paragraph that begins with a name; what comes after the first sentence stands smaller below it.</summary>
    internal ReportBlock Named(string name, string words, params IEnumerable<string> below)
    {
        html.Append("<p style=\"margin:0.45rem 0;padding-left:3rem;text-indent:-3rem;max-width:44rem\"><strong style=\"display:inline-block;min-width:3rem;text-indent:0\">")
            .Append(Typeset.Html(name)).Append("</strong>").Append(Typeset.Html(words));
        text.Append(name).Append(": ").AppendLine(words);
        foreach (var line in below.Where(line => line.Length > 0))
        {
            html.Append("<small style=\"display:block;line-height:1.45;text-indent:0;opacity:0.85\">").Append(Typeset.Html(line)).Append("</small>");
            text.Append("  ").AppendLine(line);
        }

        html.Append("</p>");
        return this;
    }

    internal ReportBlock Small(string words)
    {
        html.Append("<p style=\"margin:0.3rem 0;font-size:0.86em;opacity:0.8;max-width:46rem\">").Append(Typeset.Html(words)).Append("</p>");
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
            html.Append("<details><summary>").Append(Typeset.Html(summary)).Append("</summary>");
            table.AppendHtml(html);
            html.Append("</details>");
            text.AppendLine(summary);
            table.AppendText(text);
        }

        return this;
    }

    /// <summary>Findings, the gravest first: the message, then its numbers, then small what it was compared with, and its code.</summary>
    internal ReportBlock FindingList(IEnumerable<Finding> findings)
    {
        var ordered = findings.OrderByDescending(finding => finding.Severity).ToList();
        if (ordered.Count == 0)
        {
            return this;
        }

        html.Append("<ul style=\"margin:0.3rem 0;padding-left:0;list-style:none;max-width:46rem\">");
        foreach (var finding in ordered)
        {
            // Told apart by word and by rule at the edge, not by color.
            var edge = finding.Severity switch { Severity.Error => "4px solid", Severity.Warning => "2px solid", _ => "1px dotted" };
            var word = finding.Severity switch { Severity.Error => "Error", Severity.Warning => "Read with care", _ => "Note" };
            html.Append("<li style=\"border-left:").Append(edge).Append(" currentColor;padding:0.1rem 0 0.1rem 0.6rem;margin:0.5rem 0;break-inside:avoid\"><strong>").Append(word).Append(".</strong> ")
                .Append(Typeset.Html(finding.Message));
            var place = string.Join(", ", new[] { finding.Row is { } row ? Invariant($"row {row}") : null, finding.Field }.OfType<string>());
            if (finding.Found is { } found)
            {
                var where = place.Length > 0 ? PageWords.Capital(place) + ": " : "";
                html.Append("<small style=\"display:block;line-height:1.45;opacity:0.85\">").Append(Typeset.Html(where + found)).Append("</small>");
            }

            html.Append("<small style=\"display:block;line-height:1.45;opacity:0.65;font-size:0.74em\">");
            if (finding.Found is null && place.Length > 0)
            {
                html.Append(Typeset.Html(place)).Append(" · ");
            }

            if (finding.Expected is { } expected)
            {
                html.Append("Expected: ").Append(Typeset.Html(expected)).Append(" · ");
            }

            html.Append("<code style=\"font-size:1em;background:none;padding:0;white-space:nowrap\">").Append(Typeset.Html(finding.Code)).Append("</code></small></li>");
            text.Append(word).Append(": ").AppendLine(finding.ToString());
        }

        html.Append("</ul>");
        return this;
    }
}
