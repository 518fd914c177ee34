namespace Transport.Analysis;

/// <summary>A sheet that cannot become a test, with every reason why not.</summary>
/// <remarks>The message holds values of the patient, as written; a log takes <see cref="ToLogString"/>.</remarks>
public sealed class SampleSheetException : Exception
{
    /// <summary>From the errors of one sheet.</summary>
    public SampleSheetException(string fileName, IReadOnlyList<Finding> errors)
        : base(string.Join(Environment.NewLine, [Heading(fileName, errors), .. errors.Select(error => error.ToString())]))
    {
        FileName = fileName;
        Errors = errors;
    }

    /// <summary>The sheet's name, without its folder.</summary>
    public string FileName { get; }

    /// <summary>All error findings, in the order of the sheet.</summary>
    public IReadOnlyList<Finding> Errors { get; }

    /// <summary>The message without any value of the patient: places and codes, one a line.</summary>
    public string ToLogString() =>
        string.Join(Environment.NewLine, [Heading(FileName, Errors), .. Errors.Select(error => error.ToLogString())]);

    private static string Heading(string fileName, IReadOnlyList<Finding> errors)
    {
        ArgumentNullException.ThrowIfNull(errors);
        return $"{fileName} cannot be used as a test: {(errors.Count == 1 ? "1 error" : $"{errors.Count} errors")}.";
    }
}
