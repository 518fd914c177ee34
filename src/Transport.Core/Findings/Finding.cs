using System.Text;

namespace Transport;

/// <summary>One thing found in an input or a result: a problem, a caution, a note. Data, never console text.</summary>
/// <remarks>
/// A message carries numbers, never a name or a code of a patient. A log takes <see cref="ToLogString"/>, which has neither message nor
/// <see cref="Found"/>.
/// </remarks>
/// <param name="Severity">How much it matters.</param>
/// <param name="Code">Stable, lower-case, hyphenated: what a program tests and the documentation lists.</param>
/// <param name="Message">One sentence for a reader: what is wrong, and what to do about it.</param>
public sealed record Finding(Severity Severity, string Code, string Message)
{
    /// <summary>Which file, without its folder; null where no file is meant.</summary>
    public string? File { get; init; }

    /// <summary>Row in the file, counted from 1 as a spreadsheet does; null where no row is meant.</summary>
    public int? Row { get; init; }

    /// <summary>Which field (a column, a fact, an index); null where none is meant.</summary>
    public string? Field { get; init; }

    /// <summary>What was found, as written; null where nothing was.</summary>
    public string? Found { get; init; }

    /// <summary>What was expected; null where the message says all.</summary>
    public string? Expected { get; init; }

    /// <summary>"file, row 4, field: message Found: …. Expected: …. [code]", without the parts that are not there.</summary>
    public override string ToString()
    {
        var text = new StringBuilder(Place());
        if (text.Length > 0)
        {
            text.Append(": ");
        }

        text.Append(Message);
        if (Found is not null)
        {
            text.Append(" Found: ").Append(Found).Append('.');
        }

        if (Expected is not null)
        {
            text.Append(" Expected: ").Append(Expected).Append('.');
        }

        return text.Append(" [").Append(Code).Append(']').ToString();
    }

    /// <summary>"Error not-a-number file, row 4, field": severity, code and place alone, for logs that must not hold patient values.</summary>
    /// <remarks>The message is left out as well as what was found: a message may repeat a value.</remarks>
    public string ToLogString() => $"{Severity} {Code} {Place()}".TrimEnd();

    private string Place() => string.Join(
        ", ", new[] { File, Row is { } row ? $"row {row}" : null, Field }.Where(part => !string.IsNullOrEmpty(part)));
}
