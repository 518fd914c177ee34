namespace Transport.Analysis;

/// <summary>One kind of thing that a reading can find. Its code and severity never change together with a message.</summary>
/// <param name="Code">Stable, lower-case, hyphenated.</param>
/// <param name="Severity">How much it matters, always the same for one code.</param>
/// <param name="Meaning">What it means, one sentence, without values.</param>
public sealed record SheetFindingKind(string Code, Severity Severity, string Meaning)
{
    internal Finding Finding(string message, int? row = null, string? field = null, string? found = null, string? expected = null) =>
        new(Severity, Code, message) { Row = row, Field = field, Found = found is null ? null : Shortened(found), Expected = expected };

    private static string Shortened(string found)
    {
        var line = string.Join(' ', found.Split(default(char[]), StringSplitOptions.RemoveEmptyEntries));
        return line.Length <= 60 ? line : line[..60] + "…";
    }
}
