using System.Globalization;
using Transport.Reporting;

namespace Transport.Tests.Records;

/// <summary>
/// A slip of the pen costs a row its night and never its emergency. Books are invented: twenty quiet days to 20 February 2026 and then the row in question, which is now whatever
/// its date says. What is to be found is this project's choice (the safe reading), checked by hand for each row.
/// </summary>
public sealed class RowInDoubtTests
{
    private const string Header = "date,pressure sitting,blood glucose (mmol/L),temperature,effluent,symptoms,weight (kg),uf (mL),remark";
    private static readonly string[] Quiet = [.. Enumerable.Range(1, 20).Select(day => Day(day) + ",130/80,6.1,36.6,clear,none,70.0,800,")];

    [Fact]
    public void A_plain_book_has_no_row_in_doubt()
    {
        var book = Books.Read([Header, .. Quiet]);
        Assert.Empty(book.RowsInDoubt);
        Assert.Equal(new DateOnly(2026, 2, 20), book.LastDay);
        Assert.Empty(Of(book));
    }

    // Row 22. A comma too many: pressure and glucose stand before the break, or where one place alone lets all cells be read.
    [Theory]
    [InlineData("2026-02-21,84/50,24,38.9,cloudy,belly pain, vomiting,70.0,800,called", "record-sepsis-now record-cloudy-now record-pain-or-fever-now record-glucose-very-high record-pressure-low record-row-lost")]
    [InlineData("2026-02-21,84/50,24,38.9,cloudy,belly pain, vomiting,70.0,800,", "record-sepsis-now record-cloudy-now record-pain-or-fever-now record-glucose-very-high record-pressure-low record-row-lost")]
    [InlineData("2026-02-21,84/50,6,36.6,clear,none,70.0,800,odd at noon, then a cloudy bag, shivering", "record-sepsis-now record-cloudy-now record-pain-or-fever-now record-pressure-low record-row-lost")]
    [InlineData("2026-02-21,84/50,6,38,9,clear,none,70.0,800,", "record-sepsis-now record-pain-or-fever-now record-pressure-low record-row-lost")]
    [InlineData("2026-02-21,130/80,6,36.6,clear,none,70.0,800,well, fed the cat", "record-row-lost")]

    // Two commas in one cell, and two breaks in one row: a decimal comma and a list.
    [InlineData("2026-02-21,84/50,6,36.6,clear,tired, slept badly, fever,70.0,800,", "record-sepsis-now record-pain-or-fever-now record-pressure-low record-row-lost")]
    [InlineData("2026-02-21,84/50,24,38,9,cloudy,belly pain, vomiting,70.0,800,", "record-sepsis-now record-cloudy-now record-pain-or-fever-now record-glucose-very-high record-pressure-low record-row-lost")]

    // A quotation mark inside a field, and one that is never closed.
    [InlineData("2026-02-21,84/50,6,36.6,clear,a 5\" bag, cloudy,70.0,800,", "record-sepsis-now record-cloudy-now record-pressure-low record-row-lost")]
    [InlineData("2026-02-21,130/80,6,36.6,clear,\"none,70.0,800,\n2026-02-22,82/50,24,39.1,cloudy,none,70.0,800,", "record-sepsis-now record-cloudy-now record-pain-or-fever-now record-glucose-very-high record-pressure-low record-row-lost")]

    // A cell too few or too many, where blanks at the end of the row hide it.
    [InlineData("2026-02-21,84/50,38.9,cloudy,pain,70.0,800,", "record-sepsis-now record-cloudy-now record-pain-or-fever-now record-pressure-low record-row-lost")]
    [InlineData("2026-02-21,24,38.9,cloudy,pain,70.0", "record-cloudy-now record-pain-or-fever-now record-glucose-very-high record-row-lost")]
    [InlineData("2026-02-21,84/50,24,38.9,,cloudy,pain,70.0,", "record-sepsis-now record-cloudy-now record-pain-or-fever-now record-glucose-very-high record-pressure-low")]
    public void No_word_of_danger_is_lost_with_its_row_and_no_number_whose_column_is_certain(string row, string expected)
    {
        var book = Books.Read([Header, .. Quiet, row]);
        var said = Of(book).Where(found => found.Severity == Severity.Warning).ToList();
        Assert.Equal(expected, string.Join(' ', said.Select(found => found.Code)));
        if (expected.Contains("record-row-lost", StringComparison.Ordinal))
        {
            var lost = book.RowsInDoubt[^1];
            Assert.Contains(lost.Doubt, said.Single(found => found.Code == "record-row-lost").Message, StringComparison.Ordinal);
            Assert.Contains(FormattableString.Invariant($"row {lost.Row}"), lost.Doubt, StringComparison.Ordinal);
            Assert.DoesNotContain(book.Nights, night => night.Row == lost.Row);
        }
    }

