using System.Net;
using System.Text.RegularExpressions;
using Transport.Reporting;

namespace Transport.Tests.Records;

/// <summary>What a page of nights never leaves out, and what it says when there is nothing to say. Nights and findings are invented.</summary>
public sealed class RecordPageTests
{
    private static readonly string[] Emergencies =
    [
        "record-emergency-now", "record-potassium-now", "record-pulse-now", "record-sepsis-now", "record-cloudy-now", "record-pain-or-fever-now", "record-overfill-now", "record-pressure-emergency", "record-date-doubtful-now", "record-row-lost", "record-date-doubtful", "record-symptoms-now", "record-exit-site-now", "record-glucose-low", "record-glucose-very-high", "record-pressure-low", "record-pressure-high",
        "record-text-unread", "record-cloudy-past", "record-peritonitis-of-past", "record-complaint-of-past", "record-pain-or-fever-past", "record-exit-site-past", "record-danger-past", "record-overfill-risk", "record-urine-fall", "record-urine-once", "record-fill-large-for-child", "record-weight-step", "record-pressure-step", "record-removal-low", "record-untreated", "record-numbers-doubtful", "record-weight-off-test", "record-uf-far-above",
    ];

    private static readonly NightRecord Bare = new() { Date = new(2026, 2, 5), Row = 2 };

    // One weight is no course, and one of two months ago is not shown: there is nothing to draw, and a cloudy bag has its page all the same.
    [Theory]
    [InlineData("2026-02-01;70;", "2026-02-02;;cloudy bag")]
    [InlineData("2025-12-01;70;\n2025-12-02;71;", "2026-02-01;;\n2026-02-02;;cloudy bag")]
    [InlineData("2026-02-01;;", "2026-02-02;;cloudy bag")]
    public void A_book_of_which_nothing_can_be_drawn_has_its_page(string before, string last)
    {
        var book = Books.Read(["date;weight (kg);remark", .. before.Split('\n'), .. last.Split('\n')]);
        var review = RecordReview.Run(Patient.Example, MembraneEnsemble.Of(ReferenceMembranes.MeanIncidentAdult()), book);
        Assert.Contains("Cloudy fluid or peritonitis", RecordPage.Of(review), StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => RecordCharts.Nights(review));
    }

    [Fact]
    public void However_many_findings_there_are_none_of_an_emergency_is_cut()
    {
        var all = NurseFindings.Codes.Select(code => new Finding(Severity.Warning, code, "Said: " + code)).ToList();
        var page = Words(RecordPage.Of(Review(Bare, all)));
        Assert.All(Emergencies, code => Assert.Contains("Said: " + code, page, StringComparison.Ordinal));
        Assert.Contains("more of lesser urgency", page, StringComparison.Ordinal);
    }

    [Fact]
    public void Icodextrin_has_its_line_in_the_closing_block_whatever_else_is_found()
    {
        var all = NurseFindings.Codes.Select(code => new Finding(Severity.Warning, code, "Said: " + code)).ToList();
        var page = Words(RecordPage.Of(Review(Bare, all)));
        Assert.True(page.IndexOf("glucose meters read falsely high", StringComparison.Ordinal) > page.IndexOf("Before anybody acts on this", StringComparison.Ordinal));
        Assert.DoesNotContain("meters", Words(RecordPage.Of(Review(Bare, []))), StringComparison.Ordinal);
    }

    [Fact]
    public void A_quiet_page_says_what_nobody_wrote_and_so_nobody_looked_at()
    {
        var page = Words(RecordPage.Of(Review(Bare, [])));
        Assert.Contains("Nothing in these nights asked for attention. That is not safety", page, StringComparison.Ordinal);
        Assert.Contains("not looked at: the look of the fluid, complaints, temperature, blood pressure, blood pressure standing, pulse, blood glucose, urine, weight.", page, StringComparison.Ordinal);
        Assert.Contains("The exit site is never looked at where nobody writes of it.", page, StringComparison.Ordinal);

        var written = Words(RecordPage.Of(Review(Bare with { Effluent = EffluentLook.Clear, TemperatureCelsius = 36.8, Sitting = BloodPressure.FromMillimetersOfMercury(130, 80) }, [])));
        Assert.Contains("not looked at: complaints, blood pressure standing, pulse, blood glucose, urine, weight.", written, StringComparison.Ordinal);

        // With a text that nobody understood there is something to say.
        Assert.DoesNotContain("Nothing in these nights", Words(RecordPage.Of(Review(Bare, [new(Severity.Warning, "record-text-unread", "Read it")]))), StringComparison.Ordinal);
    }

