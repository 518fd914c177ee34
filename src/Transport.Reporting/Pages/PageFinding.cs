using System.Text.RegularExpressions;
using static System.FormattableString;

namespace Transport.Reporting;

/// <summary>A finding as a page says it.</summary>
internal sealed partial record PageFinding(Severity Severity, string Code, string Message, string Detail)
{
    /// <summary>Findings of indices that speak of the numbers' quality, not of the membrane.</summary>
    private static readonly HashSet<string> OfQuality =
    [
        "class-not-comparable", "dialysate-above-plasma", "plasma-glucose-high", "initial-glucose-estimated", "residual-volume-large", "residual-volume-solutes-disagree",
        "free-water-implausible", "fresh-sodium-labelled", "creatinine-glucose-classes-differ", "pair-dates-apart", "pair-fills-differ", "series-test-undated",
        "collection-not-a-day", "collection-urine-missing", "collection-blood-time-missing", "collection-creatinine-output-unusual",
    ];

    public string Word => Severity switch { Severity.Error => "Error.", Severity.Warning => "Read with care.", _ => "Note." };

    public static bool IsOfQuality(Finding finding) => OfQuality.Contains(finding.Code);

    /// <summary>What indices mean, gravest first: message, numbers, limit with its source.</summary>
    public static IReadOnlyList<PageFinding> OfMeaning(IEnumerable<Finding> findings) =>
        [.. findings.Where(finding => !IsOfQuality(finding)).OrderByDescending(finding => finding.Severity).Select(Of)];

    /// <summary>Quality, gravest first: what the reader of the sheet found, then what the indices did.</summary>
    public static IReadOnlyList<PageFinding> OfTheirQuality(IEnumerable<Finding> ofSheets, IEnumerable<Finding> ofIndices) =>
        [.. ofSheets.Concat(Together(ofIndices.Where(IsOfQuality))).OrderByDescending(finding => finding.Severity).Select(Of)];

    // What makes a class preliminary is one finding with several reasons.
    private static IEnumerable<Finding> Together(IEnumerable<Finding> findings) => findings.GroupBy(finding => finding.Code).SelectMany(group =>
        group is { Key: "class-not-comparable" } && group.Count() > 1
            ? [group.First() with { Message = "The class is preliminary and not comparable with the published ones. " + string.Join(" ", group.Select(finding => Reason(finding.Message)).Distinct()) }]
            : group.AsEnumerable());

    private static string Reason(string message) => message.Replace(" The class is preliminary and not comparable with the published ones.", "", StringComparison.Ordinal);

    private static PageFinding Of(Finding finding)
    {
        var place = string.Join(", ", new[] { finding.Row is not null ? finding.File : null, finding.Row is { } row ? Invariant($"row {row}") : null, finding.Field }.Where(part => !string.IsNullOrEmpty(part)));
        var found = string.Join(": ", new[] { place, finding.Found }.Where(part => !string.IsNullOrEmpty(part)));
        var expected = finding.Expected is { } limit ? "Expected " + limit : "";
        return new(finding.Severity, finding.Code, finding.Message, Minus().Replace(
            string.Join("; ", new[] { PageWords.Capital(found), found.Length > 0 && expected.Length > 0 ? "expected" + expected[8..] : expected }.Where(part => part.Length > 0)) is { Length: > 0 } detail ? detail + "." : "", "−"));
    }

    // The minus sign of print before a number; a date keeps its hyphens.
    [GeneratedRegex(@"(?<!\w)-(?=\d)")]
    private static partial Regex Minus();
}
