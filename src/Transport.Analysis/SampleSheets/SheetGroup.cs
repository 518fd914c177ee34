using Codes = Transport.Analysis.SampleSheetCodes;

namespace Transport.Analysis;

/// <summary>Sheets that belong on one page: one test, a pair, a series of tests, or a collection. Told by what they hold, never by their names.</summary>
/// <param name="Kind">What they make.</param>
/// <param name="Sheets">The sheets, in the order given.</param>
/// <param name="Why">One sentence on how it was told.</param>
public sealed record SheetGroup(SheetGroupKind Kind, IReadOnlyList<SampleSheet> Sheets, string Why)
{
    private const int PairDaysApart = 14;
    private static readonly TimeSpan Hour = TimeSpan.FromHours(1);
    private static readonly TimeSpan Early = TimeSpan.FromMinutes(MembraneThresholds.Default.EarlyTolerance.Value);

    /// <summary>
    /// Sorts sheets. Each collection stands alone. Two tests are a pair where both have the volume at 60 min, two strengths, and dates at most 14 days apart; any
    /// other two or more are a series.
    /// </summary>
    /// <param name="sheets">Sheets in any order.</param>
    /// <param name="findings">Every error of every sheet, and what keeps them from belonging together. Where there is one, no group is given.</param>
    public static IReadOnlyList<SheetGroup> Of(IReadOnlyList<SampleSheet> sheets, out IReadOnlyList<Finding> findings)
    {
        ArgumentNullException.ThrowIfNull(sheets);
        findings = [.. sheets.SelectMany(sheet => sheet.Findings).Where(finding => finding.Severity == Severity.Error), .. Together(sheets)];
        return findings.Count > 0
            ? []
            :
            [
                .. Tests([.. sheets.Where(sheet => sheet.TryToTest(out _))]),
                .. sheets.Where(sheet => sheet.TryToCollection(out _)).Select(sheet => new SheetGroup(SheetGroupKind.Collection, [sheet], $"{sheet.FileName} holds a 24-h collection")),
            ];
    }

    /// <summary>What keeps sheets from being one person's: a code that is missing or another; a series whose tests have no date. None where nothing does.</summary>
    public static IReadOnlyList<Finding> WhyNotOfOnePerson(IReadOnlyList<SampleSheet> sheets)
    {
        ArgumentNullException.ThrowIfNull(sheets);
        return [.. Together(sheets)];
    }

    private static IEnumerable<SheetGroup> Tests(IReadOnlyList<SampleSheet> tests)
    {
        switch (tests)
        {
            case []:
                yield break;
            case [var one]:
                yield return new(SheetGroupKind.Test, tests, $"{one.FileName} holds one {one.ToTest().Form.Name()}");
                yield break;
            case [var one, var other] when IsPair(one.ToTest(), other.ToTest()):
                yield return new(SheetGroupKind.Pair, tests, $"{one.FileName} and {other.FileName} are a pair: both have the volume at 60 min, with two strengths, {(one.ToTest().Date is null || other.ToTest().Date is null ? "how many days apart is not known" : $"at most {PairDaysApart} days apart")}");
                yield break;
            default:
                yield return new(SheetGroupKind.Series, tests, $"{string.Join(", ", tests.Select(sheet => sheet.FileName))} are a series of {tests.Count} tests");
                yield break;
        }
    }

    private static bool IsPair(EquilibrationTest one, EquilibrationTest other)
    {
        var (weak, strong) = one.Solution.Glucose <= other.Solution.Glucose ? (one, other) : (other, one);
        return one.Solution.Agent == OsmoticAgent.Glucose && other.Solution.Agent == OsmoticAgent.Glucose
            && strong.Solution.Glucose > weak.Solution.Glucose * 1.2
            && one.DrainedAt(Hour, Early) is not null && other.DrainedAt(Hour, Early) is not null
            && !(one.Date is { } first && other.Date is { } second && Math.Abs(first.DayNumber - second.DayNumber) > PairDaysApart);
    }

    // What makes several sheets one person's: nothing is put together on a guess.
    private static IEnumerable<Finding> Together(IReadOnlyList<SampleSheet> sheets)
    {
        if (sheets.Count < 2)
        {
            yield break;
        }

        foreach (var sheet in sheets.Where(sheet => sheet.Code is null && sheet.Facts.Count > 0))
        {
            yield return Codes.SheetsWithoutCode.Finding("Of several sheets each needs the patient's code, so that no two people are put on one page. Add it.", field: "code") with { File = sheet.FileName };
        }

        var codes = sheets.Select(sheet => sheet.Code).OfType<string>().Distinct().ToList();
        if (codes.Count > 1)
        {
            yield return Codes.SheetsOfDifferentPatients.Finding("The sheets carry different patient codes. Give those of one person at a time.", field: "code", found: string.Join(", ", codes));
        }

        var tests = sheets.Where(sheet => sheet.TryToTest(out _)).ToList();
        if (tests.Count > 1 && !(tests.Count == 2 && IsPair(tests[0].ToTest(), tests[1].ToTest())))
        {
            foreach (var sheet in tests.Where(sheet => sheet.ToTest().Date is null))
            {
                yield return Codes.SheetsWithoutDate.Finding("A series needs the date of each test. Add it.", field: "date") with { File = sheet.FileName };
            }
        }
    }
}
