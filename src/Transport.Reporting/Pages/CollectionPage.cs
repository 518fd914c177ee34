using static System.FormattableString;

namespace Transport.Reporting;

/// <summary>The page of a 24-h collection: dose, residual function, balances, and what they rest on.</summary>
internal static class CollectionPage
{
    private static readonly string[] InParts = ["weekly Kt/V", "weekly creatinine clearance", "sodium removed"];

    public static ReportPage Of(SampleSheet sheet, CollectionIndices indices)
    {
        var day = indices.Collection;
        var when = PageWords.Date(day.Date);
        var title = PageHeader.Title("24-h collection", [sheet], when);
        var page = new PageText();
        PageHeader.Of(page, title, [sheet], day.Patient, when, TestForm.Collection.Name(), indices.Options.Thresholds, isPreliminary: false);
        page.Lead(
            [
                .. PageFinding.Now(indices.Findings, day.Date),
                ("Dose", Both("weekly Kt/V urea", indices.WeeklyUreaDose) + " " + Both("weekly creatinine clearance", indices.WeeklyCreatinineClearance)),
                ("Residual function", indices.ResidualFiltration is { } filtration && day.Urine is { } urine
                    ? Invariant($"{PageWords.Value(filtration)} (mean of urea and creatinine clearance), urine {urine.Volume.Milliliters:0} mL.")
                    : "Not given: urine or a value in it was not measured."),
                ("Fluid and sodium", Said(indices.NetUltrafiltration, "net ultrafiltration") + " " + Both("sodium removed", indices.SodiumRemoved)),
                ("Glucose and protein", Said(indices.GlucoseAbsorbedMass, "glucose absorbed") + " " + Said(indices.ProteinLoss, "protein lost") + " " + Said(indices.NormalizedProteinCatabolicRate, "normalized protein catabolic rate")),
            ])
            .Heading("Measured");
        Bags(page, day);
        MeasuredTable.Of(page, sheet);
        page.Small(Invariant($"Collected {day.Duration.TotalHours:0.#} h; blood {(day.PlasmaClock is { } clock ? "at " + clock.ToString("HH:mm", System.Globalization.CultureInfo.InvariantCulture) : "without a clock time")}; urine {(day.Urine is { } collected ? Invariant($"{collected.Volume.Milliliters:0} mL") : "not mentioned")}; body water {day.Patient.BodyWater.Liters:0.0} L ({PageWords.Name(day.Patient.BodyWaterFormula)}), surface {day.Patient.BodySurface.SquareMeters:0.00} m² (Du Bois)."))
            .Heading("Indices")
            .Strips(["by drains and kidneys", "#both", "#drains", "#kidneys"],
                [
                    .. Row("weekly Kt/V urea", indices.WeeklyUreaDose), .. Row("weekly creatinine clearance", indices.WeeklyCreatinineClearance), .. Row("sodium removed", indices.SodiumRemoved),
                ])
            .Small("Dark: drains; grey: kidneys; whisker: ± 1 SD of assays and volumes. From day to day a collection varies by 4.0 % (Kt/V) and 4.7 % (creatinine) besides (read). No target is drawn.")
            .TwoTables(["other indices", "#value ± SD"], [.. indices.All.Where(index => !InParts.Any(part => index.Name.StartsWith(part, StringComparison.Ordinal)) && index.Name != "glucose absorbed")
                .Select(index => (IReadOnlyList<string>)[PageIndices.Short(index.Name), PageWords.Value(index)])]);
        PageClosing.Of(page, PageFinding.OfMeaning(indices.Findings), MembranePatterns.Of(indices.Findings), PageFinding.OfTheirQuality(sheet.Findings, indices.Findings),
            [.. TestForm.Collection.CannotGive(), .. indices.NotAvailable], [.. day.Drains.Select(drain => drain.Solution).OfType<DialysisSolution>().Distinct()], day.Patient,
            Invariant($"Sums over the bags, over plasma, scaled to 24 h. Renal part of the creatinine clearance: mean of urea and creatinine clearance. Protein catabolic rate by Bergström 1998 and Randerson 1981 (memory), from measured urea only{(PageWords.IsChild(day.Patient) ? "; both are of adults" : "")}. Glucose and sodium of fresh bags by the label. ± is one standard deviation from the assays ({100 * indices.Options.AssayVariation:0.#} %, sodium {100 * indices.Options.SodiumAssayVariation:0.#} %) and {indices.Options.VolumeDeviation.Milliliters:0} mL a volume (choices). Kt/V and clearance met or not met is no tick-box: symptoms, volume state and nutrition count as much."));
        return page.ToPage(title);
    }

    private static IEnumerable<(IReadOnlyList<string> Cells, string Strip)> Row(string name, (IndexValue? Peritoneal, IndexValue? Renal, IndexValue? Total) parts)
    {
        if ((parts.Total ?? parts.Peritoneal ?? parts.Renal) is { } any)
        {
            yield return (
                [
                    name + (any.Unit.Length == 0 ? "" : $", {any.Unit}"), Number(parts.Total), Number(parts.Peritoneal), Number(parts.Renal),
                ],
                parts is { Peritoneal: { Value: >= 0 } drains, Renal: { Value: >= 0 } kidneys, Total: { } both } ? StripSvg.Parts(drains, kidneys, both) : "");
        }

        static string Number(IndexValue? index) => index is null ? "–" : PageWords.Number(index);
    }

    private static void Bags(PageText page, CollectedDay day) => page.Table(["bag", "solution", "#in, mL", "#out, mL", "#ultrafiltration, mL"],
        [.. day.Drains.Select(drain => (IReadOnlyList<string>)
        [
            drain.Name, drain.Solution is { } solution ? PageWords.Bag(solution) : "not written down", drain.Fill is { } fill ? Digits.Fixed(fill.Milliliters, 0) : "–",
            Digits.Fixed(drain.Drained.Milliliters, 0), drain.Fill is { } entered ? Digits.Fixed((drain.Drained - entered).Milliliters, 0) : "–",
        ])]);

    private static string Said(IndexValue? index, string name) => index is null ? $"{PageWords.Capital(name)} not given." : $"{PageWords.Capital(name)} {PageWords.Value(index)}.";

    private static string Both(string name, (IndexValue? Peritoneal, IndexValue? Renal, IndexValue? Total) parts) => (parts.Total ?? parts.Peritoneal) is not { } most
        ? $"{PageWords.Capital(name)} not given."
        : $"{PageWords.Capital(name)} {PageWords.Value(most)}{(parts.Total is null ? " by the drains alone" : $" (drains {PageWords.Number(parts.Peritoneal!)}, kidneys {PageWords.Number(parts.Renal!)})")}.";
}
