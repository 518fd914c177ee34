namespace Transport.Reporting;

/// <summary>Whose page it is, of when, by whom, and with what: what is missing of it is said.</summary>
internal static class PageHeader
{
    private const string NotThere = "not on the sheet";

    public static string Version => "Transport " + (typeof(SampleSheet).Assembly.GetName().Version?.ToString(3) ?? "");

    /// <summary>"Equilibration test · MV-01 · 2025-03-11".</summary>
    public static string Title(string what, IReadOnlyList<SampleSheet> sheets, string when) => $"{what} · {Code(sheets) ?? "no code"} · {when}";

    /// <param name="page">The page.</param>
    /// <param name="title">Its first words.</param>
    /// <param name="sheets">The sheets it rests on.</param>
    /// <param name="patient">Whose they are.</param>
    /// <param name="when">Date or dates.</param>
    /// <param name="form">What was done.</param>
    /// <param name="limits">The table of limits.</param>
    /// <param name="isPreliminary">Whether what went before or how it was done makes the result preliminary.</param>
    public static PageText Of(
        PageText page, string title, IReadOnlyList<SampleSheet> sheets, Patient patient, string when, string form, MembraneThresholds limits, bool isPreliminary)
    {
        page.Title(title, Mark(sheets, isPreliminary))
            .Identity(
            [
                ("patient", $"{Code(sheets) ?? "no code on the sheet"}, {PageWords.Person(patient)} of {Digits.Fixed(Math.Floor(patient.AgeYears * 10) / 10, patient.AgeYears % 1 == 0 ? 0 : 1)} years"),
                ("date", when),
                ("tester", All(sheets, sheet => sheet.Tester)),
                ("laboratory", All(sheets, sheet => sheet.Laboratory)),
                ("form", form),
                ("sheet", string.Join(", ", sheets.Select(sheet => sheet.FileName))),
                ("software", Version),
                ("limits", Limits(limits)),
            ]);
        var lacks = new[]
        {
            Code(sheets) is null ? "whose it is" : null,
            sheets.Any(sheet => sheet.Tester is null) ? "who tested" : null,
            sheets.Any(sheet => sheet.Laboratory is null) ? "which laboratory measured" : null,
            when.Contains(NotThere, StringComparison.Ordinal) ? "of when it is" : null,
        }.OfType<string>().ToList();
        return lacks.Count == 0 ? page : page.Small($"The sheet does not say {string.Join(", ", lacks.SkipLast(1))}{(lacks.Count > 1 ? " and " : "")}{lacks[^1]}: complete it before the page is filed.");
    }

    /// <summary>Whether a class was found that is not comparable with the published ones.</summary>
    public static bool IsPreliminary(EquilibrationIndices? indices) => indices?.Classification is { IsComparable: false };

    /// <summary>"PRELIMINARY · INVENTED DATA", or what of it holds.</summary>
    public static string Mark(IReadOnlyList<SampleSheet> sheets, bool isPreliminary) => string.Join(
        " · ", new[] { isPreliminary ? "PRELIMINARY" : null, sheets.Any(sheet => sheet.IsInvented) ? "INVENTED DATA" : null }.OfType<string>());

    /// <summary>The table of limits by its name and version, or that of the software it comes with.</summary>
    public static string Limits(MembraneThresholds limits) => limits.Name != MembraneThresholds.Default.Name ? limits.Name : $"as shipped with {Version}";

    public static string? Code(IReadOnlyList<SampleSheet> sheets) => sheets.Select(sheet => sheet.Code).FirstOrDefault(code => code is not null);

    private static string All(IReadOnlyList<SampleSheet> sheets, Func<SampleSheet, string?> read) =>
        string.Join(", ", sheets.Select(sheet => read(sheet) ?? NotThere).Distinct());
}
