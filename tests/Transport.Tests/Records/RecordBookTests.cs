namespace Transport.Tests.Records;

/// <summary>Reading a book: what people write, and what is said about it.</summary>
public sealed class RecordBookTests
{
    private const string Header =
        "date,night length (h),cycles,volume per cycle (mL),night fluid (mmol/L),day fill (mL),day fluid (% anhydrous),initial drain (mL),cycle drains (mL),uf (mL),dwell deviation (min),average dwell (min),weight (kg),pressure sitting,effluent,symptoms";

    [Fact]
    public void Some_of_the_bags_are_not_the_night()
    {
        // Three of five drains give no ultrafiltration, whole exchanges by hand do, and one that lacks its drain does not.
        static Volume Of(double milliliters) => Volume.FromMilliliters(milliliters);
        var night = new NightRecord { Date = new(2026, 1, 1), Row = 2, Regimen = Regimen.Cycling(TimeSpan.FromHours(9), 5, Of(2_000), DialysisSolution.Glucose136) };
        Assert.Null((night with { CycleDrains = [Of(2_090), Of(2_120), Of(2_150)] }).UltrafiltrationByBags);
        Assert.Equal(700, (night with { CycleDrains = [Of(2_090), Of(2_120), Of(2_150), Of(2_160), Of(2_180)] }).UltrafiltrationByBags!.Value.Milliliters, 1e-9);
        BookExchange[] hands = [new(1, Of(2_000), Of(2_150), default, null), new(2, Of(2_000), Of(2_050), default, null)];
        Assert.Equal(200, (night with { Exchanges = [.. hands] }).UltrafiltrationByBags!.Value.Milliliters, 1e-9);
        Assert.Null((night with { Exchanges = [hands[0], hands[1] with { Drained = null }] }).UltrafiltrationByBags);
        Assert.Null((night with { CycleDrains = [Of(2_090)], Exchanges = [.. hands] }).UltrafiltrationByBags);
        Assert.Null(night.UltrafiltrationByBags);
    }

    [Fact]
    public void A_worked_night_adds_up()
    {
        // By hand: last fill 2,000, initial drain 2,350; five fills of 2,000 and drains of 2,090 to 2,180: night 700 mL.
        // Planned dwell is 9 h less five fills of 10 min and drains of 12 min over five: 86 min.
        var book = Books.Read(Header,
            "2026-01-01,9,5,2000,75.5,2000,1.36,2350,2090 2120 2150 2160 2180,700,12,83.6,71.2,128/76,clear,",
            "2026-01-02,,,,,,,2350,2090 2120 2150 2160 2180,1050,0,86,71.0,126/74,clear,");
        Assert.Empty(book.Findings);
        var night = book.Nights[0];
        Assert.Equal(700, night.UltrafiltrationByBags!.Value.Milliliters, 1e-9);
        Assert.Equal(2350, night.InitialDrain!.Value.Milliliters);
        Assert.Equal(12, night.LostDwell!.Value.TotalMinutes);
        Assert.Equal(86, night.Regimen!.DwellTimes[0].TotalMinutes, 1e-9);
        Assert.Same(night.Regimen, book.Nights[1].Regimen); // blank: as above
        Assert.Equal(75.5, book.Nights[1].Regimen!.DayFill!.Solution.Glucose.MillimolesPerLiter, 0.02);
        Assert.Equal("128/76", night.Sitting.ToString());
    }

    [Fact]
    public void A_sum_that_fits_neither_way_of_counting_is_found()
    {
        // 700 for the cycles, 1,050 with the day: 900 is neither, by more than 50 mL.
        var book = Books.Read(Header, "2026-01-01,9,5,2000,75.5,2000,1.36,2350,2090 2120 2150 2160 2180,900,,,,,,");
        Assert.Equal("book-sum-differs", Assert.Single(book.Findings).Code);
        Assert.Empty(Books.Read(Header, "2026-01-01,9,5,2000,75.5,2000,1.36,2350,2090 2120 2150 2160 2180,749,,,,,,").Findings);
    }