    [Fact]
    public void A_row_that_was_lost_is_not_said_to_be_unwritten()
    {
        var book = Books.Read(Header, "2026-02-21,84/50,24,38.9,cloudy,belly pain, vomiting,70.0,800,called");
        Assert.Equal(
            "Not looked at, because not written in the last 3 days or not to be told apart in row 2: blood pressure standing, pulse, urine. The exit site is never looked at where nobody writes of it.",
            DangerSigns.NotLookedAt(book.Nights, book, Patient.Example, ReviewLimits.Default));
        var unread = Books.Read(Header, "2026-02-21,84,LO,hot,whitish,none,70.0,800,");
        Assert.StartsWith("Not looked at, because not written in the last 3 days or not to be told apart in row 2: blood pressure standing, pulse, urine. ", DangerSigns.NotLookedAt(unread.Nights, unread, Patient.Example, ReviewLimits.Default), StringComparison.Ordinal);
    }

    // Read by hand from the rows: what stands left and right of the break fits its own columns in one way only. 38 and 6 are 38.6 °C, 70 and 5 are 70.5 kg, 1 and 150 are 1150 mL.
    [Theory]
    [InlineData("2026-02-21,130/80,6.1,38,6,clear,none,70.0,800,", "temperature 38.6")]
    [InlineData("2026-02-21,130/80,6.1,38,6,clear,none,70,5,800,", "temperature 38.6")]
    [InlineData("2026-02-21,130/80,6,1,36.6,clear,none,70.0,800,", "blood glucose 6.1")]
    [InlineData("2026-02-21,130/80,6.1,36.6,clear,none,70.0,1,150,", "temperature 36.6")]
    public void A_decimal_comma_that_broke_a_number_is_one_number_where_the_row_fits_then_and_its_row_is_no_night(string row, string certain)
    {
        var book = Books.Read([Header, .. Quiet, row]);
        var lost = Assert.Single(book.RowsInDoubt);
        Assert.Equal(20, book.Nights.Count);
        Assert.Equal(certain, certain.StartsWith('t') ? FormattableString.Invariant($"temperature {lost.TemperatureCelsius:0.0}") : FormattableString.Invariant($"blood glucose {lost.BloodGlucose!.Value.MillimolesPerLiter:0.0}"));
        Assert.Equal(certain == "temperature 38.6", Of(book).Any(found => found.Code == "record-pain-or-fever-now"));
        Assert.Equal(22, book.Findings.Single(found => found.Code == "extra-fields").Row);
    }

    // The comma in a remark breaks the row; the words are whole again, and history. Where the day is not known nothing is over: they are of now, and not history as well.
    [Theory]
    [InlineData("2026-02-21,130/80,6.1,36.6,clear,none,70.0,800,fever last year, well now", false)]
    [InlineData("21-02-26x,130/80,6.1,36.6,clear,fever last year, well now,70.0,800,odd", true)]
    public void What_a_broken_row_says_is_history_or_an_alarm_and_never_both(string row, bool isAlarm)
    {
        var said = Of(Books.Read([Header, .. Quiet, row]));
        Assert.Equal(isAlarm, said.Any(found => found.Code == "record-pain-or-fever-now"));
        Assert.Equal(!isAlarm, said.Any(found => found.Code == "record-complaint-of-past"));
    }

    // A weight that is written twice is no code, and its row nobody else's.
    [Fact]
    public void A_number_that_slipped_under_the_code_is_no_other_patient()
    {
        string[] quiet = [.. Enumerable.Range(1, 20).Select(day => $"{Day(day)},{(day == 1 ? "AB-1" : "")},70.2,130/80,clear,")];
        var book = Books.Read(["date,patient,weight (kg),pressure sitting,effluent,remark", .. quiet, "2026-02-21,,70.2,70.2,85/40,clear,"]);
        Assert.DoesNotContain(book.Findings, found => found.Code == "book-of-two-patients");
        Assert.Equal("record-pressure-low record-row-lost", string.Join(' ', Of(book).Select(found => found.Code)));

        // In a row that did not slip it is one, however it looks.
        Assert.Equal(("12/34", 2), Books.Read("date,patient", "2026-02-20,12/34", "2026-02-21,12/34") is var plain ? (plain.PatientCode, plain.Nights.Count) : default);
    }

