using System.Globalization;
using System.Net;
using System.Security.Cryptography;
using System.Text;

namespace Transport.Reporting;

/// <summary>
/// Figures behind a knob as a piece of a page that needs no script: a row of radio buttons, one for each position, of which the chosen one shows
/// its picture. Arrow keys turn it.
/// </summary>
public static class FigureStepsHtml
{
    // The rules that show a picture count buttons and pictures, so they serve every knob on a page.
    private static readonly string Style =
        ".transport-steps{margin:0 0 1.5em;padding:.6em .8em .8em;background:#fff;color:" + ChartColors.Ink + ";border:0;border-radius:4px;max-width:60em;font:13px/1.45 Arial,Helvetica,sans-serif}" +
        ".transport-steps .at{position:absolute;opacity:0}" +
        ".transport-steps label{display:inline-block;padding:.15em .7em;border-bottom:2px solid #c3cbc9;cursor:pointer;font-variant-numeric:tabular-nums}" +
        ".transport-steps .at:checked+label{border-bottom-color:currentColor;font-weight:bold}" +
        ".transport-steps .at:focus-visible+label{outline:2px solid currentColor}" +
        ".transport-steps .step{display:none;margin:.6em 0 0}.transport-steps .step img{display:block;max-width:100%}" +
        string.Concat(Enumerable.Range(1, 12).Select(i => FormattableString.Invariant(
            $".transport-steps .at:nth-of-type({i}):checked~.pictures>:nth-child({i}){(i < 12 ? "," : "{display:block}")}")));

    /// <summary>The element: the knob's name, its positions, a picture with its caption for each.</summary>
    public static string Of(FigureSteps steps)
    {
        ArgumentNullException.ThrowIfNull(steps);
        var pictures = steps.Steps.Select(step => SvgRenderer.ToSvg(step.Figure, followsPage: false)).ToList();
        var name = "knob-" + Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(steps.Knob + string.Concat(pictures))))[..8];
        var html = new StringBuilder();
        html.Append(CultureInfo.InvariantCulture, $"<fieldset class=\"transport-steps\"><style>{Style}</style>\n<span>{Escape(steps.Knob)}: </span>\n");
        for (var i = 0; i < steps.Steps.Count; i++)
        {
            html.Append(CultureInfo.InvariantCulture, $"<input class=\"at\" type=\"radio\" name=\"{name}\" id=\"{name}-{i}\"{(i == steps.Start ? " checked" : "")}>")
                .Append(CultureInfo.InvariantCulture, $"<label for=\"{name}-{i}\">{Escape(steps.Steps[i].Label)}</label>\n");
        }

        html.Append("<div class=\"pictures\">\n");
        foreach (var (step, picture) in steps.Steps.Zip(pictures))
        {
            html.Append(CultureInfo.InvariantCulture, $"<div class=\"step\"><img alt=\"{Escape($"{steps.Knob} {step.Label}. {step.Figure.AltText}")}\" src=\"data:image/svg+xml,{AsAddress(picture)}\">")
                .Append(CultureInfo.InvariantCulture, $"{(step.Figure.Caption.Length > 0 ? $"<div>{Escape(step.Figure.Caption)}</div>" : "")}</div>\n");
        }

        return html.Append("</div></fieldset>\n").ToString();
    }

    /// <summary>The same in words: each position with its figure's alternative text.</summary>
    public static string ToText(FigureSteps steps)
    {
        ArgumentNullException.ThrowIfNull(steps);
        return string.Join('\n', steps.Steps.Select(step => $"{steps.Knob} {step.Label}: {step.Figure.AltText}"));
    }

    // Shorter than base64: only what ends an address or the attribute around it is written as a code.
    private static string AsAddress(string svg) => svg.Replace("%", "%25", StringComparison.Ordinal).Replace("#", "%23", StringComparison.Ordinal)
        .Replace("\"", "%22", StringComparison.Ordinal).Replace("&", "%26", StringComparison.Ordinal).Replace("<", "%3C", StringComparison.Ordinal).Replace(">", "%3E", StringComparison.Ordinal);

    private static string Escape(string text) => WebUtility.HtmlEncode(text);
}
