using static System.FormattableString;

namespace Transport.Reporting;

/// <summary>What every page of a test says of its indices: lead, table, strips, and the lines on method.</summary>
internal static class PageIndices
{
    private static readonly string[] SaidElsewhere =
        ["glucose absorbed", "net ultrafiltration, as written", "sodium removed at 60 min", "marker lost", "transcapillary ultrafiltration, flow"];

    /// <summary>Whether the table of a page holds it: what other lines say, or only helps another index, is left to the notebook.</summary>
    public static bool IsShown(string name) =>
        !SaidElsewhere.Contains(name) && !(name.EndsWith(" in the drain", StringComparison.Ordinal) && !name.StartsWith("total protein", StringComparison.Ordinal));

    /// <summary>Class in words with that of 1987 in brackets, its percentile, and how sure it is.</summary>
    public static string Transfer(EquilibrationIndices indices)
    {
        if (indices.Classification is not { } classification)
        {
            var reason = indices.NotAvailable.FirstOrDefault(missing => missing.Name == "transport category")?.Reason ?? "D/P creatinine not available";
            return $"No class: {reason}." + (indices.DialysateToPlasmaCreatinine is { } ratio ? $" D/P creatinine {PageWords.Value(ratio)} at {Digits.Fixed(indices.FinalSampleTime!.Value.TotalMinutes, 0)} min." : "");
        }

        var probabilities = string.Join(", ", TransportCategories.All.Where(category => classification.Probabilities[category] >= 0.005)
            .OrderByDescending(category => classification.Probabilities[category])
            .Select(category => $"{category.Name()} {Digits.Percent(classification.Probabilities[category])}"));
        var value = $"D/P creatinine {PageWords.Value(indices.DialysateToPlasmaCreatinine!)}";
        var preliminary = classification.IsComparable ? "" : ", preliminary";

        // What may be a mix-up comes before the class, and the class without any claim to be sure.
        return (classification.CreatinineInDoubt is not null
                ? EquilibrationReports.Doubt(classification)
                : PageWords.Capital($"{classification.Category.Name()}{preliminary}: {value}, percentile {PageWords.Percentile(classification.Percentile)} of {classification.Population.Name}.") + $" On a repeated test: {probabilities}.")
            + (classification.GlucoseCategory is { } glucose ? $" By glucose, a cross-check: {glucose.Name()}." : "");
    }

    /// <summary>Ultrafiltration and what of it is free water.</summary>
    public static string FreeWater(EquilibrationIndices indices) => indices.FirstHour is { } hour
        ? $"{PageWords.Value(hour.FreeWater)} of {PageWords.Value(hour.NetUltrafiltration)} in the first hour"
            + (hour.FreeWaterFraction is { } share ? $" (share {PageWords.Value(share)})" : "")
            + $"; corrected for diffusion {PageWords.Value(hour.CorrectedFreeWater)}. {Sensitivity(hour)}"
        : $"not given: {indices.NotAvailable.FirstOrDefault(missing => missing.Name == "free water at 60 min")?.Reason ?? "not measured"}.";

    private static string Sensitivity(FirstHourIndices hour) =>
        hour.Sensitivities.Count == 0 ? "" : $"{hour.Sensitivities[0].Change} moves it by {Digits.Fixed(hour.Sensitivities[0].Value, 0)} {hour.Sensitivities[0].Unit}.";

    /// <summary>Net ultrafiltration with its fill, and absorbed glucose.</summary>
    public static string Ultrafiltration(EquilibrationIndices indices) => indices.NetUltrafiltration is { } net
        ? $"{PageWords.Value(net)} in {Digits.Hours(indices.Test.Dwell)} of {indices.Test.Solution.Name}, fill {Digits.Fixed(indices.Test.EnteredVolume.Milliliters, 0)} mL. {indices.FillStatement}{(IsGradientTaken(indices) ? " Not judged while plasma glucose is so high." : "")}"
        : "not given: drained volume not measured.";

    // What rests on the gradient is printed and not read: the finding says why.
    private static bool IsGradientTaken(EquilibrationIndices indices) => indices.Findings.Any(finding => finding.Code == "plasma-glucose-high");

    /// <summary>The two strongest indirect signs of conductance that one test has.</summary>
    public static string IndirectSigns(EquilibrationIndices indices) => indices.SodiumDip is { } dip
        ? indices.Test.IsStrengthInDoubt || !indices.Options.Thresholds.IsStrongStrength(indices.Test.Solution)
            ? $"The sodium dip, {PageWords.Value(dip)}, is read as a sign of it at 3.86 % alone."
            : $"Indirect sign{(IsGradientTaken(indices) ? ", not read while plasma glucose is so high" : " here")}: sodium dip {PageWords.Value(dip)}{(indices.CorrectedSodiumDip is { } corrected ? $", corrected for diffusion {PageWords.Value(corrected)}" : "")}."
        : "No sodium dip was measured, so there is no indirect sign of it either.";

    /// <summary>Indices beside the series, one strip each, then the others in two columns.</summary>
    public static PageText Table(PageText page, SampleSheet sheet, EquilibrationIndices indices)
    {
        var compared = indices.Comparison?.Rows ?? [];
        if (compared.Count > 0)
        {
            page.Strips(StripColumns, StripRows(indices)).Small(StripKey(indices));
        }

        page.Small(NotCompared(indices));

        var others = indices.All
            .Where(index => IsShown(index.Name) && compared.All(one => one.Index.Name != index.Name)
                && (index.Name != "residual volume" || index.StandardDeviation is not null)
                && (index.Name != "largest sodium dip" || index.Value != indices.SodiumDip?.Value))
            .Select(index => (IReadOnlyList<string>)[Short(index.Name), index.Name == "D0 glucose" ? OwnUnits(sheet, index) : PageWords.Value(index)]).ToList();
        return page.TwoTables(compared.Count > 0 ? ["other indices", "#value ± SD"] : ["index", "#value ± SD"], others);
    }

