using System.Globalization;
using CsvHelper;
using CsvHelper.Configuration;

namespace Transport.Analysis;

/// <summary>A folder of reference-data: the figures of one source, to hold a model against.</summary>
public sealed class ReferenceTable
{
    private static readonly string[] Columns = ["item", "condition", "unit", "value", "sd", "low", "high", "n", "mark"];

    private ReferenceTable(string name, IReadOnlyList<ReferenceFigure> figures) => (Name, Figures) = (name, figures);

    /// <summary>The folder's name: author, year and topic.</summary>
    public string Name { get; }

    /// <summary>All figures, in the table's order.</summary>
    public IReadOnlyList<ReferenceFigure> Figures { get; }

    /// <summary>Reads <c>values.csv</c> of a folder.</summary>
    /// <param name="folder">Such as <c>reference-data/virga-2019-strong-glucose</c>.</param>
    /// <exception cref="IOException">There is no such table.</exception>
    /// <exception cref="FormatException">The header or cells are not those of a reference table; the message lists every one.</exception>
    public static ReferenceTable Read(string folder)
    {
        ArgumentNullException.ThrowIfNull(folder);
        using var text = File.OpenText(Path.Combine(folder, "values.csv"));
        using var csv = new CsvReader(text, new CsvConfiguration(CultureInfo.InvariantCulture));
        var name = Path.GetFileName(Path.TrimEndingDirectorySeparator(folder));
        csv.Read();
        csv.ReadHeader();
        if (!Columns.SequenceEqual(csv.HeaderRecord ?? []))
        {
            throw new FormatException($"{name}: the header is {string.Join(',', csv.HeaderRecord ?? [])}; expected {string.Join(',', Columns)}.");
        }

        var problems = new List<string>();
        var figures = new List<ReferenceFigure>();
        while (csv.Read())
        {
            figures.Add(new(
                csv.GetField("item")!, csv.GetField("condition")!, csv.GetField("unit")!, Number("value"), Number("sd"), Number("low"), Number("high"),
                Number("n") is { } count ? (int)count : null, Mark()));
        }

        return problems.Count == 0 ? new(name, figures) : throw new FormatException($"{name}: {string.Join(" ", problems)}");

        double? Number(string column)
        {
            var cell = csv.GetField(column)!;
            if (cell.Length == 0 || double.TryParse(cell, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number))
            {
                return cell.Length == 0 ? null : double.Parse(cell, CultureInfo.InvariantCulture);
            }

            problems.Add(FormattableString.Invariant($"Row {csv.Parser.Row}, {column}: \"{cell}\" is not a number."));
            return null;
        }

        Evidence Mark()
        {
            if (Enum.TryParse<Evidence>(csv.GetField("mark"), ignoreCase: true, out var mark))
            {
                return mark;
            }

            problems.Add(FormattableString.Invariant($"Row {csv.Parser.Row}, mark: \"{csv.GetField("mark")}\" is not read, memory, computed or choice."));
            return default;
        }
    }

    /// <summary>One figure.</summary>
    /// <param name="item">As in the table.</param>
    /// <param name="condition">As in the table; null takes the item's first row.</param>
    /// <exception cref="ArgumentException">There is none.</exception>
    public ReferenceFigure this[string item, string? condition = null] =>
        Figures.FirstOrDefault(figure => figure.Item == item && (condition is null || figure.Condition == condition))
        ?? throw new ArgumentException($"{Name} has no \"{item}\"{(condition is null ? "" : $" at \"{condition}\"")}; it has {string.Join(", ", Figures.Select(figure => figure.Item).Distinct())}.");
}
