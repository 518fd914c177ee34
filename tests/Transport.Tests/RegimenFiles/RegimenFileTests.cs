using System.Text;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Transport.Tests.DocSnippets;

namespace Transport.Tests.RegimenFiles;

/// <summary>Regimens read from tables and from JSON, written, and read again.</summary>
public sealed class RegimenFileTests
{
    private static readonly string[] Forms = ["csv", "json"];

    [Fact]
    public void A_prescription_in_the_words_of_the_trade_is_the_same_as_in_ours()
    {
        const string ours = "item,value,unit,solution\nnight length,9,h,\nfluid in all,12,L,\nvolume per cycle,2000,mL,\nnight solution,glucose 1.36 %,,\nday fill,2,L,icodextrin\n";
        const string theirs = "item;value;unit;solution\nTherapy time;540;min;\nTherapy volume;12,0;l;\nFill volume;2,0;L;\nStrength;13,6 g/L;;\nLast-fill volume;2000;ml;icodextrin 7.5 %\n";
        var regimen = Read(ours).ToRegimen();
        Assert.Equal("9 h at night: 5 × 2.0 L glucose 1.36 %; day: 2.0 L icodextrin 7.5 %", regimen.Describe());
        Assert.Equal(regimen, Read(theirs).ToRegimen());
        Assert.Equal(regimen, Read("""{"therapyTimeHours": 9, "therapyVolumeLiters": 12, "fillVolumeMilliliters": 2000, "strength": "1.5 % monohydrate", "lastFill": {"volumeLiters": 2, "solution": "icodextrin"}}""").ToRegimen());
    }

    [Theory]
    [InlineData("2000", "ML")]
    [InlineData("2000", "ml")]
    [InlineData("2", "l")]
    [InlineData("2", "Litres")]
    public void Millilitres_are_millilitres_however_a_spreadsheet_capitalizes_them(string value, string unit) => Assert.Equal(
        2_000,
        Read($"item,value,unit\nnight length,9,H\nvolume per cycle,{value},{unit}\ncycles,4,\nnight solution,glucose 1.36 %,\n").ToRegimen().VolumePerCycle!.Value.Milliliters,
        1e-9);

    [Fact]
    public void The_examples_are_read_without_a_warning_but_the_meters()
    {
        var cycling = Example("cycling.csv");
        Assert.Equal(["icodextrin-in-use"], cycling.Findings.Select(finding => finding.Code));
        Assert.Equal(6, cycling.ToWeek().Nights);
        Assert.Equal(3, cycling.Regimens[0].Bags.Length);
        Assert.Equal(new TimeOnly(22, 30), cycling.ToRegimen().NightStart);

        var hands = Example("by-hand.csv").ToRegimen();
        Assert.Equal(3, hands.Day.Length);
        Assert.Equal(new TimeOnly(22, 15), hands.NightStart);

        var weeks = Example("varied-weeks.json");
        Assert.Empty(weeks.Findings);
        Assert.Equal(2, weeks.ToWeek().Weeks);
        Assert.Equal(13, weeks.Regimens[1].Regimen.Cycles);
        Assert.Equal(125, weeks.Regimens[0].Regimen.Day[0].Solution.Sodium.MillimolesPerLiter, 1e-12);
        Assert.Equal(TimeSpan.FromHours(5), weeks.Regimens[0].Regimen.Day[0].DwellTime);
    }

    [Fact]
    public void Both_forms_hold_the_same()
    {
        var file = Example("varied-weeks.json");
        Assert.Equal(file.Regimens.Select(regimen => regimen.Regimen.Describe()), Read(file.ToCsv()).Regimens.Select(regimen => regimen.Regimen.Describe()));
        Assert.Equal(file.ToJson(), Read(file.ToCsv()).ToJson());
        Assert.Equal(file.ToCsv(), Read(file.ToJson()).ToCsv());
        Assert.Equal(file.Week!.Nights, Read(file.ToJson()).ToWeek().Nights);
    }

