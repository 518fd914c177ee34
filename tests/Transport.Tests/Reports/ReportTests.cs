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
}
