using System.Text.RegularExpressions;
using static System.FormattableString;

namespace Transport.Reporting;

/// <summary>A finding as a page says it.</summary>
internal sealed partial record PageFinding(Severity Severity, string Code, string Message, string Detail)
{
    /// <summary>Findings of indices that speak of the numbers' quality, not of the membrane.</summary>
    private static readonly HashSet<string> OfQuality =
    [
        "class-not-comparable", "dialysate-above-plasma", "creatinine-ahead-of-urea", "plasma-glucose-high", "initial-glucose-estimated", "residual-volume-large", "residual-volume-solutes-disagree",
        "free-water-implausible", "fresh-sodium-labelled", "creatinine-glucose-classes-differ", "pair-dates-apart", "pair-fills-differ", "series-test-undated", Contradiction,
        "collection-not-a-day", "collection-urine-missing", "collection-blood-time-missing", "collection-creatinine-output-unusual",
    ];

    /// <summary>Findings about blood that does not wait for the membrane, with what a page says first of each.</summary>
    private static readonly Dictionary<string, string> OfNow = new(StringComparer.Ordinal)
    {
        ["plasma-glucose-low"] = "low",
        ["plasma-glucose-very-high"] = "very high",
        ["plasma-sodium-low"] = "very low",
        ["plasma-sodium-high"] = "very high",
    };

    /// <summary>What a sheet says of how a test was made, and by which words a preliminary class says the same.</summary>
    private static readonly Dictionary<string, string> OfClass = new(StringComparer.Ordinal)
    {
        ["early-test"] = "after the start of dialysis",
        ["recent-peritonitis"] = "after a peritonitis",
        ["preceding-dwell-short"] = "The dwell before the test was",
        ["preceding-icodextrin"] = "of icodextrin",
        ["fill-not-comparable"] = "The fill was",
        ["dwell-not-comparable"] = "The dwell was",
    };

    /// <summary>The code of measurements that do not go together.</summary>
    public const string Contradiction = "test-contradicts-itself";

    public string Word => Severity switch { Severity.Error => "Error.", Severity.Warning => "Read with care.", _ => "Note." };

    /// <summary>Whether it is about blood that does not wait for the membrane.</summary>
    public static bool IsOfNow(Finding finding) => OfNow.ContainsKey(finding.Code);

    /// <summary>The first line of a page where blood does not wait for the membrane; nothing otherwise. A sheet may be old: the line has its date.</summary>
    /// <param name="findings">Findings of one sheet or of several of one date.</param>
    /// <param name="date">The date on the sheet; null where it has none.</param>
    public static IReadOnlyList<(string Name, string Words)> Now(IEnumerable<Finding> findings, DateOnly? date) =>
        string.Join(", ", findings.Where(IsOfNow).GroupBy(finding => (finding.Field, finding.Code)).Select(alike => $"{alike.Key.Field} {string.Join(" and ", alike.Select(finding => finding.Found).Distinct())} is {OfNow[alike.Key.Code]}")) is { Length: > 0 } words
            ? [("Now", $"{PageWords.Capital(words)}. {(date is null ? "Act" : $"Blood of {PageWords.Date(date)}: act")} on it now, by local protocol, unless somebody has; what else may make it so stands with the findings.")]
            : [];

    /// <summary>Blood of earlier tests that did not wait then: history beside the last one's.</summary>
    public static IEnumerable<Finding> Then(IEnumerable<EquilibrationIndices> earlier) => earlier
        .SelectMany(indices => indices.Findings.Where(IsOfNow).Select(finding => (Finding: finding, indices.Test.Date)))
        .GroupBy(one => (one.Finding.Code, one.Finding.Field))
        .Select(alike => alike.First().Finding with
        {
            Severity = Severity.Note,
            Message = $"{PageWords.Capital(alike.Key.Field!)} was {OfNow[alike.Key.Code]} at an earlier test: history, not the blood of today. The record should say what came of it.",
            Found = string.Join("; ", alike.Select(one => $"{one.Finding.Found} on {PageWords.Date(one.Date)}").Distinct()),
        });

    /// <summary>Findings of a sheet without those that its preliminary class repeats.</summary>
    public static IReadOnlyList<Finding> OfSheet(SampleSheet sheet, EquilibrationIndices indices) => indices.Classification is not { } classification
        ? sheet.Findings
        : [.. sheet.Findings.Where(finding => !OfClass.TryGetValue(finding.Code, out var words) || !classification.CautionsBesideDoubt.Any(caution => caution.Contains(words, StringComparison.Ordinal)))];

