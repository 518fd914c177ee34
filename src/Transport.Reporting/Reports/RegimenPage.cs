using System.Net;

namespace Transport.Reporting;

/// <summary>Regimens side by side as a page of its own that needs nothing but itself: whose it is, what it rests on, what would differ, and the cautions.</summary>
public static class RegimenPage
{
    private const string Style =
        "body{font-family:system-ui,sans-serif;max-width:64rem;margin:2rem auto;padding:0 1rem;line-height:1.45;color:#1a1a1a;background:#fff}"
        + "h1{margin-bottom:0.4rem}figure{margin:1rem 0}svg{max-width:100%;height:auto}figcaption{font-size:0.85em;max-width:46rem}"
        + ".head{display:flex;flex-wrap:wrap;justify-content:space-between;align-items:baseline;gap:0 1.5rem}.mark{border:1px solid;padding:0.1rem 0.6rem;font-weight:700}"
        + "@page{size:A4;margin:13mm}@media print{body{max-width:none;margin:0;padding:0;font-size:9.5pt;line-height:1.35}tr,figure{break-inside:avoid}caption,thead{break-after:avoid}details{display:none}}";

    /// <summary>The page.</summary>
    /// <param name="sheet">The sheet of the test that the membranes come from.</param>
    /// <param name="indices">Its indices: whether the test is preliminary, and by which limits.</param>
    /// <param name="fit">The membrane that was fitted to it.</param>
    /// <param name="comparison">The regimens, the present one first.</param>
    /// <param name="collection">A collection beside the present regimen; null: none.</param>
    /// <exception cref="ArgumentException">The indices are of another sheet.</exception>
    public static string Of(SampleSheet sheet, EquilibrationIndices indices, FittedMembrane fit, RegimenComparison comparison, CollectionComparison? collection = null)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        var basis = Basis(sheet, indices, fit);
        var isAlone = comparison.Rows.Length == 1;
        var title = isAlone ? "What a regimen would return" : "Regimens side by side";
        var mark = PageHeader.Mark([sheet], PageHeader.IsPreliminary(indices));
        List<Figure> figures = isAlone ? [] : [RegimenCharts.Comparison(comparison)];
        if (comparison.Rows.All(row => row.Timeline.Any()))
        {
            figures.Add(RegimenCharts.Days(comparison));
        }

        return "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" content=\"width=device-width\">\n"
            + "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'\">\n"
            + $"<title>{WebUtility.HtmlEncode($"{title} · {sheet.Code ?? "no code"}")}</title>\n<style>{Style}</style>\n</head>\n<body>\n"
            + $"<div class=\"head\"><h1>{title}</h1>{(mark.Length == 0 ? "" : $"<div class=\"mark\">{mark}</div>")}</div>\n{Reports.WhoseSheet(sheet).Html}\n{basis.Html}\n"
            + (collection is null ? "" : RegimenReports.Of(collection).Html + "\n")
            + RegimenReports.Of(comparison).Html + "\n"
            + string.Concat(figures.Select(Drawn))
            + $"{Caution.Block().Html}\n</body>\n</html>\n";
    }

    /// <summary>What every figure below it rests on: whether the fit may be believed, what makes the test preliminary, and what was found in the sheet, assumed values among it.</summary>
    /// <param name="sheet">The sheet of the test.</param>
    /// <param name="indices">Its indices.</param>
    /// <param name="fit">The membrane that was fitted to it.</param>
    /// <exception cref="ArgumentException">The indices are of another sheet.</exception>
    public static ReportBlock Basis(SampleSheet sheet, EquilibrationIndices indices, FittedMembrane fit)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        ArgumentNullException.ThrowIfNull(indices);
        ArgumentNullException.ThrowIfNull(fit);
        if (!sheet.TryToTest(out var test) || !ReferenceEquals(test, indices.Test))
        {
            throw new ArgumentException("These indices are not of this sheet: a page never mixes two.", nameof(indices));
        }

        return new ReportBlock()
            .Heading("What these figures rest on")
            .Sentence((fit.Status == FitStatus.Converged ? "" : "Read with care: ") + fit.Summary)
            .Sentence(PageHeader.IsPreliminary(indices) ? $"PRELIMINARY. {string.Join(" ", indices.Classification!.CautionsBesideDoubt)}".TrimEnd() : "")
            .FindingList(PageFinding.Once(
                sheet.Findings, indices.Findings.Where(finding => finding.Severity >= Severity.Warning && (PageFinding.IsOfQuality(finding) || PageFinding.IsOfNow(finding)) && finding.Code != "class-not-comparable")))
            .Small($"Limits: {PageHeader.Limits(indices.Options.Thresholds)}.");
    }

    private static string Drawn(Figure figure) =>
        $"<figure>{SvgRenderer.ToSvg(figure)}<figcaption>{Typeset.Html(figure.Caption)}</figcaption></figure>\n";
}