    // Marks of decimals of other countries, in a cell of their own.
    [Theory]
    [InlineData("\"38,6\"")]
    [InlineData("38·6")]
    [InlineData("38'6")]
    [InlineData("38٫6")]
    public void A_fever_is_read_whatever_the_mark_of_its_decimal(string cell)
    {
        var book = Books.Read([Header, .. Quiet, $"2026-02-21,130/80,6.1,{cell},clear,none,70.0,800,"]);
        Assert.Empty(book.RowsInDoubt);
        Assert.Equal(38.6, book.Nights[^1].TemperatureCelsius!.Value, 1e-9);
        Assert.Equal("record-pain-or-fever-now", Assert.Single(Of(book)).Code);
    }

    // One cell is a slip of that cell; two are as soon a slip of the row, whose numbers then belong to no chart.
    [Fact]
    public void Two_cells_that_cannot_be_read_put_a_row_in_doubt_and_one_does_not()
    {
        Assert.Empty(Books.Read([Header, .. Quiet, "2026-02-21,130/80,6.1,36.6,brownish,none,70.0,800,"]).RowsInDoubt);
        var book = Books.Read([Header, .. Quiet, "2026-02-21,130/80,6.1,hot,brownish,none,70.0,800,"]);
        Assert.Equal("row 22 of 2026-02-21, which has cells that their columns do not take (temperature and effluent)", Assert.Single(book.RowsInDoubt).Doubt);
        Assert.Equal("Several cells of this row are not what their columns take (temperature and effluent), so that it may have slipped: it is left out of the charts. Put them right, or leave them blank.", book.Findings.Single(found => found.Code == "book-row-doubtful").Message);
        Assert.Equal(2, book.Findings.Count(found => found.Row == 22 && found.Field is "temperature" or "effluent"));
    }

    // Whoever writes a word of their own every day, or leaves a comma more at the end of each row, has a habit and no slip.
    [Fact]
    public void What_most_rows_do_is_no_slip()
    {
        string[] words = [.. Quiet.Select(row => row.Replace("36.6,clear", "warm,straw", StringComparison.Ordinal))];
        Assert.Empty(Books.Read([Header, .. words]).RowsInDoubt);
        string[] wide = [.. Quiet.Select(row => row + ",")];
        Assert.Empty(Books.Read([Header, .. wide]).RowsInDoubt);
        Assert.Empty(Books.Read([Header, .. Quiet, "2026-02-21,130/80,6.1,36.6,clear,none,70.0,800,,"]).RowsInDoubt); // at the very end it moves no cell
    }

    [Fact]
    public void What_a_row_of_another_code_says_is_told_and_not_taken_for_a_night()
    {
        var book = Books.Read("date,patient,effluent", "2026-02-20,AB-1,clear", "2026-02-21,CD-2,cloudy");
        Assert.Single(book.Nights);
        var said = Of(book);
        Assert.StartsWith("Cloudy fluid or peritonitis in row 3, which could be read only in part (effluent “cloudy”).", said[0].Message, StringComparison.Ordinal);
        Assert.Contains("row 3 of 2026-02-21, which carries the code “CD-2”", said.Single(found => found.Code == "record-row-lost").Message, StringComparison.Ordinal);
    }

