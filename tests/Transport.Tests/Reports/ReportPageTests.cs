using System.Text.RegularExpressions;
using Transport.Reporting;
using Transport.Tests.SampleSheets;

namespace Transport.Tests.Reporting;

/// <summary>The page for the file: what stands on it, in which order, in whose units. How it prints is a browser's test (Transport.NotebookTests).</summary>
public sealed class ReportPageTests
{
    // The invented sheets of reference-data/examples.
    private static SampleSheet Example(string name) => SampleSheet.Read(Path.Combine(ReferenceData.Folder, "examples", $"merrow-{name}.csv"));

    private static ReportPage PageOf(SampleSheet sheet, EquilibrationIndicesOptions? options = null) =>
        ReportPages.Of(sheet, EquilibrationIndices.Of(sheet.ToTest(), options ?? EquilibrationIndicesOptions.Default));

    private static string Words(ReportPage page) => Regex.Replace(System.Net.WebUtility.HtmlDecode(Regex.Replace(page.Html[page.Html.IndexOf("<body", StringComparison.Ordinal)..], "<[^>]+>", " ")), @"\s+", " ");

    [Theory]
    [InlineData("01-average")]
    [InlineData("02-fast")]
    [InlineData("03-slow")]
    [InlineData("04-lost-dip")]
    [InlineData("05-temporary-drain")]
    public void A_page_of_a_test_leads_with_conductance_transfer_and_free_water(string name)
    {
        var page = PageOf(Example(name));
        foreach (var text in new[] { Words(page), page.Markdown })
        {
            var order = new[] { "patient", "Osmotic conductance", "Transfer", "Free water", "Ultrafiltration", "Measured", "Findings", "Quality", "Not given by this form", "Method and cautions", "Decision support" }
                .Select(word => text.IndexOf(word, StringComparison.Ordinal)).ToList();
            Assert.DoesNotContain(-1, order);
            Assert.Equal(order.Order(), order);
        }
    }

