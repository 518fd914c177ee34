using Transport.Tests;

namespace Transport.NotebookTests;

/// <summary>A record book reviewed from the command line: one page, or none and every problem.</summary>
public sealed class ReviewCommandTests : IDisposable
{
    private readonly Workbench _bench = new();

    public void Dispose() => _bench.Dispose();

    private static string Programme(string name) => Path.Combine(Repository.Root, "reference-data", "examples", "programme", name + ".csv");

    [Fact]
    public async Task A_book_and_a_sheet_become_one_page_with_the_findings_said()
    {
        var (exitCode, output, errors) = await _bench.CommandAsync("review", Programme("VP-05-book"), "--sheet", Programme("VP-05-sheet"));

        Assert.Equal((0, "nights.html"), (exitCode, output));
        Assert.Contains("[record-change-found]", errors, StringComparison.Ordinal);
        var page = await File.ReadAllTextAsync(_bench.PathOf("nights.html"));
        Assert.Contains("Book and test carry the same patient", page, StringComparison.Ordinal);
        Assert.Contains("Limits: shipped limits.", page, StringComparison.Ordinal);
        Assert.Equal(["nights.html"], Directory.GetFiles(_bench.Directory).Select(Path.GetFileName));
    }

    [Fact]
    public async Task The_clinics_own_limits_are_used_and_named()
    {
        // VP-07 loses 55 to 75 of 430 min: 13 to 17 %.
        var protocol = _bench.Write("limits.json", """{ "name": "Ward 5, invented", "version": "7", "nights": { "lostDwellShare": { "value": 0.3 } } }""");
        var (exitCode, _, errors) = await _bench.CommandAsync("review", Programme("VP-07-book"), "--sheet", Programme("VP-07-sheet"), "--protocol", protocol);

        Assert.Equal(0, exitCode);
        Assert.DoesNotContain("[record-lost-dwell]", errors, StringComparison.Ordinal);
        Assert.Contains("Limits: Ward 5, invented, version 7.", await File.ReadAllTextAsync(_bench.PathOf("nights.html")), StringComparison.Ordinal);
        Assert.Contains("[record-lost-dwell]", (await _bench.CommandAsync("review", Programme("VP-07-book"), "--sheet", Programme("VP-07-sheet"))).Errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Every_problem_is_said_and_nothing_is_written()
    {
        var book = _bench.Write("book.csv", "date,uf (mL)\n");
        var protocol = _bench.Write("limits.json", """{ "name": "x", "version": "1", "nights": { "noSuch": { "value": 1 }, "nowDays": { "value": 400, "unit": "days" } } }""");
        var (exitCode, output, errors) = await _bench.CommandAsync("review", book, "--sheet", _bench.PathOf("none.csv"), "--protocol", protocol, "--out", "page.html");

        Assert.Equal((1, ""), (exitCode, output));
        foreach (var code in new[] { "[book-no-nights]", "[file-not-found]", "[protocol-unknown-limit]", "[protocol-bad-value]" })
            Assert.Contains(code, errors, StringComparison.Ordinal);
        Assert.False(File.Exists(_bench.PathOf("page.html")));
    }

    [Fact]
    public async Task The_book_of_another_patient_is_refused()
    {
        var (exitCode, _, errors) = await _bench.CommandAsync("review", Programme("VP-05-book"), "--sheet", Programme("VP-06-sheet"));

        Assert.Equal(2, exitCode);
        Assert.Contains("Expected a book of 'VP-06', as the test is; VP-05-book.csv is of 'VP-05'.", errors, StringComparison.Ordinal);
        Assert.Empty(Directory.GetFiles(_bench.Directory));
    }

    [Fact]
    public async Task A_page_that_cannot_be_written_ends_with_2_and_leaves_nothing()
    {
        _bench.Write("taken", "");
        var (exitCode, output, errors) = await _bench.CommandAsync("review", Programme("VP-01-book"), "--sheet", Programme("VP-01-sheet"), "--out", "taken/page.html");

        Assert.Equal((2, ""), (exitCode, output));
        Assert.Contains("cannot be written", errors, StringComparison.Ordinal);
    }

    // The fullest and the emptiest of the programme, and one with a box above all.
    [SkippableFact]
    public async Task A_month_prints_on_one_sheet_of_A4()
    {
        var browser = BrowserTests.Browser();
        Skip.If(browser is null && Environment.GetEnvironmentVariable("CI") != "true", "No Chromium on this machine.");
        foreach (var person in new[] { "VP-06", "VP-09", "VP-12" })
        {
            var page = _bench.PathOf(person + ".html");
            Assert.Equal(0, (await _bench.CommandAsync("review", Programme(person + "-book"), "--sheet", Programme(person + "-sheet"), "--out", page)).ExitCode);
            Assert.Equal((person, 1), (person, await ReportCommandTests.SheetsOfPaperAsync(_bench, browser!, page)));
        }
    }
}
