using System.Globalization;
using CsvHelper;
using CsvHelper.Configuration;

namespace Transport.Analysis;

/// <summary>Text to rows of fields: finds the delimiter, skips comments and blanks, reports what does not fit.</summary>
internal static class DelimitedText
{
    private static readonly char[] Delimiters = [',', ';', '\t'];

    /// <summary>Excel's own first line "sep=;" settles it; otherwise the delimiter that makes most of the header's names known.</summary>
    public static char DelimiterOf(string text, Func<string, bool> isColumn)
    {
        using var reader = new StringReader(text);
        while (reader.ReadLine() is { } line)
        {
            var start = line.TrimStart().TrimStart('"');
            if (start.StartsWith("sep=", StringComparison.OrdinalIgnoreCase) && start.Length > 4 && Delimiters.Contains(start[4]))
            {
                return start[4];
            }

            if (line.Trim([.. Delimiters, ' ', '"']).Length > 0 && !start.StartsWith('#'))
            {
                return Delimiters.MaxBy(delimiter => line.Split(delimiter).Count(name => isColumn(name.Trim().Trim('"'))));
            }
        }

        return ',';
    }

    /// <summary>The rows that hold something, each with its number in the file.</summary>
    /// <param name="text">The file.</param>
    /// <param name="delimiter">What parts its fields.</param>
    /// <param name="findings">Rows that cannot be read.</param>
    /// <param name="lost">Takes the lines of these, for a reader who loses no word; null where nobody asks.</param>
    public static IEnumerable<(int Row, string[] Fields)> Records(string text, char delimiter, List<Finding> findings, ICollection<(int Row, string Line)>? lost = null)
    {
        var badRecord = false;
        var configuration = new CsvConfiguration(CultureInfo.InvariantCulture)
        {
            Delimiter = delimiter.ToString(),
            HasHeaderRecord = false,
            AllowComments = true,
            IgnoreBlankLines = true,
            TrimOptions = TrimOptions.Trim,
            BadDataFound = _ => badRecord = true,
        };
        using var parser = new CsvParser(new StringReader(text), configuration);
        var linesInsideFields = 0;
        while (parser.Read())
        {
            var fields = Array.ConvertAll(parser.Record!, field => field.Trim());

            // Before they are trimmed: a mark that is left open takes in every line end down to that of the file.
            linesInsideFields += parser.Record!.Sum(field => field.Count(letter => letter == '\n'));
            var row = parser.RawRow - linesInsideFields;
            if (badRecord || parser.RawRecord.Count(letter => letter == '"') % 2 != 0)
            {
                badRecord = false;
                findings.Add(SampleSheetCodes.MalformedQuotes.Finding(
                    "A quotation mark is not closed or stands inside a field, so the row (or all below it) cannot be read. Remove it or double it.", row, found: parser.RawRecord.Split('\n')[0].Trim()));
                foreach (var (at, line) in parser.RawRecord.Split('\n').Index())
                {
                    lost?.Add((row + at, line.Trim()));
                }
            }
            else if (!fields[0].StartsWith('#') && !fields[0].StartsWith("sep=", StringComparison.OrdinalIgnoreCase)
                && fields.Any(field => field.Length > 0))
            {
                yield return (row, fields);
            }
        }
    }

    /// <summary>Where each known column stands (-1: not there); what is unknown or there twice is a finding.</summary>
    public static int[] Places(int row, string[] names, int known, Func<string, int> columnOf, Func<int, string> nameOf, List<Finding> findings)
    {
        var places = Enumerable.Repeat(-1, known).ToArray();
        for (var at = 0; at < names.Length; at++)
        {
            var column = columnOf(names[at]);
            if (column >= 0 && places[column] >= 0)
            {
                findings.Add(SampleSheetCodes.DuplicateColumn.Finding(
                    $"The header has the column '{nameOf(column)}' twice; keep one.", row, nameOf(column), names[at]));
            }
            else if (column >= 0)
            {
                places[column] = at;
            }
            else if (names[at].Length > 0)
            {
                findings.Add(SampleSheetCodes.UnknownColumn.Finding("This column is not known and is left aside.", row, "header", names[at]));
            }
        }

        return places;
    }

    /// <summary>Whether a row has more fields than the header, which is a finding and makes it unreadable.</summary>
    public static bool HasExtraFields(int row, string[] fields, int columns, char delimiter, List<Finding> findings)
    {
        if (!fields.Skip(columns).Any(field => field.Length > 0))
        {
            return false;
        }

        findings.Add(SampleSheetCodes.ExtraFields.Finding(
            "The row has more fields than the header. In a comma-separated file a decimal comma or a comma in a remark needs quotation marks around its field.",
            row, found: string.Join(delimiter, fields)));
        return true;
    }
}