    // Where a percentile would stand, the reason why there is none.
    private static string NotCompared(EquilibrationIndices indices) => indices.Comparison is { NotComparable: { Count: > 0 } missing } comparison
        ? $"No percentile of {comparison.Population.Name}: {PageWords.Missing(missing)}"
        : "";

    /// <summary>Headings of the table of strips.</summary>
    public static IReadOnlyList<string> StripColumns { get; } = ["index", "#value ± SD", "#series, mean ± SD", "#percentile (z)"];

    /// <summary>Its rows: what can be compared.</summary>
    public static IReadOnlyList<(IReadOnlyList<string> Cells, string Strip)> StripRows(EquilibrationIndices indices) =>
    [
        .. (indices.Comparison?.Rows ?? []).Zip(EquilibrationCharts.Strips(indices)).Select(pair => ((IReadOnlyList<string>)
        [
            pair.Second.Name, PageWords.Value(pair.First.Index),
            $"{Digits.Fixed(pair.First.Reference.Mean, pair.Second.Decimals)} ± {Digits.Fixed(pair.First.Reference.StandardDeviation, pair.Second.Decimals)}", PageWords.Beside(pair.First),
        ], StripSvg.Of(pair.Second))),
    ];

    /// <summary>How a strip is read.</summary>
    public static string StripKey(EquilibrationIndices indices) => $"Bar: series' mean ± 1 SD, thin line ± 2 SD. {EquilibrationCharts.Whiskers(EquilibrationCharts.Strips(indices))}";

    // A laboratory that writes mg/dL reads its own unit first.
    private static string OwnUnits(SampleSheet sheet, IndexValue glucose)
    {
        var milligrams = sheet.Measurements.FirstOrDefault(row => row is { Analyte: Analyte.Glucose, Unit: not null })?.Unit == "mg/dL";
        var perMillimole = Concentration.FromMillimolesPerLiter(1).MilligramsPerDeciliter(Solutes.Glucose);
        return milligrams
            ? PageWords.Value(new IndexValue(glucose.Name, glucose.Value * perMillimole, "mg/dL", "", "", glucose.StandardDeviation * perMillimole)) + $"\n({PageWords.Value(glucose)})"
            : PageWords.Value(glucose);
    }

    /// <summary>A name that fits into half a page.</summary>
    public static string Short(string name) => name
        .Replace("mass transfer area coefficient of", "MTAC of", StringComparison.Ordinal)
        .Replace("corrected for diffusion", "less diffusion", StringComparison.Ordinal)
        .Replace("glucose absorbed, fraction", "glucose absorbed, share", StringComparison.Ordinal)
        .Replace("glucose absorbed, mass", "glucose absorbed", StringComparison.Ordinal);

    /// <summary>How the numbers were made, line by line.</summary>
    public static string Method(EquilibrationIndices indices)
    {
        var options = indices.Options;
        var assay = indices.Test.CreatinineAssay switch
        {
            { Corrects: true } corrected => Invariant($"Creatinine by picrate (Jaffe), corrected for glucose with the laboratory's factor {corrected.GlucoseFactor:0.#######} mg/dL per mg/dL"),
            { Method: CreatinineMethod.Enzymatic } => "Creatinine enzymatic, not corrected",
            { Method: CreatinineMethod.Jaffe } => "Creatinine by picrate (Jaffe), not corrected for glucose: no factor given",
            _ => "Creatinine by a method not stated, not corrected for glucose",
        };
        var parts = new List<string>
        {
            assay + ".",
            Invariant($"± is one standard deviation from the assays ({100 * options.AssayVariation:0.#} %, sodium {100 * options.SodiumAssayVariation:0.#} %) and {options.VolumeDeviation.Milliliters:0} mL a volume (choices)."),
        };
        if (indices.Classification is { } classification)
        {
            parts.Add(Invariant($"Class borders {classification.Cuts.SlowBorder:0.00}, {classification.Cuts.MiddleBorder:0.00}, {classification.Cuts.FastBorder:0.00} ({classification.Cuts.Source}; {classification.Cuts.Evidence.ToString().ToLowerInvariant()}); probabilities for a within-person SD of {classification.StandardDeviation:0.00} (choice)."));
        }

        if (indices.Comparison is { } comparison)
        {
            if (comparison.Rows.Count > 0)
            {
                parts.Add($"Series: {PageWords.Series(comparison.Population)}, {comparison.Population.Source}.");
            }

        }

        if (indices.CreatinineMassTransfer is not null)
        {
            parts.Add(Invariant($"MTAC (mass transfer area coefficient): convection weight {options.MassTransfer.ConvectionWeight:0.##}, {options.MassTransfer.MeanVolume.ToString().ToLowerInvariant()} mean volume, plasma over {options.MassTransfer.PlasmaWaterFraction:0.000}, D0 used (computed)."));
        }

        if (indices.FirstHour is not null)
        {
            parts.Add("Free water by the sodium balance of the first hour (La Milia et al. 2005; memory).");
        }

        return string.Join(" ", parts);
    }
}