    [Property(MaxTest = 150, Arbitrary = [typeof(Regimens)])]
    public bool What_is_written_is_read_again_to_the_bit(NamedRegimen first, NamedRegimen second, bool hasWeek)
    {
        var (one, two) = (first with { Name = "a" }, second with { Name = "b", Regimen = second.Regimen with { NightStart = first.Regimen.NightStart } });
        RegimenWeek? week = hasWeek ? new(one.Regimen, two.Regimen, null, one.Regimen, one.Regimen, null, two.Regimen) : null;
        var file = new RegimenFile([one, two], week);
        var alone = new RegimenFile([first with { Name = "" }], hasWeek ? RegimenWeek.OfNights(first.Regimen, 5) : null);
        return new[] { file, alone }.All(written => new[] { written.ToCsv(), written.ToJson() }.All(text =>
            Read(text) is var read && !read.HasErrors && read.Regimens.SequenceEqual(written.Regimens)
            && (written.Week is null ? read.Week is null : written.Week.Equals(read.Week))));
    }

    [Fact]
    public void Files_are_written_and_read_by_their_ending()
    {
        var folder = Directory.CreateTempSubdirectory();
        try
        {
            var file = Example("cycling.csv");
            foreach (var form in Forms)
            {
                var path = Path.Combine(folder.FullName, "regimen." + form);
                file.Write(path);
                Assert.Equal(form == "json", File.ReadAllText(path).StartsWith('{'));
                Assert.Equal<NamedRegimen>(file.Regimens, RegimenFile.Read(path).Regimens);
                Assert.All(RegimenFile.Read(path).Findings, finding => Assert.Equal("regimen." + form, finding.File));
            }
        }
        finally
        {
            folder.Delete(true);
        }
    }

    [Fact]
    public void Everything_wrong_with_a_file_is_named_at_once_with_its_place()
    {
        var file = Read("""
            item,value,unit,solution,dwell,drain,expected
            night length,nine,h,,,,
            night start,25:00,,,,,
            fill flow,2000,mL/min,,,,
            fill flow,200,mL/min,,,,
            residual volume,0.2,gallon,,,,
            moon phase,full,,,,,
            night exchange,-2000,mL,glucose 1.36 %,,,
            night exchange,2000,mL,2.5 %,,,
            night exchange,2000,mL,glucose 2.27 %,-5,,
            night exchange,2000,mL,glucose 2.27 %,,,50
            """);
        Assert.True(file.HasErrors);
        Assert.Empty(file.Regimens);
        Assert.Equal(
            [
                (2, "regimen-value-bad"), (3, "regimen-value-bad"), (4, "regimen-value-bad"), (5, "regimen-item-twice"), (6, "regimen-unit-unknown"),
                (7, "regimen-item-unknown"), (8, "regimen-value-bad"), (9, "regimen-solution-unknown"), (10, "regimen-value-bad"), (11, "regimen-value-bad"),
            ],
            file.Findings.Select(finding => (finding.Row ?? 0, finding.Code)));
        var thrown = Assert.Throws<RegimenException>(file.ToRegimen);
        Assert.Equal<Finding>(file.Findings, thrown.Findings);
        Assert.All(file.Findings, finding => Assert.NotNull(finding.Field));
    }

    [Fact]
    public void What_hangs_on_nothing_that_is_wrong_is_judged_in_the_same_pass()
    {
        // A line's volume that cannot be, fluid that does not add up, a bag that is too small, and a week of eight days: four rows, one reading.
        var file = Read("""
            item,value,unit,solution
            night length,9,h,
            night solution,glucose 1.36 %,,
            fluid in all,9,L,
            volume per cycle,2000,mL,
            cycles,5,,
            line volume,900,mL,
            bag,5,L,glucose 1.36 %
            week,x x x x x x x -,,
            """);
        Assert.Equal(
            [(4, "fluid in all", "fluid-does-not-add-up"), (7, "line volume", "regimen-value-bad"), (9, "week", "regimen-week-bad")],
            file.Findings.Select(finding => (finding.Row!.Value, finding.Field!, finding.Code)));
        Assert.All(file.Findings, finding => Assert.NotNull(finding.Found));
        Assert.Null(file.Week);

        // Several values that cannot be read at once, whatever else is missing.
        var unread = Read("item,value,solution\nfluid in all,much,\nvolume per cycle,2 gallons,\ncycles,4.5,\nnight solution,2.5 %,\n");
        Assert.Equal(
            ["fluid in all", "volume per cycle", "cycles", "night solution", "night length"], unread.Findings.Select(finding => finding.Field));
    }