    [Fact]
    public void Semicolons_decimal_commas_and_day_first_dates_are_read()
    {
        var book = Books.Read(
            "date;weight (kg);uf (L);initial drain;night fluid;day fluid;volume per cycle (L);cycles;night length",
            "03/02/2026;71,2;0,85;40 mL;2,27 % anhydrous;dry;2,0;5;8:30",
            "28/02/2026;70,8;0,9;;;;;;");
        Assert.DoesNotContain(book.Findings, finding => finding.Severity == Severity.Error);
        Assert.Equal(new DateOnly(2026, 2, 3), book.Nights[0].Date); // settled by the 28th
        Assert.Equal(850, book.Nights[0].WrittenUltrafiltration!.Value.Milliliters, 1e-9);
        Assert.Equal(71.2, book.Nights[0].Weight!.Value.Kilograms, 1e-9);
        Assert.Equal(126.0, book.Nights[0].Regimen!.Night[0].Solution.Glucose.MillimolesPerLiter, 0.1);
        Assert.Equal(510, book.Nights[0].Regimen!.NightLength.TotalMinutes);
        Assert.Null(book.Nights[0].Regimen!.DayFill);
        Assert.Contains(book.Findings, finding => finding.Code == "book-gap");
    }

    [Fact]
    public void A_date_that_nothing_settles_costs_its_row_and_says_so()
    {
        var book = Books.Read("date,uf (mL)", "03/02/2026,800", "2026-02-05,810");
        Assert.Equal(new DateOnly(2026, 2, 5), Assert.Single(book.Nights).Date);
        var finding = Assert.Single(book.Findings);
        Assert.Equal("book-date-unreadable", finding.Code);
        Assert.Equal(2, finding.Row);
        Assert.Equal("03/02/2026", finding.Found);
    }

    [Theory]
    [InlineData("")]
    [InlineData("# a comment and no table")]
    public void An_empty_file_asks_for_a_blank_book(string text) =>
        Assert.EndsWith("Start from the blank book.", Assert.Single(Books.Read(text).Findings).Message, StringComparison.Ordinal);

    [Fact]
    public void A_bad_cell_costs_the_cell_and_not_the_night()
    {
        var book = Books.Read("date,uf (mL),weight (kg),pressure,effluent", "2026-02-05,many,71,120/80,clear", "2026-02-06,900,710,120/80,clear", "2026-02-07,900,71,12/8,clear", "2026-02-08,900,71,120/80,beige");
        Assert.Equal(["not-a-number", "impossible-value", "book-pressure-unreadable", "unknown-word"], book.Findings.Select(finding => finding.Code).Order(StringComparer.Ordinal).Reverse().OrderBy(Order));
        Assert.Equal(4, book.Nights.Count);
        Assert.Equal([2, 3, 4, 5], book.Findings.Select(finding => finding.Row!.Value));
        Assert.All(book.Findings, finding => Assert.NotNull(finding.Found));

        static int Order(string code) => code switch { "not-a-number" => 0, "impossible-value" or "unit-swap" => 1, "book-pressure-unreadable" => 2, _ => 3 };
    }

    [Fact]
    public void Bags_mix_by_volume_and_the_strongest_is_counted()
    {
        // 5 L of 75.5 and 5 L of 126.0 mmol/L make 100.75 (arithmetic).
        var book = Books.Read("date,night fluid (mmol/L),volume per cycle (mL),cycles,night length (h)", "2026-02-05,5 L 75.5 + 1 x 5 L 126,2000,5,9", "2026-02-06,2 x 5 L 214.3,,,");
        Assert.Equal(100.75, book.Nights[0].NightFluid!.Solution.Glucose.MillimolesPerLiter, 1e-9);
        Assert.False(book.Nights[0].NightFluid!.HoldsStrongest);
        Assert.True(book.Nights[1].NightFluid!.HoldsStrongest);
        Assert.Equal(2, book.Nights[1].NightFluid!.Bags[0].Count);
    }

