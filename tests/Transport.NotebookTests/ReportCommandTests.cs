using System.Diagnostics;
using System.Text;
using System.Text.RegularExpressions;
using Transport.Tests;

namespace Transport.NotebookTests;

/// <summary>Pages for the file and blank sheets, as a user asks for them, and as a browser prints them.</summary>
public sealed class ReportCommandTests : IDisposable
{
    private readonly Workbench _bench = new();

    public void Dispose() => _bench.Dispose();

    private static string Example(string name) => Path.Combine(Repository.Root, "reference-data", "examples", name + ".csv");

    private Task<(int ExitCode, string Output, string Errors)> RunAsync(params string[] arguments) => _bench.CommandAsync(arguments);

    private string[] Written() => Directory.Exists(_bench.PathOf("out")) ? [.. Directory.GetFiles(_bench.PathOf("out")).Select(Path.GetFileName).Order()!] : [];

    [Fact]
    public async Task One_sheet_becomes_a_page_and_its_Markdown()
    {
        var (exitCode, output, errors) = await RunAsync("report", Example("merrow-01-average"));

        Assert.Equal((0, Path.Combine("out", "merrow-01-average-report.html")), (exitCode, output));
        Assert.Contains("holds one 4-h test", errors, StringComparison.Ordinal);
        Assert.Equal(["merrow-01-average-report.html", "merrow-01-average-report.md"], Written());
    }

    [Fact]
    public async Task A_test_and_a_collection_of_one_person_become_two_pages()
    {
        var (exitCode, output, errors) = await RunAsync("report", Example("merrow-06-collection"), Example("merrow-01-average"), "--out", "out");

        Assert.Equal(0, exitCode);
        Assert.Equal(2, output.Split('\n').Length);
        Assert.Contains("merrow-06-collection.csv holds a 24-h collection", errors, StringComparison.Ordinal);
    }

    // Water follows glucose: 1,110 mL that left 12 mmol/L of it do not go together. The invented average sheet with two of its numbers changed; unchanged it says nothing of the kind.
    [Fact]
    public async Task Measurements_that_do_not_go_together_are_a_finding_of_the_page()
    {
        var sheet = await File.ReadAllTextAsync(Example("merrow-01-average"));
        var path = _bench.Write("misfit.csv", sheet.Replace("drained volume,,2370", "drained volume,,3150", StringComparison.Ordinal).Replace("dialysate,glucose,240,39.0", "dialysate,glucose,240,12.0", StringComparison.Ordinal));
        Assert.Equal(0, (await RunAsync("report", path)).ExitCode);
        Assert.Contains("D/D0 glucose 0.11 at 240 min, where the rest goes with about", await File.ReadAllTextAsync(_bench.PathOf("out/misfit-report.md")), StringComparison.Ordinal);
        Assert.Equal(0, (await RunAsync("report", Example("merrow-01-average"))).ExitCode);
        Assert.DoesNotContain("hardly go together", await File.ReadAllTextAsync(_bench.PathOf("out/merrow-01-average-report.md")), StringComparison.Ordinal);
    }

    // Two first hours of one invented person with one membrane; then 2 L of an earlier bag in the drain of the stronger. It says of which test.
    [Fact]
    public async Task Of_a_pair_both_tests_are_asked_whether_they_go_together()
    {
        string Hour(string name, string bag, string drained, string first, string last, string sodium) => _bench.Write(name, HourSheet.Of(bag, drained, first, last, sodium));
        var weak = Hour("weak.csv", "75.5", "2080", "70", "48", "131");
        Assert.Equal(0, (await RunAsync("report", weak, Hour("strong.csv", "214.3", "2480", "200", "125", "124.5"))).ExitCode);
        Assert.DoesNotContain("hardly go together", await File.ReadAllTextAsync(Directory.GetFiles(_bench.PathOf("out"), "*-pair.md").Single()), StringComparison.Ordinal);
        Assert.Equal(0, (await RunAsync("report", weak, Hour("strong.csv", "214.3", "4480", "200", "125", "124.5"))).ExitCode);
        var text = await File.ReadAllTextAsync(Directory.GetFiles(_bench.PathOf("out"), "*-pair.md").Single());
        Assert.Single(System.Text.RegularExpressions.Regex.Matches(text, "hardly go together"));
        Assert.Contains("Test with glucose 3.86", text, StringComparison.Ordinal);
    }