    // The last row of the file is now, whatever its date says, and so are the days before it.
    [Theory]
    [InlineData("21-02-26x")]
    [InlineData("")]
    [InlineData("2025-02-21")]
    [InlineData("2027-02-21")]
    [InlineData("1926-02-21")]
    [InlineData("2026-03-21")]
    [InlineData("2026-01-21")]
    [InlineData("2026-02-12")]
    public void A_last_row_of_doubtful_date_is_now(string date)
    {
        var said = Of(Books.Read([Header, .. Quiet, date + ",84/50,24,38.9,cloudy,pain,70.0,800,"])).Where(found => found.Severity == Severity.Warning);
        Assert.Equal(
            "record-sepsis-now record-cloudy-now record-pain-or-fever-now record-glucose-very-high record-pressure-low record-date-doubtful-now", string.Join(' ', said.Select(found => found.Code)));
        var before = Of(Books.Read([Header, .. Quiet[..^1], Day(20) + ",84/50,24,38.9,cloudy,pain,70.0,800,", date + ",130/80,6,36.6,clear,none,70.0,800,"]));
        Assert.Contains("record-sepsis-now record-cloudy-now record-pain-or-fever-now record-glucose-very-high record-pressure-low record-date-doubtful-now", string.Join(' ', before.Where(found => found.Severity == Severity.Warning).Select(found => found.Code)), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("2027-02-10")]
    [InlineData("1926-02-10")]
    [InlineData("10-02-26x")]
    [InlineData("2026-03-10")]
    [InlineData("2026-01-10")]
    public void A_row_in_the_middle_with_a_slip_of_its_date_moves_no_other(string date)
    {
        string[] slipped = [.. Quiet];
        slipped[9] = date + slipped[9][10..];
        slipped[19] = Day(20) + ",84/50,6.1,36.6,cloudy,none,70.0,800,";
        var book = Books.Read([Header, .. slipped]);
        Assert.Equal(new DateOnly(2026, 2, 20), book.LastDay);
        Assert.Equal(new DateOnly(2026, 2, 20), book.Nights[^1].Date);
        Assert.Equal(19, book.Nights.Count);
        Assert.Equal(new DateOnly(2026, 2, 10), Assert.Single(book.RowsInDoubt).Date);
        var said = Of(book);
        Assert.Equal("record-sepsis-now", said[0].Code);
        Assert.Contains("row 11, whose date", said.Single(found => found.Code == "record-date-doubtful").Message, StringComparison.Ordinal);
    }

    // Newest row on top.
    [Fact]
    public void A_book_that_is_kept_backwards_has_its_first_row_last()
    {
        var book = Books.Read([Header, "2027-02-21,84/50,6,38.9,clear,none,70.0,800,", .. Quiet.Reverse()]);
        Assert.Equal(new DateOnly(2026, 2, 21), Assert.Single(book.RowsInDoubt).Date);
        Assert.Equal("record-sepsis-now", Of(book)[0].Code);
    }

    // By hand: 2.27 % until the 10th and 3.86 % from the 11th on, whichever row stands on top.
    [Fact]
    public void Blank_means_as_the_row_before_in_time_in_a_book_that_is_kept_backwards()
    {
        string[] rows = [.. Enumerable.Range(1, 20).Select(day => FormattableString.Invariant($"{Day(day)},{day switch { 1 => "126", 11 => "214", _ => "" }},{(day == 1 ? "2000,5,9,70" : ",,,")}"))];
        foreach (var order in new[] { rows, [.. rows.Reverse()] })
        {
            var book = Books.Read(["date,night fluid (mmol/L),volume per cycle (mL),cycles,night length (h),target weight (kg)", .. order]);
            Assert.Equal([.. Enumerable.Repeat(126.0, 10), .. Enumerable.Repeat(214.0, 10)], book.Nights.Select(night => night.NightFluid!.Solution.Glucose.MillimolesPerLiter));
            Assert.All(book.Nights, night => Assert.Equal((5, 70.0), (night.Regimen!.Night.Length, night.TargetWeight!.Value.Kilograms)));
            Assert.Equal(order != rows, book.Findings.Any(found => found.Code == "book-newest-on-top"));
        }
    }

    // Two exchanges a day, the days from below, the exchanges of a day from above: a spreadsheet that was sorted by its dates.
    [Fact]
    public void Rows_of_one_date_keep_their_order_in_a_book_that_is_kept_backwards()
    {
        var book = Books.Read(["date,exchange,began,night fluid (mmol/L),filled", .. Enumerable.Range(1, 5).Reverse().SelectMany(day => new[] { $"{Day(day)},1,{(day == 1 ? "08:00,75.5" : ",")},2000", $"{Day(day)},2,{(day == 1 ? "20:00,126" : ",")},2000" })]);
        Assert.All(book.Nights, night => Assert.Equal(["75.5", "126"], night.Exchanges.Select(exchange => exchange.Fluid!.Solution.Glucose.MillimolesPerLiter.ToString(CultureInfo.InvariantCulture))));
        Assert.DoesNotContain(book.Findings, found => found.Code == "book-night-twice");
    }

    // January with the number of the old year; the days are this project's, and the slip is read by hand: nine rows, thirty rows to the end of the book, and the first twenty of a book.
    [Theory]
    [InlineData("2025-12-01", 31, 9, 20, "rows 33 to 41, whose year seems to be one behind")]
    [InlineData("2025-12-01", 31, 30, 0, "rows 33 to 62, whose year seems to be one behind")]
    [InlineData("2025-12-22", 10, 0, 30, "")]
    public void Rows_of_last_years_number_are_offered_as_that_and_count_as_of_their_place(string begins, int before, int slipped, int after, string doubt)
    {
        var first = DateOnly.Parse(begins, CultureInfo.InvariantCulture);
        string[] rows = [.. Enumerable.Range(0, before + slipped + after).Select(day => first.AddDays(day)).Select((day, at) => (at >= before && at < before + slipped ? day.AddYears(-1) : day).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) + (at == before + slipped + after - 1 ? ",cloudy" : ",clear"))];
        foreach (var order in new[] { rows, [.. rows.Reverse()] })
        {
            var book = Books.Read(["date,effluent", .. order]);
            Assert.Equal(slipped, book.RowsInDoubt.Count);
            Assert.Equal(before + after, book.Nights.Count);
            Assert.Equal(Enumerable.Range(before, slipped).Select(day => first.AddDays(day)), book.RowsInDoubt.Select(row => row.Date).Order());
            Assert.Equal(slipped > 0 ? 1 : 0, book.Findings.Count(found => found.Code == "book-date-out-of-place"));
            Assert.DoesNotContain(book.Findings, found => found.Code == "book-gap");
            Assert.Contains(Of(book), found => found.Code == "record-cloudy-now");
            if (order == rows && slipped > 0)
            {
                Assert.Contains(doubt + ". What", Of(book).Single(found => found.Code.StartsWith("record-date-doubtful", StringComparison.Ordinal)).Message.Replace(" Such", " What", StringComparison.Ordinal), StringComparison.Ordinal);
            }
        }
    }

