using System.Diagnostics.CodeAnalysis;

namespace Transport.Analysis;

/// <summary>A sample sheet as it was written, and everything found in it.</summary>
/// <remarks>The file format, its synonyms and each finding: docs/sample-sheet.md.</remarks>
public sealed class SampleSheet
{
    private readonly EquilibrationTest? test;
    private readonly CollectedDay? collection;

    private SampleSheet(
        string fileName, IReadOnlyList<SheetFact> facts, IReadOnlyList<SheetMeasurement> measurements, IEnumerable<Finding> findings, SheetDraft? draft)
    {
        FileName = fileName;
        Facts = facts;
        Measurements = measurements;
        Findings = [.. findings.OrderBy(finding => finding.Row ?? int.MaxValue).Select(finding => finding with { File = fileName })];
        Form = draft is null ? null : draft.IsCollection ? TestForm.Collection : draft.NamedForm ?? draft.Recognize();
        test = HasErrors || draft is null or { IsCollection: true } ? null
            : draft.ToTest() with { IsStrengthInDoubt = Findings.Any(finding => finding.Code == SampleSheetCodes.WrongStrength.Code) };
        collection = HasErrors || draft is null or { IsCollection: false } ? null : draft.ToCollection();
    }

    /// <summary>The file's name, without its folder.</summary>
    public string FileName { get; }

    /// <summary>The form of test, as named or as its measurements show; null where neither tells.</summary>
    public TestForm? Form { get; }

    /// <summary>Facts about patient and test, in the order of the file.</summary>
    public IReadOnlyList<SheetFact> Facts { get; }

    /// <summary>The patient's code; null where none was written.</summary>
    public string? Code => TextOf(SheetWords.Code);

    /// <summary>Who carried the test out; null where it was not written.</summary>
    public string? Tester => TextOf(SheetWords.Tester);

    /// <summary>The laboratory that measured; null where it was not written.</summary>
    public string? Laboratory => TextOf(SheetWords.Laboratory);

    /// <summary>Laboratory values in the order of the file, in the laboratory's own units and as understood.</summary>
    public IReadOnlyList<SheetMeasurement> Measurements { get; }

    /// <summary>Whether the sheet says of itself that its data are invented.</summary>
    public bool IsInvented => Comments.Any(comment => comment.Contains("invented data", StringComparison.OrdinalIgnoreCase));

    /// <summary>Comment lines of the file, without their mark (#), in their order: where a sheet says that its data are invented.</summary>
    public IReadOnlyList<string> Comments { get; private init; } = [];

    /// <summary>Everything found in the file: what could not be read and what is not plausible, in the order of its rows.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>Whether an error stands between the sheet and a test.</summary>
    public bool HasErrors => Findings.Any(finding => finding.Severity == Severity.Error);

