using System.Collections;
using System.Net;
using Microsoft.AspNetCore.Html;
using Microsoft.DotNet.Interactive.Formatting;

namespace Transport.Notebooks;

/// <summary>How values look when a notebook shows them.</summary>
public static class NotebookViews
{
    private const int ValuesInALine = 20;

    /// <summary>
    /// Registers the views with the notebook kernel of this process. A value without a view of its own is shown as plain text.
    /// Calling it again changes nothing.
    /// </summary>
    public static void Register() => Register(live: false);

    /// <param name="live">For a page of a notebook server: a chart also has a form that draws itself there.</param>
    internal static void Register(bool live)
    {
        Formatter.DefaultMimeType = MediaType.PlainText;
        Register<HtmlView>(view => view.Html, view => view.Text);
        foreach (var assembly in new[] { typeof(Patient).Assembly, typeof(SampleSheet).Assembly, typeof(Figure).Assembly })
            RecordFacts.Register(assembly);
        DomainViews.Register(live);

        // Sequences: records as a table, anything else as its plain text.
        Formatter.Register<IEnumerable>(
            rows => RecordTable.TryToHtml(rows) ?? $"<pre>{WebUtility.HtmlEncode(rows.ToDisplayString(MediaType.PlainText))}</pre>",
            MediaType.Html);
        Formatter.Register<IEnumerable>(rows => RecordTable.TryToText(rows) ?? InALine(rows), MediaType.PlainText);
        Formatter.SetPreferredMimeTypesFor(typeof(IEnumerable), MediaType.Html, MediaType.PlainText);
        Formatter.SetPreferredMimeTypesFor(typeof(IHtmlContent), MediaType.Html);
        Formatter.Register<string>(text => text, MediaType.PlainText); // not a sequence of letters
        Formatter.SetPreferredMimeTypesFor(typeof(string), MediaType.PlainText);
    }

    // As the package writes it.
    private static string InALine(IEnumerable values)
    {
        var items = values.Cast<object?>().Take(ValuesInALine + 1).Select(item => item.ToDisplayString(MediaType.PlainText)).ToList();
        return items.Count == 0 ? "[  ]"
            : items.Count > ValuesInALine ? $"[ {string.Join(", ", items.Take(ValuesInALine))} ... (more) ]"
            : $"[ {string.Join(", ", items)} ]";
    }

    /// <summary>A view with an HTML and a plain form.</summary>
    internal static void Register<T>(Func<T, string> html, Func<T, string> text)
    {
        Formatter.Register(html, MediaType.Html);
        Formatter.Register(text, MediaType.PlainText);
        Formatter.SetPreferredMimeTypesFor(typeof(T), MediaType.Html, MediaType.PlainText);
    }

    /// <summary>A chart: an interactive form, a still picture for paper and for pages without scripts, and its description.</summary>
    internal static void RegisterChart<T>(Func<T, string> spec, Func<T, string> svg, Func<T, string> alternative)
    {
        Formatter.Register(spec, MediaType.PlotlySpec);
        Formatter.Register(svg, MediaType.Svg);
        Formatter.Register(alternative, MediaType.PlainText);
        Formatter.SetPreferredMimeTypesFor(typeof(T), MediaType.PlotlySpec, MediaType.Svg, MediaType.PlainText);
    }
}