    // The longer part is right: a book that begins with the number of the old year.
    [Fact]
    public void The_first_rows_of_a_book_may_be_a_year_behind()
    {
        string[] first = [.. Quiet.Take(8).Select(row => row.Replace("2026", "2025", StringComparison.Ordinal))];
        var book = Books.Read([Header, .. first, .. Quiet.Skip(8)]);
        Assert.Equal(8, book.RowsInDoubt.Count(row => row.Doubt == "rows 2 to 9, whose year seems to be one behind"));
        Assert.Equal(12, book.Nights.Count);

        // One who pauses for a year less a week is back, and in no doubt.
        Assert.Empty(Books.Read([Header, .. Quiet.Take(10).Select(row => row.Replace("2026", "2025", StringComparison.Ordinal)), .. Quiet.Take(10)]).RowsInDoubt);
    }

    [Fact]
    public void A_row_in_doubt_leaves_no_gap_behind()
    {
        string[] broken = [.. Quiet];
        broken[9] = Day(10) + ",130/80,6.1,36.6,clear,tired, slept badly,70.0,800,";
        var book = Books.Read([Header, .. broken]);
        Assert.Equal(19, book.Nights.Count);
        Assert.DoesNotContain(book.Findings, found => found.Code == "book-gap");
    }

    [Fact]
    public void Rows_put_in_late_two_that_are_swapped_and_a_pause_of_half_a_year_are_no_slips()
    {
        string[] swapped = [.. Quiet];
        (swapped[4], swapped[5]) = (swapped[5], swapped[4]);
        Assert.Empty(Books.Read([Header, .. swapped]).RowsInDoubt);
        string[] pause = [.. Quiet.Take(10), .. Enumerable.Range(1, 10).Select(day => Day(day).Replace("2026-02", "2026-09", StringComparison.Ordinal) + Quiet[0][10..])];
        Assert.Empty(Books.Read([Header, .. pause]).RowsInDoubt);

        // Three weeks in a hospital, and home for two days: neither the same day of the month nor half a year.
        Assert.Empty(Books.Read([Header, .. Quiet, "2026-03-14,130/80,6,36.6,clear,none,70,800,", "2026-03-15,130/80,6,36.6,clear,none,70,800,"]).RowsInDoubt);

        // All rows of the first exchange, then all of the second: such an order says nothing of dates.
        string[] byNumber = [.. from number in new[] { 1, 2, 3 } from day in Enumerable.Range(1, 9) select FormattableString.Invariant($"{Day(day)},{number},clear")];
        Assert.Empty(Books.Read(["date,exchange,effluent", .. byNumber]).RowsInDoubt);
    }

