using System.Text;

namespace Transport.Reporting;

/// <summary>A page as it grows: every piece is written once for paper (HTML) and once for Markdown.</summary>
internal sealed class PageText
{
    private readonly StringBuilder html = new();
    private readonly StringBuilder markdown = new();
    private IReadOnlyList<string> strips = [];

    /// <summary>Height that a sheet of A4 has between its margins, mm.</summary>
    public const double Paper = 279;

    private const double RowHeight = 4.35;
    private const double LineHeight = 3.85;
    private const double SmallLineHeight = 3.6;
    private const double HeadingHeight = 6.5;
    private const double Closer = 0.88;
    private double scale = 1;

    /// <summary>Estimate of what stands on the page so far, mm: rather too much than too little, so that the room for findings is safe.</summary>
    public double Height { get; private set; }

    public ReportPage ToPage(string title) => new(title, PageStyle.Document(title, html.ToString(), isTight: scale < 1), markdown.ToString().TrimEnd() + "\n");

    public PageText Title(string words, string mark)
    {
        Height += 7;
        html.Append("<div class=\"head\"><h1>").Append(Typeset.Html(words)).Append("</h1>")
            .Append(mark.Length == 0 ? "" : $"<div class=\"mark\">{Typeset.Html(mark)}</div>").Append("</div>\n");
        markdown.Append("# ").Append(Escape(words)).Append(mark.Length == 0 ? "" : $" — {Escape(mark)}").Append("\n\n");
        return this;
    }

    /// <summary>Names with their values, in four columns.</summary>
    public PageText Identity(IReadOnlyList<(string Name, string Value)> facts)
    {
        html.Append("<div class=\"who\">");
        Height += 4 + facts.Chunk(4).Sum(row => 3.6 + LineHeight * row.Max(fact => Lines(fact.Value, 26)));
        foreach (var (name, value) in facts)
        {
            html.Append("<div><span>").Append(Typeset.Html(name)).Append("</span>").Append(Typeset.Html(value)).Append("</div>");
            markdown.Append("- ").Append(Escape(name)).Append(": ").Append(Escape(value)).Append('\n');
        }

        html.Append("</div>\n");
        markdown.Append('\n');
        return this;
    }

    public PageText Heading(string words)
    {
        Height += HeightOfHeadings(1);
        html.Append("<h2>").Append(Typeset.Html(words)).Append("</h2>\n");
        markdown.Append("## ").Append(Escape(words)).Append("\n\n");
        return this;
    }

    /// <summary>What a reader looks for first: a name, then a sentence or two.</summary>
    public PageText Lead(IReadOnlyList<(string Name, string Words)> lines)
    {
        html.Append("<div class=\"lead\">");
        Height += 1.5 + lines.Sum(line => 0.6 + LineHeight * Lines(line.Words, 112));
        foreach (var (name, words) in lines)
        {
            html.Append("<b>").Append(Typeset.Html(name)).Append("</b><div>").Append(Typeset.Html(words)).Append("</div>");
            markdown.Append("**").Append(Escape(name)).Append(":** ").Append(Escape(words)).Append("\n\n");
        }

        html.Append("</div>\n");
        return this;
    }

    public PageText Line(string words) => Paragraph(words, "<p>", HeightOfLine(words));

    public PageText Small(string words) => Paragraph(words, "<p class=\"small\">", HeightOfSmall(words));

    /// <summary>Height of small words, mm; nothing without words.</summary>
    public double HeightOfSmall(string words) => words.Length == 0 ? 0 : scale * (0.6 + SmallLineHeight * Lines(words, 143));

    private double HeightOfLine(string words) => words.Length == 0 ? 0 : scale * (0.6 + LineHeight * Lines(words, Letters));

    /// <summary>Height of so many headings, mm.</summary>
    public double HeightOfHeadings(int count) => scale * count * HeadingHeight;

    /// <summary>Sets everything closer, in letters of 8 points: for a page that would not fit otherwise.</summary>
    public void Tighten()
    {
        Height *= Closer / scale;
        scale = Closer;
    }

    private static int Lines(string words, int letters) => (words.Length + letters - 1) / letters;

    private PageText Paragraph(string words, string open, double height)
    {
        if (words.Length > 0)
        {
            Height += height;
            html.Append(open).Append(Typeset.Html(words)).Append("</p>\n");
            markdown.Append(Escape(words)).Append("\n\n");
        }

        return this;
    }

