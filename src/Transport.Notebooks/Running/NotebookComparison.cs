using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace Transport.Notebooks;

/// <summary>Whether two executed notebooks show the same: words exactly, numbers to the digits that are shown.</summary>
/// <remarks>Processors differ in the last bits of a sine or a power, so a shown number may differ by one in its last digit.</remarks>
internal static partial class NotebookComparison
{
    /// <summary>Every difference, named by cell and output; empty when there is none.</summary>
    /// <param name="expected">As it is kept.</param>
    /// <param name="found">As it came out.</param>
    public static IReadOnlyList<string> Differences(NotebookDocument expected, NotebookDocument found)
    {
        if (!expected.Cells.Select(cell => (cell.Kind, cell.Source)).SequenceEqual(found.Cells.Select(cell => (cell.Kind, cell.Source))))
            return ["The cells themselves differ."];

        var differences = new List<string>();
        foreach (var (before, after) in expected.Cells.Zip(found.Cells).Where(pair => pair.First.IsCode))
        {
            var (old, now) = (OutputsOf(before), OutputsOf(after));
            if (old.Count != now.Count)
                differences.Add($"{before.Id}: {old.Count} outputs expected, {now.Count} found");
            for (var i = 0; i < Math.Min(old.Count, now.Count); i++)
            {
                if (FirstDifference(old[i], now[i]) is { } difference)
                    differences.Add($"{before.Id}, output {i + 1}: {difference}");
            }
        }

        return differences;
    }

    /// <summary>The first difference of two texts; null when they say the same to the digits shown.</summary>
    public static string? FirstDifference(string expected, string found)
    {
        var (old, now) = (Number().Matches(expected), Number().Matches(found));
        var (oldWords, nowWords) = (Number().Split(expected), Number().Split(found));
        for (var i = 0; i < Math.Min(oldWords.Length, nowWords.Length); i++)
        {
            if (oldWords[i] != nowWords[i])
                return $"`{Short(oldWords[i])}` expected, `{Short(nowWords[i])}` found";
            if (i < Math.Min(old.Count, now.Count) && !AreSame(old[i].Value, now[i].Value))
                return $"{old[i].Value} expected, {now[i].Value} found";
        }

        return oldWords.Length == nowWords.Length ? null : "one has more numbers than the other";
    }

    // 0.1 is one in the last digit of 12.3; the coarser of two decides.
    private static bool AreSame(string expected, string found)
    {
        if (expected == found)
            return true;
        var (old, now) = (double.Parse(expected, CultureInfo.InvariantCulture), double.Parse(found, CultureInfo.InvariantCulture));
        return Math.Abs(old - now) <= 1.001 * Math.Max(LastDigit(expected), LastDigit(found));
    }

    private static double LastDigit(string number)
    {
        var exponentAt = number.IndexOfAny(['e', 'E']);
        var exponent = exponentAt < 0 ? 0 : int.Parse(number.AsSpan(exponentAt + 1), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture);
        var digits = exponentAt < 0 ? number : number[..exponentAt];
        var point = digits.IndexOf('.', StringComparison.Ordinal);
        return Math.Pow(10, exponent - (point < 0 ? 0 : digits.Length - point - 1));
    }

    private static List<string> OutputsOf(NotebookCell cell) =>
        [.. (cell.File["outputs"] as JsonArray ?? []).Select(output => output!.ToJsonString())];

    private static string Short(string text) => text.Length <= 60 ? text : text[..60] + "…";

    // Not inside a word or a color: "c3", "#a1b2c3" and "SVG2" are words.
    [GeneratedRegex(@"(?<![\w#.])-?\d+(?:\.\d+)?(?:[eE][+-]?\d+)?(?![\w#])")]
    private static partial Regex Number();
}
