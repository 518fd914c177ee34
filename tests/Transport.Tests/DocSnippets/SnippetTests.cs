using System.Text.RegularExpressions;

namespace Transport.Tests.DocSnippets;

/// <summary>What the pages show as C# is compiled here, and run: a page cannot show what does not exist any more.</summary>
[Collection(FromTheRoot.Name)]
public sealed partial class SnippetTests
{
    [Fact]
    public void Every_piece_of_csharp_on_a_page_is_a_region_of_Programs_and_every_region_is_on_a_page()
    {
        var regions = Regions();
        var shown =
            from page in Documentation.Pages
            from block in Documentation.Blocks(page, "csharp")
            select (Page: page, Text: Bare(block));
        Assert.Empty(shown.Where(block => !regions.ContainsValue(block.Text)).Select(block => $"{block.Page}: {block.Text}"));
        Assert.Empty(regions.Where(region => !shown.Any(block => block.Text == region.Value && block.Page.EndsWith(PageOf(region.Key), StringComparison.Ordinal)))
            .Select(region => region.Key));
    }

    [Fact]
    public void Usings_and_project_lines_of_the_pages_name_what_exists()
    {
        // What a region cannot hold: lines above the first statement.
        var namespaces = new[] { typeof(Volume), typeof(SampleSheet), typeof(Transport.Reporting.Reports) }.Select(type => type.Namespace).ToList();
        foreach (var line in Documentation.Pages.SelectMany(page => Documentation.Blocks(page, "csharp")).SelectMany(block => block.Split('\n')))
        {
            if (line.StartsWith("using ", StringComparison.Ordinal))
            {
                Assert.Contains(line["using ".Length..^1], namespaces);
            }
            else if (line.StartsWith("#:project ../", StringComparison.Ordinal))
            {
                Assert.True(File.Exists(Path.Combine(Documentation.Root, line["#:project ../".Length..])), line);
            }
        }
    }

    [Fact]
    public void The_program_of_the_readme_has_twelve_lines_and_prints_what_stands_below_it()
    {
        var program = Assert.Single(Documentation.Blocks("README.md", "csharp"));
        Assert.Equal(12, program.Split('\n').Count(line => line.Trim().Length > 0));
        var printed = FromTheRoot.Printed(Programs.Readme);
        Assert.True(Assert.Single(Documentation.Blocks("README.md", "text")).Trim() == printed.Trim(), "It prints:\n" + printed);
    }

    [Fact]
    public void The_program_of_the_regimen_files_page_runs() =>
        Assert.Contains("6 days a week: 9 h at night: 5 × 2.0 L", FromTheRoot.Printed(Programs.RegimenFiles), StringComparison.Ordinal);

    [Fact]
    public void The_answers_on_the_search_page_are_what_its_program_prints()
    {
        var printed = FromTheRoot.Printed(Programs.SearchQuestions);
        Assert.True(Assert.Single(Documentation.Blocks("docs/concepts/search.md", "text")).Trim() == printed.Trim(), "It prints:\n" + printed);
    }

