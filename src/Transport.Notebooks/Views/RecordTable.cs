using System.Collections;
using System.Globalization;
using System.Net;
using System.Reflection;
using System.Text;

namespace Transport.Notebooks;

/// <summary>A sequence of records as an HTML table that reads the same in our page and in any notebook front end.</summary>
internal static class RecordTable
{
    private const int RowsInSight = 20;

    // A sequence may be endless.
    private const int MostRows = 2000;

    // A translucent gray, and no other color: the table follows light and dark.
    private const string RowStart = "<tr style=\"border-bottom:1px solid #8884;background:none\">";
    private const string TableStyle = "border-collapse:collapse;font-variant-numeric:tabular-nums;margin:0";

    /// <summary>The table, or null when the items are not all of one type with properties to show.</summary>
    public static string? TryToHtml(IEnumerable sequence)
    {
        var rows = sequence.Cast<object?>().Take(MostRows + 1).ToList();
        var isCut = rows.Count > MostRows;
        if (isCut)
            rows.RemoveAt(MostRows);
        var types = rows.Select(row => row?.GetType()).Distinct().ToList();
        if (types.Count != 1 || types[0] is not { } type || !IsRecord(type))
            return null;

        var columns = type.GetProperties(BindingFlags.Public | BindingFlags.Instance)
            .Where(property => property.GetIndexParameters().Length == 0)
            .Select(property => new Column(property, rows))
            .ToList();
        var html = new StringBuilder("<div style=\"overflow-x:auto\">");
        AppendTable(html, columns, 0, Math.Min(rows.Count, RowsInSight));
        if (rows.Count > RowsInSight)
        {
            html.Append(CultureInfo.InvariantCulture, $"<details class=\"rows\"><summary>{rows.Count - RowsInSight} more {(rows.Count == RowsInSight + 1 ? "row" : "rows")}</summary>");
            AppendTable(html, columns, RowsInSight, rows.Count);
            html.Append("</details>");
        }

        if (isCut)
            html.Append(CultureInfo.InvariantCulture, $"<p>Only the first {MostRows} rows are shown.</p>");
        return html.Append("</div>").ToString();
    }

    // Whatever formats itself (numbers, quantities, dates) is a value, not a row.
    private static bool IsRecord(Type type) =>
        type != typeof(string) && type != typeof(bool) && !type.IsAssignableTo(typeof(IFormattable))
        && !type.IsAssignableTo(typeof(IEnumerable))
        && type.GetProperties(BindingFlags.Public | BindingFlags.Instance).Any(p => p.GetIndexParameters().Length == 0);

    private static void AppendTable(StringBuilder html, List<Column> columns, int from, int to)
    {
        html.Append(CultureInfo.InvariantCulture, $"<table style=\"{TableStyle}\"><colgroup>");
        foreach (var column in columns)
            html.Append(CultureInfo.InvariantCulture, $"<col style=\"width:{column.Width + 3}ch\">");
        html.Append("</colgroup><thead>").Append(RowStart);
        foreach (var column in columns)
            AppendCell(html, "th", " scope=\"col\"", column, column.Title);
        html.Append("</tr></thead><tbody>");
        for (var row = from; row < to; row++)
        {
            html.Append(RowStart);
            foreach (var column in columns)
                AppendCell(html, "td", "", column, column.Texts[row]);
            html.Append("</tr>");
        }

        html.Append("</tbody></table>");
    }

    private static void AppendCell(StringBuilder html, string tag, string attributes, Column column, string text) =>
        html.Append(CultureInfo.InvariantCulture,
            $"<{tag}{attributes} style=\"text-align:{(column.IsNumber ? "right" : "left")}\">{WebUtility.HtmlEncode(text)}</{tag}>");

    private sealed class Column
    {
        private const int WidestText = 40;

        public Column(PropertyInfo property, List<object?> rows)
        {
            var values = rows.Select(property.GetValue).ToList();
            var decimals = DecimalsFor(values.OfType<double>());
            Title = TitleOf(property.Name);
            IsNumber = values.All(value => value is null or double or float or decimal or int or long);
            Texts = [.. values.Select(value => TextOf(value, decimals))];
            Width = Math.Min(WidestText, Texts.Append(Title).Max(text => text.Length));
        }

        public string Title { get; }

        public bool IsNumber { get; }

        public List<string> Texts { get; }

        public int Width { get; }

        // Four significant digits for the largest value, the same decimals all the way down.
        private static int DecimalsFor(IEnumerable<double> values)
        {
            var finite = values.Where(double.IsFinite).ToList();
            var largest = finite.Select(Math.Abs).DefaultIfEmpty().Max();
            return largest == 0 || (largest < 1e6 && finite.All(double.IsInteger))
                ? 0
                : Math.Clamp(3 - (int)Math.Floor(Math.Log10(largest)), 0, 9);
        }

        private static string TextOf(object? value, int decimals) => value switch
        {
            null => "–",
            true => "yes",
            false => "no",
            double number when number != 0 && Math.Abs(number) < 0.5 * Math.Pow(10, -decimals) =>
                number.ToString("0.##E+0", CultureInfo.InvariantCulture),
            double number => number.ToString($"F{decimals}", CultureInfo.InvariantCulture),
            IFormattable formattable => formattable.ToString(null, CultureInfo.InvariantCulture),
            _ => value.ToString() ?? "",
        };

        // A name that ends in its unit: "PeakHours" reads "Peak (h)".
        private static readonly (string Words, string Symbol)[] Units =
        [
            ("MillilitersPerMinute", "mL/min"), ("MillimolesPerLiter", "mmol/L"), ("LitersPerWeek", "L/week"), ("MillimetersOfMercury", "mmHg"), ("Milliliters", "mL"), ("Centimeters", "cm"), ("Liters", "L"),
            ("Millimoles", "mmol"), ("Kilograms", "kg"), ("Grams", "g"), ("Minutes", "min"), ("Hours", "h"), ("Percent", "%"), ("Milliseconds", "ms"),
        ];

        // "NetUltrafiltration" reads "Net ultrafiltration"; a run of capitals stays.
        private static string TitleOf(string name)
        {
            var (words, symbol) = Units.FirstOrDefault(unit => name.Length > unit.Words.Length && name.EndsWith(unit.Words, StringComparison.Ordinal));
            return symbol is null ? InWords(name) : $"{InWords(name[..^words.Length])} ({symbol})";
        }

        private static string InWords(string name)
        {
            var title = new StringBuilder();
            for (var i = 0; i < name.Length; i++)
            {
                var startsWord = i > 0 && char.IsUpper(name[i]) && !char.IsUpper(name[i - 1]);
                var isAcronym = i + 1 < name.Length && char.IsUpper(name[i + 1]);
                title.Append(startsWord ? " " : "").Append(startsWord && !isAcronym ? char.ToLowerInvariant(name[i]) : name[i]);
            }

            return title.ToString();
        }
    }
}