    [Fact]
    public void A_number_out_of_range_is_told_beside_a_value_that_cannot_be_read()
    {
        // Each of these was told only after the rows beside it had been mended.
        Assert.Equal(
            [(3, "cycles"), (4, "regimen-unit-unknown"), (5, "night-length")],
            Places("item,value,unit\nnight solution,glucose 1.36 %,\ncycles,-4,\nvolume per cycle,2,gallons\nnight length,0,h\n"));
        Assert.Equal(
            [(3, "cycles"), (4, "fill-above-limit"), (6, "regimen-value-bad"), (7, "day-fill-above-limit"), (8, "tidal-share"), (9, "tidal-numbers"), (10, "regimen-value-bad")],
            Places("""
                item,value,unit,solution
                night solution,glucose 1.36 %,,
                cycles,100,,
                volume per cycle,3500,mL,
                largest fill,3000,mL,
                night length,30,h,
                day fill,3100,mL,icodextrin
                tidal share,300,%,
                expected ultrafiltration,-100,mL,
                fill flow,-3,mL/min,
                """));

        // Two ways at once keep no value from being read.
        Assert.Equal(
            [(2, "regimen-forms-mixed"), (3, "regimen-value-bad"), (4, "cycles"), (5, "fill-above-limit"), (0, "regimen-item-missing")],
            Places("item,value,unit,solution\nnight length,9,h,\nnight exchange,-2,L,glucose 1.36 %\ncycles,0,,\nvolume per cycle,3,L,\nlargest fill,2.5,L,\n"));

        // By hand: two that are too close, a mix that no hand makes, and one that cannot be read.
        Assert.Equal(
            [(2, "hand-exchanges-too-close"), (4, "mix-not-possible"), (5, "regimen-value-bad")],
            Places("""
                item,value,unit,solution,clock
                hand exchange,2000,mL,glucose 1.36 %,08:00
                hand exchange,2000,mL,glucose 1.36 %,08:05
                hand exchange,2000,mL,mix 1:1 of glucose 1.36 % and glucose 2.27 %,14:00
                hand exchange,2000,mL,glucose 1.36 %,25:00
                """));
    }

    [Fact]
    public void What_hangs_on_a_value_that_cannot_be_read_is_not_made_up()
    {
        // With the stated volume unread the fluid may add up; a drain of two slopes has both its flows, one of them unread; a solution is described, badly; a row that
        // holds for two regimens is told once.
        Assert.Equal(
            [(3, "regimen-unit-unknown")],
            Places("item,value,unit\nnight solution,glucose 1.36 %,\nvolume per cycle,3,pints\ncycles,5,\nfluid in all,9,L\nnight length,9,h\n"));
        Assert.Equal(
            [(6, "regimen-unit-unknown")],
            Places("item,value,unit\nnight solution,glucose 1.36 %,\nvolume per cycle,2,L\ncycles,12,\nnight length,9,h\ndrain fast flow,200,cups\ndrain slow flow,40,mL/min\n"));
        Assert.Equal(
            [(3, "regimen-value-bad")],
            Places("item,value,unit,solution\nnight solution,weak,,\nsolution,-5,mmol/L,weak\nvolume per cycle,2,L,\ncycles,4,,\nnight length,9,h,\n"));
        Assert.Equal(
            [(2, "regimen-value-bad"), (4, "cycles")],
            Places("regimen,item,value,unit\n,night length,9,parsec\n,volume per cycle,2,L\na,cycles,0,\na,night solution,glucose 1.36 %,\nb,cycles,4,\nb,night solution,glucose 1.36 %,\n"));
    }

