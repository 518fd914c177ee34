using System.Collections.Immutable;

namespace Transport.Analysis;

/// <summary>Regimens in a file, as a table (CSV) or as JSON, and what was found wrong with it.</summary>
/// <remarks>
/// Both forms hold the same statements under the same words; docs/regimen-files.md describes them. A regimen is stated by its exchanges, by exchanges by
/// hand at clock times, or as an automated prescription states it. It is written by its exchanges.
/// </remarks>
public sealed record RegimenFile
{
    /// <summary>Regimens to be written.</summary>
    /// <param name="regimens">At least one; with unlike names if there are several.</param>
    /// <param name="week">Which of them is done on which day; null: not stated.</param>
    /// <exception cref="ArgumentException">There is none, two have one name, a name holds a space, or the week has another regimen.</exception>
    public RegimenFile(IEnumerable<NamedRegimen> regimens, RegimenWeek? week = null)
    {
        Regimens = [.. regimens];
        Week = week;
        if (Regimens.Length == 0 || Regimens.Select(regimen => regimen.Name).Distinct().Count() < Regimens.Length
            || Regimens.Any(regimen => regimen.Name.Any(char.IsWhiteSpace) || regimen.Name == RegimenDraft.NoTreatment
                || (regimen.Name.Length == 0 && Regimens.Length > 1)))
        {
            throw new ArgumentException("Expected a regimen or more, with unlike names of one word.", nameof(regimens));
        }

        if (week?.Days.OfType<Regimen>().Except(Regimens.Select(regimen => regimen.Regimen)).Any() == true)
        {
            throw new ArgumentException("The week has a regimen that is not among the named ones.", nameof(week));
        }
    }

    internal RegimenFile(ImmutableArray<NamedRegimen> regimens, RegimenWeek? week, ImmutableArray<Finding> findings) =>
        (Regimens, Week, Findings) = (regimens, week, findings);

    /// <summary>The regimens that could be made, in the order of the file.</summary>
    public ImmutableArray<NamedRegimen> Regimens { get; }

    /// <summary>Which of them is done on which day; null: not stated, or not to be made.</summary>
    public RegimenWeek? Week { get; }

    /// <summary>Everything found in the file and in its regimens, in the order of the file.</summary>
    public ImmutableArray<Finding> Findings { get; } = [];

    /// <summary>Whether an error keeps something in the file from being used.</summary>
    public bool HasErrors => Findings.Any(finding => finding.Severity == Severity.Error);

    /// <summary>The first regimen of a file without errors.</summary>
    /// <exception cref="RegimenException">The file has errors, all of which the exception carries.</exception>
    public Regimen ToRegimen() => HasErrors ? throw new RegimenException(Findings) : Regimens[0].Regimen;

    /// <summary>The week of a file without errors; where it states none, every day as its first regimen.</summary>
    /// <exception cref="RegimenException">The file has errors, all of which the exception carries.</exception>
    public RegimenWeek ToWeek() => Week ?? RegimenWeek.OfNights(ToRegimen(), 7);

    /// <summary>Reads a file of either form, which its first character tells. Whatever is wrong with it, be it missing, is a finding.</summary>
    /// <exception cref="ArgumentException">The path is empty.</exception>
    public static RegimenFile Read(string path)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(path);
        List<Finding> unreadable = [];
        return Read(SheetText.OfFile(path, unreadable), Path.GetFileName(path), unreadable);
    }

    /// <summary>Reads a stream.</summary>
    /// <param name="stream">The stream.</param>
    /// <param name="fileName">Its name, for findings.</param>
    /// <exception cref="IOException">The stream fails; its content never makes this throw.</exception>
    public static RegimenFile Read(Stream stream, string fileName = "")
    {
        ArgumentNullException.ThrowIfNull(stream);
        List<Finding> unreadable = [];
        return Read(SheetText.Of(stream, unreadable), fileName, unreadable);
    }

    private static RegimenFile Read(string? text, string fileName, IReadOnlyList<Finding> unreadable)
    {
        List<Finding> findings = [];
        var rows = Rows(text, unreadable, findings, out var decimalMark);
        var read = findings.Any(finding => finding.Severity == Severity.Error) && rows.Count == 0
            ? new RegimenFile([], null, [.. findings])
            : RegimenDraft.Of(rows, decimalMark, findings);
        return new(read.Regimens, read.Week, [.. read.Findings.OrderBy(finding => finding.Row ?? int.MaxValue).Select(finding => finding with { File = fileName.Length > 0 ? fileName : null })]);
    }

    /// <summary>Writes it, as JSON where the path ends in .json, otherwise as a table. Nothing is written if it cannot be written whole.</summary>
    /// <exception cref="ArgumentException">A solution holds what the format has no word for.</exception>
    /// <exception cref="RegimenException">It holds what would be refused when it is read, such as a fill of 5 L; the exception carries all of it.</exception>
    /// <exception cref="IOException">The file cannot be written.</exception>
    public void Write(string path)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(path);
        WholeFile.Write(path, path.EndsWith(".json", StringComparison.OrdinalIgnoreCase) ? ToJson() : ToCsv());
    }

    /// <summary>As a table.</summary>
    /// <exception cref="ArgumentException">A solution holds what the format has no word for.</exception>
    /// <exception cref="RegimenException">It holds what would be refused when it is read.</exception>
    public string ToCsv() => Readable(RegimenCsv.Write(RegimenRows.Of(this)));

    /// <summary>As JSON.</summary>
    /// <exception cref="ArgumentException">A solution holds what the format has no word for.</exception>
    /// <exception cref="RegimenException">It holds what would be refused when it is read.</exception>
    public string ToJson() => Readable(RegimenJson.Write(RegimenRows.Of(this)));

    // What nobody could read again is not written: the reader's own limits are asked, so that there is no second list of them.
    private static string Readable(string text) => Read(text, "", []) is { HasErrors: true } refused ? throw new RegimenException(refused.Findings) : text;

    private static List<RegimenRow> Rows(string? text, IReadOnlyList<Finding> unreadable, List<Finding> findings, out char? decimalMark)
    {
        decimalMark = '.';
        if (text is null)
        {
            // What a sheet's codes say of any file; an empty one begins otherwise than a sheet does.
            findings.AddRange(unreadable.Select(one => one.Code == SampleSheetCodes.FileNotFound.Code ? one
                : new(Severity.Error, "regimen-file-unreadable", one.Code == SampleSheetCodes.FileEmpty.Code ? "The file is empty. It has to say what is done: docs/regimen-files.md shows how." : one.Message)));
            return [];
        }

        return text.TrimStart()[0] is '{' or '[' ? RegimenJson.Read(text, findings) : RegimenCsv.Read(text, findings, out decimalMark);
    }
}