    [Fact]
    public void The_head_says_what_the_expectations_rest_on()
    {
        // A clean invented sheet, and the same after a peritonitis of ten days ago: its class is preliminary, and so is what is expected of nights.
        var clean = SampleSheets.Sheets.Read(SampleSheets.Sheets.Clean);
        var indices = EquilibrationIndices.Of(clean.ToTest());
        var review = Review(Bare, [], clean.ToTest().Patient);
        var page = Words(RecordPage.Of(review, null, clean, MembraneFit.Run(clean.ToTest()), indices));
        Assert.Contains("Fit of the test: ", page, StringComparison.Ordinal);
        Assert.Contains("warning", page, StringComparison.Ordinal);
        Assert.Contains("Transport 0.", page, StringComparison.Ordinal);
        Assert.Contains("Limits: shipped limits. Of the test: ", page, StringComparison.Ordinal);
        Assert.DoesNotContain("PRELIMINARY", page, StringComparison.Ordinal);

        var early = EquilibrationIndices.Of(clean.ToTest() with { Date = new(2025, 3, 11), Conditions = new() { LastPeritonitis = new(2025, 3, 1) } });
        Assert.Contains("PRELIMINARY", Words(RecordPage.Of(review, null, clean, null, early)), StringComparison.Ordinal);
    }

    [Fact]
    public void A_page_never_mixes_two_persons()
    {
        // The sheet is of T-01; the nights are of somebody else, or of nobody who is named, of whom nothing can be said.
        var sheet = SampleSheets.Sheets.Read(SampleSheets.Sheets.Clean);
        var (fit, indices) = (MembraneFit.Run(sheet.ToTest()), EquilibrationIndices.Of(sheet.ToTest()));
        var other = Review(Bare, [], Patient.Example with { Code = "T-02" });
        Assert.Equal("sheet", Assert.Throws<ArgumentException>(() => RecordPage.Of(other, sheet: sheet)).ParamName);
        Assert.Equal("fit", Assert.Throws<ArgumentException>(() => RecordPage.Of(other, fit: fit)).ParamName);
        var thrown = Assert.Throws<ArgumentException>(() => RecordPage.Of(other, indices: indices));
        Assert.Equal("indices", thrown.ParamName);
        Assert.Contains("'T-02'", thrown.Message, StringComparison.Ordinal);
        Assert.Contains("'T-01'", thrown.Message, StringComparison.Ordinal);
        Assert.NotEmpty(RecordPage.Of(Review(Bare, [], Patient.Example with { Code = " t-01 " }), sheet: sheet, fit: fit, indices: indices));
        Assert.NotEmpty(RecordPage.Of(Review(Bare, [], Patient.Example with { Code = "" }), sheet: sheet, fit: fit, indices: indices));
    }

    [Fact]
    public void A_long_text_is_cut_between_letters()
    {
        // A letter of two characters at the 150th place goes as a whole; one that ends there stays.
        Assert.Equal(new string('a', 149) + " …", RecordPage.Cut(new string('a', 149) + "𝛼" + new string('b', 10)));
        Assert.Equal(new string('a', 148) + "𝛼 …", RecordPage.Cut(new string('a', 148) + "𝛼" + new string('b', 10)));
        Assert.Equal(new string('a', 150), RecordPage.Cut(new string('a', 150)));
    }

    [Fact]
    public void Words_of_a_book_cannot_become_part_of_the_page()
    {
        var book = RecordBook.From([Bare with { Remark = "<img src=x>" }], "book");
        var said = DangerSigns.Of(book.Nights, book, Patient.Example, ReviewLimits.Default);
        Assert.Contains("<img src=x>", Assert.Single(said).Message, StringComparison.Ordinal);
        Assert.DoesNotContain("<img", RecordPage.Of(Review(Bare, said)), StringComparison.Ordinal);
    }

    private static RecordReview Review(NightRecord night, IReadOnlyList<Finding> findings, Patient? patient = null)
    {
        var book = RecordBook.From([night], "book");
        return new()
        {
            Patient = patient ?? Patient.Example,
            Book = book,
            Options = RecordReviewOptions.Default,
            Nights = [new() { Record = night }],
            Changes = [],
            Findings = findings,
            NightDeviation = null,
        };
    }

    private static string Words(string page) => Regex.Replace(WebUtility.HtmlDecode(Regex.Replace(page[page.IndexOf("<body", StringComparison.Ordinal)..], "<[^>]+>", " ")), @"\s+", " ");
}
