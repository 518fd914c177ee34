namespace Transport.Reporting;

/// <summary>The lower part of every page: findings, quality, what cannot be given, method, cautions.</summary>
internal static class PageClosing
{
    private const double ShareOfQuality = 0.35;

    // One line that stands where findings or quality have none, mm.
    private const double Sentence = 5;

    private const string Adults = "Reference values are of adults on chronic dialysis: pregnancy, ascites, liver disease, a failing transplant and acute dialysis are outside them.";
    private const string Children = "Classes and series are of children on chronic dialysis filled with 1100 mL/m²; limits of ultrafiltration are of adults and are not used.";

    public static PageText Of(
        PageText page, IReadOnlyList<PageFinding> findings, IReadOnlyList<MembranePattern> patterns, IReadOnlyList<PageFinding> quality,
        IReadOnlyList<MissingIndex> missing, IReadOnlyList<DialysisSolution> solutions, Patient patient, string method)
    {
        var notGiven = PageWords.Capital(PageWords.Missing(missing));
        var cautions = Caution.OnPaper + " " + (PageWords.IsChild(patient) ? Children : Adults);
        var ofSolutions = Caution.Of(solutions);
        var together = patterns.Count > 0 ? $"The findings together are compatible with: {string.Join(", ", patterns.Select(pattern => pattern.Name()))}. No diagnosis." : "";

        // What stands below takes its place first; findings and quality share the rest.
        double Below() => page.HeightOfHeadings(2 + (notGiven.Length > 0 ? 1 : 0)) + page.HeightOfSmall(method) + page.HeightOfSmall(cautions) + page.HeightOfSmall(ofSolutions) + page.HeightOfSmall(notGiven);
        double Room() => PageText.Paper - page.Height - Below() - page.HeightOfHeadings(1) - Sentence;
        if (page.HeightOf(findings) + page.HeightOf(quality) > Room())
        {
            page.Tighten();
        }

        // Where not all fit, quality leaves the larger part to what the numbers mean.
        var forQuality = Math.Min(page.HeightOf(quality), Math.Max(ShareOfQuality * Room(), Room() - page.HeightOf(findings)));

        page.Heading("Findings").Line(findings.Count > 0 ? together
            : quality.Any(finding => finding.Code is "dialysate-above-plasma" or "creatinine-ahead-of-urea") ? "No finding is made of a creatinine that is in doubt, and no other limit in use is crossed. No flag is not safety."
            : "No finding: no limit in use is crossed. No flag is not safety.");
        page.Findings(findings, Room() + page.HeightOfHeadings(1) + (quality.Count == 0 ? 0 : Sentence) - forQuality)
            .Heading("Quality").Line(quality.Count == 0 ? "Nothing amiss was found in the sheet or its numbers." : "");

        // A sheet with eighteen mistakes has one page too.
        page.FindingsWithin(quality, PageText.Paper - page.Height - Below() + page.HeightOfHeadings(1));
        if (notGiven.Length > 0)
        {
            page.Heading("Not given by this form or these measurements").Small(notGiven);
        }

        return page.Heading("Method and cautions").Small(method).Small(cautions).Small(ofSolutions);
    }
}
