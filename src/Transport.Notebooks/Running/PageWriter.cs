using System.Globalization;
using System.Net;
using System.Reflection;
using System.Text;
using System.Text.RegularExpressions;

namespace Transport.Notebooks;

/// <summary>
/// An executed notebook as one HTML file that needs nothing but itself: no network, no fonts, no other file. A chart is a still
/// picture until the page's own script draws it; on paper it is the still picture again.
/// </summary>
internal static partial class PageWriter
{
    // Enforced by the browser too, should a cell's own HTML ask for more.
    private const string NoNetwork =
        "default-src 'none'; img-src data: blob:; style-src 'unsafe-inline'; script-src 'unsafe-inline'; font-src data:";

    /// <summary>Writes the page.</summary>
    /// <param name="notebook">The executed notebook.</param>
    /// <param name="fileName">Its file name: the page's title where no heading gives one.</param>
    /// <param name="directory">Where pictures named in its text are found.</param>
    public static string ToHtml(NotebookDocument notebook, string fileName, string directory)
    {
        var body = new StringBuilder();
        var hasCharts = false;
        foreach (var cell in notebook.Cells)
        {
            if (cell.Kind == "markdown")
                body.Append("<section class=\"text\">\n").Append(MarkdownText.ToHtml(cell.Source, directory)).Append("</section>\n");
            else if (cell.IsCode)
                hasCharts |= AppendCode(body, cell);
        }

        var title = notebook.Cells.Where(cell => cell.Kind == "markdown")
            .Select(cell => MarkdownText.FirstHeading(cell.Source)).FirstOrDefault(heading => heading is not null);
        var page = new StringBuilder();
        page.Append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n")
            .Append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n")
            .Append("<meta name=\"color-scheme\" content=\"light dark\">\n")
            .Append(CultureInfo.InvariantCulture, $"<meta http-equiv=\"Content-Security-Policy\" content=\"{NoNetwork}\">\n")
            .Append(CultureInfo.InvariantCulture, $"<title>{Escape(title ?? fileName)}</title>\n")
            .Append("<style>\n").Append(Resource(typeof(PageWriter).Assembly, "page.css"));
        var whose = Identity().Match(body.ToString()) is { Success: true } found ? WebUtility.HtmlDecode(found.Groups["words"].Value) : null;
        if (whose is not null)
            page.Append(CultureInfo.InvariantCulture, $"@page {{ @top-right {{ content: \"{EscapeStyle(whose)}\"; font: 8pt sans-serif; }} @bottom-right {{ content: counter(page) \" / \" counter(pages); font: 8pt sans-serif; }} }}\n");
        page.Append("</style>\n</head>\n<body>\n<main>\n")
            .Append(whose is null ? "" : $"<p class=\"whose\">{Escape(whose)}</p>\n")
            .Append(body)
            .Append("</main>\n<footer>\n<p>")
            .Append(CultureInfo.InvariantCulture, $"Made by running {Escape(fileName)}. ")
            .Append("Decision support for licensed prescribers; local protocol rules.</p>\n</footer>\n");
        if (hasCharts)
        {
            page.Append("<script>").Append(EscapeScript(PlotlyScript.Read())).Append("</script>\n")
                .Append("<script>\n").Append(Resource(typeof(PageWriter).Assembly, "page.js")).Append("</script>\n");
        }

        return page.Append("</body>\n</html>\n").ToString();
    }

    /// <returns>True when the cell shows a chart that a script can draw.</returns>
    private static bool AppendCode(StringBuilder body, NotebookCell cell)
    {
        var id = string.Create(CultureInfo.InvariantCulture, $"cell-{cell.ExecutionCount}");
        var hasCharts = false;
        body.Append(CultureInfo.InvariantCulture, $"<section class=\"code\" id=\"{id}\">\n");
        if (!string.IsNullOrWhiteSpace(cell.Source))
        {
            var firstLine = cell.Source.Split('\n').First(line => !string.IsNullOrWhiteSpace(line)).Trim();
            body.Append(CultureInfo.InvariantCulture, $"<details class=\"source\"><summary><code>{Escape(firstLine)}</code></summary>")
                .Append(CultureInfo.InvariantCulture, $"<pre><code>{Escape(cell.Source)}</code></pre></details>\n");
        }

        for (var i = 0; i < cell.Outputs.Count; i++)
        {
            var outputId = string.Create(CultureInfo.InvariantCulture, $"{id}-output-{i + 1}");
            switch (cell.Outputs[i])
            {
                case CellOutput.Stream stream:
                    body.Append(CultureInfo.InvariantCulture, $"<pre class=\"output {stream.Name}\" id=\"{outputId}\">{Escape(stream.Text)}</pre>\n");
                    break;
                case CellOutput.Display display:
                    hasCharts |= AppendDisplay(body, outputId, display.Forms);
                    break;
            }
        }

        body.Append("</section>\n");
        return hasCharts;
    }