    [Theory]
    [InlineData("volume per cycle,2,mL,", "10 to 4000 mL")]
    [InlineData("volume per cycle,20,L,", "10 to 4000 mL")]
    [InlineData("solution sodium,13200,mmol/L,weak", "80 to 150 mmol/L")]
    [InlineData("solution,1360,mmol/L,weak", "0 to 300 mmol/L")]
    public void A_slip_of_the_unit_is_no_regimen(string row, string expected)
    {
        // 20 L in the belly were simulated without a word. Ranges: those of a sheet, whose fills are 100 to 4000 mL (choice), down to the refill of a small child's tidal cycle.
        var finding = Assert.Single(Read($"item,value,unit,solution\nnight solution,glucose 1.36 %,,\ncycles,4,,\nnight length,9,h,\n{row}\n").Findings, one => one.Code == "regimen-value-bad");
        Assert.Equal((5, expected), (finding.Row!.Value, finding.Expected!));
    }

    [Fact]
    public void A_statement_that_says_nothing_where_it_stands_is_told()
    {
        // An expected ultrafiltration beside night exchanges was dropped without a word. One without a regimen's name may be meant for another regimen of the file.
        var told = Assert.Single(Read("item,value,unit,solution\nnight length,9,h,\nnight exchange,2,L,glucose 2.27 %\nexpected ultrafiltration,500,mL,\n").Findings);
        Assert.Equal((4, "regimen-item-not-used", Severity.Warning), (told.Row!.Value, told.Code, told.Severity));
        Assert.Empty(Read("""
            regimen,item,value,unit,solution
            ,night length,9,h,
            ,expected ultrafiltration,500,mL,
            a,night exchange,2,L,glucose 2.27 %
            b,night solution,glucose 2.27 %,,
            b,cycles,6,,
            b,volume per cycle,2,L,
            b,tidal share,50,%,
            """).Findings);
    }

    [Fact]
    public void A_quotation_mark_that_is_not_closed_is_told_where_it_opens()
    {
        var finding = Assert.Single(Read("item,value,unit\nnight solution,\"glucose 1.36 %,\ncycles,4,\nnight length,9,h\n").Findings, one => one.Code == "regimen-file-unreadable");
        Assert.Equal((2, "night solution,\"glucose 1.36 %,"), (finding.Row!.Value, finding.Found!));
    }

    // A mark inside a field takes in its own row only; one that opens a field takes in all below it. Rows are those that an editor of lines shows, the header the first.
    [Theory]
    [InlineData("night solution,glu\"cose 1.36 %,\ncycles,4,\nnight length,9,h\n", 2)]
    [InlineData("cycles,4,\nnight solution,glu\"cose 1.36 %,\r\nnight length,9,h\n", 3)]
    [InlineData("cycles,4,\nnight length,9,h\nnight solution,glu\"cose 1.36 %,", 4)]
    [InlineData("# by hand\n\nnight solution,\"glucose 1.36 %,\ncycles,4,\n", 4)]
    [InlineData("cycles,4,\nnight solution,\"glucose 1.36 %,\nnight length,9,h\n\n", 3)]
    [InlineData("cycles,4,\nnight solution,\"glucose 1.36 %,\nnight length,9,h", 3)]
    public void A_stray_quotation_mark_is_told_in_its_own_row(string rows, int row) => Assert.Equal(
        row, Assert.Single(Read("item,value,unit\n" + rows).Findings, one => one.Code == "regimen-file-unreadable").Row);