    /// <summary>Findings of two tests on one page: what both say is said once, with what was found at which.</summary>
    public static IReadOnlyList<Finding> OfBoth(EquilibrationIndices one, EquilibrationIndices other)
    {
        var areApart = one.Test.Date != other.Test.Date;
        return
        [
            .. new[] { one, other }.SelectMany(indices => indices.Findings.Select(finding => (Finding: finding, indices.Test)))
                .GroupBy(said => said.Finding with { Found = null })
                .Select(alike => alike.First().Finding.Found is null ? alike.First().Finding : alike.First().Finding with { Found = string.Join("; ", alike.Select(said => At(said.Finding.Found!, said.Test))) }),
        ];

        string At(string found, EquilibrationTest test) =>
            found + (found.Contains(test.Solution.Name, StringComparison.Ordinal) ? "" : $", test with {test.Solution.Name}") + (areApart ? $", {PageWords.Date(test.Date)}" : "");
    }

    public static bool IsOfQuality(Finding finding) => OfQuality.Contains(finding.Code);

    /// <summary>What indices mean, gravest first: message, numbers, limit with its source.</summary>
    public static IReadOnlyList<PageFinding> OfMeaning(IEnumerable<Finding> findings) =>
        [.. findings.Where(finding => !IsOfQuality(finding)).OrderByDescending(finding => finding.Severity).Select(finding => Of(finding, namesFile: false))];

    /// <summary>Quality, gravest first: what bears on the indices, then what else the reader of the sheet found.</summary>
    public static IReadOnlyList<PageFinding> OfTheirQuality(IReadOnlyList<Finding> ofSheets, IEnumerable<Finding> ofIndices)
    {
        // What several sheets have in common is said once, with all their names.
        ofSheets = [.. ofSheets.GroupBy(finding => finding with { File = null, Row = null }).Select(alike => alike.Count() == 1 ? alike.First() : alike.Key with { File = string.Join(", ", alike.Select(finding => finding.File)) })];
        var namesFile = ofSheets.Select(finding => finding.File).Distinct().Count() > 1 || ofSheets.Any(finding => finding.File?.Contains(", ", StringComparison.Ordinal) == true);
        return [.. Once(ofSheets, Together(ofIndices.Where(IsOfQuality))).OrderByDescending(finding => finding.Severity).Select(finding => Of(finding, namesFile))];
    }

    /// <summary>Findings of a sheet and of its indices, dialysate above plasma once: the indices name every solute and time, the sheet the rows.</summary>
    public static IEnumerable<Finding> Once(IReadOnlyList<Finding> ofSheets, IEnumerable<Finding> ofIndices)
    {
        List<Finding> all = [.. ofIndices];
        var rows = all.Exists(finding => finding.Code == "dialysate-above-plasma") ? ofSheets.Where(finding => finding.Code == SampleSheetCodes.RatioAboveOne.Code).ToList() : [];

        // Of two tests the rows of one would stand beside the other's.
        if (rows.Select(row => row.File).Distinct().Count() > 1 || all.Count(finding => finding.Code == "dialysate-above-plasma") > 1)
        {
            return all.Concat(ofSheets);
        }

        return all.Select(finding => finding.Code == "dialysate-above-plasma" && rows.Count > 0
            ? finding with { File = rows[0].File, Field = string.Join(", ", rows.Select(row => Invariant($"row {row.Row}"))) }
            : finding).Concat(ofSheets.Except(rows));
    }

    // What makes a class preliminary is one finding with several reasons.
    private static IEnumerable<Finding> Together(IEnumerable<Finding> findings) => findings.GroupBy(finding => finding.Code).SelectMany(group =>
        group is { Key: "class-not-comparable" } && group.Count() > 1
            ? [group.First() with { Message = "The class is preliminary and not comparable with the published ones. " + string.Join(" ", group.Select(finding => Reason(finding.Message)).Distinct()) }]
            : group.AsEnumerable());

    private static string Reason(string message) => message.Replace(" The class is preliminary and not comparable with the published ones.", "", StringComparison.Ordinal);

    private static PageFinding Of(Finding finding, bool namesFile)
    {
        var place = string.Join(", ", new[] { finding.Row is { } row ? Invariant($"row {row}") : null, finding.Field }.Where(part => !string.IsNullOrEmpty(part)));
        var found = string.Join(": ", new[] { place, finding.Found }.Where(part => !string.IsNullOrEmpty(part)));
        var expected = finding.Expected is { } limit ? "Expected " + limit : "";
        return new(finding.Severity, finding.Code, finding.Message, Minus().Replace(
            string.Join("; ", new[] { namesFile && finding.File is { } file ? file : "", PageWords.Capital(found), found.Length > 0 && expected.Length > 0 ? "expected" + expected[8..] : expected }.Where(part => part.Length > 0)) is { Length: > 0 } detail ? detail + "." : "", "−"));
    }

    // The minus sign of print before a number; a date keeps its hyphens.
    [GeneratedRegex(@"(?<!\w)-(?=\d)")]
    private static partial Regex Minus();
}