    /// <summary>
    /// Findings, the gravest first: severity by word and by the rule at the edge. On paper what goes beyond the room (mm) loses its numbers if it is a warning or an error, and is named by its
    /// code if it is a note: a message to read with care is not hidden.
    /// </summary>
    public PageText Findings(IReadOnlyList<PageFinding> findings, double room) => Findings(findings, room, NoWarningHidden(findings));

    /// <summary>The same, but that the last warnings are named by their codes as well where a sheet does not hold them even without numbers.</summary>
    public PageText FindingsWithin(IReadOnlyList<PageFinding> findings, double room) => Findings(findings, room, NoWarningHidden(findings).Concat(LastWarningsNamed(findings)));

    private PageText Findings(IReadOnlyList<PageFinding> findings, double room, IEnumerable<(int Full, int Shortened)> ways)
    {
        if (findings.Count == 0)
        {
            return this;
        }

        var (shown, closing) = ThatFit(findings, room, ways);
        Height += shown.Sum(HeightOf) + HeightOfSmall(closing);
        html.Append(shown.Count > 0 ? "<ul>" : "");
        foreach (var finding in shown)
        {
            html.Append("<li class=\"").Append(finding.Severity.ToString().ToLowerInvariant()).Append("\"><strong>").Append(finding.Word).Append("</strong> ")
                .Append(Typeset.Html(finding.Message));
            if (finding.Detail.Length > 0)
            {
                html.Append(" <small>").Append(Typeset.Html(finding.Detail)).Append("</small>");
            }

            html.Append("</li>");
        }

        html.Append(shown.Count > 0 ? "</ul>\n" : "");
        if (closing.Length > 0)
        {
            html.Append("<p class=\"small\">").Append(Typeset.Html(closing)).Append("</p>\n");
        }

        foreach (var finding in findings)
        {
            markdown.Append("- **").Append(finding.Word).Append("** ").Append(Escape(finding.Message));
            if (finding.Detail.Length > 0)
            {
                markdown.Append(' ').Append(Escape(finding.Detail));
            }

            markdown.Append(" `").Append(finding.Code).Append("`\n");
        }

        markdown.Append('\n');
        return this;
    }

    // The gravest first, in the first way that fits; in the last one where none does.
    private (IReadOnlyList<PageFinding> Shown, string Closing) ThatFit(IReadOnlyList<PageFinding> findings, double room, IEnumerable<(int Full, int Shortened)> ways)
    {
        var last = (Shown: (IReadOnlyList<PageFinding>)[], Closing: "");
        foreach (var (full, shortened) in ways)
        {
            List<PageFinding> shown = [.. findings.Take(full), .. findings.Skip(full).Take(shortened).Select(finding => finding with { Detail = "" })];
            last = (shown, Closing(shortened, [.. findings.Skip(shown.Count)], shown.Count));
            if (shown.Sum(HeightOf) + HeightOfSmall(last.Closing) <= room)
            {
                break;
            }
        }

        return last;
    }

    // How many stand in full and how many of those behind them without their numbers, the fullest way first: all warnings,
    private static IEnumerable<(int Full, int Shortened)> NoWarningHidden(IReadOnlyList<PageFinding> findings) =>
        Enumerable.Range(0, findings.Count + 1).Select(left => (findings.Count - left, Math.Max(0, Warnings(findings) - (findings.Count - left))));

    // or fewer and fewer of them.
    private static IEnumerable<(int Full, int Shortened)> LastWarningsNamed(IReadOnlyList<PageFinding> findings) =>
        Enumerable.Range(1, Warnings(findings)).Select(named => (0, Warnings(findings) - named));

    private static int Warnings(IReadOnlyList<PageFinding> findings) => findings.Count(finding => finding.Severity >= Severity.Warning);

    /// <summary>Height of findings in full, mm.</summary>
    public double HeightOf(IReadOnlyList<PageFinding> findings) => findings.Sum(HeightOf);

    private double HeightOf(PageFinding finding) => scale * (0.9 + LineHeight * Lines($"{finding.Word} {finding.Message} {finding.Detail}", Letters));

    // Of the letters of a whole page; in letters of 8 points more stand in a line.
    private int Letters => scale < 1 ? 138 : 130;

    private static string Closing(int shortened, List<PageFinding> rest, int shown) => string.Join(" ", new[]
    {
        rest.Count == 0 ? "" : $"{rest.Count} {(shown > 0 ? "more" : rest.Count == 1 ? "finding" : "findings")}, in full in the Markdown form: {string.Join(", ", rest.Select(finding => finding.Code).Distinct())}.",
        shortened == 0 ? "" : $"The numbers behind the last {(shortened == 1 ? "warning" : shortened.ToString(System.Globalization.CultureInfo.InvariantCulture) + " warnings")} stand in the Markdown form.",
    }.Where(words => words.Length > 0));

