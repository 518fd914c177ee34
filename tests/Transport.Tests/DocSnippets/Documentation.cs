using System.Text.RegularExpressions;

namespace Transport.Tests.DocSnippets;

/// <summary>The Markdown of the repository, as text.</summary>
internal static partial class Documentation
{
    private static readonly string[] NotCommitted = ["bin", "obj", "out", "TestResults", "BenchmarkDotNet.Artifacts", "node_modules"];

    public static string Root { get; } = Repository.Root;

    /// <summary>Every page, by its path from the root with forward slashes.</summary>
    public static IReadOnlyList<string> Pages { get; } = Files("*.md");

    public static string Read(string page) => File.ReadAllText(Path.Combine(Root, page)).ReplaceLineEndings("\n");

    /// <summary>Committed files, by their path from the root with forward slashes.</summary>
    public static IReadOnlyList<string> Files(string pattern, string under = ".") =>
    [
        .. Directory.EnumerateFiles(Path.Combine(Root, under), pattern, SearchOption.AllDirectories)
            .Select(file => Path.GetRelativePath(Root, file).Replace('\\', '/'))
            .Where(file => !file.Split('/').Any(part => NotCommitted.Contains(part) || part == ".git"))
            .Order(StringComparer.Ordinal),
    ];

    /// <summary>Fenced blocks of a language, in the order of the page.</summary>
    public static IReadOnlyList<string> Blocks(string page, string language) =>
        [.. Fence().Matches(Read(page)).Where(match => match.Groups["language"].Value == language).Select(match => match.Groups["text"].Value)];

    /// <summary>A page without its fenced blocks.</summary>
    public static string Prose(string page) => Fence().Replace(Read(page), "\n");

    [GeneratedRegex("^```(?<language>[a-z]*)[^\n]*\n(?<text>.*?)^```[ ]*$", RegexOptions.Multiline | RegexOptions.Singleline)]
    private static partial Regex Fence();
}
