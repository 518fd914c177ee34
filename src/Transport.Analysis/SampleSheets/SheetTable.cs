using System.Globalization;
using CsvHelper;
using CsvHelper.Configuration;

namespace Transport.Analysis;

/// <summary>Text to rows: finds the delimiter and the header, skips comments and blanks, reports what does not fit.</summary>
internal sealed record SheetTable(char Delimiter, IReadOnlyList<SheetRow> Rows)
{
    private static readonly char[] Delimiters = [',', ';', '\t'];

    /// <summary>The rows below the header; none where there is no usable header.</summary>
    public static SheetTable Of(string text, List<Finding> findings)
    {
        var delimiter = DelimiterOf(text);
        var rows = new List<SheetRow>();
        int[]? columns = null;
        foreach (var (row, fields) in Records(text, delimiter, findings))
        {
            if (columns is null)
            {
                columns = Header(row, fields, findings);
                if (columns is null)
                {
                    return new(delimiter, []);
                }

                continue;
            }

            if (rows.Count == SampleSheetLimits.Rows)
            {
                findings.Add(SampleSheetCodes.TooManyRows.Finding(
                    $"The file has more than {SampleSheetLimits.Rows} rows; reading stopped here. One sheet holds one test of one patient.", row));
                break;
            }

            if (fields.Skip(columns[^1]).Any(field => field.Length > 0))
            {
                findings.Add(SampleSheetCodes.ExtraFields.Finding(
                    "The row has more fields than the header. In a comma-separated file a decimal comma or a comma in a remark needs quotation marks around its field.",
                    row, found: string.Join(delimiter, fields)));
                continue;
            }

            string Field(int column) => columns[column] is var at and >= 0 && at < fields.Length ? fields[at] : "";
            rows.Add(new(row, Field(0), Field(1), Field(2), Field(3), Field(4), Field(5)));
        }

        if (columns is null)
        {
            findings.Add(SampleSheetCodes.FileEmpty.Finding("The file holds no table. Start from the blank sheet."));
        }

        return new(delimiter, rows);
    }

    // Excel's own first line "sep=;" settles it; otherwise the delimiter that makes most of the header's names known.
    private static char DelimiterOf(string text)
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
                return Delimiters.MaxBy(delimiter => line.Split(delimiter).Count(name => SheetWords.Column(name.Trim().Trim('"')) >= 0));
            }
        }

        return ',';
    }

    private static IEnumerable<(int Row, string[] Fields)> Records(string text, char delimiter, List<Finding> findings)
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
            var row = parser.RawRow - linesInsideFields;
            var inside = fields.Sum(field => field.Count(letter => letter == '\n'));
            linesInsideFields += inside;
            row -= inside;
            if (badRecord || parser.RawRecord.Count(letter => letter == '"') % 2 != 0)
            {
                badRecord = false;
                findings.Add(SampleSheetCodes.MalformedQuotes.Finding(
                    "A quotation mark is not closed or stands inside a field, so the row (or all below it) cannot be read. Remove it or double it.", row));
            }
            else if (!fields[0].StartsWith('#') && !fields[0].StartsWith("sep=", StringComparison.OrdinalIgnoreCase)
                && fields.Any(field => field.Length > 0))
            {
                yield return (row, fields);
            }
        }
    }

    // Where each known column stands (-1: not there), and last the number of columns.
    private static int[]? Header(int row, string[] names, List<Finding> findings)
    {
        var columns = Enumerable.Repeat(-1, SheetWords.Columns.Count).Append(names.Length).ToArray();
        for (var at = 0; at < names.Length; at++)
        {
            var column = SheetWords.Column(names[at]);
            if (column >= 0 && columns[column] >= 0)
            {
                findings.Add(SampleSheetCodes.DuplicateColumn.Finding(
                    $"The header has the column '{SheetWords.Columns[column].Name}' twice; keep one.", row, SheetWords.Columns[column].Name, names[at]));
            }
            else if (column >= 0)
            {
                columns[column] = at;
            }
            else if (names[at].Length > 0)
            {
                findings.Add(SampleSheetCodes.UnknownColumn.Finding("This column is not known and is left aside.", row, "header", names[at]));
            }
        }

        var missing = SheetWords.Columns.Where((column, index) => column.Needed && columns[index] < 0).ToList();
        findings.AddRange(missing.Select(column => SampleSheetCodes.MissingColumn.Finding(
            $"The header has no column '{column.Name}'; add it.", row, column.Name, string.Join(' ', names),
            string.Join(", ", SheetWords.Columns.Select(known => known.Name)))));
        return missing.Count == 0 ? columns : null;
    }
}
