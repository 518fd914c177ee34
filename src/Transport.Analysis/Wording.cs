namespace Transport.Analysis;

/// <summary>How parts of sentences become sentences.</summary>
internal static class Wording
{
    /// <summary>"Ultrafiltration at least 800 mL" of "ultrafiltration at least 800 mL"; nothing of nothing.</summary>
    public static string Capital(string words) => words.Length == 0 ? words : char.ToUpperInvariant(words[0]) + words[1..];
}
