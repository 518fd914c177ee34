namespace Transport.Analysis;

/// <summary>A patient's nights as they were written down, and everything found in the file.</summary>
/// <remarks>
/// Tolerant: a cell that cannot be read is a finding and stays empty; the night keeps its other cells. Format, words and codes: docs/record-book.md.
/// </remarks>
public sealed class RecordBook
{
    private RecordBook(
        string fileName, IReadOnlyList<NightRecord> nights, IReadOnlyList<NightRecord> inDoubt, DateOnly? lastDay, IEnumerable<Finding> findings, IReadOnlyList<string> comments, string code)
    {
        RowsInDoubt = inDoubt;
        LastDay = lastDay;
        FileName = fileName;
        PatientCode = code;
        Nights = nights;
        Findings = [.. findings.Select(finding => finding with { File = fileName }).OrderBy(finding => finding.Row ?? int.MaxValue)];
        Comments = comments;
    }

    /// <summary>The file's name, without its folder.</summary>
    public string FileName { get; }

    /// <summary>The patient's code, if the book carries one; empty: whose it is cannot be checked.</summary>
    public string PatientCode { get; }

    /// <summary>The nights by date, one for each date that has a row.</summary>
    public IReadOnlyList<NightRecord> Nights { get; }

    /// <summary>
    /// Rows of which it is in doubt which night they are, or which of their cells are their own (<see cref="NightRecord.Doubt"/>), with what they say of the body. Not among
    /// <see cref="Nights"/>, unless it is the order of the rows alone that speaks against a date.
    /// </summary>
    public IReadOnlyList<NightRecord> RowsInDoubt { get; }

    // The last day that is written and fits its place; null where there is none.
    internal DateOnly? LastDay { get; }

    /// <summary>What could not be read, and what does not add up, in the order of the rows.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>Comment lines, without their mark.</summary>
    public IReadOnlyList<string> Comments { get; }

    /// <summary>Whether the book says of itself that its data are invented.</summary>
    public bool IsInvented => Comments.Any(comment => comment.Contains("invented data", StringComparison.OrdinalIgnoreCase));

    /// <summary>Reads a file. Whatever is wrong with it, be it missing, is a finding.</summary>
    /// <exception cref="ArgumentException">The path is empty.</exception>
    public static RecordBook Read(string path)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(path);
        var findings = new List<Finding>();
        return Read(SheetText.OfFile(path, findings), Path.GetFileName(path), findings);
    }

    /// <summary>Reads a book from a stream, from where it stands.</summary>
    /// <param name="stream">The bytes; not closed.</param>
    /// <param name="fileName">What findings call the file.</param>
    /// <exception cref="IOException">The stream fails; its content never makes this throw.</exception>
    public static RecordBook Read(Stream stream, string fileName)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(fileName);
        var findings = new List<Finding>();
        return Read(SheetText.Of(stream, findings), fileName, findings);
    }

    /// <summary>A book of nights that were not read from a file, such as simulated ones.</summary>
    /// <param name="nights">One for each date at most.</param>
    /// <param name="fileName">What findings call it.</param>
    /// <exception cref="ArgumentException">A date comes twice.</exception>
    public static RecordBook From(IEnumerable<NightRecord> nights, string fileName)
    {
        ArgumentNullException.ThrowIfNull(nights);
        ArgumentNullException.ThrowIfNull(fileName);
        NightRecord[] sorted = [.. nights.OrderBy(night => night.Date)];
        if (sorted.DistinctBy(night => night.Date).Count() < sorted.Length)
        {
            throw new ArgumentException("Expected one night for each date.", nameof(nights));
        }

        return new(fileName, sorted, [], sorted.Length > 0 ? sorted[^1].Date : null, BookArithmetic.Of(sorted, new HashSet<DateOnly>()), [], "");
    }

    /// <summary>Whether two codes are of one patient, as people write them.</summary>
    internal static bool IsSameCode(string one, string other) => string.Equals(one.Trim(), other.Trim(), StringComparison.OrdinalIgnoreCase);

    /// <summary>Writes an empty book: the header, one line about each question that is asked once.</summary>
    public static void WriteBlank(TextWriter writer) => BlankBook.Write(writer);

    private static RecordBook Read(string? text, string fileName, List<Finding> findings)
    {
        if (text is null)
        {
            return new(fileName, [], [], null, findings.Select(found => found.Code == SampleSheetCodes.FileEmpty.Code ? found with { Message = "The file is empty. Start from the blank book." } : found), [], "");
        }

        var (nights, inDoubt, lastDay, code) = BookReading.Of(text, findings);
        findings.AddRange(BookArithmetic.Of(nights, inDoubt.Where(row => !row.IsOfAnother).Select(row => row.Date).ToHashSet()));
        return new(fileName, nights, inDoubt, lastDay, findings, SheetText.CommentsOf(text), code);
    }
}
