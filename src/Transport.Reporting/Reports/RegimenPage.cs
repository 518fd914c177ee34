using System.Net;

namespace Transport.Reporting;

/// <summary>Regimens side by side as a page of its own that needs nothing but itself: whose it is, what would differ, and the cautions.</summary>
public static class RegimenPage
{
    private const string Style =
        "body{font-family:system-ui,sans-serif;max-width:64rem;margin:2rem auto;padding:0 1rem;line-height:1.45;color:#1a1a1a;background:#fff}"
        + "h1{margin-bottom:0.4rem}figure{margin:1rem 0}svg{max-width:100%;height:auto}figcaption{font-size:0.85em;max-width:46rem}";

    /// <summary>The page.</summary>
    /// <param name="sheet">The sheet of the test that the membranes come from.</param>
    /// <param name="comparison">The regimens, the present one first.</param>
    public static string Of(SampleSheet sheet, RegimenComparison comparison)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        ArgumentNullException.ThrowIfNull(comparison);
        var isAlone = comparison.Rows.Length == 1;
        var title = isAlone ? "What a regimen would return" : "Regimens side by side";
        List<Figure> figures = isAlone ? [] : [RegimenCharts.Comparison(comparison)];
        if (comparison.Rows.All(row => row.Timeline.Any()))
        {
            figures.Add(RegimenCharts.Days(comparison));
        }

        return "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" content=\"width=device-width\">\n"
            + "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'\">\n"
            + $"<title>{WebUtility.HtmlEncode($"{title} · {sheet.Code ?? "no code"}")}</title>\n<style>{Style}</style>\n</head>\n<body>\n<h1>{title}</h1>\n{Reports.WhoseSheet(sheet).Html}\n"
            + string.Concat(figures.Select(Drawn))
            + $"{RegimenReports.Of(comparison).Html}\n{Caution.Block().Html}\n</body>\n</html>\n";
    }

    private static string Drawn(Figure figure) =>
        $"<figure>{SvgRenderer.ToSvg(figure)}<figcaption>{Typeset.Html(figure.Caption)}</figcaption></figure>\n";
}