    [Fact]
    public void A_date_that_stands_twice_keeps_both_pressures_and_both_glucoses()
    {
        var said = Of(Books.Read([Header, .. Quiet, Day(20) + ",84/50,24,,,,,,"]));
        Assert.Equal("record-glucose-very-high record-pressure-low record-date-doubtful-now", string.Join(' ', said.Select(found => found.Code)));
        Assert.Contains("row 22, whose date stands in a row above too", said[2].Message, StringComparison.Ordinal);

        // What the first row left blank the second fills.
        var night = Books.Read(Header, "2026-02-20,,,,clear,,70,800,", "2026-02-20,128/76,,,,,,,").Nights.Single();
        Assert.Equal("128/76", night.Sitting!.Value.ToString());
    }

    [Fact]
    public void A_book_of_one_row_without_a_readable_date_still_says_its_emergency()
    {
        var book = Books.Read(Header, "20-02-26x,84/50,24,38.9,cloudy,pain,70.0,800,");
        Assert.Empty(book.Nights);
        Assert.Contains("record-sepsis-now", Of(book).Select(found => found.Code));
        var review = RecordReview.Run(Patient.Example, MembraneEnsemble.Of(ReferenceMembranes.MeanIncidentAdult()), book);
        var page = RecordPage.Of(review);
        Assert.Contains("sepsis", page, StringComparison.Ordinal);
        Assert.DoesNotContain("0001", page, StringComparison.Ordinal);
    }

    [Fact]
    public void Words_that_slipped_into_another_column_are_words()
    {
        var said = Of(Books.Read([Header, .. Quiet, "2026-02-21,130/80,vomiting,belly pain,clear,none,70.0,cloudy,"]));
        Assert.Contains("(uf “cloudy”)", said.Single(found => found.Code == "record-cloudy-now").Message, StringComparison.Ordinal);
        Assert.Contains("(temperature “belly pain”; blood glucose “vomiting”)", said.Single(found => found.Code == "record-pain-or-fever-now").Message, StringComparison.Ordinal);
    }

    // By hand: the last certain day is 20 February, and 20 of 20 nights are treated; by a last day of 10 March nine of the last 28 would be.
    [Fact]
    public void A_month_too_late_in_the_middle_row_leaves_the_nurse_findings_on_their_days()
    {
        string[] slipped = [.. Quiet];
        slipped[9] = "2026-03-10" + slipped[9][10..];
        var review = RecordReview.Run(Patient.Example, MembraneEnsemble.Of(ReferenceMembranes.MeanIncidentAdult()), Books.Read([Header, .. slipped]));
        Assert.DoesNotContain(review.Findings, found => found.Code == "record-nights-missing");
        Assert.Equal(new DateOnly(2026, 2, 20), review.Nights[^1].Record.Date);
    }

    // The code is written once, in a row whose date or cells are in doubt.
    [Theory]
    [InlineData("2025-02-01,AB-1,36.6,clear,")]
    [InlineData("01-02-26x,AB-1,36.6,clear,")]
    [InlineData("2026-02-01,AB-1,36.6,clear,well,too wide")]
    public void The_code_is_known_from_whichever_row_it_stands_in(string first)
    {
        string[] rest = [.. Enumerable.Range(2, 19).Select(day => Day(day) + ",,36.6,clear,")];
        Assert.Equal("AB-1", Books.Read(["date,patient,temperature,effluent,remark", first, .. rest]).PatientCode);
    }

