namespace Transport.Reporting;

/// <summary>The lower part of every page: findings, quality, what cannot be given, method, cautions.</summary>
internal static class PageClosing
{
    // mm that findings and quality are given even on a crowded page.
    private const double LeastForFindings = 26;
    private const double LeastForQuality = 13;

    private const string Adults = "Reference values are of adults on chronic dialysis: pregnancy, ascites, liver disease, a failing transplant and acute dialysis are outside them.";
    private const string Children = "Classes and series are of children on chronic dialysis filled with 1100 mL/m²; limits of ultrafiltration are of adults and are not used.";

    public static PageText Of(
        PageText page, IReadOnlyList<PageFinding> findings, IReadOnlyList<MembranePattern> patterns, IReadOnlyList<PageFinding> quality,
        IReadOnlyList<MissingIndex> missing, IReadOnlyList<DialysisSolution> solutions, Patient patient, string method)
    {
        var notGiven = PageWords.Capital(PageWords.Missing(missing));
        var cautions = Caution.OnPaper + " " + (patient.AgeYears < MembraneThresholds.Default.AdultAge.Value ? Children : Adults);
        var ofSolutions = Caution.Of(solutions);
        var together = patterns.Count > 0 ? $"The findings together are compatible with: {string.Join(", ", patterns.Select(pattern => pattern.Name()))}. No diagnosis." : "";

        // What stands below takes its place first; findings and quality share the rest.
        double Below() => page.HeightOfHeadings(2 + (notGiven.Length > 0 ? 1 : 0)) + page.HeightOfSmall(method) + page.HeightOfSmall(cautions) + page.HeightOfSmall(ofSolutions) + page.HeightOfSmall(notGiven);
        if (page.Height + Below() + page.HeightOfHeadings(1) + (findings.Count == 0 ? 5 : LeastForFindings) + (quality.Count == 0 ? 5 : LeastForQuality) > PageText.Paper)
        {
            page.Tighten();
        }

        page.Heading("Findings").Line(findings.Count == 0 ? "No finding: no limit in use is crossed. No flag is not safety." : together);
        page.Findings(findings, PageText.Paper - page.Height - Below() - (quality.Count == 0 ? 5 : LeastForQuality))
            .Heading("Quality").Line(quality.Count == 0 ? "Nothing amiss was found in the sheet or its numbers." : "");
        page.Findings(quality, PageText.Paper - page.Height - Below() + page.HeightOfHeadings(1));
        if (notGiven.Length > 0)
        {
            page.Heading("Not given by this form or these measurements").Small(notGiven);
        }

        return page.Heading("Method and cautions").Small(method).Small(cautions).Small(ofSolutions);
    }
}
