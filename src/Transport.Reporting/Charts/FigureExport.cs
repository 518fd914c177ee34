using System.Net;

namespace Transport.Reporting;

/// <summary>Writes a figure to a file of its own.</summary>
public static class FigureExport
{
    /// <summary>One page that needs no network and no other file: interactive where scripts run, a static picture where not.</summary>
    /// <param name="figure">What to write.</param>
    /// <param name="path">The file; replaced if it exists. About 3.7 MB, nearly all of it the chart program.</param>
    /// <exception cref="IOException">The file cannot be written.</exception>
    public static void WriteHtml(Figure figure, string path)
    {
        ArgumentNullException.ThrowIfNull(figure);
        File.WriteAllText(path, $$"""
            <!doctype html>
            <html lang="en">
            <head>
            <meta charset="utf-8">
            <meta name="viewport" content="width=device-width, initial-scale=1">
            <title>{{WebUtility.HtmlEncode(figure.Title)}}</title>
            <style>body{margin:1em;background:var(--figure-paper,{{ChartColors.Paper}})}{{FigureHtml.ScreenStyle}}</style>
            <script>{{PlotlyScript.Read()}}</script>
            </head>
            <body>
            {{FigureHtml.Of(figure)}}
            </body>
            </html>

            """);
    }
}