    /// <summary>Reads a file. Whatever is wrong with it, be it missing, is a finding.</summary>
    /// <exception cref="ArgumentException">The path is empty.</exception>
    public static SampleSheet Read(string path)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(path);
        var findings = new List<Finding>();
        var text = SheetText.OfFile(path, findings);
        return Read(text, Path.GetFileName(path), findings);
    }

    /// <summary>Reads a sheet from a stream, from where it stands.</summary>
    /// <param name="stream">The bytes; not closed.</param>
    /// <param name="fileName">What findings call the file.</param>
    /// <exception cref="IOException">The stream fails; its content never makes this throw.</exception>
    public static SampleSheet Read(Stream stream, string fileName)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(fileName);
        var findings = new List<Finding>();
        var text = SheetText.Of(stream, findings);
        return Read(text, fileName, findings);
    }

    private static SampleSheet Read(string? text, string fileName, List<Finding> findings)
    {
        if (text is null)
        {
            return Unread(fileName, [.. findings]);
        }

        var table = SheetTable.Of(text, findings);
        if (table.Rows.Count == 0)
        {
            // A header that cannot be used says enough; what is missing below it is no news.
            return Unread(fileName, findings.Exists(finding => finding.Severity == Severity.Error)
                ? [.. findings]
                : [.. findings, SampleSheetCodes.FileEmpty.Finding("The file has a header and no rows. Fill in the blank sheet.")]);
        }

        var draft = SheetReading.Of(table, findings, out var facts, out var measurements);
        findings.AddRange(SheetChecks.Of(draft, facts));
        return new(fileName, facts, measurements, findings, draft)
        {
            Comments = SheetText.CommentsOf(text),
        };
    }

    /// <summary>A concentration in the unit that the sheet used for the analyte, with the SI unit in brackets where that is another.</summary>
    /// <remarks>In mmol/L (creatinine in µmol/L) where the sheet has no value of the analyte. Four significant digits, invariant culture.</remarks>
    /// <param name="value">The concentration.</param>
    /// <param name="analyte">Not a protein nor the marker.</param>
    /// <exception cref="ArgumentOutOfRangeException">The analyte has no molar concentration.</exception>
    public string InOwnUnits(Concentration value, Analyte analyte)
    {
        if (SheetWords.IsByMass(analyte))
        {
            throw new ArgumentOutOfRangeException(nameof(analyte), analyte, "Expected an analyte with a molar concentration.");
        }

        var units = SheetWords.QuantityOf(analyte).Units;
        var own = Measurements.FirstOrDefault(row => row.Analyte == analyte && row.Unit is not null)?.Unit;
        var si = (analyte == Analyte.UreaNitrogen ? SheetQuantity.Urea.Units : units).First(unit => unit.Name.Contains("mol", StringComparison.Ordinal));
        var unit = units.FirstOrDefault(unit => unit.Name == own) ?? si;
        return unit.Name.Contains("mol", StringComparison.Ordinal) || unit.Name == "mEq/L" ? In(unit) : $"{In(unit)} ({In(si)})";

        string In(SheetUnit one) => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{value.MillimolesPerLiter / one.Factor:G4} {one.Name}");
    }

    /// <summary>The test that the sheet describes.</summary>
    /// <exception cref="SampleSheetException">The sheet has errors, all of which the exception carries; or it holds a collection.</exception>
    public EquilibrationTest ToTest() => test ?? throw Refusal(
        Form == TestForm.Collection,
        SampleSheetCodes.NotATest.Finding("This sheet holds a 24-h collection, which has no timed samples; read it as a collection."));

    /// <summary>The test that the sheet describes, or false where it has errors or holds a collection.</summary>
    public bool TryToTest([NotNullWhen(true)] out EquilibrationTest? equilibrationTest) => (equilibrationTest = test) is not null;

    /// <summary>The 24-h collection that the sheet describes.</summary>
    /// <exception cref="SampleSheetException">The sheet has errors, all of which the exception carries; or it holds a test.</exception>
    public CollectedDay ToCollection() => collection ?? throw Refusal(
        Form is not (null or TestForm.Collection),
        SampleSheetCodes.NotACollection.Finding("This sheet holds a test of one dwell, no collection; read it as a test."));

    /// <summary>The collection that the sheet describes, or false where it has errors or holds a test.</summary>
    public bool TryToCollection([NotNullWhen(true)] out CollectedDay? collectedDay) => (collectedDay = collection) is not null;

    private string? TextOf(SheetItem item) => Facts.FirstOrDefault(fact => fact.Item == item.Name && fact.Text.Length > 0)?.Text;

    private SampleSheetException Refusal(bool isOtherForm, Finding otherForm)
    {
        IReadOnlyList<Finding> errors = [.. Findings.Where(finding => finding.Severity == Severity.Error)];
        return new(FileName, isOtherForm || errors.Count == 0 ? [.. errors, otherForm with { File = FileName }] : errors);
    }

    /// <summary>Writes the blank sheet of the 4-h test with sodium.</summary>
    public static void WriteBlank(TextWriter writer) => WriteBlank(writer, TestForm.FourHourWithSodium);

    /// <summary>Writes the blank sheet of a form of test.</summary>
    public static void WriteBlank(TextWriter writer, TestForm form) => BlankSheet.Write(writer, form);

    /// <summary>Writes the blank sheet of the 4-h test as a file that spreadsheets open with its µ intact (UTF-8 with mark).</summary>
    /// <exception cref="IOException">The file cannot be written.</exception>
    public static void WriteBlank(string path) => WriteBlank(path, TestForm.FourHourWithSodium);

    /// <summary>The same for a form of test.</summary>
    /// <exception cref="IOException">The file cannot be written.</exception>
    public static void WriteBlank(string path, TestForm form)
    {
        using var writer = new StreamWriter(path, append: false, new System.Text.UTF8Encoding(encoderShouldEmitUTF8Identifier: true));
        WriteBlank(writer, form);
    }

    private static SampleSheet Unread(string fileName, params IReadOnlyList<Finding> findings) => new(fileName, [], [], findings, null);
}
