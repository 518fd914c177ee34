using static System.FormattableString;

namespace Transport.Reporting;

/// <summary>What surrounds the indices of a test, as sentences and tables: collections, pairs, series, classes, populations, limits.</summary>
public static class EquilibrationReports
{
    /// <summary>Dose, residual function and balances of a collected day, with what could not be given.</summary>
    public static ReportBlock Of(CollectionIndices indices)
    {
        ArgumentNullException.ThrowIfNull(indices);
        var day = indices.Collection;
        return Table(new ReportBlock().Sentence(Invariant($"{Count(day.Drains.Count, "bag")}, {day.Duration.TotalHours:0.#} h collected; urine {(day.Urine is { } urine ? Invariant($"{urine.Volume.Milliliters:0} mL") : "not mentioned")}.")), indices.All)
            .FindingList(indices.Findings)
            .Folded("Not available", Missing(indices.NotAvailable))
            .Folded("Formulas and sources", Sources(indices.All))
            .Small("± is one standard deviation of assays and volumes; from day to day a collection varies by 4.0 % (Kt/V) and 4.7 % (creatinine) besides (read). A number, no tick-box: symptoms, volume state and nutrition are not assessed here.");
    }

    /// <summary>The bags of a collection as written.</summary>
    public static ReportBlock Of(CollectedDay day)
    {
        ArgumentNullException.ThrowIfNull(day);
        return new ReportBlock().Table(new(["bag", "solution", "#in, mL", "#out, mL"],
            [.. day.Drains.Select(drain => (IReadOnlyList<string>)
            [
                drain.Name, drain.Solution?.Name ?? "not written down", drain.Fill is { } fill ? Digits.Fixed(fill.Milliliters, 0) : "–", Digits.Fixed(drain.Drained.Milliliters, 0),
            ])]));
    }

    /// <summary>The osmotic conductance of two tests, and both beside each other.</summary>
    public static ReportBlock Of(PairedTest pair)
    {
        ArgumentNullException.ThrowIfNull(pair);
        var (weak, strong) = (pair.Weak.All, pair.Strong.All);
        return new ReportBlock()
            .Sentence(pair.OsmoticConductance is { } conductance
                ? $"Osmotic conductance to glucose {PageWords.Value(conductance)}. {conductance.Formula}; {conductance.Source}."
                : $"Osmotic conductance to glucose not given: {pair.NotAvailable[0].Reason}.")
            .Table(new(["index", "#" + pair.Weak.Test.Solution.Name, "#" + pair.Strong.Test.Solution.Name],
                [.. strong.Concat(weak).Select(index => index.Name).Distinct().Select(name => (IReadOnlyList<string>)[name, Value(weak, name), Value(strong, name)])]))
            .FindingList(pair.Findings.Concat(pair.Weak.Findings).Concat(pair.Strong.Findings))
            .Small("Medians of long-term patients, made in another way: 3.0 µL/min/mmHg with normal ultrafiltration, 2.1 with failure (Smit et al. 2004, read). Only values computed alike can be compared.");

        static string Value(IReadOnlyList<IndexValue> all, string name) => all.FirstOrDefault(index => index.Name == name) is { } index ? PageWords.Value(index) : "–";
    }

    /// <summary>Courses over time, and which change is more than chance explains.</summary>
    public static ReportBlock Of(SerialTests series)
    {
        ArgumentNullException.ThrowIfNull(series);
        return new ReportBlock()
            .Sentence(series.Tests.Count == 0 ? "No test has a date." : $"{Count(series.Tests.Count, "test")} from {PageWords.Date(series.Tests[0].Test.Date)} to {PageWords.Date(series.Tests[^1].Test.Date)}.")
            .Table(new(["index", "#first", "#last", "#change", "#chance explains\nup to", "#per year", "beyond chance"],
                [.. series.Courses.Select(course => (IReadOnlyList<string>)
                [
                    course.Name, PageWords.Value(course.Points[0].Index), PageWords.Value(course.Points[^1].Index), PageWords.Value(course.ChangeFromFirst), PageWords.Value(course.MinimalDetectableChange),
                    course.SlopePerYear is { } slope ? PageWords.Number(slope) : "–",
                    course.IsReal(course.ChangeFromFirst) ? "since the first" : course.IsReal(course.ChangeFromPrevious) ? "since the one before" : "no",
                ])]))
            .FindingList(series.Findings)
            .Small("A change beyond chance is larger than 2.77 standard deviations of one test within the person (memory of low confidence, and choices).");
    }