    // Reader and sheet share their rows with the book.
    [Fact]
    public void So_it_is_in_a_book_and_in_a_sheet()
    {
        var book = Records.Books.Read("date,ultrafiltration,remark", "2025-03-01,800,", "2025-03-02,700,so\"so", "2025-03-03,750,");
        Assert.Equal(3, Assert.Single(book.Findings, one => one.Code == "malformed-quotes").Row);
        var sheet = SampleSheets.Sheets.Read("section,item,time,value,unit\npatient,code,,T\"01,\npatient,sex,,female,\n");
        Assert.Equal(2, Assert.Single(sheet.Findings, one => one.Code == "malformed-quotes").Row);
    }

    // The limit is that of SampleSheetLimits.SolutionGlucose, 300 mmol/L: ten times 386 mmol/L or 3.86 % is a decimal mark gone.
    [Theory]
    [InlineData("3860 mmol/L")]
    [InlineData("38.6 % anhydrous")]
    [InlineData("386 g/L")]
    [InlineData("mix 1:1 of 3860 mmol/L and glucose 1.36 %")]
    [InlineData("mix 1:1 of glucose 1.36 % and 300.1 mmol/L")]
    public void A_strength_that_no_bag_has_is_refused_wherever_it_stands(string solution)
    {
        Finding[] findings = [
            .. Read($"item,value,unit\nnight length,9,h\ncycles,4,\nvolume per cycle,2,L\nnight solution,{solution},\n").Findings,
            .. Read($"item,value,unit,solution\nnight length,9,h,\nnight exchange,2,L,glucose 1.36 %\nday exchange,2,L,{solution}\n").Findings,
        ];
        Assert.Equal([(5, solution), (4, solution)], findings.Where(one => one.Severity == Severity.Error).Select(one => (one.Row!.Value, one.Found!)));
        Assert.All(findings, one => Assert.Equal(("regimen-value-bad", "0 to 300 mmol/L"), (one.Code, one.Expected)));
    }

    [Fact]
    public void Three_hundred_millimoles_are_still_a_strength() => Assert.Equal(
        300, Read("item,value,unit\nnight length,9,h\ncycles,4,\nvolume per cycle,2,L\nnight solution,300 mmol/L,\n").ToRegimen().Night[0].Solution.Glucose.MillimolesPerLiter);

    [Fact]
    public void Exchanges_that_are_wrong_in_the_same_way_are_told_each()
    {
        const string bad = """{ "fillMilliliters": 20000, "solution": "glucose 1.36 %" }""";
        var findings = Read($$"""{ "nightLengthHours": 9, "night": [ {{bad}}, { "fillMilliliters": 2000, "solution": "glucose 1.36 %" }, {{bad}} ], "day": [ {{bad}} ] }""").Findings;
        Assert.Equal(["night exchange, number 1", "night exchange, number 3", "day exchange"], findings.Where(one => one.Code == "regimen-value-bad").Select(one => one.Field));
    }

    // The limits are the reader's: 10 to 4000 mL and sodium of 80 to 150 mmol/L.
    [Fact]
    public void What_could_not_be_read_again_is_not_written()
    {
        var regimen = Regimen.Cycling(TimeSpan.FromHours(9), 4, Volume.FromLiters(2), DialysisSolution.Glucose136);
        var salt = new DialysisSolution("little salt", Concentration.FromMillimolesPerLiter(75), Concentration.FromMillimolesPerLiter(70));
        foreach (var (exchange, found) in new[]
        {
            (new Exchange(DialysisSolution.Glucose136, Volume.FromMilliliters(5_000), null), "5000 mL"), (new(DialysisSolution.Glucose136, Volume.FromMilliliters(5), null), "5 mL"),
            (new(salt, Volume.FromLiters(2), null), "70 mmol/L"), (new(DialysisSolution.OfGlucose(3_860), Volume.FromLiters(2), null), "3860 mmol/L"),
        })
        {
            var file = new RegimenFile([new("", new Regimen(regimen.NightLength, regimen.Night, [exchange]))]);
            foreach (var write in new[] { file.ToCsv, (Func<string>)file.ToJson })
            {
                Assert.Contains(Assert.Throws<RegimenException>(write).Findings, one => one.Severity == Severity.Error && one.Found == found);
            }

            var path = Path.Combine(Path.GetTempPath(), $"{Guid.NewGuid()}.json");
            Assert.Throws<RegimenException>(() => file.Write(path));
            Assert.False(File.Exists(path));
        }
    }