    [Fact]
    public void A_named_regimen_comes_back_by_its_name()
    {
        var book = Books.Read(
            "date,regimen,night fluid (mmol/L),volume per cycle (mL),cycles,night length (h),day fill (mL)",
            "2026-02-05,usual,75.5,2000,5,9,1500",
            "2026-02-06,stronger,126,,,,",
            "2026-02-07,usual,,,,,");
        Assert.Equal(126.0, book.Nights[1].Regimen!.Night[0].Solution.Glucose.MillimolesPerLiter);
        Assert.Equal(book.Nights[0].Regimen, book.Nights[2].Regimen);
        Assert.Equal(1500, book.Nights[2].Regimen!.DayFill!.Volume.Milliliters);
    }

    [Fact]
    public void A_percentage_without_its_convention_is_said_once_and_never_guessed()
    {
        var book = Books.Read("date,night fluid (%),volume per cycle (mL),cycles,night length (h)", "2026-02-05,2.3,2000,5,9", "2026-02-06,2.3,,,");
        var finding = Assert.Single(book.Findings);
        Assert.Equal("percentage-without-convention", finding.Code);
        Assert.Contains("127.7 mmol/L", finding.Message, StringComparison.Ordinal); // 23 g/L / 180.156 g/mol
        Assert.Null(book.Nights[0].Regimen);
    }

    [Fact]
    public void Exchanges_by_hand_have_a_row_each()
    {
        // 2,150 − 2,000 − 100 of flush, and so on: 50 + 300 = 350 mL.
        var book = Books.Read(
            "date,exchange,began,filled (g),drained (g),flushed (mL),weight (kg)",
            "2026-02-05,1,07:30,2000,2150,100,70",
            "2026-02-05,2,12:15,2000,2.3 kg,,");
        Assert.Empty(book.Findings);
        var day = Assert.Single(book.Nights);
        Assert.Equal(2, day.Exchanges.Length);
        Assert.Equal(350, day.UltrafiltrationByBags!.Value.Milliliters, 1e-9);
    }

    [Fact]
    public void A_weight_step_that_is_the_day_fill_is_no_slip()
    {
        string[] rows = ["2026-02-05,9,5,2000,75.5,2000,1.36,,,,,,70.0,,,", "2026-02-06,,,,,,,,,,,,72.1,,,"];
        Assert.Empty(Books.Read([Header, .. rows]).Findings);
        rows[1] = rows[1].Replace("72.1", "72.7", StringComparison.Ordinal);
        Assert.Equal("book-weight-step", Assert.Single(Books.Read([Header, .. rows]).Findings).Code);
    }

    [Theory]
    [InlineData("no pain, no fever", "")]
    [InlineData("Belly pain and shivering", "AbdominalPain Fever")]
    [InlineData("drain pain", "FlowPain")]
    [InlineData("no belly pain", "")]
    [InlineData("no pain or fever", "")]
    [InlineData("no pain yesterday, pain today", "AbdominalPain")]
    [InlineData("no pain but fever", "Fever")]
    [InlineData("back pain", "")]
    [InlineData("no stool for three days", "Constipation")]
    [InlineData("a bit dizzy; cramps", "Dry")]
    public void Complaints_are_understood_where_words_are_plain(string text, string expected) =>
        Assert.Equal(expected, string.Join(' ', Books.Read("date;symptoms", $"2026-02-05;\"{text}\"").Nights[0].Symptoms));

    [Fact]
    public void A_file_that_is_none_is_a_finding()
    {
        Assert.Equal("file-not-found", Assert.Single(RecordBook.Read("no such book.csv").Findings).Code);
        Assert.Equal("missing-column", Assert.Single(Books.Read("weight", "70").Findings).Code);
        Assert.Equal("file-empty", Assert.Single(Books.Read("").Findings).Code);
    }

