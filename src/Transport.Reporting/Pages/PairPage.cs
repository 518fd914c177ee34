namespace Transport.Reporting;

/// <summary>The page of two paired tests: the osmotic conductance first, then both hours side by side.</summary>
internal static class PairPage
{
    // Smit et al. 2004 (read): medians of long-term patients at 3.86 %, made in another way.
    private const double NormalMedian = 3.0;
    private const double FailureMedian = 2.1;

    private static readonly string[] OfBoth =
    [
        "D/P creatinine", "D/D0 glucose", "net ultrafiltration", "net ultrafiltration at 60 min", "sodium dip", "sodium dip, corrected for diffusion",
        "small-pore fluid at 60 min", "free water at 60 min", "free water at 60 min, fraction", "mass transfer area coefficient of creatinine",
    ];

    public static ReportPage Of(SampleSheet weakSheet, SampleSheet strongSheet, PairedTest pair, FittedMembrane? joint)
    {
        const string conductanceName = "osmotic conductance to glucose";
        var (weak, strong) = (pair.Weak, pair.Strong);
        SampleSheet[] sheets = [weakSheet, strongSheet];
        var when = string.Join(" and ", new[] { weak, strong }.Select(indices => PageWords.Date(indices.Test.Date)).Distinct().Order(StringComparer.Ordinal));
        var title = PageHeader.Title("Paired equilibration tests", sheets, when);
        var page = new PageText();
        PageHeader.Of(page, title, sheets, strong.Test.Patient, when, $"pair: {weak.Test.Solution.Name}, {strong.Test.Solution.Name}", strong.Options.Thresholds,
            new[] { weak, strong }.Any(PageHeader.IsPreliminary));
        var compared = strong.Classification is null && weak.Classification is not null ? weak : strong;
        page.Lead(
            [
                .. new[] { weak, strong }.GroupBy(indices => indices.Test.Date).SelectMany(alike => PageFinding.Now(alike.SelectMany(indices => indices.Findings), alike.Key)),
                ("Osmotic conductance", pair.OsmoticConductance is { } conductance
                    ? $"{PageWords.Value(conductance)} to glucose. Medians of long-term patients tested in another way: 3.0 with normal ultrafiltration, 2.1 with failure (read); only values computed alike can be compared."
                    : $"Not given: {pair.NotAvailable[0].Reason}."),
                ("Transfer", PageIndices.Transfer(compared)),
                ("Free water", PageWords.Capital(PageIndices.FreeWater(strong))),
                ("Ultrafiltration", PageWords.Capital(PageIndices.Ultrafiltration(strong)) + (weak.NetUltrafiltration is { } net ? $" With {weak.Test.Solution.Name} {PageWords.Value(net)}." : "")),
            ])
            .Heading($"Measured, {weak.Test.Solution.Name}");
        MeasuredTable.Of(page, weakSheet);
        page.Small(TestPage.Conditions(weak.Test with { Conditions = TestConditions.NotStated })).Heading($"Measured, {strong.Test.Solution.Name}");
        MeasuredTable.Of(page, strongSheet);
        page.Small(TestPage.Conditions(strong.Test with { Conditions = TestConditions.NotStated })).Heading(joint is null ? "Indices of both" : "Indices of both, and the membrane that both tell");
        Indices(page, pair);
        page.Small(joint is null ? "" : Fitted(joint));
        page.Heading($"Beside published figures and {strong.Comparison?.Population.Name ?? "no series"}").Strips(PageIndices.StripColumns,
            [
                .. pair.OsmoticConductance is { } drawn
                    ? new[] { ((IReadOnlyList<string>)["conductance, µL/min/mmHg", PageWords.Number(drawn), "medians 2.1 and 3.0", "ticks"], StripSvg.BesideFigures(drawn, [FailureMedian, NormalMedian])) }
                    : [],
                .. PageIndices.StripRows(strong),
            ])
            .Small($"Of the stronger hour. {PageIndices.StripKey(strong)}");
        var ofBoth = PageFinding.OfBoth(weak, strong).Concat(pair.Findings);
        PageClosing.Of(page, PageFinding.OfMeaning(ofBoth),
            MembranePatterns.Of(weak.Findings.Concat(strong.Findings)),
            PageFinding.OfTheirQuality([.. PageFinding.OfSheet(weakSheet, weak), .. PageFinding.OfSheet(strongSheet, strong)], ofBoth),
            [.. pair.NotAvailable, .. strong.Test.Form.CannotGive().Concat(strong.NotAvailable).Where(missing => missing.Name != conductanceName)],
            [.. Caution.SolutionsOf(weak.Test).Concat(Caution.SolutionsOf(strong.Test))], strong.Test.Patient,
            (pair.OsmoticConductance is { } value ? $"Osmotic conductance = {value.Formula}; {value.Source}. " : "") + PageIndices.Method(strong));
        return page.ToPage(title);
    }

    // In words, for which there is room on one sheet: the numbers that the data moved; what they say little about, the summary names.
    private static string Fitted(FittedMembrane joint)
    {
        const string model = "Three-pore model, what people have as its prior, one membrane for both tests and a residual volume of its own before each. The conductance at the top is of two volumes alone, and not per 1.73 m².";
        if (joint.Status != FitStatus.Converged)
        {
            return $"One membrane fitted to both. {joint.Summary} {model}";
        }

        var told = joint.Parameters.Where(parameter => parameter.Verdict != ParameterVerdict.FromPrior).Select(parameter =>
            $"{parameter.Name} {Digits.Of(parameter.Value)} ({Digits.Of(parameter.Low)} to {Digits.Of(parameter.High)}) {parameter.Unit}".TrimEnd());
        var residuals = joint.ResidualVolumes.Select(residual =>
            $"{Digits.Fixed(residual.Median.Milliliters, 0)} ({Digits.Fixed(residual.Low.Milliliters, 0)} to {Digits.Fixed(residual.High.Milliliters, 0)})");
        return $"One membrane fitted to both, 90 % intervals: {string.Join("; ", told)}; residual volumes {string.Join(" and ", residuals)} mL. {joint.Summary} {model}";
    }

    private static void Indices(PageText page, PairedTest pair)
    {
        var (weak, strong) = (pair.Weak.All, pair.Strong.All);
        page.TwoTables(["index", "#" + pair.Weak.Test.Solution.Name, "#" + pair.Strong.Test.Solution.Name],
            [.. strong.Select(index => index.Name).Union(weak.Select(index => index.Name)).Where(OfBoth.Contains).Select(name => (IReadOnlyList<string>)
            [
                PageIndices.Short(name), Value(weak, name), Value(strong, name),
            ])]);

        static string Value(IReadOnlyList<IndexValue> all, string name) => all.FirstOrDefault(index => index.Name == name) is { } index ? PageWords.Value(index) : "–";
    }
}