    // Nobody else's target or plan becomes this patient's, and nobody else's cloudy bag empties the charts.
    [Theory]
    [InlineData("21-02-26x,CD-2,cloudy,55")]
    [InlineData("2025-02-21,CD-2,cloudy,55")]
    [InlineData("2026-02-21,CD-2,cloudy,55")]
    [InlineData("2026-02-21,CD-2,cloudy,55,well,too wide")]
    public void A_row_of_another_code_gives_nothing_but_its_words(string row)
    {
        string[] quiet = [.. Enumerable.Range(1, 20).Select(day => FormattableString.Invariant($"{Day(day)},{(day == 1 ? "example" : "")},clear,{(day == 1 ? "70" : "")}"))];
        var book = Books.Read(["date,patient,effluent,target weight (kg),remark", .. quiet, row, "2026-02-22,,clear,,", "2026-02-23,,clear,,"]);
        Assert.Contains(book.Findings, found => found.Code == "book-of-two-patients");
        Assert.All(book.Nights, night => Assert.Equal(70, night.TargetWeight!.Value.Kilograms, 9));
        Assert.Contains("CD-2", Assert.Single(book.RowsInDoubt).Doubt, StringComparison.Ordinal);
        Assert.Contains(Of(book), found => found.Code == "record-cloudy-now");
        Assert.DoesNotContain(Of(book), found => found.Code == "record-peritonitis-weeks");
        var review = RecordReview.Run(Patient.Example, MembraneEnsemble.Of(ReferenceMembranes.MeanIncidentAdult()), book);
        Assert.All(review.Nights, night => Assert.DoesNotContain("peritonitis", night.LeftOut, StringComparison.Ordinal));
    }

    // Last year's number in January; no book is too small for it.
    [Theory]
    [InlineData(3)]
    [InlineData(4)]
    public void In_a_book_of_a_few_rows_the_last_is_now_too(int rows)
    {
        string[] before = [.. Enumerable.Range(3, rows - 1).Select(day => FormattableString.Invariant($"2026-01-{day:00},clear"))];
        Assert.Contains(Of(Books.Read(["date,effluent", .. before, FormattableString.Invariant($"2025-01-{rows + 2:00},cloudy")])), found => found.Code == "record-cloudy-now");
    }

    // Years that no book is of, beside a row without a date: calendars end at 1 and at 9999.
    [Theory]
    [InlineData("9999-12-31")]
    [InlineData("0001-01-01")]
    [InlineData("0026-02-20")]
    public void A_year_at_the_end_of_the_calendar_is_unreadable_and_never_thrown(string date)
    {
        var book = Books.Read("date,effluent,remark", date + ",clear,peritonitis 40 years ago", ",cloudy,");
        Assert.Equal(2, book.Findings.Count(found => found.Code == "book-date-unreadable"));
        Assert.Contains(Of(book), found => found.Code == "record-cloudy-now");
        Assert.NotNull(Books.Read("date,effluent", date + ",clear,too wide", ",cloudy"));
    }

    // Six cells for five columns: the temperature may be of the complaints or of the remark, so neither cell is certain.
    [Theory]
    [InlineData("temp 39.2", true)]
    [InlineData("39.2", false)]
    public void A_fever_in_the_words_of_a_lost_row_is_a_fever_and_a_bare_number_is_none(string cell, bool isFever)
    {
        var book = Books.Read("date,effluent,symptoms,remark,weight (kg)", "2026-02-20,clear,none,well,70", $"2026-02-21,clear,unwell,{cell},called nobody,70");
        Assert.Contains(Of(book), found => found.Code == "record-row-lost");
        Assert.Equal(isFever, Of(book).Any(found => found.Code == "record-pain-or-fever-now"));
    }

    [Fact]
    public void A_doubtful_date_of_last_year_is_history_and_of_many_the_newest_are_named()
    {
        string[] days = [.. Enumerable.Range(0, 100).Select(day => new DateOnly(2026, 1, 1).AddDays(day).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) + ",36.6")];
        Assert.DoesNotContain(Of(Books.Read(["date,temperature", .. days[..10], ",39.5", .. days[10..]])), found => found.Code.StartsWith("record-date-doubtful", StringComparison.Ordinal));
        var five = Of(Books.Read(["date,temperature", .. days, ",36.6", ",36.6", ",36.6", ",36.6", ",36.6"])).Single(found => found.Code == "record-date-doubtful").Message;
        Assert.Contains("row 106, which has no date; and 1 before", five, StringComparison.Ordinal);
    }

    [Fact]
    public void A_book_whose_rows_a_quotation_mark_took_is_not_said_to_have_none() =>
        Assert.DoesNotContain(Books.Read("date,effluent,remark", "2026-02-20,cloudy,\"never closed").Findings, found => found.Code == "book-no-nights");

    private static string Day(int day) => new DateOnly(2026, 2, day).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static IReadOnlyList<Finding> Of(RecordBook book) => DangerSigns.Of(book.Nights, book, Patient.Example, ReviewLimits.Default);
}
