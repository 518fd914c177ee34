using System.Globalization;
using System.Text;

namespace Transport.Notebooks;

/// <summary>How names and values of the library's records read in a table.</summary>
internal static class CellWords
{
    // Four significant digits for the largest value, the same decimals all the way down.
    public static int DecimalsFor(IEnumerable<double> values)
    {
        var finite = values.Where(double.IsFinite).ToList();
        var largest = finite.Select(Math.Abs).DefaultIfEmpty().Max();
        return largest == 0 || (largest < 1e6 && finite.All(double.IsInteger))
            ? 0
            : Math.Clamp(3 - (int)Math.Floor(Math.Log10(largest)), 0, 9);
    }

    public static string TextOf(object? value, int decimals) => value switch
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
    public static string TitleOf(string name)
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