    [Fact]
    public void A_reason_against_a_regimen_names_the_row_that_it_is_about()
    {
        Finding Of(string text) => Read("item,value,unit,solution\n" + text).Findings.First(finding => finding.Severity == Severity.Error);
        var brief = Of("night length,1,h,\nvolume per cycle,2,L,\ncycles,5,,\nnight solution,glucose 1.36 %,,\n");
        Assert.Equal((2, "night length", "1 h", "night-too-short"), (brief.Row!.Value, brief.Field!, brief.Found!, brief.Code));
        var bag = Of("night length,9,h,\nvolume per cycle,2,L,\ncycles,5,,\nnight solution,glucose 1.36 %,,\nbag,5,L,glucose 1.36 %\n");
        Assert.Equal((6, "bag", "bags-do-not-add-up"), (bag.Row!.Value, bag.Field!, bag.Code));
        var named = Read("""{ "regimens": [ { "name": "long", "nightLengthHours": 23.9, "dayFillLiters": 2, "volumePerCycleLiters": 2, "cycles": 4, "nightSolution": "glucose 1.36 %" } ] }""");
        Assert.Equal(("long: night length", "night-too-long"), (named.Findings[0].Field!, named.Findings[0].Code));
    }

    [Fact]
    public void A_file_that_is_not_there_is_a_finding()
    {
        var file = RegimenFile.Read(Path.Combine(Folder, "none.csv"));
        Assert.Equal(("none.csv", "file-not-found"), (file.Findings.Single().File!, file.Findings.Single().Code));
        Assert.Throws<RegimenException>(file.ToRegimen);
    }

    [Theory]
    [InlineData("")]
    [InlineData("   \n  ")]
    [InlineData("\0\u0001binary")]
    [InlineData("[1, 2]")]
    [InlineData("{\"night\": [")]
    [InlineData("name,number\nnight length,9")]
    [InlineData("item,value\n\"night length,9")]
    public void What_is_no_regimen_file_is_an_error_and_no_exception(string text)
    {
        Assert.True(Read(text).HasErrors);
        Assert.Contains(Read(text).Findings, finding => finding.Code == "regimen-file-unreadable");
    }

    [Theory]
    [InlineData("item,value\nnight length,540", "regimen-item-missing")]
    [InlineData("item,value,solution,clock\nhand exchange,2000,glucose 1.36 %,07:00", "regimen-item-missing")]
    [InlineData("item,value,solution,clock\nhand exchange,2000,glucose 1.36 %,07:00\nnight exchange,2000,glucose 1.36 %,", "regimen-forms-mixed")]
    [InlineData("item,value,solution\nnight length,540,\nnight exchange,2000,glucose 1.36 %\ncycles,4,", "regimen-forms-mixed")]
    [InlineData("item,value,solution\nnight length,60,\nnight exchange,2000,glucose 1.36 %\nnight exchange,2000,glucose 1.36 %\nnight exchange,2000,glucose 1.36 %", "night-too-short")]
    [InlineData("item,value,solution\nnight length,540,\nnight exchange,2000,glucose 1.36 %\nweek,x x x,", "regimen-week-bad")]
    [InlineData("item,value,solution\nnight length,540,\nnight exchange,2000,glucose 1.36 %\nweek,a a a a a a a,", "regimen-week-bad")]
    [InlineData("item,value,solution\nnight length,540,\nnight exchange,2000,glucose 1.36 %\nnights per week,9,", "regimen-value-bad")]
    [InlineData("item,value,solution\nnight length,540,\nnight solution,glucose 1.36 %,\ncycles,4,\ntidal share,50,\nfluid in all,12,", "tidal-without-base-fill")]
    [InlineData("item,value,solution\nnight length,540,\nnight exchange,2000,weak\nsolution,80,\nsolution sodium,125,weak", "regimen-item-missing")]
    [InlineData("item;value;solution\nnight length;540;\nnight exchange;1.500;glucose 1.36 %", "regimen-value-bad")]
    public void What_keeps_a_regimen_from_being_made_has_its_code(string text, string code)
    {
        var file = Read(text);
        Assert.True(file.HasErrors);
        Assert.Contains(file.Findings, finding => finding.Code == code);
    }

