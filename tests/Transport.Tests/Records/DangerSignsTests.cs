using System.Globalization;

namespace Transport.Tests.Records;

/// <summary>What of the last days is said whatever the charts say. Books are invented, one row a day, ten days; the last and the three before it are now.</summary>
public sealed class DangerSignsTests
{
    private const string Header = "date;effluent;symptoms;remark;temperature;blood glucose (mmol/L);pressure sitting;pressure standing;urine;peritonitis";
    private const string Well = ";clear;;;;;130/80;;900;";

    [Fact]
    public void Ten_quiet_days_have_no_sign() => Assert.Empty(Of(Well));

    [Theory]
    [InlineData(";clear;;bag was cloudy this morning;;;;;;", "record-cloudy-now")]
    [InlineData(";clear;peritonitis?;;;;;;;", "record-cloudy-now")]
    [InlineData(";rather cloudy;;;;;;;;", "record-cloudy-now")]
    [InlineData(";clear;;fever;;;;;;", "record-pain-or-fever-now")]
    [InlineData(";clear;;temp 38.0;;;;;;", "record-pain-or-fever-now")]
    [InlineData(";clear;\"stomach sore, vomiting\";;;;;;;", "record-pain-or-fever-now")]
    [InlineData(";clear;;diarrhoea;;;;;;", "record-pain-or-fever-now")]
    [InlineData(";clear;;dizzy;;;;;;", "record-symptoms-now")]
    [InlineData(";clear;;exit site red and pus;;;;;;", "record-exit-site-now")]
    [InlineData(";clear;;feels strange;;;;;;", "record-text-unread")]
    [InlineData(";clear;temp 37.9;;;;;;;", null)]
    [InlineData(";clear;\"no pain, no fever\";all well;;;;;;", null)]

    // Just within each limit and just beyond: 4 and 20 mmol/L, 90 and 180/120 mmHg, 20 mmHg on standing.
    [InlineData(";;;;;3.9;;;;", "record-glucose-low")]
    [InlineData(";;;;;4.0;;;;", null)]
    [InlineData(";;;;;20.1;;;;", "record-glucose-very-high")]
    [InlineData(";;;;;20.0;;;;", null)]
    [InlineData(";;;;;;89/55;;;", "record-pressure-low")]
    [InlineData(";;;;;;90/55;;;", null)]
    [InlineData(";;;;;;130/80;111/70;;", null)]
    [InlineData(";;;;;;130/80;110/70;;", "record-pressure-low")]
    [InlineData(";;;;;;;85/50;;", "record-pressure-low")]
    [InlineData(";;;;;;179/119;;;", null)]
    [InlineData(";;;;;;180/100;;;", "record-pressure-high")]
    [InlineData(";;;;;;170/120;;;", "record-pressure-high")]

    // A low glucose by its name, or as meters write it; values in the other unit, of which a low one looks very high (48 mg/dL are 2.7 mmol/L).
    [InlineData(";clear;;hypo last night;;;;;;", "record-glucose-low")]
    [InlineData(";;;;;LO;;;;", "record-glucose-low")]
    [InlineData(";;;;;48;;;;", "record-glucose-low")]
    [InlineData(";clear;;no hypos;;;;;;", null)]

    // A carer's book: what cannot wait is taken for the patient's, and a fever beside a low pressure.
    [InlineData(";clear;;dad has chest pain;;;;;;", "record-symptoms-now")]
    [InlineData(";clear;;mum is confused;;;;;;", "record-symptoms-now")]
    [InlineData(";clear;;dad has fever;;;84/50;;;", "record-sepsis-now")]

    // A connection that came open; clear or not in the head; a scale of pain that says none.
    [InlineData(";clear;;line came apart in the night;;;;;;", "record-exit-site-now")]
    [InlineData(";clear;;touched the tip;;;;;;", "record-exit-site-now")]
    [InlineData(";clear;;not clear in the head;;;;;;", "record-symptoms-now")]
    [InlineData(";clear;pain 0/10;;;;;;;", null)]
    [InlineData(";clear;;190/120 and headache;;;190/120;;;", "record-pressure-emergency")]

    // Cells that could not be read are words too.
    [InlineData(";whitish;;;;;;;;", "record-text-unread")]
    [InlineData(";;;;feels hot;;;;;", "record-text-unread")]
    [InlineData(";;;;;;too low to read;;;", "record-text-unread")]
    [InlineData(";;;;;;;;;suspected", "record-text-unread")]
    public void A_sign_of_the_last_days_is_said_and_an_older_one_is_not_now(string row, string? code)
    {
        var said = Of(Well, [row]);
        if (code is null)
        {
            Assert.Empty(said);
            return;
        }

        Assert.Equal(Severity.Warning, Assert.Single(said, found => found.Code == code).Severity);

        // Three days ago is of the last three days; four days ago is not.
        Assert.Contains(Of(Well, [row, Well, Well, Well]), found => found.Code == code);
        Assert.DoesNotContain(Of(Well, [row, Well, Well, Well, Well]), found => found.Code == code);
    }