    // One name in two folders: neither page replaces the other.
    [Fact]
    public async Task Two_collections_of_one_file_name_become_two_pages()
    {
        foreach (var folder in new[] { "spring", "autumn" })
        {
            Directory.CreateDirectory(_bench.PathOf(folder));
            File.Copy(Example("merrow-06-collection"), _bench.PathOf($"{folder}/collection.csv"));
        }

        var (exitCode, output, _) = await RunAsync("report", "spring/collection.csv", "autumn/collection.csv");
        Assert.Equal((0, 2), (exitCode, output.Split('\n').Length));
        Assert.Equal(["collection-collection-2.html", "collection-collection-2.md", "collection-collection.html", "collection-collection.md"], Written());
    }

    [Fact]
    public async Task Every_problem_of_every_sheet_and_of_the_limits_is_said_and_nothing_is_written()
    {
        var protocol = _bench.Write("limits.json", """{ "name": "x", "limits": { "noSuchLimit": { "value": 1 } } }""");
        var (exitCode, output, errors) = await RunAsync("report", Example("sheet-with-mistakes"), Example("merrow-01-average"), _bench.PathOf("none.csv"), "--protocol", protocol);

        Assert.Equal((1, ""), (exitCode, output));
        foreach (var code in new[] { "[file-not-found]", "[missing-patient-fact]", "[ratio-falling]", "[sheets-of-different-patients]", "[protocol-unnamed]", "[protocol-unknown-limit]" })
            Assert.Contains(code, errors, StringComparison.Ordinal);
        Assert.Contains("nothing was written", errors, StringComparison.Ordinal);
        Assert.Empty(Written());
    }

    [Theory]
    [InlineData(2, "is given twice", "report", "merrow-01-average", "merrow-01-average")]
    [InlineData(2, "Required argument missing", "report")]
    [InlineData(2, "There is no form \"five hours\"", "blank-sheet", "five hours")]
    public async Task A_request_that_makes_no_sense_ends_with_2_and_a_sentence(int expectedCode, string expected, params string[] arguments)
    {
        var (exitCode, _, errors) = await RunAsync([.. arguments.Select(argument => argument.StartsWith("merrow", StringComparison.Ordinal) ? Example(argument) : argument)]);

        Assert.Equal(expectedCode, exitCode);
        Assert.Contains(expected, errors, StringComparison.Ordinal);
        Assert.Empty(Written());
    }

    [Fact]
    public async Task A_refusal_says_where_the_missing_number_stands_and_one_given_twice_hides_nothing()
    {
        // The age in the time column was told as an age that is missing.
        var slipped = _bench.Write("slipped.csv", (await File.ReadAllTextAsync(Example("merrow-01-average"))).Replace("patient,age,,57,years", "patient,age,57,,years", StringComparison.Ordinal));
        var (exitCode, _, errors) = await RunAsync("report", slipped, slipped);

        Assert.Equal(2, exitCode);
        foreach (var expected in new[] { "slipped.csv is given twice", "[missing-patient-fact]", "[time-of-fact]", "move it" })
            Assert.Contains(expected, errors, StringComparison.Ordinal);
        Assert.Empty(Written());
    }

    [Fact]
    public async Task A_blank_sheet_reads_back_as_its_form()
    {
        Assert.Equal(0, (await RunAsync("blank-sheet", "temporary-drain")).ExitCode);

        Assert.Equal(["blank-4-h-with-temporary-drain.csv", "blank-4-h-with-temporary-drain.html"], Written());
        var sheet = SampleSheet.Read(_bench.PathOf("out/blank-4-h-with-temporary-drain.csv"));
        Assert.DoesNotContain(sheet.Findings, finding => finding.Code.StartsWith("unknown", StringComparison.Ordinal));
    }

