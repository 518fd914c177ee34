using System.Globalization;

namespace Transport.Tests;

/// <summary>Finds reference-data from wherever the tests run, and reads its plain tables.</summary>
internal static class ReferenceData
{
    public static string Folder { get; } = Path.Combine(Repository.Root, "reference-data");

    /// <summary>The rows of a table without quoted fields, by column name.</summary>
    public static IReadOnlyList<IReadOnlyDictionary<string, string>> Rows(string topic)
    {
        var lines = File.ReadAllLines(Path.Combine(Folder, topic, "values.csv"));
        var header = lines[0].Split(',');
        return [.. lines.Skip(1).Where(line => line.Length > 0).Select(line =>
            (IReadOnlyDictionary<string, string>)header.Zip(line.Split(',')).ToDictionary(pair => pair.First, pair => pair.Second))];
    }

    public static double Number(this IReadOnlyDictionary<string, string> row, string column) =>
        ToNumber(row[column]);

    public static double ToNumber(string cell) => double.Parse(cell, CultureInfo.InvariantCulture);
}
