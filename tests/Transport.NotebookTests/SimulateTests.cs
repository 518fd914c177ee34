using System.Text.RegularExpressions;
using Transport.Tests;

namespace Transport.NotebookTests;

/// <summary>The command that simulates regimen files for the person of a sheet.</summary>
public sealed class SimulateTests
{
    private static readonly string Sheet = Path.Combine(Repository.Root, "reference-data", "examples", "merrow-01-average.csv");

    private static readonly string Regimens = Path.Combine(Repository.Root, "reference-data", "examples", "regimens");

    [Fact]
    public async Task Regimens_of_files_are_laid_side_by_side_and_written_as_a_page()
    {
        var folder = Directory.CreateTempSubdirectory();
        try
        {
            var page = Path.Combine(folder.FullName, "page.html");
            var (code, said, log) = await Run(Sheet, Path.Combine(Regimens, "cycling.csv"), Path.Combine(Regimens, "by-hand.csv"), "--out", page);
            Assert.Equal(0, code);
            Assert.Contains("What would differ from now", said, StringComparison.Ordinal);
            Assert.Contains("icodextrin-in-use", log, StringComparison.Ordinal);
            var html = await File.ReadAllTextAsync(page);
            Assert.Contains("<svg", html, StringComparison.Ordinal);

            // Whose it is, that it is invented, the unit on each panel, and no comma before a line break. Six nights of seven use 6/7 of 12 L a day.
            Assert.Contains("MV-01 &#183; test of 2025-03-11 &#183; woman of 57 years &#183; invented data", html, StringComparison.Ordinal);
            Assert.Matches(@"fluid used: now 10\.3 L/day", html);
            Assert.DoesNotContain(",<br>", html, StringComparison.Ordinal);
            Assert.Contains("By-hand: ", said, StringComparison.Ordinal);
            Assert.Contains("glucose meters", html, StringComparison.Ordinal);
            Assert.DoesNotContain("NaN", html, StringComparison.Ordinal);
        }
        finally
        {
            folder.Delete(true);
        }
    }

    [Fact]
    public async Task What_stands_against_it_is_said_all_at_once_and_nothing_is_written()
    {
        // A sheet with mistakes, a regimen whose rows are wrong, one that is not there: one list, with file, row, field, found and expected.
        var folder = Directory.CreateTempSubdirectory();
        try
        {
            var (page, bad) = (Path.Combine(folder.FullName, "page.html"), Path.Combine(folder.FullName, "bad.csv"));
            await File.WriteAllTextAsync(bad, "item,value,unit,solution\nnight length,nine,h,\nvolume per cycle,2,gallons,\ncycles,5,,\nnight solution,2.5 %,,\n");
            var (code, said, log) = await Run(Path.Combine(Repository.Root, "reference-data", "examples", "sheet-with-mistakes.csv"), bad, Path.Combine(folder.FullName, "missing.csv"), "--out", page);
            Assert.Equal(1, code);
            Assert.Empty(said);
            Assert.Matches(@"^error: \d+ problems, nothing was written\n", log.ReplaceLineEndings("\n"));
            foreach (var expected in new[]
            {
                "bad.csv, row 2, night length: ", "Found: nine h. Expected: minutes", "bad.csv, row 3, volume per cycle: ", "Found: gallons. Expected: mL",
                "bad.csv, row 5, night solution: ", "[regimen-solution-unknown]", "missing.csv: There is no such file; check its name and folder. [file-not-found]",
                "sheet-with-mistakes.csv, row ",
            })
            {
                Assert.Contains(expected, log, StringComparison.Ordinal);
            }

            Assert.DoesNotContain("Could not", log, StringComparison.Ordinal);
            Assert.Empty(Directory.GetFiles(folder.FullName, "*.html*"));
        }
        finally
        {
            folder.Delete(true);
        }
    }

