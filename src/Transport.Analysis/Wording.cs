namespace Transport.Analysis;

/// <summary>How parts of sentences become sentences.</summary>
internal static class Wording
{
    /// <summary>"Ultrafiltration at least 800 mL" of "ultrafiltration at least 800 mL"; nothing of nothing.</summary>
    public static string Capital(string words) => words.Length == 0 ? words : char.ToUpperInvariant(words[0]) + words[1..];

    /// <summary>"pain, fever and vomiting".</summary>
    public static string List(IReadOnlyList<string> words) => words.Count < 2 ? string.Concat(words) : $"{string.Join(", ", words.SkipLast(1))} and {words[^1]}";
}
