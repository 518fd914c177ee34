using System.Text.RegularExpressions;

namespace Transport.Tests.DocSnippets;

/// <summary>What the pages refer to exists: files, headings, tests, finding codes.</summary>
public sealed partial class PageTests
{
    [Fact]
    public void Every_link_leads_somewhere()
    {
        var broken =
            from page in Documentation.Pages
            from Match link in Link().Matches(Documentation.Prose(page))
            let target = link.Groups["path"].Value
            where !target.Contains(':', StringComparison.Ordinal) && !Exists(page, target, link.Groups["heading"].Value)
            select $"{page}: {link.Value}";
        Assert.Empty(broken);

        static bool Exists(string page, string target, string heading)
        {
            var file = target.Length == 0
                ? Path.Combine(Documentation.Root, page)
                : Path.GetFullPath(target, Path.GetDirectoryName(Path.Combine(Documentation.Root, page))!);
            return heading.Length == 0 ? Path.Exists(file) : File.Exists(file) && Headings(file).Contains(heading);
        }
    }

    [Fact]
    public void Every_path_that_a_page_names_exists()
    {
        // In code spans and in command lines. A path with a placeholder (<, *, {, …) is a pattern.
        var missing =
            from page in Documentation.Pages
            from Match path in RepositoryPath().Matches(Documentation.Read(page))
            let name = path.Value.TrimEnd('.', '/')
            where !Path.Exists(Path.Combine(Documentation.Root, name))
            select $"{page}: {name}";
        Assert.Empty(missing);
    }

    [Fact]
    public void Every_page_of_docs_can_be_reached_from_the_index()
    {
        var reached = new HashSet<string> { "docs/index.md" };
        var waiting = new Queue<string>(reached);
        while (waiting.TryDequeue(out var page))
        {
            foreach (Match link in Link().Matches(Documentation.Prose(page)))
            {
                var target = Path.GetRelativePath(
                    Documentation.Root, Path.GetFullPath(link.Groups["path"].Value, Path.GetDirectoryName(Path.Combine(Documentation.Root, page))!)).Replace('\\', '/');
                if (target.StartsWith("docs/", StringComparison.Ordinal) && File.Exists(Path.Combine(Documentation.Root, target)) && reached.Add(target))
                {
                    waiting.Enqueue(target);
                }
            }
        }

        Assert.Empty(Documentation.Pages.Where(page => page.StartsWith("docs/", StringComparison.Ordinal)).Except(reached));
    }

    [Fact]
    public void Every_test_that_a_page_names_exists_and_the_readme_names_at_least_fifteen()
    {
        var files = Documentation.Files("*.cs", "tests").ToLookup(Path.GetFileNameWithoutExtension);
        var named =
            from page in Documentation.Pages
            from Match match in TestName().Matches(Documentation.Read(page))
            select (Page: page, Class: match.Groups["class"].Value, Test: match.Groups["test"].Value);
        Assert.True(named.Count(name => name.Page == "README.md") >= 15);
        Assert.All(named, name => Assert.True(
            files[name.Class].Any(file => Regex.IsMatch(Documentation.Read(file), $@"\b{name.Test}\(")), $"{name.Page}: {name.Class}.{name.Test}"));
    }

    [Fact]
    public void Every_figure_that_the_readme_is_checked_against_carries_a_mark()
    {
        var rows = Documentation.Read("README.md").Split('\n').Where(line => line.StartsWith('|') && TestName().IsMatch(line)).ToList();
        Assert.NotEmpty(rows);
        Assert.All(rows, row => Assert.Matches(@"\| (read|memory|computed|choice)[^|]*\| `", row));
    }

    [Fact]
    public void Every_finding_of_indices_fits_and_regimens_is_listed_with_its_severities_and_no_other()
    {
        var inCode = Documentation.Files("*.cs", "src")
            .Where(file => !file.Contains("/SampleSheets/", StringComparison.Ordinal))
            .SelectMany(file => Raised(Documentation.Read(file)))
            .Distinct().Order(StringComparer.Ordinal).ToList();
        var listed = FindingRow().Matches(Documentation.Read("docs/findings.md"))
            .SelectMany(row => row.Groups["severity"].Value.Split(" or ").Select(severity => $"{row.Groups["code"].Value} {severity}"))
            .Order(StringComparer.Ordinal).ToList();
        Assert.True(inCode.Count > 30);
        Assert.Equal(inCode, listed);
    }

    [Fact]
    public void Every_finding_is_made_in_a_way_that_the_test_above_sees()
    {
        // One place each hands a code on from a variable: the local functions and methods whose callers are seen.
        string[] handingOn = ["DangerSigns.cs", "FluidFindings.cs", "NurseFindings.cs", "RegimenCheck.cs", "RegimenFindings.cs", "SheetFindingKind.cs"];
        var unseen =
            from file in Documentation.Files("*.cs", "src")
            from Match made in MadeFromVariable().Matches(Documentation.Read(file))
            select Path.GetFileName(file);
        Assert.Empty(unseen.Except(handingOn));
    }

    // "code severity" of every finding that a source file makes from literals.
    private static IEnumerable<string> Raised(string source)
    {
        foreach (Match made in MadeFromLiteral().Matches(source))
        {
            foreach (var severity in made.Groups["severity"].Captures.Select(capture => capture.Value.ToLowerInvariant()))
            {
                yield return $"{made.Groups["code"].Value} {severity}";
            }
        }

        foreach (Match made in MadeByName().Matches(source))
        {
            yield return $"{made.Groups["code"].Value} {(made.Groups["verb"].Value == "Warn" ? "warning" : made.Groups["verb"].Value.ToLowerInvariant())}";
        }
    }

    // As the usual renderers make anchors: lower case, no punctuation, hyphens for spaces.
    private static IEnumerable<string> Headings(string file) => File.ReadLines(file)
        .Where(line => line.StartsWith('#'))
        .Select(line => Regex.Replace(line.TrimStart('#').Trim().ToLowerInvariant(), @"[^\w\- ]", "").Replace(' ', '-'));

    [GeneratedRegex(@"\]\((?<path>[^)#\s]*)(?:#(?<heading>[^)\s]*))?\)")]
    private static partial Regex Link();

    [GeneratedRegex(@"(?<=[\s`(\x22=])(?:src|tests|docs|notebooks|reference-data)/[\w\-./]+(?![\w\-./]*[<*{…])")]
    private static partial Regex RepositoryPath();

    [GeneratedRegex(@"`(?<class>[A-Z]\w+Tests)\.(?<test>\w+)`")]
    private static partial Regex TestName();

    [GeneratedRegex(@"^\| `(?<code>[a-z0-9-]+)` \| (?<severity>(?:error|warning|note)(?: or (?:error|warning|note))?) \| \S.*\| \S.* \|$", RegexOptions.Multiline)]
    private static partial Regex FindingRow();

    [GeneratedRegex(@"(?:Severity\.(?<severity>\w+)\s*:\s*)?Severity\.(?<severity>\w+),\s*""(?<code>[a-z0-9-]+)""")]
    private static partial Regex MadeFromLiteral();

    [GeneratedRegex(@"\b(?<verb>Warn|Error|Note)\(\s*findings,\s*""(?<code>[a-z0-9-]+)""")]
    private static partial Regex MadeByName();

    [GeneratedRegex(@"new(?: Finding)?\(\s*(?:Severity\.\w+|severity|Severity),\s*(?!"")\w")]
    private static partial Regex MadeFromVariable();
}