    [Fact]
    public void A_header_without_rows_says_where_the_first_night_belongs()
    {
        var finding = Assert.Single(Books.Read("date,uf (mL)").Findings);
        Assert.Equal(("book-no-nights", 2, "date", "book.csv"), (finding.Code, finding.Row, finding.Field, finding.File));
    }

    [Fact]
    public void Rows_without_a_date_are_one_finding_together()
    {
        var book = Books.Read("date,uf (mL)", "2026-02-05,800", ",810", " ,820", "-,830");
        var finding = Assert.Single(book.Findings);
        Assert.Equal(("book-date-unreadable", 3), (finding.Code, finding.Row));
        Assert.Contains("3 rows have no date and are left out of the charts: 3, 4, 5", finding.Message, StringComparison.Ordinal);
        Assert.Single(book.Nights);
    }

    [Theory]
    [InlineData("night fluid (mmol/L)", "٢ x 5 L 75.5", "not-a-number")] // ٢ is an Arabic two: no bag is read from it, so the cell is no strength either
    [InlineData("night fluid (mmol/L)", "0 x 5 L 75.5", "book-fluid-unreadable")]
    [InlineData("night fluid (mmol/L)", "0 x 5 L 75.5 + 5 L 126", "book-fluid-unreadable")]
    [InlineData("pressure sitting", "١٢٠/٨٠", "book-pressure-unreadable")]
    [InlineData("uf (mL)", "٨٠٠", "not-a-number")]
    [InlineData("began", "23:59:60", "not-a-time")]
    [InlineData("began", "٠٧:٣٠", "not-a-time")]
    public void What_no_book_should_hold_is_a_finding_and_never_an_exception(string column, string cell, string code)
    {
        var finding = Assert.Single(Books.Read($"date,exchange,{column}", $"2026-02-05,1,{cell}").Findings);
        Assert.Equal((code, 2), (finding.Code, finding.Row));
        Assert.Equal(cell, finding.Found);
    }

    [Fact]
    public void A_book_carries_its_patients_code_once_and_no_row_of_another()
    {
        var book = Books.Read("date,patient,uf (mL)", "2026-02-05,AB-1,800", "2026-02-06,,810", "2026-02-07,ab-1,820", "2026-02-08,CD-2,400");
        Assert.Equal("AB-1", book.PatientCode);
        Assert.Equal(3, book.Nights.Count);
        var finding = Assert.Single(book.Findings);
        Assert.Equal(("book-of-two-patients", 5, "CD-2", "AB-1"), (finding.Code, finding.Row, finding.Found, finding.Expected));
        var ensemble = MembraneFit.Run(Fitting.InventedTests.Of(ReferenceMembranes.MeanIncidentAdult().ScaledTo(Patient.Example.BodySurface), DialysisSolution.Glucose227)).ToGaussianEnsemble(10);
        Assert.Contains("'AB-1'", Assert.Throws<ArgumentException>(() => RecordReview.Run(Patient.Example, ensemble, book)).Message, StringComparison.Ordinal);
        Assert.NotEmpty(RecordReview.Run(Patient.Example with { Code = "ab-1" }, ensemble, book).Nights);
    }

    [Fact]
    public void The_blank_book_asks_for_a_night_and_reads_one_without_a_finding()
    {
        using var writer = new StringWriter();
        RecordBook.WriteBlank(writer);
        Assert.Equal("book-no-nights", Assert.Single(Books.Read(writer + "\n").Findings).Code);
        var columns = writer.ToString().TrimEnd().Split('\n')[^1].Count(letter => letter == ',');
        Assert.Empty(Books.Read(writer + "2026-02-05" + new string(',', columns)).Findings);
    }
}
