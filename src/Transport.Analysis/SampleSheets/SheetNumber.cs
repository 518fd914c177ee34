using System.Globalization;
using System.Text.RegularExpressions;

namespace Transport.Analysis;

/// <summary>Numbers as people and spreadsheets write them, with decimal point or decimal comma.</summary>
/// <remarks>
/// A single mark before exactly three digits (1.234, 1,234) can mean decimals or thousands. Any other number shows which
/// mark is its decimal mark; if all those of a file agree, they settle the doubtful ones too. In a comma-separated file without
/// such a number the point is the decimal mark, because a program that separates by comma writes decimals with a point.
/// Otherwise a doubtful number is refused.
/// </remarks>
internal static partial class SheetNumber
{
    /// <summary>The decimal mark that a number shows by its form; null where it shows none.</summary>
    public static char? DecimalMarkShownBy(string text) => Shape(text) is { Mark: { } mark } ? mark : null;

    /// <summary>Reads a number. False where it is not one, or where it is ambiguous and the file's mark is not known.</summary>
    public static bool TryRead(string text, char? fileMark, out double value, out bool ambiguous)
    {
        value = 0;
        ambiguous = false;
        if (Shape(text) is not { } shape)
        {
            return false;
        }

        ambiguous = shape.Doubtful && fileMark is null;
        if (ambiguous)
        {
            return false;
        }

        var mark = shape.Mark ?? fileMark ?? '.';
        var plain = string.Concat(shape.Digits.Where(letter => letter is not ('.' or ',') || letter == mark)).Replace(',', '.');
        return double.TryParse(plain, NumberStyles.Float, CultureInfo.InvariantCulture, out value) && double.IsFinite(value);
    }

    /// <summary>The decimal mark of a whole file, as its numbers show it; null where they disagree, or show none and commas separate nothing.</summary>
    public static char? DecimalMarkOf(char delimiter, IEnumerable<(int Row, string Text)> numbers, List<Finding> findings)
    {
        var shown = numbers.GroupBy(number => DecimalMarkShownBy(number.Text)).Where(group => group.Key is not null).ToList();
        switch (shown)
        {
            case [var only]:
                return only.Key;
            case [_, _]:
                var rarer = shown.MinBy(group => group.Count())!.First();
                findings.Add(SampleSheetCodes.MixedDecimalMarks.Finding(
                    "Some values have a decimal point and others a decimal comma. Each was read by its own form; use one mark in the whole file.",
                    rarer.Row, "value", rarer.Text));
                return null;
            default:
                return delimiter == ',' ? '.' : null;
        }
    }

    private static (string Digits, char? Mark, bool Doubtful)? Shape(string text)
    {
        var trimmed = text.Trim().Replace('\u2212', '-').Replace('\u2013', '-');
        var grouped = SpacedThousands().IsMatch(trimmed);
        var digits = grouped ? Spaces().Replace(trimmed, "") : trimmed;
        if (!Number().IsMatch(digits))
        {
            return null;
        }

        var marks = digits.Where(letter => letter is '.' or ',').ToList();
        if (marks.Count == 0)
        {
            return (digits, null, false);
        }

        var last = marks[^1];
        var mantissa = digits.TrimStart('+', '-').Split('e', 'E')[0];
        if (marks.Count == 1)
        {
            var (before, after) = (mantissa.IndexOf(last, StringComparison.Ordinal), mantissa.Length - mantissa.IndexOf(last, StringComparison.Ordinal) - 1);
            var doubtful = after == 3 && before is > 0 and <= 3 && mantissa[0] != '0' && !grouped && mantissa.Length == digits.TrimStart('+', '-').Length;
            return (digits, doubtful ? null : last, doubtful);
        }

        // Several marks: all but the last kind group by three.
        var decimals = marks.Count(mark => mark == last) == 1;
        var whole = decimals ? mantissa[..mantissa.LastIndexOf(last)] : mantissa;
        return !grouped && marks.Distinct().Count() == (decimals ? 2 : 1) && MarkedThousands().IsMatch(whole)
            ? (digits, decimals ? last : last == '.' ? ',' : '.', false)
            : null;
    }

    [GeneratedRegex(@"^[+-]?(\d+([.,]\d+)*|[.,]\d+)([eE][+-]?\d{1,3})?$")]
    private static partial Regex Number();

    [GeneratedRegex(@"^[+-]?\d{1,3}([\u0020\u00A0\u2009\u202F'\u2019]\d{3})+([.,]\d+)?$")]
    private static partial Regex SpacedThousands();

    [GeneratedRegex(@"[\u0020\u00A0\u2009\u202F'\u2019]")]
    private static partial Regex Spaces();

    [GeneratedRegex(@"^\d{1,3}([.,]\d{3})+$")]
    private static partial Regex MarkedThousands();
}