    // The four example patients and what is longest of each kind: all of them fit on one sheet of A4.
    [SkippableFact]
    public async Task Every_page_prints_on_one_sheet_of_A4()
    {
        var browser = BrowserTests.Browser();
        Skip.If(browser is null && Environment.GetEnvironmentVariable("CI") != "true", "No Chromium on this machine.");
        var weak = (await File.ReadAllTextAsync(Example("merrow-05-temporary-drain"))).Replace("214.3,mmol/L,3.86", "75.5,mmol/L,1.36", StringComparison.Ordinal)
            .Replace("2480,g", "2080,g", StringComparison.Ordinal).Replace("2750,g", "2010,g", StringComparison.Ordinal).Replace("glucose,0,188", "glucose,0,66", StringComparison.Ordinal)
            .Replace("glucose,60,127", "glucose,60,47", StringComparison.Ordinal).Replace("glucose,240,54", "glucose,240,21", StringComparison.Ordinal);
        var lost = await File.ReadAllTextAsync(Example("merrow-04-lost-dip"));
        string[][] requests =
        [
            [Example("merrow-01-average")], [Example("merrow-02-fast")], [Example("merrow-03-slow")], [Example("merrow-04-lost-dip")], [Example("merrow-05-temporary-drain")],
            [Example("merrow-06-collection")],
            [_bench.Write("weak.csv", weak), Example("merrow-05-temporary-drain")],
            [_bench.Write("earlier.csv", lost.Replace("2025-06-17", "2019-06-17", StringComparison.Ordinal).Replace("volume,,2225", "volume,,2825", StringComparison.Ordinal)), Example("merrow-04-lost-dip")],
            [_bench.Write("doubtful.csv", Doubtful(lost))],
            [_bench.Write("permeability.csv", Permeability(await File.ReadAllTextAsync(Example("merrow-05-temporary-drain"))))],
        ];
        foreach (var request in requests)
            Assert.Equal(0, (await RunAsync(["report", .. request])).ExitCode);
        Assert.Equal(0, (await RunAsync("blank-sheet", "all")).ExitCode);

        var pages = Directory.GetFiles(_bench.PathOf("out"), "*.html");
        Assert.Equal(requests.Length + Enum.GetValues<TestForm>().Length, pages.Length);
        foreach (var page in pages)
            Assert.Equal((Path.GetFileName(page), 1), (Path.GetFileName(page), await SheetsOfPaperAsync(_bench, browser!, page)));
    }

    // As many warnings as one sheet can have and still be a test: a page that would never end, if it did not name the last ones by their codes.
    private static string Doubtful(string sheet) => sheet
        .Replace("test,fill basis,,weighed,,", "test,last peritonitis,,2025-06-10,,\ntest,start of dialysis,,2025-06-01,,\ntest,preceding agent,,icodextrin,,\ntest,preceding dwell,,2,h,\ntest,instillation time,,30,min,", StringComparison.Ordinal)
        .Replace("dwell,,4:00", "dwell,,255,min,", StringComparison.Ordinal).Replace("volume,,2035", "volume,,2535", StringComparison.Ordinal)
        .Replace("sodium,,132,mmol/L", "sodium,,120,mmol/L", StringComparison.Ordinal).Replace("method,,enzymatic", "method,,Jaffe", StringComparison.Ordinal)
        .Replace("creatinine,0,73", "creatinine,0,210", StringComparison.Ordinal).Replace("glucose,0,185", "glucose,0,150", StringComparison.Ordinal)
        .Replace("urea,240,21.3", "urea,240,24", StringComparison.Ordinal).Replace("plasma,glucose,120,5.5", "plasma,glucose,120,22", StringComparison.Ordinal)
        .Replace("patient,urine volume,,0,mL/day,", "", StringComparison.Ordinal);

    private static string Permeability(string sheet) => sheet + string.Concat(
        new[] { (0, 0.90), (10, 0.88), (20, 0.86), (30, 0.84), (120, 0.72), (180, 0.68) }.Select(point => FormattableString.Invariant($"dialysate,marker,{point.Item1},{point.Item2},g/L,\n")))
        + "dialysate,marker,60,0.80,g/L,\ndialysate,marker,240,0.66,g/L,\nplasma,protein,120,66,g/L,\nplasma,albumin,120,36,g/L,\nplasma,beta2 microglobulin,120,28,mg/L,\nplasma,IgG,120,11,g/L,\nplasma,alpha2 macroglobulin,120,2.0,g/L,\n"
        + "dialysate,protein,240,0.9,g/L,\ndialysate,albumin,240,0.45,g/L,\ndialysate,beta2 microglobulin,240,4.0,mg/L,\ndialysate,IgG,240,60,mg/L,\ndialysate,alpha2 macroglobulin,240,4,mg/L,\n";

    internal static async Task<int> SheetsOfPaperAsync(Workbench bench, string browser, string page)
    {
        var pdf = Path.ChangeExtension(page, ".pdf");
        using var process = Process.Start(new ProcessStartInfo(browser,
        [
            "--headless", "--no-sandbox", "--disable-gpu", "--host-resolver-rules=MAP * ~NOTFOUND", $"--user-data-dir={bench.PathOf("profile")}", "--no-pdf-header-footer",
            "--print-to-pdf=" + pdf, new Uri(Path.GetFullPath(page)).AbsoluteUri,
        ])
        { RedirectStandardOutput = true, RedirectStandardError = true })!;
        var errors = process.StandardError.ReadToEndAsync();
        await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();
        await errors;
        return Regex.Count(Encoding.Latin1.GetString(await File.ReadAllBytesAsync(pdf)), @"/Type\s*/Page\b(?!s)");
    }
}