    /// <summary>A class with the probability of each on a repeated test.</summary>
    public static ReportBlock Of(TransportClassification classification)
    {
        ArgumentNullException.ThrowIfNull(classification);
        var block = new ReportBlock()
            .Sentence(Transfer(classification, "D/P creatinine"));
        if (classification.CreatinineInDoubt is null)
        {
            block.Table(new(["class", "#on a repeated test"], [.. TransportCategories.All.Select(category => (IReadOnlyList<string>)[category.Name(), Digits.Percent(classification.Probabilities[category])])]));
        }

        return block
            .Small(Invariant($"Borders {classification.Cuts.SlowBorder:0.00}, {classification.Cuts.MiddleBorder:0.00}, {classification.Cuts.FastBorder:0.00}: {classification.Cuts.Source} ({Mark(classification.Cuts.Evidence)}). Within-person SD {classification.StandardDeviation:0.00} (choice)."));
    }

    /// <summary>A D/P creatinine with its class, percentile and what makes it preliminary; where the creatinine is in doubt the doubt first, and no place among people.</summary>
    internal static string Transfer(TransportClassification classification, string begin) => classification.CreatinineInDoubt is not null
        ? Doubt(classification) + Preliminary(classification.CautionsBesideDoubt)
        : Invariant($"{begin} {Digits.Fixed(classification.Value, 2)}, {classification.Category.Name()}; percentile {PageWords.Percentile(classification.Percentile)} (z {Digits.Fixed(classification.ZScore, 1)}) of {classification.Population.Name}.{(classification.IsBorderline ? " Borderline." : "")}")
            + Preliminary(classification.Cautions);

    /// <summary>What to look for before the class is read: the doubt is the first of its cautions.</summary>
    internal static string Doubt(TransportClassification classification) =>
        $"{string.Concat(classification.Cautions.Take(1))} Only if the value holds would the class be {classification.Category.Name()}.";

    private static string Preliminary(IEnumerable<string> cautions) => string.Join(" ", cautions) is { Length: > 0 } words ? " Preliminary: " + words : "";

