using Transport.Reporting;

namespace Transport.Tests.Reporting;

public sealed class ReportTests
{
    private static readonly SampleSheet Sheet = SampleSheet.Read(Path.Combine(ReferenceData.Folder, "examples", "merrow-04-lost-dip.csv"));

    [Fact]
    public void A_report_is_html_without_script_or_address_and_says_the_same_in_text()
    {
        var indices = EquilibrationIndices.Of(Sheet.ToTest());
        foreach (var block in new[] { Transport.Reporting.Reports.Of(Sheet), Transport.Reporting.Reports.Of(indices), Transport.Reporting.Reports.Of(MembraneFit.Run(Sheet.ToTest())), Caution.Block() })
        {
            Assert.DoesNotContain("<script", block.Html, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotContain("http", block.Html, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotContain("NaN", block.Text, StringComparison.Ordinal);
            Assert.DoesNotMatch(@"\d\.\d{7}", block.Text);
        }
    }

    [Fact]
    public void A_date_in_a_table_is_kept_whole_and_nothing_else_is_taken_for_one()
    {
        var html = new ReportBlock().Table(new(["day", "what"], [["2025-03-18", "03-04 to 03-06, 10-12345 and A-12-34"]])).Html;
        Assert.Equal(["2025-03-18", "03-04", "03-06"], System.Text.RegularExpressions.Regex.Matches(html, "<span style=\"white-space:nowrap\">(?<date>[^<]*)</span>").Select(match => match.Groups["date"].Value));
    }

    [Fact]
    public void An_interval_in_a_table_is_kept_whole()
    {
        // "1168 (845 to" stood above "1490)" where a column was narrow. No-break spaces inside it, and plain ones between it and what follows.
        var html = new ReportBlock().Table(new(["night"], [["1168 (845 to 1490) as −12.5 (−40 to +15.2) (of 3 to 4 nights)"]])).Html;
        Assert.Contains("1168\u00a0(845\u00a0to\u00a01490) as −12.5\u00a0(−40\u00a0to\u00a0+15.2) (of 3 to 4 nights)", html, StringComparison.Ordinal);
    }

    [Fact]
    public void A_category_never_stands_alone()
    {
        var text = Transport.Reporting.Reports.Of(EquilibrationIndices.Of(Sheet.ToTest())).Text;
        Assert.Contains("D/P creatinine 0.72, fast-average (High-average); percentile", text, StringComparison.Ordinal);
        Assert.Contains("If the test were repeated", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_sheet_with_mistakes_says_that_nothing_can_be_computed_and_lists_every_error()
    {
        var sheet = SampleSheet.Read(Path.Combine(ReferenceData.Folder, "examples", "sheet-with-mistakes.csv"));
        var text = Transport.Reporting.Reports.Of(sheet).Text;
        Assert.Contains("nothing can be computed", text, StringComparison.Ordinal);
        Assert.All(sheet.Findings, finding => Assert.Contains(finding.Code, text, StringComparison.Ordinal));
    }

    [Fact]
    public void Words_of_a_sheet_are_escaped()
    {
        const string hostile = "section,item,time,value,unit,remark\npatient,code,,<b>x</b>,,\nplasma,<script>alert(1)</script>,0,1,mmol/L,\n";
        using var stream = new MemoryStream(System.Text.Encoding.UTF8.GetBytes(hostile));
        var html = Transport.Reporting.Reports.Of(SampleSheet.Read(stream, "<i>sheet</i>.csv")).Html;
        Assert.DoesNotContain("<script>", html, StringComparison.Ordinal);
        Assert.DoesNotContain("<i>sheet", html, StringComparison.Ordinal);
    }

    // A page that can be taken for another person's is dangerous: what is missing of code and date is said, and invented data are marked.
    [Theory]
    [InlineData("merrow-04-lost-dip.csv", "MV-04 · test of 2025-06-17 · woman of 49 years · invented data")]
    [InlineData("sheet-with-mistakes.csv", "MV-99 · test of \"03/04/2025\" (not understood) · invented data")]
    public void A_sheet_says_whose_it_is_of_when_and_that_it_is_invented(string file, string expected) => Assert.StartsWith(
        expected, Transport.Reporting.Reports.Of(SampleSheet.Read(Path.Combine(ReferenceData.Folder, "examples", file))).Text, StringComparison.Ordinal);

    [Fact]
    public void A_sheet_without_code_and_date_is_called_a_page_that_does_not_say_whose_it_is()
    {
        var text = Transport.Reporting.Reports.Of(Read("section,item,time,value,unit,remark\npatient,age,,50,years,\n")).Text;
        Assert.Contains("does not say whose it is, nor when the test was made", text, StringComparison.Ordinal);
        Assert.DoesNotContain("invented", text, StringComparison.OrdinalIgnoreCase);
    }

    // 9.2 mg/dL × 88.4 = 813 µmol/L; 1080 mg/dL / 18.016 = 59.9 mmol/L. Three digits are printed.
    [Fact]
    public void Values_of_a_laboratory_that_writes_milligrams_have_SI_units_in_brackets()
    {
        const string milligrams = "section,item,time,value,unit,remark\nplasma,creatinine,120,9.2,mg/dL,\ndialysate,glucose,240,1080,mg/dL,\nplasma,sodium,120,139,mmol/L,\n";
        var text = Transport.Reporting.Reports.Of(Read(milligrams)).Text;
        Assert.Contains("(813 µmol/L)", text, StringComparison.Ordinal);
        Assert.Contains("(59.9 mmol/L)", text, StringComparison.Ordinal);
        Assert.DoesNotContain("(139", text, StringComparison.Ordinal);
    }

    // The message is read first; the limit with its source, and the code, stand small behind it.
    [Fact]
    public void A_finding_shows_its_message_before_its_numbers_and_its_code_last()
    {
        var html = Transport.Reporting.Reports.Of(EquilibrationIndices.Of(Sheet.ToTest())).Html;
        var message = html.IndexOf("Low net ultrafiltration with a small sodium dip", StringComparison.Ordinal);
        var numbers = html.IndexOf("ratio dip 0.014", StringComparison.Ordinal);
        var code = html.IndexOf("low-osmotic-conductance", StringComparison.Ordinal);
        Assert.True(0 < message && message < numbers && numbers < code, $"{message}, {numbers}, {code}");
        Assert.DoesNotContain("[low-osmotic-conductance]", html, StringComparison.Ordinal);
    }

    private static SampleSheet Read(string text)
    {
        using var stream = new MemoryStream(System.Text.Encoding.UTF8.GetBytes(text));
        return SampleSheet.Read(stream, "sheet.csv");
    }
}