    [Fact]
    public async Task What_is_wrong_with_the_request_is_said_beside_what_is_wrong_with_its_files()
    {
        // A floor that is no number, a folder to write to, one regimen given twice, a protocol with a misspelt part, another person's collection with a row that cannot be read: one answer.
        var folder = Directory.CreateTempSubdirectory();
        try
        {
            string Write(string name, string text)
            {
                File.WriteAllText(Path.Combine(folder.FullName, name), text);
                return Path.Combine(folder.FullName, name);
            }

            var bad = Write("bad.csv", "item,value,unit\ncolour,blue,\ncycles,-4,\nvolume per cycle,2,gallons\nnight length,9,h\nnight solution,glucose 1.36 %,\n");
            var protocol = Write("limits.json", """{ "version": "1", "limit": { } }""");
            var collection = Write("collection.csv", (await File.ReadAllTextAsync(Path.Combine(Path.GetDirectoryName(Sheet)!, "merrow-06-collection.csv")))
                .Replace("MV-01", "MV-09", StringComparison.Ordinal).Replace("drain 1,urea,,19.6,mmol/L", "drain 1,urea,,19.6,pints", StringComparison.Ordinal));
            var (code, said, log) = await Run(Sheet, bad, bad, "--floor", "abc", "--ceiling", "0.3", "--out", folder.FullName, "--protocol", protocol, "--collection", collection);
            Assert.Equal((2, ""), (code, said));
            foreach (var expected in new[]
            {
                "error: bad.csv is given twice.", "is a folder. Name a file in it.", "error: --floor is a number of mL, with a decimal point; found 'abc'.",
                "error: --ceiling is a number of mL; found '0.3', which looks like litres: write 300.",
                "bad.csv, row 2, colour: ", "bad.csv, row 3, cycles: ", "bad.csv, row 4, volume per cycle: ", "collection.csv, row ", "[sheets-of-different-patients]",
                "limits.json, name: ", "limits.json, limit: There is no part of this name",
            })
            {
                Assert.Contains(expected, log, StringComparison.Ordinal);
            }

            // Each once, though the file was given twice.
            Assert.Single(Regex.Matches(log, "row 3, cycles: "));

            // A sheet of the other kind is told so, whatever else is wrong with it.
            var (_, _, other) = await Run(collection, Path.Combine(Regimens, "by-hand.csv"));
            Assert.Contains("[not-a-test]", other, StringComparison.Ordinal);
            Assert.Contains("[unknown-unit]", other, StringComparison.Ordinal);
        }
        finally
        {
            folder.Delete(true);
        }
    }

    [Fact]
    public async Task The_page_is_headed_by_what_its_figures_rest_on()
    {
        // The invented sheet, made to lie: a drained volume that no membrane explains beside its samples, a peritonitis two weeks before, and no plasma urea nor urine.
        var folder = Directory.CreateTempSubdirectory();
        try
        {
            var (sheet, page) = (Path.Combine(folder.FullName, "sheet.csv"), Path.Combine(folder.FullName, "page.html"));
            var lines = (await File.ReadAllLinesAsync(Sheet))
                .Where(line => !line.StartsWith("plasma,urea", StringComparison.Ordinal) && !line.StartsWith("patient,urine", StringComparison.Ordinal) && !line.StartsWith("patient,renal", StringComparison.Ordinal))
                .Select(line => line.StartsWith("test,drained volume,", StringComparison.Ordinal) ? "test,drained volume,,4400,mL," : line)
                .Append("test,last peritonitis,,2025-02-25,,");
            await File.WriteAllLinesAsync(sheet, lines);
            var (code, said, _) = await Run(sheet, Path.Combine(Regimens, "by-hand.csv"), "--out", page);
            Assert.Equal(0, code);
            var html = await File.ReadAllTextAsync(page);
            var basis = html[..html.IndexOf("<figure>", StringComparison.Ordinal)];
            foreach (var expected in new[] { "PRELIMINARY", "Check the sheet before reading further", "recent-peritonitis", "plasma-not-measured", "residual-function-not-given", "Limits: as shipped with Transport", "Read by Transport" })
            {
                Assert.Contains(expected, basis, StringComparison.Ordinal);
                Assert.True(expected.StartsWith("Read by", StringComparison.Ordinal) || said.Contains(expected, StringComparison.Ordinal));
            }

            Assert.Contains("fluid-range-not-given", html, StringComparison.Ordinal);
            Assert.Contains("Plasma urea: not measured", html, StringComparison.Ordinal);
            Assert.DoesNotContain("urea, mean", html, StringComparison.Ordinal);
        }
        finally
        {
            folder.Delete(true);
        }
    }