    /// <summary>Indices beside a series, and why others cannot be compared.</summary>
    public static ReportBlock Of(PopulationComparison comparison)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        return new ReportBlock()
            .Sentence($"Beside {PageWords.Series(comparison.Population)}: {comparison.Population.Source}.")
            .Table(new(["index", "#value", "#series, mean ± SD", "#percentile (z)"],
                [.. comparison.Rows.Select(row => (IReadOnlyList<string>)[row.Index.Name, PageWords.Value(row.Index), $"{Digits.Of(row.Reference.Mean)} ± {Digits.Of(row.Reference.StandardDeviation)}", PageWords.Beside(row)])]))
            .Folded("Not comparable", Missing(comparison.NotComparable));
    }

    /// <summary>The series that ship.</summary>
    public static ReportBlock Of(IReadOnlyList<ReferencePopulation> populations)
    {
        ArgumentNullException.ThrowIfNull(populations);
        return new ReportBlock().Table(new(["series", "#n", "#D/P creatinine", "#D/D0 glucose", "#UF, mL", "#dip, mmol/L", "known by"],
            [.. populations.Select(series => (IReadOnlyList<string>)
            [
                series.Name, series.Count?.ToString(System.Globalization.CultureInfo.InvariantCulture) ?? "–", Range(series.DialysateToPlasmaCreatinine), Range(series.DialysateToInitialGlucose),
                Range(series.NetUltrafiltrationMilliliters), Range(series.SodiumDipMillimolesPerLiter), $"{Mark(series.Evidence)}\n{series.Source}",
            ])]));

        static string Range(ReferenceDistribution? of) => of is null ? "–" : $"{Digits.Of(of.Mean)} ± {Digits.Of(of.StandardDeviation)}";
    }

    /// <summary>Water of the first hour, and how far one input moves it.</summary>
    public static ReportBlock Of(FirstHourIndices hour)
    {
        ArgumentNullException.ThrowIfNull(hour);
        return Table(new(), hour.All).Sentence("Free water: " + string.Join("; ", hour.Sensitivities) + ".");
    }

    /// <summary>The residual volume that each solute gives, and their mean.</summary>
    public static ReportBlock Of(ResidualVolumeByDilution dilution)
    {
        ArgumentNullException.ThrowIfNull(dilution);
        return Table(new(), [.. dilution.EachSolute, dilution.Index])
            .Small(Invariant($"Disagreement ratio {Digits.Of(dilution.DisagreementRatio, 2)}: about 1 where the solutes differ by no more than their assays; above it the deviation of the mean is widened. Transfer during instillation makes the mean rather too high."));
    }

    /// <summary>Fluid kinetics from a marker.</summary>
    public static ReportBlock Of(MarkerKinetics marker)
    {
        ArgumentNullException.ThrowIfNull(marker);
        return Table(new(), marker.All)
            .Table(new(["#time, min", "#volume in the cavity, mL"], [.. marker.Volumes.Select(point => (IReadOnlyList<string>)[Digits.Fixed(point.Time.TotalMinutes, 0), Digits.Fixed(point.Volume.Milliliters, 0)])]))
            .Small("Total marker loss, not lymph flow.");
    }

    /// <summary>Protein clearances and losses.</summary>
    public static ReportBlock Of(ProteinTransport proteins)
    {
        ArgumentNullException.ThrowIfNull(proteins);
        return Table(new(), proteins.All);
    }

    /// <summary>A laboratory's own glucose factor.</summary>
    public static ReportBlock Of(CreatinineCalibration calibration)
    {
        ArgumentNullException.ThrowIfNull(calibration);
        return Table(new(), [.. new[] { calibration.Factor, calibration.MeanRatio, calibration.Intercept }.OfType<IndexValue>()]).FindingList(calibration.Findings);
    }

    /// <summary>Indices with their deviations.</summary>
    public static ReportBlock Of(IReadOnlyList<IndexValue> indices)
    {
        ArgumentNullException.ThrowIfNull(indices);
        return Table(new(), indices).Folded("Formulas and sources", Sources(indices));
    }

    /// <summary>A table of limits, each with how it is known.</summary>
    public static ReportBlock Of(MembraneThresholds limits)
    {
        ArgumentNullException.ThrowIfNull(limits);
        return new ReportBlock().Sentence(PageWords.Capital(limits.Name) + ".").Table(new(["limit", "#value", "unit", "known by"],
            [.. typeof(MembraneThresholds).GetProperties().Where(property => property.PropertyType == typeof(Threshold)).Select(property => (property.Name, Limit: (Threshold)property.GetValue(limits)!))
                .Select(row => (IReadOnlyList<string>)[Words(row.Name), Digits.Of(row.Limit.Value), row.Limit.Unit, $"{Mark(row.Limit.Evidence)}\n{row.Limit.Source}"])]));
    }

    /// <summary>A clinic's own limits: name, version, and what is wrong with the file.</summary>
    public static ReportBlock Of(LocalProtocol protocol)
    {
        ArgumentNullException.ThrowIfNull(protocol);
        var shipped = MembraneThresholds.Default;
        return new ReportBlock().Sentence($"{protocol.Name}, version {protocol.Version}.").FindingList(protocol.Findings).Table(new(["limit", "#here", "#as shipped", "unit"],
            [.. typeof(MembraneThresholds).GetProperties().Where(property => property.PropertyType == typeof(Threshold))
                .Select(property => (property.Name, Own: (Threshold)property.GetValue(protocol.Thresholds)!, Shipped: (Threshold)property.GetValue(shipped)!))
                .Where(row => row.Own != row.Shipped)
                .Select(row => (IReadOnlyList<string>)[Words(row.Name), Digits.Of(row.Own.Value), Digits.Of(row.Shipped.Value), row.Own.Unit])]));
    }

    private static ReportBlock Table(ReportBlock block, IEnumerable<IndexValue> indices) => block.Table(new(["index", "#value ± SD"],
        [.. indices.Select(index => (IReadOnlyList<string>)[index.Name, PageWords.Value(index)])]));

    private static ReportTable Missing(IEnumerable<MissingIndex> missing) => new(["index", "why"], [.. missing.Select(one => (IReadOnlyList<string>)[one.Name, one.Reason])]);

    private static ReportTable Sources(IEnumerable<IndexValue> indices) => new(["index", "formula", "source"], [.. indices.Select(index => (IReadOnlyList<string>)[index.Name, index.Formula, index.Source])]);

    private static string Mark(Evidence evidence) => evidence.ToString().ToLowerInvariant();

    private static string Count(int count, string noun) => Invariant($"{count} {noun}{(count == 1 ? "" : "s")}");

    // "SmallSodiumDip" reads "small sodium dip".
    private static string Words(string name) => string.Concat(name.Select((letter, i) => char.IsUpper(letter) ? (i > 0 ? " " : "") + char.ToLowerInvariant(letter) : letter.ToString()));
}
