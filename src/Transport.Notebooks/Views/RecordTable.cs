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

    /// <summary>The table, or null when the items are not all of one type with properties to show.</summary>
    public static string? TryToHtml(IEnumerable sequence)
    {
        var (rows, isCut) = Rows(sequence);
        if (Columns(rows) is not { } columns)
            return null;
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

    /// <summary>The same in plain text, a line for each row; null where there is no table to make.</summary>
    public static string? TryToText(IEnumerable sequence)
    {
        var (rows, isCut) = Rows(sequence);
        if (Columns(rows) is not { } columns)
            return null;
        var lines = new StringBuilder();
        for (var row = -1; row < rows.Count; row++)
        {
            lines.Append(string.Join("  ", columns.Select(column => column.Aligned(row))).TrimEnd()).Append('\n');
        }

        return lines.Append(isCut ? $"Only the first {MostRows} rows are shown.\n" : "").ToString();
    }

    private static (List<object?> Rows, bool IsCut) Rows(IEnumerable sequence)
    {
        var rows = sequence.Cast<object?>().Take(MostRows + 1).ToList();
        var isCut = rows.Count > MostRows;
        if (isCut)
            rows.RemoveAt(MostRows);
        return (rows, isCut);
    }

    private static List<Column>? Columns(List<object?> rows)
    {
        var types = rows.Select(row => row?.GetType()).Distinct().ToList();
        return types.Count != 1 || types[0] is not { } type || !IsRecord(type)
            ? null
            : [.. CellWords.PropertiesOf(type).Select(property => new Column(property, rows))];
    }

    // Whatever formats itself (numbers, quantities, dates) is a value, not a row.
    private static bool IsRecord(Type type) =>
        type != typeof(string) && type != typeof(bool) && !type.IsAssignableTo(typeof(IFormattable))
        && !type.IsAssignableTo(typeof(IEnumerable))
        && CellWords.PropertiesOf(type).Any();

    private static void AppendTable(StringBuilder html, List<Column> columns, int from, int to)
    {
        html.Append(CultureInfo.InvariantCulture, $"<table style=\"{TableStyle.Table}\"><colgroup>");
        foreach (var column in columns)
            html.Append(CultureInfo.InvariantCulture, $"<col style=\"width:{column.PageWidth + 3}ch\">");
        html.Append("</colgroup><thead>").Append(TableStyle.RowStart);
        foreach (var column in columns)
            AppendCell(html, "th", " scope=\"col\"", column, column.Title);
        html.Append("</tr></thead><tbody>");
        for (var row = from; row < to; row++)
        {
            html.Append(TableStyle.RowStart);
            foreach (var column in columns)
                AppendCell(html, "td", "", column, column.Texts[row]);
            html.Append("</tr>");
        }

        html.Append("</tbody></table>");
    }

    private static void AppendCell(StringBuilder html, string tag, string attributes, Column column, string text) =>
        html.Append(CultureInfo.InvariantCulture,
            $"<{tag}{attributes} style=\"text-align:{(column.IsNumber ? "right" : "left")}\">{Typeset.Whole(WebUtility.HtmlEncode(text))}</{tag}>");

    private sealed class Column
    {
        private const int WidestText = 40;
        private const int WidestOnPage = 80;

        public Column(PropertyInfo property, List<object?> rows)
        {
            var values = rows.Select(property.GetValue).ToList();
            var decimals = CellWords.DecimalsFor(values.OfType<double>());
            Title = CellWords.TitleOf(property.Name);
            IsNumber = values.All(value => value is null or double or float or decimal or int or long);
            Texts = [.. values.Select(value => CellWords.TextOf(value, decimals))];
            var longest = Texts.Append(Title).Max(text => text.Length);
            Width = Math.Min(WidestText, longest);
            PageWidth = Math.Min(WidestOnPage, Width + (longest - Width) / 3);
        }

        public string Title { get; }

        public bool IsNumber { get; }

        public List<string> Texts { get; }

        public int Width { get; }

        // A sentence gets more of a page than a name: it wraps, but not word by word.
        public int PageWidth { get; }

        // A row in the width of its column; −1 is the head.
        public string Aligned(int row) => (row < 0 ? Title : Texts[row]) is var text && IsNumber ? text.PadLeft(Width) : text.PadRight(Width);
    }
}
