using static System.FormattableString;

namespace Transport.Reporting;

/// <summary>The page of one test.</summary>
internal static class TestPage
{
    public static ReportPage Of(SampleSheet sheet, EquilibrationIndices indices)
    {
        var test = indices.Test;
        var when = PageWords.Date(test.Date);
        var title = PageHeader.Title("Equilibration test", [sheet], when);
        var page = new PageText();
        PageHeader.Of(page, title, [sheet], test.Patient, when, Form(test, indices.Options.Thresholds), indices.Options.Thresholds, PageHeader.IsPreliminary(indices));
        page.Lead(
            [
                .. PageFinding.Now(indices.Findings, test.Date),
                ("Osmotic conductance", $"Not from one test: it needs two hours with two strengths, or is that of a fitted membrane. {PageIndices.IndirectSigns(indices)}"),
                ("Transfer", PageIndices.Transfer(indices)),
                ("Free water", PageWords.Capital(PageIndices.FreeWater(indices))),
                ("Ultrafiltration", PageWords.Capital(PageIndices.Ultrafiltration(indices))),
            ])
            .Heading("Measured");
        MeasuredTable.Of(page, sheet);
        page.Small(Conditions(test)).Heading(indices.Comparison is { Rows.Count: > 0 } comparison ? $"Indices beside {comparison.Population.Name}" : "Indices");
        PageIndices.Table(page, sheet, indices);
        PageClosing.Of(page, PageFinding.OfMeaning(indices.Findings), indices.Patterns,
            PageFinding.OfTheirQuality(PageFinding.OfSheet(sheet, indices), indices.Findings),
            [.. test.Form.CannotGive(), .. indices.NotAvailable], [.. Caution.SolutionsOf(test)], test.Patient, PageIndices.Method(indices));
        return page.ToPage(title);
    }

    // A 4-h test that was cut short is named with its length.
    private static string Form(EquilibrationTest test, MembraneThresholds limits) => test.Form is TestForm.FourHour or TestForm.FourHourWithSodium or TestForm.Fast or TestForm.TemporaryDrain
        && Math.Abs(test.Dwell.TotalMinutes - 240) > limits.ClassTolerance.Value
            ? $"{test.Form.Name()}, of {Digits.Hours(test.Dwell)}"
            : test.Form.Name();

    /// <summary>Volumes and what went before, in one line.</summary>
    public static string Conditions(EquilibrationTest test)
    {
        var basis = test.FillBasis == FillBasis.Measured ? "weighed" : test.Overfill is { } overfill ? Invariant($"label, plus {overfill.Milliliters:0} mL overfill") : "label, overfill unknown";
        var conditions = test.Conditions;
        return PageWords.Capital(string.Join("; ", new[]
        {
            PageWords.Bag(test.Solution),
            Invariant($"in {test.InstilledVolume.Milliliters:0} mL ({basis})"),
            test.TemporaryDrain is { } early ? Invariant($"drained and given back at {early.Time.TotalMinutes:0} min {early.Volume.Milliliters:0} mL") : null,
            test.DrainedVolume is { } drained ? Invariant($"out {drained.Milliliters:0} mL") : "drained volume not measured",
            test.ResidualVolume is { } residual ? Invariant($"residual {residual.Milliliters:0} mL as written") : null,
            $"dwell {Digits.Hours(test.Dwell)}",
            conditions.DialysisYears(test.Date) is { } years ? years < 1 ? Invariant($"{years * 365.25:0} days on dialysis") : Invariant($"{years:0.0} years on dialysis") : null,
            conditions.PrecedingDwell is { } before ? $"preceding dwell {Digits.Hours(before)}{(conditions.PrecedingAgent is { } agent ? $" of {agent.ToString().ToLowerInvariant()}" : "")}" : null,
        }.OfType<string>())) + ".";
    }
}