    [Theory]
    [InlineData(";clear;;bag was cloudy;;;;;;", "record-cloudy-past")]
    [InlineData(";clear;vomiting;;;;;;;", "record-pain-or-fever-past")]
    [InlineData(";clear;;exit site red;;;;;;", "record-exit-site-past")]
    public void An_older_sign_asks_whether_it_was_reported_and_quotes_what_was_written(string row, string code)
    {
        var past = Of(Well, [row, Well, Well, Well, Well]).Single(found => found.Code == code);
        Assert.Equal(Severity.Note, past.Severity);
        Assert.Contains("If it was not, contact the unit", past.Message, StringComparison.Ordinal);
        Assert.Contains("“" + row.Split(';').First(cell => cell.Length > 5) + "”", past.Message, StringComparison.Ordinal);
    }

    // Silent once the three days were over, until somebody asks: a faint at 76/40, a confusion at 2.4 mmol/L, breath.
    [Theory]
    [InlineData(";clear;;found confused;;2.4;;;;", "blood glucose of 2.4 mmol/L on 2026-02-11 (written beside it: “found confused”), no later value is written; confusion or drowsiness on 2026-02-11 (“found confused”)")]
    [InlineData(";clear;;;;;76/40;;;", "blood pressure 76/40 on 2026-02-11, the last written after it is 130/80 on 2026-02-15")]
    [InlineData(";clear;short of breath;;;;;;;", "breathlessness on 2026-02-11 (“short of breath”)")]
    public void What_was_urgent_earlier_in_the_month_asks_whether_it_was_reported(string row, string expected)
    {
        var past = Of(Well, [row, Well, Well, Well, Well]).Single(found => found.Code == "record-danger-past");
        Assert.Equal(Severity.Warning, past.Severity);
        Assert.Equal($"Earlier in the last four weeks: {expected}. History if it was reported; if it was not, contact the unit now.", past.Message);
        Assert.DoesNotContain(Of(Well, [row]), found => found.Code == "record-danger-past");
        Assert.DoesNotContain(Of(Well, [row, .. Enumerable.Repeat(Well, 28)]), found => found.Code == "record-danger-past");
    }

    [Fact]
    public void Pain_in_the_chest_is_no_sign_of_peritonitis_and_the_emergency_service_comes_first()
    {
        var said = Of(Well, [";clear;chest pain and sweating;;;;;;;"]);
        Assert.EndsWith("For pain in the chest the emergency service comes first, at once; then stop the exchange that is going on and call the unit, if it has not been seen.", said.Single(found => found.Code == "record-symptoms-now").Message, StringComparison.Ordinal);
        Assert.DoesNotContain(said, found => found.Code == "record-pain-or-fever-now");
    }

