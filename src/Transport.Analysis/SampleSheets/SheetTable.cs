namespace Transport.Analysis;

/// <summary>Text to rows: finds the delimiter and the header, skips comments and blanks, reports what does not fit.</summary>
internal sealed record SheetTable(char Delimiter, IReadOnlyList<SheetRow> Rows)
{
    /// <summary>The rows below the header; none where there is no usable header.</summary>
    public static SheetTable Of(string text, List<Finding> findings)
    {
        var delimiter = DelimitedText.DelimiterOf(text, name => SheetWords.Column(name) >= 0);
        var rows = new List<SheetRow>();
        int[]? columns = null;
        foreach (var (row, fields) in DelimitedText.Records(text, delimiter, findings))
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

            if (DelimitedText.HasExtraFields(row, fields, columns[^1], delimiter, findings))
            {
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

    // Where each known column stands (-1: not there), and last the number of columns.
    private static int[]? Header(int row, string[] names, List<Finding> findings)
    {
        int[] columns =
        [
            .. DelimitedText.Places(row, names, SheetWords.Columns.Count, SheetWords.Column, column => SheetWords.Columns[column].Name, findings),
            names.Length,
        ];
        var missing = SheetWords.Columns.Where((column, index) => column.Needed && columns[index] < 0).ToList();
        findings.AddRange(missing.Select(column => SampleSheetCodes.MissingColumn.Finding(
            $"The header has no column '{column.Name}'; add it.", row, column.Name, string.Join(' ', names),
            string.Join(", ", SheetWords.Columns.Select(known => known.Name)))));
        return missing.Count == 0 ? columns : null;
    }
}