    [Fact]
    public void The_study_on_the_page_of_strategies_runs()
    {
        var folder = Directory.CreateTempSubdirectory("strategies");
        try
        {
            Assert.Contains("one for each patient: regret", FromTheRoot.Printed(() => Programs.Strategies(folder.FullName)), StringComparison.Ordinal);
            Assert.True(File.Exists(Path.Combine(folder.FullName, "part-00001.parquet")));
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    [Fact]
    public void The_program_of_the_sheets_page_runs() => FromTheRoot.Printed(Programs.Sheet);

    [Fact]
    public void The_programs_of_getting_started_run()
    {
        var printed = FromTheRoot.Printed(Programs.GettingStarted);
        Assert.Contains("fast transfer (High)", printed, StringComparison.Ordinal);
        Assert.Contains("Kt/V", printed, StringComparison.Ordinal);
        Assert.True(new FileInfo(Path.Combine(Documentation.Root, "out", "ultrafiltration.html")).Length > 1_000_000);
    }

    [Fact]
    public void The_file_based_app_prints_what_stands_below_it()
    {
        var printed = FromTheRoot.Printed(Programs.FileBasedApp);
        Assert.Contains(printed.Trim(), Documentation.Blocks("docs/getting-started.md", "text").Select(block => block.Trim()));
    }

    [Fact]
    public void The_file_of_the_notebooks_page_writes_its_chart()
    {
        Assert.Contains("D/P", FromTheRoot.Printed(Programs.ChartInOneFile), StringComparison.Ordinal);
        Assert.True(new FileInfo(Path.Combine(Documentation.Root, "out", "against-population.html")).Length > 1_000_000);
    }

    [Fact]
    public void The_program_of_the_filing_page_writes_a_page()
    {
        FromTheRoot.Printed(Programs.FiledReport);
        Assert.Contains("MV-04", File.ReadAllText(Path.Combine(Documentation.Root, "out", "report.html")), StringComparison.Ordinal);
    }

    [Fact]
    public void The_programs_of_the_concepts_run()
    {
        var test = SampleSheet.Read(Path.Combine(ReferenceData.Folder, "examples", "merrow-01-average.csv")).ToTest();
        Programs.Choices(test);
        Assert.Contains("apart", FromTheRoot.Printed(() => Programs.Models(test)), StringComparison.Ordinal);
        Assert.Contains("UreaToPlasma", FromTheRoot.Printed(() => Programs.TwoTests(test, test)), StringComparison.Ordinal);
        var ensemble = MembraneFit.Run(test).ToGaussianEnsemble(10);
        Assert.Contains("sodium", FromTheRoot.Printed(() => Programs.Search(test.Patient, ensemble, test.Solution)), StringComparison.Ordinal);
        var programme = Path.Combine(ReferenceData.Folder, "examples", "programme");
        var (tested, book) = (SampleSheet.Read(Path.Combine(programme, "VP-01-sheet.csv")).ToTest(), RecordBook.Read(Path.Combine(programme, "VP-01-book.csv")));
        Assert.Contains("the nights narrow osmotic conductance", FromTheRoot.Printed(() => Programs.Nights(tested, book)), StringComparison.Ordinal);
        var night = Regimen.Cycling(TimeSpan.FromHours(9), 5, Volume.FromLiters(2), DialysisSolution.Glucose136);
        Assert.Contains("drains 1.0 L", FromTheRoot.Printed(() => Programs.AnyExchanges(test.Patient, ensemble.Center)), StringComparison.Ordinal);
        Assert.Contains("more than now", FromTheRoot.Printed(() => Programs.SideBySide(test.Patient, ensemble, test.Solution)), StringComparison.Ordinal);
        Assert.Contains("five nights", FromTheRoot.Printed(() => Programs.Body(test.Patient, ensemble.Center, night)), StringComparison.Ordinal);
    }

    // "getting-started.md: curves" is on docs/getting-started.md.
    private static string PageOf(string region) => region.Split(':')[0];

    private static Dictionary<string, string> Regions() => Region()
        .Matches(Documentation.Read("tests/Transport.Tests/DocSnippets/Programs.cs"))
        .ToDictionary(match => match.Groups["name"].Value.Trim(), match => Bare(match.Groups["text"].Value));

    // Without indentation at the left, lines above the first statement, and empty lines at the ends.
    private static string Bare(string text)
    {
        var lines = text.Split('\n')
            .SkipWhile(line => line.Trim().Length == 0 || line.StartsWith("using ", StringComparison.Ordinal) || line.StartsWith("#:", StringComparison.Ordinal))
            .ToList();
        var left = lines.Where(line => line.Trim().Length > 0).Min(line => line.Length - line.TrimStart().Length);
        return string.Join('\n', lines.Select(line => line.Length > left ? line[left..].TrimEnd() : "")).TrimEnd();
    }

    [GeneratedRegex("#region (?<name>[^\n]+)\n(?<text>.*?)#endregion", RegexOptions.Singleline)]
    private static partial Regex Region();
}