    [Fact]
    public void Both_columns_of_words_are_read_together_and_quoted_with_their_days()
    {
        var said = Of(Well, [";clear;;fever;;;;;;", ";clear;\"stomach sore, vomiting\";bag looked cloudy;38.9;2.4;82/48;;;"]);
        Assert.Equal(
            ["record-sepsis-now", "record-cloudy-now", "record-pain-or-fever-now", "record-glucose-low", "record-pressure-low"], said.Where(found => found.Severity == Severity.Warning).Select(found => found.Code));

        // Each finding quotes the cell it stands in, and no other.
        Assert.StartsWith("Cloudy fluid or peritonitis on 2026-02-12 (“bag looked cloudy”). Contact", said[1].Message, StringComparison.Ordinal);
        var pain = said.Single(found => found.Code == "record-pain-or-fever-now").Message;
        Assert.StartsWith("Pain, fever and vomiting or nausea on 2026-02-11 (“fever”) and 2026-02-12 (temperature “38.9”; “stomach sore, vomiting”), whatever", pain, StringComparison.Ordinal);
        Assert.Contains("contact the unit now", pain, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void Of_several_days_the_worst_is_named_and_how_many_there_were()
    {
        var said = Of(Well, [";;;;;;84/50;;;", ";;;;;;82/48;;;", ";;;;;;82/48;;;"]).Single().Message;
        Assert.StartsWith("Blood pressure 82/48 sitting on 2026-02-13 (the worst of 3 such days), below 90 mmHg systolic", said, StringComparison.Ordinal);
    }

    [Fact]
    public void What_was_not_understood_is_quoted_once_and_cut_where_it_is_long()
    {
        Assert.Contains("2026-02-11 “feels strange”", Of(Well, [";clear;;feels strange;;;;;;"]).Single().Message, StringComparison.Ordinal);
        Assert.Single(Of(Well, [";clear;fever;feels strange;;;;;;"]), found => found.Message.Contains("feels strange", StringComparison.Ordinal));
        var cut = Of(Well, [$";clear;;{string.Join(' ', Enumerable.Repeat("strange", 100))};;;;;;"]).Single().Message;
        Assert.Contains("strange …”", cut, StringComparison.Ordinal);
        Assert.True(cut.Length < 260);
        var many = Of(Well, [.. Enumerable.Repeat(";pale;odd;odder;;;;;;", 3)]).Single().Message;
        Assert.Contains("and 5 more of these days", many, StringComparison.Ordinal); // three days, three cells each, four quoted
    }

    [Fact]
    public void A_cloudy_third_bag_of_a_day_is_a_cloudy_bag()
    {
        // Exchanges by hand have a row each; the date's first row says clear. Also where the second row has no number and is left out.
        foreach (var numbers in new[] { ("1", "2"), ("", "") })
        {
            var book = Books.Read($"date;exchange;effluent;remark\n2026-02-05;{numbers.Item1};clear;\n2026-02-05;{numbers.Item2};cloudy;chills");
            string[] doubt = numbers.Item1.Length > 0 ? [] : ["record-date-doubtful-now"];
            Assert.Equal(["record-cloudy-now", "record-pain-or-fever-now", .. doubt], Of(book).Where(found => found.Severity == Severity.Warning).Select(found => found.Code));
        }
    }

    // Nine days at 900 mL, then three values. Half and 200 mL less are the limits; one poor collection is no fall.
    [Theory]
    [InlineData("900", "450 450 450", true)]
    [InlineData("900", "50 50 50", true)]
    [InlineData("900", "50 460 50", false)]
    [InlineData("900", "900 900 50", false)]
    [InlineData("300", "100 100 100", true)]
    [InlineData("300", "110 110 110", false)]
    public void A_fall_of_urine_is_said(string before, string last, bool isSaid)
    {
        var said = Of($";;;;;;;;{before};", [.. last.Split(' ').Select(value => $";;;;;;;;{value};")]);
        Assert.Equal(isSaid, said.Any(found => found.Code == "record-urine-fall"));
    }

    // 70 mmHg and 2 for each year, at most 90 (resuscitation guidelines, memory). A high one of adults has no meaning in a child.
    [Theory]
    [InlineData(5, "80/45", false)]
    [InlineData(5, "79/45", true)]
    [InlineData(9, "80/45", true)]
    [InlineData(14, "89/50", true)]
    [InlineData(14, "185/110", false)]
    public void A_childs_pressure_is_low_by_its_age_and_never_high(double years, string pressure, bool isSaid)
    {
        var book = Books.Read(Header + $"\n2026-02-05;;;;;;{pressure};;;");
        var codes = DangerSigns.Of(book.Nights, book, Patient.Example with { AgeYears = years }, ReviewLimits.Default).Select(found => found.Code);
        Assert.Equal(isSaid ? ["record-pressure-low"] : [], codes);
    }

    [Fact]
    public void A_local_limit_takes_the_place_of_the_shipped_one()
    {
        var book = Books.Read(Header + "\n2026-02-05;;;;38.0;4.2;95/60;;;");
        Assert.Equal(["record-pain-or-fever-now"], Of(book).Select(found => found.Code));
        var local = ReviewLimits.Default with
        {
            Fever = ReviewLimits.Default.Fever with { Value = 38.5 },
            LowGlucose = ReviewLimits.Default.LowGlucose with { Value = 4.5 },
            LowSystolic = ReviewLimits.Default.LowSystolic with { Value = 100 },
        };
        Assert.Equal(["record-glucose-low", "record-pressure-low"], DangerSigns.Of(book.Nights, book, Patient.Example, local).Select(found => found.Code));
    }

    [Fact]
    public void A_low_glucose_with_icodextrin_may_have_been_lower()
    {
        var book = Books.Read("date;blood glucose (mmol/L);day fluid;day fill\n2026-02-05;3.5;icodextrin;2000");
        Assert.Contains("meters read falsely high", Of(book).Single().Message, StringComparison.Ordinal);
        Assert.DoesNotContain("meters", Of(Books.Read("date;blood glucose (mmol/L)\n2026-02-05;3.5")).Single().Message, StringComparison.Ordinal);
    }

    // 9.0 mmol/L by a meter that reads maltose for glucose may be a low one (common knowledge of the trade; memory): with such complaints it is measured at once by another method.
    [Fact]
    public void Signs_of_a_low_glucose_with_icodextrin_are_urgent_whatever_the_meter_says()
    {
        const string Columns = "date;blood glucose (mmol/L);day fluid;day fill;symptoms";
        var said = Of(Books.Read(Columns, "2026-02-05;9.0;icodextrin;2000;sweaty and shaky"));
        Assert.Equal(
            "Sweating, shaking, hunger or a racing heart on 2026-02-05 (“sweaty and shaky”), and icodextrin is in use or was lately: compatible with a low blood glucose that a meter hides, since some read falsely high then (written: 9.0 mmol/L on 2026-02-05). "
            + "Measure at once by a method specific for glucose (such a meter, or the laboratory) and ask the unit, whose rule for a low glucose applies until it is known; insulin on a false value is dangerous. Shaking may be a chill of infection as well: look at temperature and bag.",
            Assert.Single(said).Message);
        Assert.Equal("record-glucose-low", said[0].Code);

        // Without a value too; not without icodextrin, when the words are left for a reader; and a value that is itself low has its own sentence.
        Assert.Equal("record-glucose-low", Assert.Single(Of(Books.Read(Columns, "2026-02-05;;icodextrin;2000;clammy, very hungry"))).Code);
        Assert.Equal("record-text-unread", Assert.Single(Of(Books.Read(Columns, "2026-02-05;9.0;dry;;sweaty and shaky"))).Code);
        Assert.StartsWith("Blood glucose of 3.0 mmol/L", Of(Books.Read(Columns, "2026-02-05;3.0;icodextrin;2000;sweaty and shaky"))[0].Message, StringComparison.Ordinal);
    }

    // 180/120 mmHg and beyond (memory) with a head that aches or sight that blurs is one emergency, told in one place.
    [Fact]
    public void Headache_and_blurred_sight_beside_a_very_high_pressure_are_one_emergency()
    {
        var said = Assert.Single(Of(Well, [";clear;headache and blurred sight;;;;190/118;;;"]));
        Assert.Equal(
            "Blood pressure 190/118 sitting on 2026-02-11, at or above 180/120 mmHg, and in the same days headache or disturbed sight on 2026-02-11 (“headache and blurred sight”): "
            + "together compatible with a pressure that harms brain, eyes, heart or lungs (hypertensive emergency). Contact the unit or the emergency service at once.", said.Message);
        Assert.Equal("record-text-unread", Assert.Single(Of(Well, [";clear;headache and blurred sight;;;;140/80;;;"])).Code);
        Assert.EndsWith("confusion at once.", Assert.Single(Of(Well, [";clear;;;;;190/118;;;"])).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Clear_fluid_at_the_exit_site_is_a_possible_leak()
    {
        var said = Assert.Single(Of(Well, [";clear;;wet dressing, clear fluid at the exit site;;;;;;"]));
        Assert.Equal("record-exit-site-now", said.Code);
        Assert.StartsWith("A leak, a wet dressing, fluid at the exit site or a connection that came open or was touched on 2026-02-11 (“wet dressing, clear fluid at the exit site”): compatible with dialysis fluid that runs out beside the catheter", said.Message, StringComparison.Ordinal);
    }

    // A daughter's fever is hers, unless she is the patient: a book of a child is kept by somebody else.
    [Fact]
    public void A_complaint_of_somebody_else_is_quoted_for_an_adult_and_an_alarm_for_a_child()
    {
        var book = Books.Read(Header, "2026-02-11;clear;;daughter has fever;;;;;;");
        var adult = Assert.Single(Of(book));
        Assert.Equal("A complaint of somebody else, as it appears, so read it: 2026-02-11 “daughter has fever”. If the patient is meant, as where another keeps the book, contact the unit now.", adult.Message);
        Assert.Equal((Severity.Warning, "record-text-unread"), (adult.Severity, adult.Code));
        var child = Assert.Single(DangerSigns.Of(book.Nights, book, Patient.Example with { AgeYears = 9 }, ReviewLimits.Default));
        Assert.StartsWith("Fever on 2026-02-11 (“daughter has fever”)", child.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_very_high_glucose_with_icodextrin_may_be_false()
    {
        var book = Books.Read("date;blood glucose (mmol/L);day fluid;day fill", "2026-02-05;26;icodextrin;2000");
        Assert.Contains("insulin on a false value is dangerous", Of(book).Single().Message, StringComparison.Ordinal);
        Assert.DoesNotContain("insulin", Of(Books.Read("date;blood glucose (mmol/L)", "2026-02-05;26")).Single().Message, StringComparison.Ordinal);
    }

    // 28 days, the last of them 28 February 2026; a single value above 20 mmol/L (read) is said whenever it was, one above 15 only where it is repeated on three days.
    [Theory]
    [InlineData("2026-02-10;27.3", "record-glucose-high")]
    [InlineData("2026-02-27;27.3", "record-glucose-very-high")]
    [InlineData("2026-02-10;19", "")]
    [InlineData("2026-02-10;16\n2026-02-12;17\n2026-02-14;18", "record-glucose-high")]
    [InlineData("2026-01-10;27.3", "")]
    public void A_single_very_high_glucose_of_four_weeks_is_said_once(string rows, string codes)
    {
        var book = Books.Read("date;blood glucose (mmol/L)", rows, "2026-02-28;");
        var said = RecordReview.Run(Patient.Example, MembraneEnsemble.Of(ReferenceMembranes.MeanIncidentAdult()), book).Findings.Where(found => found.Code.Contains("glucose", StringComparison.Ordinal)).ToList();
        Assert.Equal(codes, string.Join(' ', said.Select(found => found.Code)));
        Assert.True(!rows.Contains("27.3", StringComparison.Ordinal) || said.All(found => found.Message.Contains("27.3 mmol/L", StringComparison.Ordinal)));
    }

    // A protocol with the very high (12) below the high (15): a single 13 is said all the same, by the lower.
    [Fact]
    public void A_very_high_glucose_below_the_high_one_is_judged_by_the_lower()
    {
        var book = Books.Read("date;blood glucose (mmol/L)", "2026-02-10;13", "2026-02-28;");
        var limits = ReviewLimits.Default with { VeryHighGlucose = ReviewLimits.Default.VeryHighGlucose with { Value = 12 } };
        var said = RecordReview.Run(Patient.Example, MembraneEnsemble.Of(ReferenceMembranes.MeanIncidentAdult()), book, new() { Limits = limits }).Findings.Single(found => found.Code == "record-glucose-high");
        Assert.StartsWith("Blood glucose was above 12 mmol/L on 1 of 1 day measured", said.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_peritonitis_of_long_ago_leaves_nights_in_the_charts_and_one_in_doubt_says_that_it_rests_on_words()
    {
        // Ten quiet days, the last two with a remark. "Last year" ended 42 days before 11 February: not long enough, so it is written as a year here.
        var past = Of(Well, [";clear;;had peritonitis in 2024;;;;;;", Well]);
        Assert.Equal(["record-peritonitis-of-past"], past.Select(found => found.Code));
        Assert.Equal("A peritonitis appears to be spoken of as past on 2026-02-11 (“had peritonitis in 2024”): it is counted as history and leaves no night out. If it is of now, contact the unit now.", past[0].Message);

        var doubtful = Of(Well, [";clear;;had peritonitis;;;;;;", Well]);
        Assert.Equal(["record-cloudy-now", "record-peritonitis-weeks"], doubtful.Select(found => found.Code));
        Assert.EndsWith("It is counted by its words alone: if they speak of an older one, write month and year beside it.", doubtful[1].Message, StringComparison.Ordinal);
        Assert.DoesNotContain("words alone", Of(Well, [";cloudy;;;;;;;;", Well])[1].Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_past_peritonitis_is_quoted_for_the_five_weeks_of_the_page_and_what_stands_beside_it_is_not_lost()
    {
        const string Past = ";clear;;had peritonitis in 2024;;;;;;";
        Assert.Equal(["record-peritonitis-of-past"], Of(Well, [Past, .. Enumerable.Repeat(Well, 34)]).Select(found => found.Code));
        Assert.Empty(Of(Well, [Past, .. Enumerable.Repeat(Well, 35)]));
        Assert.Equal(["record-text-unread", "record-peritonitis-of-past"], Of(Well, [";clear;feels strange;had peritonitis in 2024;;;;;;"]).Select(found => found.Code));
        Assert.Contains("; and on 2 days before:", Of(Well, [.. Enumerable.Repeat(Past, 6)]).Single().Message, StringComparison.Ordinal); // the last four are quoted
    }

    // Cloudy on two days, and once five weeks before, of which the 28 days (choice) are over by then: the days left out begin with the first of those that run into one another.
    [Theory]
    [InlineData("2026-02-04;cloudy\n2026-02-05;cloudy\n2026-02-06;clear", "Nights from 2026-02-04 on are left out of the charts, until 28 days after 2026-02-05")]
    [InlineData("2025-12-28;cloudy\n2026-02-04;cloudy\n2026-02-05;clear", "Nights from 2026-02-04 on are left out of the charts, until 28 days after 2026-02-04")]
    [InlineData("2026-01-10;cloudy\n2026-02-04;cloudy\n2026-02-05;clear", "Nights from 2026-01-10 on are left out of the charts, until 28 days after 2026-02-04")]
    public void The_days_left_out_after_a_peritonitis_begin_with_its_first(string rows, string expected) =>
        Assert.StartsWith(expected, Of(Books.Read(["date;effluent", .. rows.Split('\n')])).Single(found => found.Code == "record-peritonitis-weeks").Message, StringComparison.Ordinal);

    // One cell, a cloudy bag beside a peritonitis of long ago: the alarm quotes both, and nothing calls them history.
    [Fact]
    public void What_alarms_is_not_called_history_as_well()
    {
        var said = Of(Well, [";clear;peritonitis in 2024. fine since then. bag a bit cloudy;;;;;;;"]);
        Assert.Equal(["record-cloudy-now", "record-peritonitis-weeks"], said.Select(found => found.Code));
        Assert.Contains("bag a bit cloudy", said[0].Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("2026-02-05;same again;peritonitis in 2024")]
    [InlineData("2026-02-05;peritonitis in 2024;\n2026-02-05;;same again")]
    public void What_one_cell_tells_of_the_past_another_of_the_day_calls_back(string rows) =>
        Assert.Contains(Of(Books.Read("date;symptoms;remark", rows)), found => found.Code == "record-cloudy-now");

    // December ended 42 days before; October, 103. A protocol that leaves nights out for 120 days counts both.
    [Fact]
    public void A_protocol_that_leaves_out_more_days_has_peritonitis_past_later()
    {
        var book = Books.Read("date;remark", "2026-02-11;peritonitis in October");
        Assert.Equal("record-peritonitis-of-past", Assert.Single(Codes(28)));
        Assert.Equal(["record-cloudy-now", "record-peritonitis-weeks"], Codes(120));

        IEnumerable<string> Codes(double days)
        {
            var limits = ReviewLimits.Default with { PeritonitisDays = ReviewLimits.Default.PeritonitisDays with { Value = days } };
            return RecordReview.Run(Patient.Example, MembraneEnsemble.Of(ReferenceMembranes.MeanIncidentAdult()), book, new() { Limits = limits }).Findings
                .Select(found => found.Code).Where(code => code.Contains("peritonitis", StringComparison.Ordinal) || code.Contains("cloudy", StringComparison.Ordinal));
        }
    }

    // A cloudy fluid beside a remark on something else: the quote is of the effluent, not of the remark.
    [Fact]
    public void What_is_quoted_is_the_cell_in_which_it_was_found()
    {
        var said = Of(Well, [";cloudy;;new hose today;;;;;;"]);
        Assert.StartsWith("Cloudy fluid or peritonitis on 2026-02-11 (effluent “cloudy”). Contact", said.Single(found => found.Code == "record-cloudy-now").Message, StringComparison.Ordinal);
        Assert.EndsWith("read it: 2026-02-11 “new hose today”.", said.Single(found => found.Code == "record-text-unread").Message, StringComparison.Ordinal);
    }

    // 38.0 °C is 100.4 °F, and (101.3 − 32)/1.8 = 38.5. Whatever cannot be read is quoted whole.
    [Theory]
    [InlineData("101 F", "Fever on 2026-02-11 (temperature “101 F”, 38.3 °C)")]
    [InlineData("101.3", "Fever on 2026-02-11 (temperature “101.3”, read as °F, 38.5 °C)")]
    [InlineData("100.4 °F", "Fever on 2026-02-11 (temperature “100.4 °F”, 38.0 °C)")]
    [InlineData("38,4 C", "Fever on 2026-02-11 (temperature “38,4 C”)")]
    [InlineData("T 38.5", "Fever on 2026-02-11 (temperature “T 38.5”)")]
    [InlineData("T38.5", "Fever on 2026-02-11 (temperature “T38.5”)")]
    [InlineData("37.2 at noon, 38.6 °C at night", "Fever on 2026-02-11 (temperature “37.2 at noon, 38.6 °C at night”)")]
    [InlineData("100.3 F", null)]
    [InlineData("98.6", null)]
    [InlineData("37,9 C", null)]
    public void A_temperature_is_read_as_it_is_written(string cell, string? expected)
    {
        var said = Of(Well, [$";clear;;;{cell};;130/80;;900;"]);
        Assert.Equal(expected is null, said.Count == 0);
        Assert.StartsWith(expected ?? "", expected is null ? "" : said.Single().Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("385")]
    [InlineData("50 F")]
    [InlineData("hot")]
    public void A_temperature_that_nobody_has_is_quoted_whole(string cell)
    {
        var said = Of(Well, [$";clear;;;{cell};;130/80;;900;"]);
        Assert.Equal("record-text-unread", Assert.Single(said).Code);
        Assert.Contains($"temperature “{cell}”", said[0].Message, StringComparison.Ordinal);
    }

    // A value of three days ago is still told, and with it whether it was measured again.
    [Theory]
    [InlineData(";;;;;24;;;;", new[] { ";;;;;;;;;", ";;;;;;;;;", ";;;;;;;;;" }, "24.0 mmol/L on 2026-02-11, above 20.0 mmol/L; no later value is written: ask")]
    [InlineData(";;;;;24;;;;", new[] { ";;;;;;;;;", ";;;;;9.1;;;;", ";;;;;;;;;" }, "24.0 mmol/L on 2026-02-11, above 20.0 mmol/L; the last written after it is 9.1 mmol/L on 2026-02-13: ask")]
    [InlineData(";;;;;;84/50;;;", new[] { ";;;;;;132/80;;;" }, "84/50 sitting on 2026-02-11, below 90 mmHg systolic; the last written after it is 132/80 on 2026-02-12: compatible")]
    [InlineData(";;;;;2.4;;;;", new[] { ";;;;;;;;;" }, "2.4 mmol/L on 2026-02-11, below 4.0 mmol/L; no later value is written. The unit's rule")]
    [InlineData(";;;;;2.4;;;;", new string[0], "2.4 mmol/L on 2026-02-11, below 4.0 mmol/L. The unit's rule")]
    public void An_urgent_value_says_what_was_measured_after_it(string row, string[] after, string expected) =>
        Assert.Contains(expected, Of(Well, [row, .. after])[0].Message, StringComparison.Ordinal);

    // Fever, pain or a cloudy bag with a failing circulation or head in the same days is one emergency; the low pressure then no longer waits until today.
    [Theory]
    [InlineData(";cloudy;;;;;84/50;;;")]
    [InlineData(";clear;;;38.6;;84/50;;;")]
    [InlineData(";clear;belly pain;;;;;85/50;;")]
    [InlineData(";clear;fever, confused;;;;130/80;;;")]
    public void An_infection_with_a_low_pressure_or_confusion_is_one_emergency(string row)
    {
        var said = Of(Well, [row]);
        Assert.Equal("record-sepsis-now", said[0].Code);
        Assert.Contains("sepsis", said[0].Message, StringComparison.Ordinal);
        Assert.All(said.Where(found => found.Code == "record-pressure-low"), found => Assert.Contains("Ask the unit at once, because of ", found.Message, StringComparison.Ordinal));
        Assert.DoesNotContain(Of(Well, [row, Well, Well, Well, Well]), found => found.Code == "record-sepsis-now");
    }

    [Fact]
    public void A_low_pressure_alone_or_a_fever_alone_is_not_joined()
    {
        Assert.DoesNotContain(Of(Well, [";clear;;;;;84/50;;;"]), found => found.Code == "record-sepsis-now");
        Assert.DoesNotContain(Of(Well, [";clear;;;38.6;;130/80;;;"]), found => found.Code == "record-sepsis-now");
        Assert.Contains("Ask the unit today", Of(Well, [";clear;;;;;84/50;;;"]).Single().Message, StringComparison.Ordinal);
    }

    // 11 February: January ended eleven days before, too few; in November it ended well before.
    [Fact]
    public void A_complaint_that_is_over_is_quoted_and_no_alarm()
    {
        var said = Of(Well, [";clear;;\"fever in November, well now\";;;;;;"]).Single();
        Assert.Equal("record-complaint-of-past", said.Code);
        Assert.Equal("A complaint appears to be spoken of as over on 2026-02-11 (“fever in November, well now”): it is counted as history. If it is of now, contact the unit now.", said.Message);
        Assert.Contains(Of(Well, [";clear;;\"fever last month, well now\";;;;;;"]), found => found.Code == "record-pain-or-fever-now");
    }

    // A complaint that is over is told from whichever column it stands in.
    [Fact]
    public void A_history_in_the_column_of_temperatures_is_quoted() =>
        Assert.Equal("record-complaint-of-past", Of(Well, [";clear;;;\"fever in November, well now\";;130/80;;900;"]).Single().Code);

    // Six bags of one day: a finding prints four cells, and what it does not print in full is still to be read.
    [Fact]
    public void What_is_not_printed_whole_is_not_taken_for_read()
    {
        string[] bags = [.. Enumerable.Range(1, 6).Select(bag => FormattableString.Invariant($"2026-02-11;{bag};{(bag < 6 ? $"fever at bag {bag}" : "fever and the thing went odd")}"))];
        Assert.Contains("the thing went odd", Of(Books.Read(["date;exchange;remark", .. bags])).Single(found => found.Code == "record-text-unread").Message, StringComparison.Ordinal);
        var longer = "fever " + string.Join(' ', Enumerable.Repeat("strange", 30));
        Assert.Contains(Of(Books.Read(["date;remark", "2026-02-11;" + longer])), found => found.Code == "record-text-unread");
    }

    [Theory]
    [InlineData(";clear;;left arm weak, speech slurred;;;;;;", "record-emergency-now", "the emergency service comes first, at once")]
    [InlineData(";clear;fit in the night;;;;;;;", "record-emergency-now", "A low blood glucose can look the same")]
    [InlineData(";clear;;husband collapsed;;;;;;", "record-emergency-now", "“husband collapsed”")]
    [InlineData(";brown;;;;;;;;", "record-cloudy-now", "at once, whatever the hour, before anything is filled in")]
    [InlineData(";clear;;smells of stool;;;;;;", "record-cloudy-now", "whatever the hour")]
    [InlineData(";clear;;lab called K 6.9;;;;;;", "record-potassium-now", "Potassium of 6.9 on 2026-02-11 (“lab called K 6.9”), taken as mmol/L, at or above 6.0: ")]
    [InlineData(";clear;;potassium 2.3;;;;;;", "record-potassium-now", "taken as mmol/L, below 3.0: ")]
    [InlineData(";clear;;BM 2.8;;;;;;", "record-glucose-low", "read as 2.8 mmol/L. ")]
    [InlineData(";clear;;hypo;;;;;;", "record-glucose-low", "without a value below 4.0 mmol/L")]
    [InlineData(";clear;;sugar 41;;;;;;", "record-glucose-low", "41 without its unit is either very low (in mg/dL) or very high (in mmol/L)")]
    [InlineData(";clear;;BM 31;;;;;;", "record-glucose-very-high", ": read as 31.0 mmol/L. Measure")]
    [InlineData(";clear;;face swollen and wheezing;;;;;;", "record-symptoms-now", "for the emergency service first, at once")]
    [InlineData(";clear;black stools;;;;;;;", "record-symptoms-now", "can be a bleeding of stomach or bowel")]
    [InlineData(";clear;;chest tight at rest;;;;;;", "record-symptoms-now", "the emergency service comes first")]
    [InlineData(";;;;;HI;;;;", "record-glucose-very-high", "(blood glucose “HI”): a meter that shows HI is above all that it can measure")]
    [InlineData(";;;;;3.9 mmol;;;;", "record-glucose-low", "Blood glucose of 3.9 mmol/L on 2026-02-11, below 4.0 mmol/L")]
    [InlineData(";clear;not hungry;;37.9;;;;;", "record-pain-or-fever-now", "(temperature “37.9”), with words beside it (“not hungry”): an infection can begin so")]
    [InlineData(";clear;pain;;37.6;;;;;", "record-pain-or-fever-now", ", and pain in these days: an infection can begin so")]
    public void What_cannot_wait_stands_among_the_first(string row, string code, string expected)
    {
        var said = Of(Well, [row]);
        Assert.Contains(said, found => found.Code == code && found.Severity == Severity.Warning && found.Message.Contains(expected, StringComparison.Ordinal));
        Assert.Contains(code, NurseFindings.Urgent);
        Assert.DoesNotContain(Of(Well, [row, Well, Well, Well, Well]), found => found.Code == code);
    }

    // Between the limits, 3.0 and 6.0 mmol/L, a potassium is quoted, and quiet from 3.5 to 5.5; a near fever of one day with nothing beside it is none.
    [Fact]
    public void A_usual_potassium_and_one_near_fever_are_no_alarm()
    {
        Assert.Empty(Of(Well, [";clear;;K 5.2;;;130/80;;900;"]));
        Assert.Equal("record-text-unread", Assert.Single(Of(Well, [";clear;;K 5.8;;;;;;"])).Code);
        Assert.Empty(Of(Well, [";clear;;;37.9;;130/80;;900;"]));
        Assert.Equal("record-pain-or-fever-now", Assert.Single(Of(Well, [";clear;;;37.9;;130/80;;900;", ";clear;;;37.8;;130/80;;900;"])).Code);
    }

    [Fact]
    public void A_meter_that_shows_LO_is_told_beside_a_low_value() =>
        Assert.Contains("A low one is also told on 2026-02-11 (blood glucose “LO”).", Of(Well, [";;;;;LO;;;;", ";;;;;3.9;;;;"]).Single(found => found.Code == "record-glucose-low").Message, StringComparison.Ordinal);

    [Fact]
    public void Everyday_remarks_leave_a_book_quiet()
    {
        Assert.Empty(Of(Well, [";clear;;birthday party;;;130/80;;900;", ";clear;none;slept well;;;130/80;;900;", ";clear;;\"walked 3 km, grandson visited\";;;130/80;;900;"]));
        Assert.Equal("record-text-unread", Assert.Single(Of(Well, [";clear;;birthday party, strange taste;;;130/80;;900;"])).Code);
    }

    // Whoever wrote in another language has written of complaints, as far as anybody here can tell.
    [Fact]
    public void Words_that_nobody_understood_are_not_said_to_be_unwritten()
    {
        var book = Books.Read(Header, "2026-02-05;;;Bauchschmerzen;;;;;;");
        Assert.DoesNotContain("complaints", DangerSigns.NotLookedAt(book.Nights, book, Patient.Example, ReviewLimits.Default), StringComparison.Ordinal);
        var none = Books.Read(Header, "2026-02-05;clear;;;;;;;;");
        Assert.Contains("complaints", DangerSigns.NotLookedAt(none.Nights, none, Patient.Example, ReviewLimits.Default), StringComparison.Ordinal);
    }

    private static IReadOnlyList<Finding> Of(string usual, params string[] last) =>
        Of(Books.Read([Header, .. Enumerable.Repeat(usual, 10).Concat(last).Select((row, day) => new DateOnly(2026, 2, 1).AddDays(day).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) + row)]));

    private static IReadOnlyList<Finding> Of(RecordBook book) => DangerSigns.Of(book.Nights, book, Patient.Example, ReviewLimits.Default);
}