    [Fact]
    public async Task A_range_has_two_ends_and_a_regimen_above_it_is_said_with_its_name()
    {
        var (code, said, _) = await Run(Sheet, Path.Combine(Regimens, "cycling.csv"), Path.Combine(Regimens, "by-hand.csv"), "--floor", "0", "--ceiling", "100");
        Assert.Equal(0, code);
        Assert.Matches(@"Read with care: now: Ultrafiltration of \d+ mL in 24 h lies \d+ mL above the ceiling of 100 mL", said);
        foreach (var half in new string[][] { ["--floor", "300"], ["--ceiling", "300"], ["--floor", "300", "--ceiling", "300"] })
        {
            var (refused, nothing, log) = await Run([Sheet, Path.Combine(Regimens, "cycling.csv"), .. half]);
            Assert.Equal((2, ""), (refused, nothing));
            Assert.Contains("A range of ultrafiltration has", log, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task A_collection_stands_beside_the_present_regimen_and_only_one_of_the_same_person()
    {
        var examples = Path.GetDirectoryName(Sheet)!;
        var (code, said, _) = await Run(Sheet, Path.Combine(Regimens, "by-hand.csv"), "--collection", Path.Combine(examples, "merrow-06-collection.csv"));
        Assert.Equal(0, code);

        // Three bags of 2.04, 2.04 and 2.05 L (the sheet) are not the regimen of four times 2 L.
        Assert.Contains("Measured beside simulated: a collection of 2025-03-18", said, StringComparison.Ordinal);
        Assert.Contains("In the collection 6.1 L were filled in 24 h, in the regimen 'now' 8.0 L", said, StringComparison.Ordinal);
        Assert.Contains("over a blood of 10:15", said, StringComparison.Ordinal);
        var (another, nothing, log) = await Run(Path.Combine(examples, "merrow-02-fast.csv"), Path.Combine(Regimens, "by-hand.csv"), "--collection", Path.Combine(examples, "merrow-06-collection.csv"));
        Assert.Equal((1, ""), (another, nothing));
        Assert.Contains("[sheets-of-different-patients]", log, StringComparison.Ordinal);
        var (test, _, refused) = await Run(Sheet, Path.Combine(Regimens, "by-hand.csv"), "--collection", Path.Combine(examples, "merrow-02-fast.csv"));
        Assert.Equal(1, test);
        Assert.Contains("[not-a-collection]", refused, StringComparison.Ordinal);
    }

    [SkippableFact]
    public async Task No_table_of_five_regimens_is_wider_than_a_window_of_900_pixels()
    {
        // The last columns were cut at 900 px. A browser lays the page out and says by how much its widest table overflows what it stands in; the page itself runs no script, its copy does.
        var browser = BrowserTests.Browser();
        Skip.If(browser is null && Environment.GetEnvironmentVariable("CI") != "true", "No Chromium on this machine.");
        var folder = Directory.CreateTempSubdirectory();
        try
        {
            var (five, page) = (Path.Combine(folder.FullName, "five.csv"), Path.Combine(folder.FullName, "page.html"));
            string[] nights = ["weak", "middle", "strong", "many", "few"];
            await File.WriteAllTextAsync(five, "item,value,unit,solution,regimen\n" + string.Concat(nights.Select((name, i) => FormattableString.Invariant(
                $"night length,9,h,,{name}\ncycles,{3 + i},,,{name}\nvolume per cycle,2000,mL,,{name}\nnight solution,glucose {(i == 2 ? "3.86" : "1.36")} %,,,{name}\n"))));
            var (code, _, log) = await Run(Sheet, Path.Combine(Regimens, "cycling.csv"), five, "--floor", "400", "--ceiling", "900", "--out", page);
            Assert.True(code == 0, log);
            var html = await File.ReadAllTextAsync(page);
            const string measure = "<script>document.title='overflow '+Math.max(...[...document.querySelectorAll('div')].filter(box=>box.style.overflowX==='auto').map(box=>box.scrollWidth-box.clientWidth))+' of '+document.querySelectorAll('table').length</script></body>";
            await File.WriteAllTextAsync(page, Regex.Replace(html, "<meta http-equiv=[^>]*>", "").Replace("</body>", measure, StringComparison.Ordinal));
            using var process = System.Diagnostics.Process.Start(new System.Diagnostics.ProcessStartInfo(browser!,
                ["--headless", "--no-sandbox", "--disable-gpu", "--window-size=900,1200", $"--user-data-dir={folder.FullName}/profile", "--dump-dom", new Uri(page).AbsoluteUri])
            { RedirectStandardOutput = true, RedirectStandardError = true })!;
            var errors = process.StandardError.ReadToEndAsync();
            var laidOut = await process.StandardOutput.ReadToEndAsync();
            await process.WaitForExitAsync();
            await errors;
            var found = Regex.Match(laidOut, @"<title>overflow (?<pixels>-?\d+) of (?<tables>\d+)</title>");
            Assert.True(found.Success);
            Assert.Equal("0", found.Groups["pixels"].Value);
            Assert.True(int.Parse(found.Groups["tables"].Value, System.Globalization.CultureInfo.InvariantCulture) >= 8);

            // Differences, levels, plasma and guidelines: each regimen heads a column of each.
            Assert.All(nights, name => Assert.Equal(4, Regex.Count(html, $"<th scope=\"col\"[^>]*>{name}(<br>|</th>)")));
        }
        finally
        {
            folder.Delete(true);
        }
    }

    [Fact]
    public async Task A_collection_is_no_test_and_that_is_said()
    {
        var (code, said, log) = await Run(Path.Combine(Repository.Root, "reference-data", "examples", "merrow-06-collection.csv"), Path.Combine(Regimens, "cycling.csv"));
        Assert.Equal((1, ""), (code, said));
        Assert.Contains("merrow-06-collection.csv: This sheet holds a 24-h collection", log, StringComparison.Ordinal);
        Assert.Contains("[not-a-test]", log, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_page_that_cannot_be_written_leaves_nothing_behind_and_one_file_given_twice_is_refused()
    {
        var folder = Directory.CreateTempSubdirectory();
        try
        {
            // The page's name is a folder's.
            Directory.CreateDirectory(Path.Combine(folder.FullName, "page.html"));
            var (code, said, log) = await Run(Sheet, Path.Combine(Regimens, "by-hand.csv"), "--out", Path.Combine(folder.FullName, "page.html"));
            Assert.Equal((2, ""), (code, said));
            Assert.Contains("is a folder. Name a file in it.", log, StringComparison.Ordinal);
            Assert.Empty(Directory.GetFiles(folder.FullName));
            var (again, _, twice) = await Run(Sheet, Path.Combine(Regimens, "by-hand.csv"), Path.Combine(Regimens, "by-hand.csv"));
            Assert.Equal(2, again);
            Assert.Contains("by-hand.csv is given twice", twice, StringComparison.Ordinal);
        }
        finally
        {
            folder.Delete(true);
        }
    }

    private static async Task<(int Code, string Said, string Log)> Run(params string[] arguments)
    {
        using var terminal = new StringWriter();
        using var log = new StringWriter();
        var code = await SimulateCommandLine.Of(terminal, log).Parse(arguments).InvokeAsync();
        return (code, terminal.ToString(), log.ToString());
    }
}
