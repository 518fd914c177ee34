using System.Text.RegularExpressions;
using Transport.Tests;

namespace Transport.NotebookTests;

/// <summary>The clinic's notebooks as a clinic works them: on sheets that are not the demonstration's.</summary>
public sealed partial class ClinicNotebookTests : IDisposable
{
    private readonly Workbench _bench = new();

    public void Dispose() => _bench.Dispose();

    [Fact]
    public async Task A_strangers_sheet_gets_its_own_answer_and_no_word_of_the_demonstrations()
    {
        var page = await PageOf(Workbench.Fixture("stranger.csv"));

        // What the stranger has.
        Assert.Contains("slow (Low)", page, StringComparison.Ordinal);
        Assert.Contains("stranger.csv", page, StringComparison.Ordinal);

        // What is missing is said to be missing.
        Assert.Contains("not measured", page, StringComparison.Ordinal);
        Assert.Contains("this page does not say when the test was made", page, StringComparison.Ordinal);

        // Prose, titles and captions of the demonstration: its class, its file, its person.
        Assert.DoesNotContain("fast-average (High-average); percentile", page, StringComparison.Ordinal);
        Assert.DoesNotContain("MV-0", page, StringComparison.Ordinal);
        Assert.DoesNotMatch("merrow-0[2-4]", page);
        AssertClean(page);
    }

    [Fact]
    public async Task A_lost_dip_with_low_ultrafiltration_is_named_and_the_strong_curve_is_the_tested_one()
    {
        var page = await PageOf(Path.Combine(Repository.Root, "reference-data", "examples", "merrow-04-lost-dip.csv"));
        Assert.Contains("low-osmotic-conductance", page, StringComparison.Ordinal);
        Assert.Contains("glucose 3.86&nbsp;%<br><small style=\"opacity:0.8\">the tested strength", page, StringComparison.Ordinal);
        Assert.Contains("strongest glucose every day", page, StringComparison.Ordinal);

        // Whose page it is stands at its head, and on every printed sheet; that all options are strongest bags is said of the list.
        Assert.Contains("<p class=\"whose\">MV-04 &#183; test of 2025-06-17 &#183; woman of 49 years &#183; invented data</p>", page, StringComparison.Ordinal);
        Assert.Contains("@top-right", page, StringComparison.Ordinal);
        Assert.Contains("every-option-strongest", page, StringComparison.Ordinal);
        AssertClean(page);
    }

    [Fact]
    public async Task The_long_dwell_of_a_stranger_is_the_strangers()
    {
        var page = await PageOf("05-what-can-the-long-dwell-do", $"sheet={Workbench.Fixture("stranger.csv")}");
        Assert.DoesNotContain("MV-0", page, StringComparison.Ordinal);
        Assert.Contains("some glucose meters read falsely high", page, StringComparison.OrdinalIgnoreCase);

        // The demonstration's fast membrane loses the weakest bag within 4 h (3.4 h, seen on its page); this slow one does not.
        Assert.DoesNotContain("3.4 h", page, StringComparison.Ordinal);
        AssertClean(page);
    }

    [Theory]
    [InlineData("04-which-night-for-this-membrane")]
    [InlineData("07-what-should-the-next-test-sample")]
    public async Task A_night_and_a_next_test_are_the_strangers_too(string notebook)
    {
        var page = await PageOf(notebook, $"sheet={Workbench.Fixture("stranger.csv")}");
        Assert.DoesNotContain("MV-0", page, StringComparison.Ordinal);
        Assert.DoesNotContain("fast-average", page, StringComparison.Ordinal);
        AssertClean(page);
    }

    [Theory]
    [InlineData(2350)]
    [InlineData(2650)]
    public async Task A_plain_test_without_urine_is_searched_whatever_number_of_options_is_left(int drainedMilliliters)
    {
        // D/P creatinine 0.70 in a man without urine: hardly any night of the grid reaches his clearance, and one option may be all that is left.
        var sheet = _bench.Write("plain.csv", FormattableString.Invariant($"""
            section,item,time,value,unit,remark
            patient,sex,,male,,
            patient,age,,50,years,
            patient,height,,172,cm,
            patient,weight,,72,kg,
            patient,urine volume,,0,mL/day,
            test,solution glucose,,214,mmol/L,
            test,solution sodium,,132,mmol/L,
            test,fill volume,,2000,mL,
            test,fill basis,,weighed,,
            test,dwell,,240,min,
            test,drained volume,,{drainedMilliliters},mL,
            test,creatinine method,,enzymatic,,
            dialysate,creatinine,0,60,µmol/L,
            dialysate,creatinine,120,420,µmol/L,
            dialysate,creatinine,240,560,µmol/L,
            dialysate,glucose,0,190,mmol/L,
            dialysate,glucose,120,85,mmol/L,
            dialysate,glucose,240,50,mmol/L,
            plasma,creatinine,120,800,µmol/L,
            plasma,glucose,120,6,mmol/L,
            plasma,sodium,120,138,mmol/L,
            """));
        var page = await PageOf("04-which-night-for-this-membrane", $"sheet={sheet}");
        Assert.DoesNotContain("MV-0", page, StringComparison.Ordinal);
        AssertClean(page);
    }

    [Fact]
    public async Task Two_tests_of_a_stranger_that_hardly_differ_get_no_story_of_a_fall()
    {
        // The stranger's sheet with a date, and again a year later with 40 mL less: far less than two tests differ by chance.
        var sheet = await File.ReadAllTextAsync(Workbench.Fixture("stranger.csv"));
        string Dated(string name, string date, string drained) => _bench.Write(
            name, sheet.Replace("test;dwell;;4;h;", $"test;date;;{date};;\ntest;dwell;;4;h;", StringComparison.Ordinal).Replace("2,61", drained, StringComparison.Ordinal));
        var page = await PageOf(
            "03-why-did-ultrafiltration-fall",
            $"earlierSheet={Dated("one.csv", "2024-03-01", "2,61")}", $"laterSheet={Dated("two.csv", "2025-03-01", "2,57")}");
        Assert.DoesNotContain("MV-0", page, StringComparison.Ordinal);
        Assert.DoesNotContain("change-beyond-noise", page, StringComparison.Ordinal);
        Assert.DoesNotContain("low-osmotic-conductance", page, StringComparison.Ordinal);
        AssertClean(page);
    }

    private Task<string> PageOf(string sheet) => PageOf("01-what-does-this-test-say", $"sheet={sheet}");

    private async Task<string> PageOf(string notebook, params string[] settings)
    {
        await NotebookRun.RunAsync(
            Path.Combine(Repository.Root, "notebooks", notebook + ".ipynb"), new NotebookRunOptions { Settings = settings, OutputDirectory = _bench.PathOf("out") });
        return await File.ReadAllTextAsync(_bench.PathOf($"out/{notebook}.html"));
    }

    private static void AssertClean(string page)
    {
        var visible = ScriptOrStyle().Replace(page, "");
        Assert.DoesNotContain("NaN", visible, StringComparison.Ordinal);
        Assert.DoesNotContain("Infinity", visible, StringComparison.Ordinal);
        Assert.Contains("Decision support for licensed prescribers", visible, StringComparison.Ordinal);
        Assert.Contains("invented data", visible, StringComparison.Ordinal);
        Assert.DoesNotMatch(@"(src|href)=""https?:", visible);
    }

    [GeneratedRegex(@"<(script|style)\b.*?</\1>", RegexOptions.Singleline)]
    private static partial Regex ScriptOrStyle();
}