    [Fact]
    public void What_the_format_has_no_word_for_is_not_written()
    {
        Regimen With(DialysisSolution solution) => Regimen.Cycling(TimeSpan.FromHours(9), 4, Volume.FromLiters(2), solution);
        var amino = new DialysisSolution("amino acids", default, Concentration.FromMillimolesPerLiter(132), OsmoticAgent.AminoAcids);
        var rare = DialysisSolution.Glucose136 with { Others = DialysisSolution.LactateBuffer.Add(new Solute("marker", 5_000, 14), Concentration.FromMillimolesPerLiter(1)) };
        Assert.Throws<ArgumentException>(() => new RegimenFile([new("", With(rare))]).ToCsv());
        Assert.Throws<ArgumentException>(() => new RegimenFile([new("", Regimen.Cycling(TimeSpan.FromHours(9), 4, Volume.FromLiters(2), DialysisSolution.Glucose136)) { Bags = [new(amino, Volume.FromLiters(2), true)] }]).ToJson());
        Assert.Throws<ArgumentException>(() => new RegimenFile([]));
        Assert.Throws<ArgumentException>(() => new RegimenFile([new("two words", With(DialysisSolution.Glucose136))]));
        Assert.Throws<ArgumentException>(() => new RegimenFile([new("", With(DialysisSolution.Glucose136))], RegimenWeek.OfNights(With(DialysisSolution.Glucose227), 3)));
    }

    [Property(MaxTest = 300)]
    public bool No_text_makes_reading_throw(NonNull<string> text, PositiveInt cut)
    {
        // Junk, and examples that end anywhere.
        foreach (var whole in new[] { "cycling.csv", "varied-weeks.json" }.Select(name => File.ReadAllText(Path.Combine(Folder, name))))
        {
            Read(whole[..(cut.Get * 7 % whole.Length)] + text.Get);
        }

        return Read(text.Get).Findings.Length >= 0;
    }

    [Fact]
    public void The_page_lists_every_item_with_its_other_words_and_its_examples_can_be_read()
    {
        var page = Documentation.Read("docs/regimen-files.md");
        Assert.All(RegimenItem.All, item =>
        {
            var row = Assert.Single(page.Split('\n'), line => line.StartsWith($"| {item.Name} | ", StringComparison.Ordinal));
            Assert.EndsWith($"| {string.Join(", ", item.Synonyms)} |", row, StringComparison.Ordinal);
        });
        var words = RegimenItem.All.SelectMany(item => item.Synonyms.Append(item.Name)).ToList();
        Assert.Equal(words.Count, words.Distinct().Count());
        Assert.False(Read(Documentation.Blocks("docs/regimen-files.md", "csv")[0]).HasErrors);
        Assert.False(Read(Documentation.Blocks("docs/regimen-files.md", "json")[0]).HasErrors);
    }

    private static IEnumerable<(int Row, string Code)> Places(string text) => Read(text).Findings.Where(finding => finding.Severity == Severity.Error).Select(finding => (finding.Row ?? 0, finding.Code));

    private static string Folder => Path.Combine(ReferenceData.Folder, "examples", "regimens");

    private static RegimenFile Example(string name) => RegimenFile.Read(Path.Combine(Folder, name));

    private static RegimenFile Read(string text) => RegimenFile.Read(new MemoryStream(Encoding.UTF8.GetBytes(text)));