    // The richest form the page can show.
    private static bool AppendDisplay(StringBuilder body, string id, IReadOnlyDictionary<string, string> forms)
    {
        var text = forms.GetValueOrDefault(MediaType.PlainText, "");
        var spec = forms.GetValueOrDefault(MediaType.PlotlySpec);
        if (spec is not null || forms.ContainsKey(MediaType.Svg))
        {
            // A chart's plain form is its alternative text and, on further lines, its caption.
            var words = text.Split('\n', 2, StringSplitOptions.TrimEntries);
            text = words[0];
            body.Append(CultureInfo.InvariantCulture, $"<figure class=\"output chart\" id=\"{id}\">");
            if (forms.TryGetValue(MediaType.Svg, out var svg))
                body.Append(CultureInfo.InvariantCulture, $"<img class=\"still\" alt=\"{Escape(text)}\" src=\"{DataUri(svg)}\">");
            if (spec is not null)
            {
                body.Append(CultureInfo.InvariantCulture, $"<div class=\"drawn\" role=\"img\" aria-label=\"{Escape(text)}\"></div>")
                    .Append(CultureInfo.InvariantCulture, $"<script type=\"application/json\">{EscapeJson(spec)}</script>");
            }

            if (words.Length > 1)
                body.Append(CultureInfo.InvariantCulture, $"<figcaption>{Escape(words[1])}</figcaption>");
            body.Append("</figure>\n");
        }
        else if (forms.TryGetValue(MediaType.Html, out var html))
            body.Append(CultureInfo.InvariantCulture, $"<div class=\"output\" id=\"{id}\">{html}</div>\n");
        else
            body.Append(CultureInfo.InvariantCulture, $"<pre class=\"output\" id=\"{id}\">{Escape(forms.GetValueOrDefault(MediaType.Json, text))}</pre>\n");
        return spec is not null;
    }

    // As a picture and not inline: identifiers in two charts must not meet.
    private static string DataUri(string svg)
    {
        if (!svg.Contains("xmlns=", StringComparison.Ordinal))
            svg = FirstSvgTag().Replace(svg, "<svg xmlns=\"http://www.w3.org/2000/svg\"", 1);
        return $"data:{MediaType.Svg};base64,{Convert.ToBase64String(Encoding.UTF8.GetBytes(svg))}";
    }

    // Inside a script element the browser looks for tags first. In JSON, "<" occurs only within strings.
    private static string EscapeJson(string json) => json.Replace("<", "\\u003c", StringComparison.Ordinal);

    // The addresses in the chart script belong to maps that no page of ours draws; they go, so that a search of the page for
    // web addresses finds none.
    private static string EscapeScript(string script) =>
        WebAddress().Replace(ClosingScriptTag().Replace(script, @"<\/$1"), "$1=\"about:blank#");

    // Everything but letters, digits and spaces as a code point: nothing can leave the string, the rule or the element.
    private static string EscapeStyle(string text) => string.Concat(text.EnumerateRunes().Select(rune =>
        Rune.IsLetterOrDigit(rune) || rune.Value == ' ' ? rune.ToString() : string.Create(CultureInfo.InvariantCulture, $"\\{rune.Value:x6}")));

    private static string Escape(string text) => WebUtility.HtmlEncode(text);

    private static string Resource(Assembly assembly, string name)
    {
        using var stream = assembly.GetManifestResourceStream(name)!;
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd();
    }

    [GeneratedRegex("</(script)", RegexOptions.IgnoreCase)]
    private static partial Regex ClosingScriptTag();

    [GeneratedRegex("(src|href)=\"https?:", RegexOptions.IgnoreCase)]
    private static partial Regex WebAddress();

    // What a report says about whose page it is.
    [GeneratedRegex("<p class=\"identity\"[^>]*>(?<words>[^<]*)</p>")]
    private static partial Regex Identity();

    [GeneratedRegex("<svg")]
    private static partial Regex FirstSvgTag();
}