    /// <summary>A table. A heading that begins with "#" (not shown) is of numbers; what follows a line break in a cell stands smaller behind it.</summary>
    public PageText Table(IReadOnlyList<string> columns, IReadOnlyList<IReadOnlyList<string>> rows) => TableIn(1, columns, rows);

    /// <summary>The same in two halves side by side on paper.</summary>
    public PageText TwoTables(IReadOnlyList<string> columns, IReadOnlyList<IReadOnlyList<string>> rows) => TableIn(rows.Count > 3 ? 2 : 1, columns, rows);

    /// <summary>A table with one drawing in each row, behind the second column; empty for none. In Markdown the numbers alone.</summary>
    public PageText Strips(IReadOnlyList<string> columns, IReadOnlyList<(IReadOnlyList<string> Cells, string Strip)> rows)
    {
        strips = [.. rows.Select(row => row.Strip)];
        Height += 0.9 * rows.Count;
        TableIn(1, columns, [.. rows.Select(row => row.Cells)]);
        strips = [];
        return this;
    }

    private PageText TableIn(int parts, IReadOnlyList<string> columns, IReadOnlyList<IReadOnlyList<string>> rows)
    {
        if (rows.Count == 0)
        {
            return this;
        }

        html.Append(parts == 2 ? "<div class=\"two\">" : "");
        Height += RowHeight * (1 + (rows.Count + parts - 1) / parts);
        var drawn = 0;
        foreach (var part in rows.Chunk((rows.Count + parts - 1) / parts))
        {
            html.Append(strips.Count > 0 ? "<div><table class=\"drawn\"><thead><tr>" : "<div><table><thead><tr>");
            Row("th", columns);
            html.Append("</tr></thead><tbody>");
            foreach (var row in part)
            {
                html.Append("<tr>");
                Row("td", row);
                html.Append("</tr>");
            }

            html.Append("</tbody></table></div>");
        }

        html.Append(parts == 2 ? "</div>\n" : "\n");
        markdown.Append("| ").AppendJoin(" | ", columns.Select(column => Escape(column.TrimStart('#')).Replace('\n', ' '))).Append(" |\n|")
            .AppendJoin('|', columns.Select(column => column.StartsWith('#') ? "---:" : "---")).Append("|\n");
        foreach (var row in rows)
        {
            markdown.Append("| ").AppendJoin(" | ", row.Select(cell => Escape(cell).Replace('\n', ' '))).Append(" |\n");
        }

        markdown.Append('\n');
        return this;

        void Row(string tag, IReadOnlyList<string> cells)
        {
            for (var i = 0; i < cells.Count; i++)
            {
                var text = (tag == "th" ? cells[i].TrimStart('#') : cells[i]).Split('\n');
                html.Append('<').Append(tag).Append(columns[i].StartsWith('#') ? " class=\"n\">" : ">").Append(Typeset.Cell(text[0]))
                    .Append(text.Length > 1 ? $" <small>{Typeset.Html(text[1])}</small>" : "").Append("</").Append(tag).Append('>');
                if (i == 1 && strips.Count > 0)
                {
                    html.Append(tag == "th" ? "<th></th>" : $"<td class=\"strip\">{strips[drawn++]}</td>");
                }
            }
        }
    }

    /// <summary>A picture with its caption; in Markdown its content in words.</summary>
    public PageText Picture(Figure? figure, double height)
    {
        if (figure is not null)
        {
            Height += height + HeightOfSmall(figure.Caption);
            html.Append("<figure>").Append(SvgRenderer.ToSvg(figure)).Append(figure.Caption.Length == 0 ? "" : $"<figcaption>{Typeset.Html(figure.Caption)}</figcaption>").Append("</figure>\n");
            markdown.Append('*').Append(Escape(figure.Title)).Append(".* ").Append(Escape(figure.AltText)).Append(' ').Append(Escape(figure.Caption)).Append("\n\n");
        }

        return this;
    }

    // Whatever Markdown would read as a sign of its own is a letter here: the words may come from a sheet.
    private static string Escape(string words) => string.Concat(words.Select(letter => letter switch
    {
        '<' => "&lt;",
        '>' => "&gt;",
        '&' => "&amp;",
        '\\' or '`' or '*' or '_' or '|' or '[' or ']' or '#' => "\\" + letter,
        _ => letter.ToString(),
    }));
}