    /// <summary>Regimens of every kind that can be carried out.</summary>
    public static class Regimens
    {
        public static Arbitrary<NamedRegimen> Named() => (
            from settings in Settings()
            from night in Gen.Choose(300, 700)
            from seconds in Gen.Choose(0, 86_399)
            from atNight in Exchanges(1, 6)
            from byDay in Exchanges(0, 3)
            from bags in Gen.Choose(0, 2)
            from parts in Gen.Choose(-90, 90)
            let mix = new SolutionMix(DialysisSolution.Glucose136, (91 + parts) / 7.0, DialysisSolution.Glucose227, 3).ToSolution()
            let regimen = new Regimen(TimeSpan.FromMinutes(night + seconds / 70_000.0), parts > 45 ? [.. atNight.Select(exchange => exchange with { Solution = mix })] : atNight, byDay, settings) { NightStart = new TimeOnly(seconds * TimeSpan.TicksPerSecond + seconds) }
            select new NamedRegimen("a", regimen) { Bags = [.. Enumerable.Repeat(regimen.Night.SelectMany(exchange => exchange.Solution.Bags.Select(bag => bag.Solution)).Distinct(), bags).SelectMany(some => some).Select(solution => new FluidBag(solution, Volume.FromLiters(40.0 / 3)))] }).ToArbitrary();

        private static Gen<DialysisSolution> Solutions() => Gen.OneOf(
            Gen.Elements<DialysisSolution>([.. DialysisSolution.UsualGlucose, DialysisSolution.Icodextrin]),
            Gen.Choose(500, 2_500).Select(value => DialysisSolution.OfGlucose(value / 9.0)),
            Gen.Choose(100, 130).Select(sodium => new DialysisSolution($"fluid {sodium}", Concentration.FromMillimolesPerLiter(100.0 / 3), Concentration.FromMillimolesPerLiter(sodium))
            {
                Others = DialysisSolution.LactateBuffer,
            }));

        private static Gen<Exchange[]> Exchanges(int least, int most) => (
            from solution in Solutions()
            from fill in Gen.Choose(300, 2_500)
            from dwell in Gen.Choose(-20, 20)
            from drain in Gen.Choose(-2_000, 2_000)
            select new Exchange(solution, Volume.FromMilliliters(fill / 3.0 + 300), dwell > 0 ? TimeSpan.FromMinutes(dwell / 3.0) : null)
            {
                PartialDrain = drain > 0 ? new(Volume.FromMilliliters(drain), Volume.FromMilliliters(drain / 30.0)) : null,
            }).ArrayOf().Where(all => all.Length >= least && all.Length <= most && (all.Length == 0 || all.Any(one => one.DwellTime is null)));

        private static Gen<RegimenSettings> Settings() =>
            from flow in Gen.Choose(1_500, 2_500)
            from kind in Gen.Choose(0, 2)
            from residual in Gen.Choose(-300, 300)
            let slow = FlowRate.FromMillilitersPerMinute(flow / 30.0)
            let fast = FlowRate.FromMillilitersPerMinute(flow / 7.0)
            select new RegimenSettings
            {
                FillFlow = FlowRate.FromMillilitersPerMinute(flow / 9.0),
                Drain = kind == 0 ? DrainProfile.Within(TimeSpan.FromMinutes(flow / 170.0))
                    : kind == 1 ? DrainProfile.TwoSlope(fast, slow, flow / 2_700.0)
                    : DrainProfile.TwoSlopeAt(fast, slow, Volume.FromMilliliters(flow / 3.0)),
                Residual = residual > 0 ? Volume.FromMilliliters(residual) : null,
                LineVolume = Volume.FromMilliliters(Math.Max(0, residual) / 10.0),
                LongestDrain = residual < -100 ? TimeSpan.FromMinutes(-residual / 7.0) : null,
                LargestFill = residual % 2 == 0 ? Volume.FromMilliliters(3_000.0 + residual) : null,
                LargestVolume = residual % 3 == 0 ? Volume.FromMilliliters(4_000.0 + residual) : null,
            };
    }
}