    [Fact]
    public void The_class_never_stands_alone_and_quotes_the_series_that_was_compared()
    {
        // MV-04: D/P 641/890 = 0.7202; Italy 2019 is 0.73 ± 0.10 (read): z -0.098, percentile 46.1.
        var text = Words(PageOf(Example("04-lost-dip")));
        Assert.Contains("Fast-average (High-average): D/P creatinine 0.72 ± 0.03, percentile 46 of Italy 2019, 3.86 %. On a repeated test: fast-average (High-average) 88 %", text, StringComparison.Ordinal);
        Assert.Contains("46 (z −0.1)", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_chosen_series_is_the_one_that_every_line_quotes()
    {
        // 0.7202 in 0.71 ± 0.09 (Madrid 2010, read): z 0.114, percentile 54.5.
        var page = PageOf(Example("04-lost-dip"), EquilibrationIndicesOptions.Default with { Population = ReferencePopulations.Madrid2010 });
        Assert.Contains("percentile 55 of Madrid 2010", Words(page), StringComparison.Ordinal);
        Assert.DoesNotContain("of Italy", Words(page), StringComparison.Ordinal);
        Assert.DoesNotContain("of North America", Words(page), StringComparison.Ordinal);
    }

    [Fact]
    public void Osmotic_conductance_of_one_test_says_what_it_would_need() =>
        Assert.Contains("Not from one test: it needs two hours with two strengths, or is that of a fitted membrane.", Words(PageOf(Example("04-lost-dip"))), StringComparison.Ordinal);

    [Fact]
    public void A_laboratory_reads_its_own_units_first_and_the_other_in_brackets()
    {
        // MV-02 writes mg/dL with decimal commas: 2.66 mg/dL x 88.402 = 235 µmol/L; 56 mg/dL of urea nitrogen x 0.35697 = 20.0 mmol/L; 3320 mg/dL / 18.016 = 184 mmol/L.
        var milligrams = Words(PageOf(Example("02-fast")));
        Assert.Contains("creatinine, mg/dL (µmol/L) 2,66 (235)", milligrams, StringComparison.Ordinal);
        Assert.Contains("56 (20.0)", milligrams, StringComparison.Ordinal);
        Assert.Contains("D0 glucose 3320 ± 100 mg/dL (184 ± 6 mmol/L)", milligrams, StringComparison.Ordinal);

        // MV-01 writes µmol/L: 812 / 88.402 = 9.19 mg/dL; 21.4 mmol/L x 2.8014 = 59.9 mg/dL of urea nitrogen.
        var moles = Words(PageOf(Example("01-average")));
        Assert.Contains("812 (9.19)", moles, StringComparison.Ordinal);
        Assert.Contains("21.4 (59.9)", moles, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_missing_of_the_identity_is_said()
    {
        var bare = Sheets.Read(Sheets.With("patient,code", ""));
        var text = Words(PageOf(bare));
        Assert.Contains("no code on the sheet", text, StringComparison.Ordinal);
        Assert.Contains("does not say whose it is, who tested and which laboratory measured", text, StringComparison.Ordinal);

        var whole = Words(PageOf(Sheets.Read(Sheets.With("test,date", "test,date,,2025-03-11,,|test,tester,,N. Example,,|test,laboratory,,House laboratory,,"))));
        Assert.Contains("tester N. Example laboratory House laboratory", whole, StringComparison.Ordinal);
        Assert.DoesNotContain("does not say", whole, StringComparison.Ordinal);
        Assert.Contains("Transport 0.", whole, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_page_of_a_test_that_icodextrin_preceded_warns_of_the_meters()
    {
        // The agent of the dwell before acts on meters for about two weeks after (memory): on the page of the test, of a pair, of a series, and on what a notebook shows.
        var before = Sheets.Read(Sheets.With("test,date", "test,date,,2025-03-11,,|test,preceding agent,,icodextrin,,"));
        var plain = Sheets.Read(Sheets.With("test,date", "test,date,,2025-04-11,,"));
        var indices = EquilibrationIndices.Of(before.ToTest());
        SampleSheet[] hours =
        [
            Sheets.Read(Sheets.With(HourSheet.Of("75.5", "2080", "70", "48", "131"), "test,date", "test,date,,2025-03-11,,|test,preceding agent,,icodextrin,,")),
            Sheets.Read(HourSheet.Of("214.3", "2480", "200", "125", "124.5")),
        ];
        string[] pages =
        [
            Words(PageOf(before)),
            Words(ReportPages.Of([before, plain], SerialTests.Of([indices, EquilibrationIndices.Of(plain.ToTest())]))),
            Words(ReportPages.Of([hours[0], hours[1]], PairedTest.Of(hours[0].ToTest(), hours[1].ToTest()))),
            Transport.Reporting.Reports.Of(before).Text,
            Transport.Reporting.Reports.Of(indices).Text,
        ];
        Assert.All(pages, page =>
        {
            Assert.Contains("glucose meters read falsely high", page, StringComparison.Ordinal);
            Assert.Contains("two weeks after", page, StringComparison.Ordinal);
        });
        Assert.DoesNotContain("meters", Words(PageOf(plain)), StringComparison.Ordinal);
    }

    [Fact]
    public void A_clinics_own_limits_are_named_with_their_version()
    {
        using var stream = new MemoryStream("""{ "name": "Merrow valley", "version": "2025-1", "limits": { "lowUltrafiltrationStrong": { "value": 150, "unit": "mL" } } }"""u8.ToArray());
        var page = PageOf(Example("04-lost-dip"), LocalProtocol.Read(stream).ToOptions());
        Assert.Contains("Merrow valley, version 2025-1", Words(page), StringComparison.Ordinal);
        Assert.DoesNotContain("low-ultrafiltration-capacity", page.Markdown, StringComparison.Ordinal);
        Assert.Contains("limits as shipped with", Words(PageOf(Example("04-lost-dip"))), StringComparison.Ordinal);
    }

    [Fact]
    public void A_test_soon_after_a_peritonitis_is_marked_preliminary()
    {
        Assert.Contains("PRELIMINARY", PageOf(Sheets.Read(Sheets.With("test,date", "test,date,,2025-03-11,,|test,last peritonitis,,2025-03-01,,"))).Html, StringComparison.Ordinal);
        Assert.DoesNotContain("PRELIMINARY", PageOf(Sheets.Read(Sheets.Clean)).Html, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_finding_stands_in_the_Markdown_and_every_code_on_the_paper()
    {
        var sheet = Sheets.Read(Sheets.With("test,fill basis", "").Replace("dialysate,creatinine,0,60", "dialysate,creatinine,0,200", StringComparison.Ordinal));
        var indices = EquilibrationIndices.Of(sheet.ToTest());
        var page = ReportPages.Of(sheet, indices);
        var all = sheet.Findings.Concat(indices.Findings).ToList();
        Assert.NotEmpty(all);
        Assert.All(all, finding => Assert.Contains($"`{finding.Code}`", page.Markdown, StringComparison.Ordinal));
        Assert.All(all, finding => Assert.True(Words(page).Contains(finding.Message, StringComparison.Ordinal) || Words(page).Contains(finding.Code, StringComparison.Ordinal), finding.Code));
    }

    [Fact]
    public void Dialysate_above_plasma_is_one_warning_on_the_page_with_its_row()
    {
        // Creatinine 840 of 800 µmol/L: the sheet, the indices and the class each told it.
        var sheet = Sheets.Read(Sheets.With("dialysate,creatinine,240", "dialysate,creatinine,240,840,µmol/L,"));
        var indices = EquilibrationIndices.Of(sheet.ToTest());
        Assert.Contains(sheet.Findings, finding => finding.Code == "ratio-above-one");
        var page = PageOf(sheet);
        Assert.Single(Regex.Matches(page.Markdown, "`(ratio-above-one|dialysate-above-plasma|class-not-comparable|creatinine-ahead-of-urea)`"));
        Assert.Matches(@"Row 21: D/P creatinine 1\.05 at 240 min; expected at most 1 ", page.Markdown);
        Assert.Contains("No finding is made of a creatinine that is in doubt", page.Markdown, StringComparison.Ordinal);
        Assert.DoesNotContain("100 %", page.Markdown, StringComparison.Ordinal);
        Assert.Contains("PRELIMINARY", page.Html, StringComparison.Ordinal);
        var basis = RegimenPage.Basis(sheet, indices, MembraneFit.Run(sheet.ToTest())).Text;
        Assert.Single(Regex.Matches(basis, "swapped"));
    }

    [Fact]
    public void Dialysate_above_plasma_of_two_sheets_is_not_told_as_of_one()
    {
        // One sheet: the rows stand at the finding of the indices. Two, of which one test or both are above plasma: each row stays where it is.
        Finding index = new(Severity.Warning, "dialysate-above-plasma", "Creatinine.");
        Finding first = new(Severity.Warning, SampleSheetCodes.RatioAboveOne.Code, "Above.") { File = "a.csv", Row = 20 };
        var one = Assert.Single(PageFinding.Once([first, first with { Row = 22 }], [index]));
        Assert.Equal(("a.csv", "row 20, row 22"), (one.File, one.Field));
        Assert.Equal(["", "a.csv", "b.csv"], PageFinding.Once([first, first with { File = "b.csv" }], [index]).Select(finding => finding.File ?? ""));
        Assert.Equal(["", "", "a.csv"], PageFinding.Once([first], [index, index]).Select(finding => finding.File ?? ""));
    }

    [Fact]
    public void No_warning_is_hidden_on_paper_and_notes_give_way_to_it()
    {
        // Thirty findings in 60 mm, every third of them a warning: the words of each warning stand, those of notes as far as there is room, and what stands in the Markdown alone is named.
        List<PageFinding> findings =
        [
            .. Enumerable.Range(0, 30).Select(i => new PageFinding(i % 3 == 0 ? Severity.Warning : Severity.Note, $"code-{i}", $"Message {i} of {new string('m', 60)}.", $"Detail {i} {new string('d', 90)}."))
                .OrderByDescending(finding => finding.Severity),
        ];
        var page = new PageText().Findings(findings, 60).ToPage("a page");
        Assert.All(findings.Where(finding => finding.Severity == Severity.Warning), finding => Assert.Contains(finding.Message, page.Html, StringComparison.Ordinal));
        Assert.All(findings, finding => Assert.True(page.Html.Contains(finding.Message, StringComparison.Ordinal) || page.Html.Contains(finding.Code, StringComparison.Ordinal)));
        Assert.Contains("20 more, in full in the Markdown form: code-1,", page.Html, StringComparison.Ordinal);
        Assert.Matches(@"The numbers behind the last (\d|warning)", page.Html);

        // Of quality the last warnings may be named as well, where the sheet does not hold them even without numbers.
        var full = new PageText().FindingsWithin(findings, 30);
        Assert.InRange(full.Height, 20, 30);
        Assert.Contains(findings[0].Message, full.ToPage("a page").Html, StringComparison.Ordinal);
        Assert.All(findings, finding => Assert.True(full.ToPage("a page").Html.Contains(finding.Message, StringComparison.Ordinal) || full.ToPage("a page").Html.Contains(finding.Code, StringComparison.Ordinal)));

        // With room nothing is left out.
        var whole = new PageText().Findings(findings, 1_000).ToPage("a page");
        Assert.All(findings, finding => Assert.Contains(finding.Detail, whole.Html, StringComparison.Ordinal));
        Assert.DoesNotContain("in the Markdown form", whole.Html, StringComparison.Ordinal);
    }

    // The clinic's acceptance check: D/P 0.88, ultrafiltration 450 mL, dip 4.5 mmol/L at 3.86 %. The corrected dip is shown, no class of D/D0, and no word on water channels
    // or sclerosis; with D/P 0.70 and 350 mL the same dip is compatible with a low conductance.
    [Fact]
    public void A_small_dip_is_read_with_transfer_and_ultrafiltration()
    {
        static ReportPage With(string creatinine, string drained) => PageOf(Sheets.Read(Sheets.With(Sheets.With(Sheets.With(
            "dialysate,creatinine,240", $"dialysate,creatinine,240,{creatinine},µmol/L,"), "test,drained", $"test,drained volume,,{drained},mL,"),
            "dialysate,sodium,60", "dialysate,sodium,60,126.5,mmol/L,")));
        var (fast, average) = (With("704", "2490"), With("560", "2390"));

        Assert.Contains("sodium dip 4.5 ± 1.3 mmol/L, corrected for diffusion", Words(fast), StringComparison.Ordinal);
        Assert.DoesNotContain("By glucose, a cross-check", Words(fast), StringComparison.Ordinal);
        Assert.DoesNotContain("low osmotic conductance", Words(fast), StringComparison.Ordinal);
        foreach (var word in new[] { "channel", "aquaporin", "sclerosis", "acquired" })
        {
            Assert.DoesNotContain(word, Words(fast) + fast.Markdown, StringComparison.OrdinalIgnoreCase);
        }

        Assert.Contains("compatible with: low osmotic conductance to glucose. No diagnosis.", Words(average), StringComparison.Ordinal);
    }

    [Fact]
    public void A_pair_leads_with_its_conductance()
    {
        // UF 480 and 80 mL over ΔG of the logarithmic means (worked vector C of the indices page): 3.41 µL/min/mmHg.
        var (weak, strong) = (Sheets.Read(HourSheet.Of("75.5", "2080", "70", "48", "131")), Sheets.Read(HourSheet.Of("214.3", "2480", "200", "125", "124.5")));
        var pair = PairedTest.Of(strong.ToTest(), weak.ToTest());
        var page = ReportPages.Of([strong, weak], pair);
        Assert.Contains("Osmotic conductance 3.4 ± ", Words(page), StringComparison.Ordinal);
        Assert.Contains("logarithmic means", Words(page), StringComparison.Ordinal);
        Assert.True(Words(page).IndexOf("Measured, glucose 1.36 %", StringComparison.Ordinal) < Words(page).IndexOf("Measured, glucose 3.86 %", StringComparison.Ordinal));
        Assert.Throws<ArgumentException>(() => ReportPages.Of([strong], pair));
        Assert.DoesNotContain("One membrane fitted to both", Words(page), StringComparison.Ordinal);
    }

    [Fact]
    public void A_pair_shows_one_membrane_fitted_to_both_hours_and_each_its_own_residual_volume()
    {
        // The numbers are those of the fit itself: the page reads and computes nothing. A fit of one of the hours, or of another order, is refused.
        var (weak, strong) = (Sheets.Read(HourSheet.Of("75.5", "2080", "70", "48", "131")), Sheets.Read(HourSheet.Of("214.3", "2480", "200", "125", "124.5")));
        var pair = PairedTest.Of(strong.ToTest(), weak.ToTest());
        var fit = MembraneFit.Run(ObservedExchange.From(pair));
        var page = ReportPages.Of([strong, weak], pair, fit);
        var conductance = fit[MembraneParameter.OsmoticConductance];
        Assert.Equal(FitStatus.Converged, fit.Status);
        Assert.Contains("One membrane fitted to both", Words(page), StringComparison.Ordinal);
        Assert.Contains($"{conductance.Name} {Digits.Of(conductance.Value)} ({Digits.Of(conductance.Low)} to {Digits.Of(conductance.High)}) {conductance.Unit}", Words(page), StringComparison.Ordinal);
        Assert.Equal(2, fit.ResidualVolumes.Count);
        foreach (var residual in fit.ResidualVolumes)
        {
            Assert.True(residual.Low < residual.Median && residual.Median < residual.High);
            Assert.Contains($"{Digits.Fixed(residual.Median.Milliliters, 0)} ({Digits.Fixed(residual.Low.Milliliters, 0)} to {Digits.Fixed(residual.High.Milliliters, 0)})", Words(page), StringComparison.Ordinal);
        }

        Assert.Contains("one membrane for both tests and a residual volume of its own before each", Words(page), StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => ReportPages.Of([strong, weak], pair, MembraneFit.Run(strong.ToTest())));
    }

    [Fact]
    public void A_collection_gives_both_parts_of_its_dose_and_no_target()
    {
        var sheet = Example("06-collection");
        var page = ReportPages.Of(sheet, CollectionIndices.Of(sheet.ToCollection()));

        // Urea 2.13 x 19.6 + 2.11 x 19.8 + 2.38 x 20.6 = 132.55 mmol over 21.4, a week over 31.66 L: 1.37; urine 0.72 x 105 / 21.4: 0.78.
        Assert.Contains("Weekly Kt/V urea 2.15 ± 0.08 (drains 1.37 ± 0.05, kidneys 0.78 ± 0.04)", Words(page), StringComparison.Ordinal);
        Assert.Contains("5.8 mmol/L (65.6)", Words(page), StringComparison.Ordinal); // the urine's unit is not the drains'
        Assert.Contains("No target is drawn", Words(page), StringComparison.Ordinal);
        Assert.DoesNotMatch(@"\b(not )?met\b(?! or not met)", Words(page).Replace("met or not met", "", StringComparison.Ordinal));
    }

    [Fact]
    public void A_series_shows_what_of_a_change_is_real()
    {
        SampleSheet At(string date, string drained, string hour) => Sheets.Read(Sheets.With(Sheets.With(Sheets.With("test,date", $"test,date,,{date},,"), "test,drained", $"test,drained volume,,{drained},mL,"), "dialysate,sodium,60", $"dialysate,sodium,60,{hour},mmol/L,"));
        SampleSheet[] sheets = [At("2025-03-01", "2150", "129"), At("2021-02-01", "2700", "123.5")];
        var series = SerialTests.Of([.. sheets.Select(sheet => EquilibrationIndices.Of(sheet.ToTest()))]);
        var page = ReportPages.Of(sheets, series);

        // 110 − 660 = −550 mL, beyond 2.77 x 150 = 416 mL.
        Assert.Contains("Since the first: −550 ± 212 mL, more than chance explains", Words(page), StringComparison.Ordinal);
        Assert.Contains("net ultrafiltration 660 110 mL −550 ± 212 416 mL", Words(page), StringComparison.Ordinal);
        Assert.Contains("2 equilibration tests · T-01 · 2021-02-01 to 2025-03-01", page.Title, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => ReportPages.Of([sheets[0]], series));
    }

    [Fact]
    public void Dangerous_blood_is_the_first_line_of_every_page()
    {
        // Glucose 2.4 and sodium 121 mmol/L: below 4 (memory) and 125 (read).
        static string Ill(string sheet) => Sheets.With(Sheets.With(sheet, "plasma,glucose", "plasma,glucose,120,2.4,mmol/L,"), "plasma,sodium", "plasma,sodium,120,121,mmol/L,");
        var (ill, well) = (Sheets.Read(Ill(Sheets.Clean)), Sheets.Read(Sheets.With("test,date", "test,date,,2024-03-11,,")));
        var collected = Sheets.Read(Sheets.With(File.ReadAllText(Path.Combine(ReferenceData.Folder, "examples", "merrow-06-collection.csv")).ReplaceLineEndings("\n"), "plasma,glucose", "plasma,glucose,,2.4,mmol/L,"));
        SampleSheet[] hours = [Sheets.Read(HourSheet.Of("75.5", "2080", "70", "48", "131")), Sheets.Read(HourSheet.Of("214.3", "2480", "200", "125", "124.5").Replace("plasma,glucose,60,6", "plasma,glucose,60,2.4", StringComparison.Ordinal))];
        const string now = "Now Plasma glucose 2.4 mmol/L (43 mg/dL) is low";
        foreach (var page in new[]
        {
            PageOf(ill), ReportPages.Of([ill, well], SerialTests.Of([EquilibrationIndices.Of(ill.ToTest()), EquilibrationIndices.Of(well.ToTest())])),
            ReportPages.Of(hours, PairedTest.Of(hours[0].ToTest(), hours[1].ToTest())), ReportPages.Of(collected, CollectionIndices.Of(collected.ToCollection())),
        })
        {
            var text = Words(page);
            Assert.Contains(now, text, StringComparison.Ordinal);
            Assert.InRange(text.IndexOf(now, StringComparison.Ordinal), 0, Math.Max(text.IndexOf("Osmotic conductance", StringComparison.Ordinal), text.IndexOf("Dose", StringComparison.Ordinal)));
            Assert.Contains("by local protocol, unless somebody has", text, StringComparison.Ordinal);
        }

        Assert.Contains(now + ", plasma sodium 121 mmol/L is very low.", Words(PageOf(ill)), StringComparison.Ordinal);

        // A sheet may be years old: the line has its date, of a pair on two days each its own; without one it says none.
        Assert.Contains("is low. Blood of 2025-03-11: act on it now", Words(ReportPages.Of(hours, PairedTest.Of(hours[0].ToTest(), hours[1].ToTest()))), StringComparison.Ordinal);
        var dayBefore = Sheets.Read(HourSheet.Of("75.5", "2080", "70", "48", "131").Replace("2025-03-11", "2025-03-10", StringComparison.Ordinal).Replace("plasma,glucose,60,6", "plasma,glucose,60,2.6", StringComparison.Ordinal));
        var twoDays = Words(ReportPages.Of([dayBefore, hours[1]], PairedTest.Of(dayBefore.ToTest(), hours[1].ToTest())));
        Assert.Matches("2\\.6 mmol/L [^.]*is low\\. Blood of 2025-03-10: act.*2\\.4 mmol/L [^.]*is low\\. Blood of 2025-03-11: act", twoDays);
        Assert.Contains("very low. Act on it now", Words(PageOf(Sheets.Read(Sheets.With(Ill(Sheets.Clean), "test,date", "")))), StringComparison.Ordinal);
        Assert.DoesNotContain(" Now ", Words(PageOf(well)), StringComparison.Ordinal);
    }

    [Fact]
    public void What_both_tests_of_a_pair_say_is_said_once_with_what_was_found_at_which()
    {
        // Glucose 2.4 and 2.6 mmol/L, below 4 (memory), on one day; then on two days; then one blood for both hours.
        static SampleSheet Low(string hour, string glucose, string date = "2025-03-11") =>
            Sheets.Read(hour.Replace("plasma,glucose,60,6", "plasma,glucose,60," + glucose, StringComparison.Ordinal).Replace("2025-03-11", date, StringComparison.Ordinal));
        var (weak, strong) = (HourSheet.Of("75.5", "2080", "70", "48", "131"), HourSheet.Of("214.3", "2480", "200", "125", "124.5"));
        string Page(SampleSheet one, SampleSheet other) => Words(ReportPages.Of([one, other], PairedTest.Of(one.ToTest(), other.ToTest())));
        var day = Page(Low(weak, "2.4"), Low(strong, "2.6"));
        Assert.Contains("Now Plasma glucose 2.4 mmol/L (43 mg/dL) and 2.6 mmol/L (47 mg/dL) is low. Blood of 2025-03-11: act", day, StringComparison.Ordinal);
        Assert.Single(Regex.Matches(day, "Plasma glucose is low"));
        Assert.Contains("Plasma glucose: 2.4 mmol/L (43 mg/dL), test with glucose 1.36 %; 2.6 mmol/L (47 mg/dL), test with glucose 3.86 %;", day, StringComparison.Ordinal);
        var days = Page(Low(weak, "2.4", "2025-03-10"), Low(strong, "2.6"));
        Assert.Single(Regex.Matches(days, "Plasma glucose is low"));
        Assert.Contains("2.4 mmol/L (43 mg/dL), test with glucose 1.36 %, 2025-03-10; 2.6 mmol/L (47 mg/dL), test with glucose 3.86 %, 2025-03-11;", days, StringComparison.Ordinal);
        Assert.Contains("Now Plasma glucose 2.4 mmol/L (43 mg/dL) is low.", Page(Low(weak, "2.4"), Low(strong, "2.4")), StringComparison.Ordinal);
        Assert.Contains("Plasma glucose: 2.4 mmol/L (43 mg/dL), test with glucose 1.36 %;", Page(Low(weak, "2.4"), Low(strong, "6")), StringComparison.Ordinal);

        // Icodextrin before both: one sentence with the names of both sheets.
        static string After(string hour) => hour.Replace("test,date", "test,preceding agent,,icodextrin,,\ntest,date", StringComparison.Ordinal);
        Assert.Single(Regex.Matches(Page(Low(After(weak), "6"), Low(After(strong), "6")), "Icodextrin left in the cavity"));
    }

    [Fact]
    public void Blood_of_an_earlier_test_is_history_and_that_of_the_last_is_acted_on()
    {
        static SampleSheet At(string date, string glucose) => Sheets.Read(Sheets.With(Sheets.With("test,date", $"test,date,,{date},,"), "plasma,glucose", $"plasma,glucose,120,{glucose},mmol/L,"));
        string Page(params SampleSheet[] sheets) => Words(ReportPages.Of(sheets, SerialTests.Of([.. sheets.Select(sheet => EquilibrationIndices.Of(sheet.ToTest()))])));
        var once = Page(At("2022-05-01", "2.4"), At("2023-05-01", "2.9"), At("2025-05-01", "6"));
        Assert.DoesNotContain(" Now ", once, StringComparison.Ordinal);
        Assert.DoesNotContain("act on it now", once, StringComparison.Ordinal);
        Assert.Contains(
            "Note. Plasma glucose was low at an earlier test: history, not the blood of today. The record should say what came of it. Plasma glucose: 2.4 mmol/L (43 mg/dL) on 2022-05-01; 2.9 mmol/L (52 mg/dL) on 2023-05-01; expected at least 4 mmol/L",
            once, StringComparison.Ordinal);
        var both = Page(At("2022-05-01", "2.4"), At("2025-05-01", "2.2"));
        Assert.Contains("Now Plasma glucose 2.2 mmol/L (40 mg/dL) is low. Blood of 2025-05-01: act on it now", both, StringComparison.Ordinal);
        Assert.Contains("2.4 mmol/L (43 mg/dL) on 2022-05-01; expected", both, StringComparison.Ordinal);
        Assert.DoesNotContain("earlier test", Page(At("2022-05-01", "6"), At("2025-05-01", "2.2")), StringComparison.Ordinal);

        // 18 mmol/L, above 15 (memory), is no emergency, but its ultrafiltration is a point of the course; the sign of the last test is named as that, and where there is none the sentence is whole.
        Assert.Single(Regex.Matches(Page(At("2022-05-01", "18"), At("2025-05-01", "6")), "High plasma glucose takes away osmotic gradient"));
        Assert.Contains("Test of 2022-05-01, plasma glucose: 18.0 mmol/L", Page(At("2022-05-01", "18"), At("2025-05-01", "6")), StringComparison.Ordinal);
        Assert.Contains("Indirect sign in the last test: sodium dip", once, StringComparison.Ordinal);
        static SampleSheet WithoutDip(string date) => Sheets.Read(Sheets.With(Sheets.With("test,date", $"test,date,,{date},,"), "dialysate,sodium,60", ""));
        Assert.Contains("so there is no indirect sign of it either", Page(WithoutDip("2022-05-01"), WithoutDip("2025-05-01")), StringComparison.Ordinal);
    }

    // What makes a class preliminary is not also a finding of the sheet; where there is no class, the sheet's stands.
    [Theory]
    [InlineData("test,preceding agent,,icodextrin,,", "preceding-icodextrin", "icodextrin, whose rest")]
    [InlineData("test,preceding dwell,,60,min,", "preceding-dwell-short", "The dwell before the test was 60 min")]
    [InlineData("test,last peritonitis,,2025-03-01,,", "recent-peritonitis", "10 days after a peritonitis")]
    [InlineData("test,start of dialysis,,2025-03-01,,", "early-test", "10 days after the start of dialysis")]
    public void What_went_before_a_test_is_said_once(string row, string code, string reason)
    {
        var sheet = Sheets.Read(Sheets.With("test,date", "test,date,,2025-03-11,,\n" + row));
        Assert.Contains(sheet.Findings, finding => finding.Code == code);
        var page = PageOf(sheet);
        Assert.DoesNotContain(code, page.Markdown, StringComparison.Ordinal);
        Assert.Single(Regex.Matches(Words(page), Regex.Escape(reason)));
        Assert.Contains("class-not-comparable", page.Markdown, StringComparison.Ordinal);
        var hour = Sheets.Read(HourSheet.Of("75.5", "2080", "70", "48", "131").Replace("test,date,,2025-03-11,,", "test,date,,2025-03-11,,\n" + row, StringComparison.Ordinal));
        Assert.Contains(code, PageOf(hour).Markdown, StringComparison.Ordinal);
    }

    [Fact]
    public void A_child_has_the_body_water_of_children_on_every_page()
    {
        // A girl of 8 years, 120 cm and 22 kg: 0.14 (120 × 22)^0.64 − 0.35 × 22 = 0.14 × 154.82 − 7.7 = 13.97 L (Morgenstern 2006, abstract read; Watson would say 16.2).
        var text = File.ReadAllText(Path.Combine(ReferenceData.Folder, "examples", "merrow-06-collection.csv")).ReplaceLineEndings("\n");
        var girl = Sheets.Read(Sheets.With(Sheets.With(Sheets.With(text, "patient,age", "patient,age,,8,years,"), "patient,height", "patient,height,,120,cm,"), "patient,weight", "patient,weight,,22,kg,"));
        var indices = CollectionIndices.Of(girl.ToCollection());
        var page = Words(ReportPages.Of(girl, indices));
        Assert.Contains("body water 14.0 L (Morgenstern 2006, of children on peritoneal dialysis)", page, StringComparison.Ordinal);
        Assert.Contains("both are of adults", page, StringComparison.Ordinal);

        // The dose is what was cleared over it: a woman with the same bags has her own body water.
        var woman = Sheets.Read(text);
        var grown = CollectionIndices.Of(woman.ToCollection());
        Assert.Contains("L (Watson)", Words(ReportPages.Of(woman, grown)), StringComparison.Ordinal);
        var water = -2.097 + 0.1069 * 163 + 0.2466 * 66.5;
        Assert.Equal(water / 13.9748, indices.WeeklyUreaDose.Total!.Value / grown.WeeklyUreaDose.Total!.Value, 1e-4);
    }

    [Fact]
    public void What_rests_on_a_gradient_that_blood_took_away_is_printed_and_not_read()
    {
        // 18 mmol/L: above 15 (memory). A dip of 7 and 600 mL are not small, and would not be read if they were.
        var high = Words(PageOf(Sheets.Read(Sheets.With("plasma,glucose", "plasma,glucose,120,18,mmol/L,"))));
        Assert.Contains("Indirect sign, not read while plasma glucose is so high: sodium dip 7.0", high, StringComparison.Ordinal);
        Assert.Contains("overfill is inside it. Not judged while plasma glucose is so high.", high, StringComparison.Ordinal);
        var plain = Words(PageOf(Sheets.Read(Sheets.Clean)));
        Assert.Contains("Indirect sign here: sodium dip 7.0", plain, StringComparison.Ordinal);
        Assert.DoesNotContain("so high", plain, StringComparison.Ordinal);
    }

    [Fact]
    public void A_test_that_was_cut_short_is_named_with_its_length()
    {
        // 60 min from 240 are the most with which a sample is classed (choice).
        string Form(string minutes) => Words(PageOf(Sheets.Read(Sheets.With(Sheets.With("test,dwell", $"test,dwell,,{minutes},min,").Replace(",240,", $",{minutes},", StringComparison.Ordinal), "dialysate,sodium,60", ""))));
        Assert.Contains("4-h test, of 2 h 50 min", Form("170"), StringComparison.Ordinal);
        Assert.DoesNotContain("4-h test, of", Form("185"), StringComparison.Ordinal);
    }

    [Fact]
    public void The_class_of_a_doubtful_creatinine_is_conditional_in_a_series_too()
    {
        // Creatinine 768 of 800 at 240 min is 0.96, urea 18.0 of 20 is 0.90: the larger ahead of the smaller.
        var (doubtful, sure) = (Sheets.Read(Sheets.With("dialysate,creatinine,240", "dialysate,creatinine,240,768,µmol/L,")), Sheets.Read(Sheets.With("test,date", "test,date,,2024-03-11,,")));
        var text = Words(ReportPages.Of([doubtful, sure], SerialTests.Of([EquilibrationIndices.Of(doubtful.ToTest()), EquilibrationIndices.Of(sure.ToTest())])));
        Assert.Contains("in doubt; if the value holds, fast transfer (High)", text, StringComparison.Ordinal);
        Assert.Contains("2040 2640 fast-average (High-average) ", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_series_names_the_sheet_whose_measurements_do_not_go_together()
    {
        // As the command makes them: the finding comes with the indices. It is the earlier test's, whose other findings a series does not tell.
        var (early, late) = (Sheets.Read(Sheets.With("test,date", "test,date,,2024-03-11,,")), Sheets.Read(Sheets.Clean));
        var contradiction = new Finding(Severity.Warning, "test-contradicts-itself", "The measurements hardly go together: as a test.");
        var indices = EquilibrationIndices.Of(early.ToTest());
        var text = Words(ReportPages.Of([early, late], SerialTests.Of([indices with { Findings = [.. indices.Findings, contradiction] }, EquilibrationIndices.Of(late.ToTest())])));
        Assert.Contains("hardly go together: as a test. Test of 2024-03-11.", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_page_never_mixes_a_sheet_with_the_indices_of_another() =>
        Assert.Throws<ArgumentException>(() => ReportPages.Of(Example("01-average"), EquilibrationIndices.Of(Example("04-lost-dip").ToTest())));

    // No script, no address, one hue and grey, no letter below 8 points, nothing that reads as an order.
    [Fact]
    public void A_page_is_self_contained_legible_and_tentative()
    {
        foreach (var page in All())
        {
            Assert.DoesNotContain("<script", page.Html, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotMatch(@"(src|href)=|url\((?!#)", page.Html);
            Assert.All(Regex.Matches(page.Html, @"font(?:-size)?:(?<size>[\d.]+)pt").Select(match => double.Parse(match.Groups["size"].Value, System.Globalization.CultureInfo.InvariantCulture)), size => Assert.True(size >= 8));
            foreach (var color in Regex.Matches(page.Html, "#[0-9a-f]{6}\\b").Select(match => match.Value).Distinct())
            {
                var (r, g, b) = (Convert.ToInt32(color[1..3], 16), Convert.ToInt32(color[3..5], 16), Convert.ToInt32(color[5..7], 16));
                Assert.True(r <= Math.Min(g, b) + 2, $"{color} is neither grey nor of the one hue"); // a teal, or greys that lean to it
            }

            foreach (var word in new[] { "must ", "should ", "prescribe ", "EPS", "NaN" })
            {
                Assert.DoesNotContain(word, Words(page), StringComparison.Ordinal);
            }
        }
    }

    [Fact]
    public void Words_of_a_sheet_are_letters_on_the_page_and_in_its_Markdown()
    {
        var page = PageOf(Sheets.Read(Sheets.With("patient,code", "patient,code,,<b>x</b>|test,tester,,a*b_c`d,,")));
        Assert.DoesNotContain("<b>x", page.Html, StringComparison.Ordinal);
        Assert.Contains("&lt;b&gt;x", page.Markdown, StringComparison.Ordinal);
        Assert.Contains(@"a\*b\_c\`d", page.Markdown, StringComparison.Ordinal);
    }

    [Fact]
    public void The_same_sheet_gives_the_same_bytes() => Assert.Equal(PageOf(Example("02-fast")), PageOf(Example("02-fast")));

    private static IEnumerable<ReportPage> All()
    {
        foreach (var name in new[] { "01-average", "02-fast", "03-slow", "04-lost-dip", "05-temporary-drain" })
        {
            yield return PageOf(Example(name));
        }

        var collection = Example("06-collection");
        yield return ReportPages.Of(collection, CollectionIndices.Of(collection.ToCollection()));
        SampleSheet[] pair = [Sheets.Read(HourSheet.Of("75.5", "2080", "70", "48", "131")), Sheets.Read(HourSheet.Of("214.3", "2480", "200", "125", "124.5"))];
        var both = PairedTest.Of(pair[0].ToTest(), pair[1].ToTest());
        yield return ReportPages.Of(pair, both);
        yield return ReportPages.Of(pair, both, MembraneFit.Run(ObservedExchange.From(both)));
        foreach (var form in Enum.GetValues<TestForm>())
        {
            yield return BlankPage.Of(form);
        }
    }
}
