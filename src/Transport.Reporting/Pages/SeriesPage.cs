using static System.FormattableString;

namespace Transport.Reporting;

/// <summary>The page of one person's tests over time: the last one's lead, then every course with what of its change is real.</summary>
internal static class SeriesPage
{
    public static ReportPage Of(IReadOnlyList<SampleSheet> sheets, SerialTests series)
    {
        var last = series.Tests[^1];
        var ofLastDay = series.Tests.Where(indices => indices.Test.Date == last.Test.Date).ToList();
        var when = $"{PageWords.Date(series.Tests[0].Test.Date)} to {PageWords.Date(last.Test.Date)}";
        var title = PageHeader.Title($"{series.Tests.Count} equilibration tests", sheets, when);
        var page = new PageText();
        PageHeader.Of(page, title, sheets, last.Test.Patient, when, "series of tests", last.Options.Thresholds, series.Tests.Any(PageHeader.IsPreliminary));
        page.Lead(
            [
                .. PageFinding.Now(ofLastDay.SelectMany(indices => indices.Findings), last.Test.Date),
                ("Osmotic conductance", $"Not from single tests: it needs two hours with two strengths. {PageIndices.IndirectSigns(last).Replace("sign here", "sign in the last test", StringComparison.Ordinal)}"),
                ("Transfer", "Last test: " + Lower(PageIndices.Transfer(last)) + Change(series, "D/P creatinine")),
                ("Free water", "Last test: " + PageIndices.FreeWater(last) + Change(series, "free water at 60 min")),
                ("Ultrafiltration", "Last test: " + PageIndices.Ultrafiltration(last) + Change(series, "net ultrafiltration")),
            ])
            .Heading("Tests");
        page.Table(["date", "form", "bag", "#fill, mL", "#drained, mL", "transfer", "sheet"],
            [.. series.Tests.Zip(sheets).Select(pair => (IReadOnlyList<string>)
            [
                PageWords.Date(pair.First.Test.Date), pair.First.Form.Name(), pair.First.Test.Solution.Name, Digits.Fixed(pair.First.Test.EnteredVolume.Milliliters, 0),
                pair.First.Test.DrainedVolume is { } drained ? Digits.Fixed(drained.Milliliters, 0) : "–",
                pair.First.Classification is { } classification ? Class(classification) : "no class", pair.Second.FileName,
            ])]);
        page.Heading("Courses")
            .Table(["index", "#first", "#last", "#change since first", "#chance explains up to", "#per year", "beyond chance"],
                [.. series.Courses.Select(Row)])
            .Picture(SerialCharts.Courses(series), 46);
        PageClosing.Of(page, PageFinding.OfMeaning(series.Findings.Concat(last.Findings).Concat(PageFinding.Then(series.Tests.Except(ofLastDay)))), last.Patterns,
            PageFinding.OfTheirQuality([.. sheets.Zip(series.Tests).SelectMany(pair => OfOne(pair.First, pair.Second, isLast: pair.Second == last))], series.Findings.Concat(last.Findings)),
            [.. last.Form.CannotGive(), .. last.NotAvailable], [.. series.Tests.SelectMany(indices => Caution.SolutionsOf(indices.Test))], last.Test.Patient,
            "A change beyond chance is larger than 2.77 SD of one test within the person. D/P and coefficients are followed at any strength, the rest at the last test's. Findings of single tests are those of the last. " + PageIndices.Method(last));
        return page.ToPage(title);
    }

    private static IReadOnlyList<string> Row(SerialIndex course)
    {
        var change = course.ChangeFromFirst;
        var smallest = course.MinimalDetectableChange;
        var decimals = course.Decimals;
        var unit = smallest.Unit.Length == 0 ? "" : " " + smallest.Unit;
        return
        [
            PageIndices.Short(course.Name),
            Digits.Fixed(course.Points[0].Index.Value, decimals), Digits.Fixed(course.Points[^1].Index.Value, decimals) + unit,
            Invariant($"{(change.Value > 0 ? "+" : "")}{Digits.Fixed(change.Value, decimals)} ± {Digits.Fixed(change.StandardDeviation ?? 0, decimals)}"),
            Digits.Fixed(smallest.Value, decimals) + unit,
            course.SlopePerYear is { } slope ? $"{Digits.Fixed(slope.Value, decimals)} ± {Digits.Fixed(slope.StandardDeviation ?? 0, decimals)}" : "–",
            course.IsReal(change) ? "since the first" : course.IsReal(course.ChangeFromPrevious) ? "since the one before" : "no",
        ];
    }

    // A class in doubt is none before the creatinine holds.
    private static string Class(TransportClassification classification) => classification.CreatinineInDoubt is not null
        ? $"in doubt; if the value holds, {classification.Category.Name()}"
        : classification.Category.Name() + (classification.IsComparable ? "" : ", preliminary");

    // Of the last test all is told; of those before it what was wrong with the sheet, and what in a course is not comparable: measurements that do not go together, a gradient that blood took away.
    private static IEnumerable<Finding> OfOne(SampleSheet sheet, EquilibrationIndices indices, bool isLast) => (isLast ? PageFinding.OfSheet(sheet, indices) : sheet.Findings).Where(finding => finding.Severity >= Severity.Warning)
        .Concat(isLast ? [] : indices.Findings.Where(finding => finding.Code is PageFinding.Contradiction or "plasma-glucose-high")
            .Select(finding => finding with { File = sheet.FileName, Field = $"test of {PageWords.Date(indices.Test.Date)}{(finding.Field is null ? "" : ", " + finding.Field)}" }));

    private static string Lower(string words) => char.ToLowerInvariant(words[0]) + words[1..];

    private static string Change(SerialTests series, string name) => series.Courses.FirstOrDefault(course => course.Name == name) is not { } course ? ""
        : $" Since the first: {(course.ChangeFromFirst.Value > 0 ? "+" : "")}{PageWords.Value(course.ChangeFromFirst)}, {(course.IsReal(course.ChangeFromFirst) ? "more than chance explains" : "within chance")}.";
}
