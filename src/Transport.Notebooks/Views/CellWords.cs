using System.Collections;
using System.Globalization;
using System.Reflection;
using System.Runtime.CompilerServices;
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

    private const int ValuesInSight = 6;

    public static string TextOf(object? value, int decimals) => value switch
    {
        null => "–",
        true => "yes",
        false => "no",
        double number => Number(number, decimals),
        // Numbers that a cell has put into words keep the minus sign of print.
        string text => Digits.Signed(text),
        Enum name => string.Join(", ", name.ToString().Split(", ").Select(InLowerWords)),
        DateOnly date => date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
        TimeSpan time => Time(time),
        ITuple parts => $"({string.Join(", ", Enumerable.Range(0, parts.Length).Select(i => TextOf(parts[i], decimals)))})",
        IEnumerable values => Several(values),
        _ when !SaysItself(value.GetType()) => InWords(value.GetType().Name),
        IFormattable formattable => Digits.Signed(formattable.ToString(null, CultureInfo.InvariantCulture)),
        _ => value.ToString() ?? "",
    };

    /// <summary>The properties of a type that say something of its values.</summary>
    public static IEnumerable<PropertyInfo> PropertiesOf(Type type) => type.GetProperties(BindingFlags.Public | BindingFlags.Instance)
        .Where(property => property.GetIndexParameters().Length == 0 && !property.PropertyType.IsAssignableTo(typeof(Delegate)) && !property.PropertyType.IsByRefLike);

    // Numbers, texts and names, and what has words written by hand: the dump of a record is the compiler's.
    public static bool SaysItself(Type type) =>
        type.IsPrimitive || type.IsEnum || type == typeof(string) || !type.Assembly.GetName().Name!.StartsWith("Transport.", StringComparison.Ordinal)
        || type.GetMethod(nameof(ToString), Type.EmptyTypes) is { } words && words.DeclaringType!.Assembly == type.Assembly && !words.IsDefined(typeof(CompilerGeneratedAttribute));

    private static string Number(double number, int decimals) => Digits.Signed(Plain(number, decimals));

    // A number that the decimals of its column leave with one digit or none keeps three of its own.
    private static string Plain(double number, int decimals)
    {
        var size = Math.Abs(number);
        if (size > 0 && size < 1e-3)
            return number.ToString("0.##E+0", CultureInfo.InvariantCulture);
        if (number == 0 || !double.IsFinite(number) || size >= Math.Pow(10, 1 - decimals) || (double.IsInteger(number) && size >= Math.Pow(10, -decimals)))
            return number.ToString($"F{decimals}", CultureInfo.InvariantCulture);
        return number.ToString($"F{Math.Clamp(2 - (int)Math.Floor(Math.Log10(size)), 0, 9)}", CultureInfo.InvariantCulture);
    }

    // "1 h 26 min", "26 min", "−5 min".
    private static string Time(TimeSpan time)
    {
        var minutes = (long)Math.Round(Math.Abs(time.TotalMinutes));
        var sign = time < TimeSpan.Zero && minutes > 0 ? "−" : "";
        var (hours, rest) = (minutes / 60, minutes % 60);
        return string.Create(CultureInfo.InvariantCulture, $"{sign}{(hours > 0 ? $"{hours} h" : "")}{(hours > 0 && rest > 0 ? " " : "")}{(hours == 0 || rest > 0 ? $"{rest} min" : "")}");
    }

    private static string Several(IEnumerable values)
    {
        var items = values.Cast<object?>().Take(ValuesInSight + 1).ToList();
        return items.Count == 0 ? "none"
            : items.Count <= ValuesInSight && items.All(IsShort) ? string.Join("; ", items.Select(item => TextOf(item, item is double number ? DecimalsFor([number]) : 0)))
            : values is ICollection { Count: var count } ? string.Create(CultureInfo.InvariantCulture, $"{count} of them") : "several";
    }

    // A finding says itself in a sentence, a pair of a dictionary in a dump.
    private static bool IsShort(object? item) => item is null || (item is not Finding && !item.GetType().Name.StartsWith("KeyValuePair", StringComparison.Ordinal) && SaysItself(item.GetType()));

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

    private static string InLowerWords(string name) =>
        InWords(name) is var words && words.Length > 1 && char.IsUpper(words[1]) ? words : char.ToLowerInvariant(words[0]) + words[1..];

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
