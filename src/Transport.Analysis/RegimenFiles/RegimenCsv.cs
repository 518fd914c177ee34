using System.Globalization;
using CsvHelper;
using CsvHelper.Configuration;

namespace Transport.Analysis;

/// <summary>Statements of a regimen as a table.</summary>
internal static class RegimenCsv
{
    private static readonly string[] Columns = ["regimen", "item", "value", "unit", "solution", "clock", "dwell", "drain", "expected"];
    private static readonly string[] Needed = ["item", "value"];

    public static List<RegimenRow> Read(string text, List<Finding> findings, out char? decimalMark)
    {
        var delimiter = DelimitedText.DelimiterOf(text, name => Columns.Contains(SheetWords.Normal(name)));
        var (rows, columns) = (new List<RegimenRow>(), (Dictionary<string, int>?)null);
        List<Finding> unreadable = [];
        foreach (var (row, fields) in DelimitedText.Records(text, delimiter, unreadable))
        {
            if (columns is not null)
            {
                rows.Add(Row(fields, columns, row));
                continue;
            }

            columns = ColumnsOf(fields, row, findings);
            if (Needed.Any(name => !columns.ContainsKey(name)))
            {
                findings.Add(new(Severity.Error, "regimen-file-unreadable", "The first row has to name the columns, item and value among them.")
                {
                    Row = row,
                    Found = string.Join(' ', fields),
                    Expected = string.Join(", ", Columns),
                });
                break;
            }
        }

        findings.AddRange(unreadable.Select(one => one with { Code = "regimen-file-unreadable" }));

        // A file that separates by comma writes decimals with a point; otherwise its own numbers tell.
        var marks = rows.SelectMany(row => new[] { row.Value, row.Dwell, row.Drain, row.Expected }).Select(SheetNumber.DecimalMarkShownBy).OfType<char>().Distinct().ToList();
        decimalMark = marks.Count == 1 ? marks[0] : delimiter == ',' ? '.' : null;
        return rows;
    }

    public static string Write(IEnumerable<RegimenRow> rows)
    {
        using var text = new StringWriter(CultureInfo.InvariantCulture);
        using var csv = new CsvWriter(text, new CsvConfiguration(CultureInfo.InvariantCulture) { NewLine = "\n" });
        foreach (var fields in rows.Select(Fields).Prepend(Columns))
        {
            foreach (var field in fields)
            {
                csv.WriteField(field);
            }

            csv.NextRecord();
        }

        csv.Flush();
        return text.ToString();
    }

    private static string[] Fields(RegimenRow row) =>
        [row.Regimen, row.Item, row.Value, row.Unit, row.Solution, row.Clock, row.Dwell, row.Drain, row.Expected];

    private static Dictionary<string, int> ColumnsOf(string[] names, int row, List<Finding> findings)
    {
        var columns = new Dictionary<string, int>();
        for (var at = 0; at < names.Length; at++)
        {
            var name = SheetWords.Normal(names[at]);
            if (!Columns.Contains(name))
            {
                if (name is not ("" or "remark"))
                {
                    findings.Add(new(Severity.Warning, "regimen-item-unknown", "This column is not known and is left aside.") { Row = row, Found = names[at], Expected = string.Join(", ", Columns) });
                }
            }
            else if (!columns.TryAdd(name, at))
            {
                findings.Add(new(Severity.Error, "regimen-item-twice", "The header has this column twice; keep one.") { Row = row, Field = name });
            }
        }

        return columns;
    }

    private static RegimenRow Row(string[] fields, Dictionary<string, int> columns, int row)
    {
        string Field(string name) => columns.TryGetValue(name, out var at) && at < fields.Length ? fields[at] : "";
        return new(Field("regimen"), Field("item"), Field("value"), Field("unit"))
        {
            Solution = Field("solution"),
            Clock = Field("clock"),
            Dwell = Field("dwell"),
            Drain = Field("drain"),
            Expected = Field("expected"),
            Row = row,
        };
    }
}
