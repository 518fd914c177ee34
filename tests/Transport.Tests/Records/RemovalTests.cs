using Transport.Reporting;
using Transport.Studies;
using static Transport.Tests.Records.Books;

namespace Transport.Tests.Records;

/// <summary>Fluid that is not taken off, however steadily; and how long a bag that is no longer used is spoken of.</summary>
public sealed class RemovalTests
{
    // 750 mL a day without urine (Perit Dial Int 2006;26:458-465, read). Below 100 mL a day is as good as none (practice, memory).
    [Theory]
    [InlineData(740, 0.0, 60, Severity.Warning)]
    [InlineData(-40, 50.0, 60, Severity.Warning)]
    [InlineData(-40, null, 60, Severity.Warning)] // taken up is taken up, whatever the urine
    [InlineData(760, 0.0, 60, null)]
    [InlineData(740, 150.0, 60, null)]
    [InlineData(740, null, 60, Severity.Note)]
    [InlineData(100, 0.0, 12, null)] // an adult's line
    public void Too_little_taken_off_in_two_weeks_without_urine_is_said(int milliliters, double? urine, double age, Severity? expected)
    {
        var found = Of(age, 14, day => Plain(day) with
        {
            WrittenUltrafiltration = Volume.FromMilliliters(milliliters),
            Urine = urine is { } known && day % 7 == 0 ? Volume.FromMilliliters(known) : null,
        });
        Assert.Equal(expected, found?.Severity);
        if (expected == Severity.Warning)
        {
            Assert.Contains(milliliters < 0 ? "less than went in, about 40 mL a day" : "came to about 740 mL a day in the last two weeks (14 days with enough written down)", found!.Message, StringComparison.Ordinal);
        }
    }

    // 0.04 kg a day are 1.1 kg in 28 days, less than is a finding by itself (2 kg, choice); a scatter of 0.1 kg about it. Beside too little taken off both are told together.
    [Theory]
    [InlineData(0.04, true)]
    [InlineData(0, false)]
    [InlineData(-0.04, false)]
    public void A_slow_rise_of_weight_is_told_with_what_is_not_taken_off(double perDay, bool isTold)
    {
        var found = Of(60, 28, day => Plain(day) with { WrittenUltrafiltration = Volume.FromMilliliters(400), Urine = default(Volume), Weight = Mass.FromKilograms(70 + perDay * day + (day % 2 == 0 ? 0.1 : -0.1)) });
        Assert.Equal(isTold, found!.Message.Contains("Empty weight rises by 1.1 kg in four weeks beside it: together compatible with fluid that builds up.", StringComparison.Ordinal));
        Assert.Equal(isTold, !found.Message.Contains("it may be as it should", StringComparison.Ordinal));
    }

    [Fact]
    public void A_day_that_takes_up_what_the_night_took_off_counts()
    {
        // 900 mL a night, and 1.7 L in the evening of the 2.0 L that went in: 600 mL a day. Without the initial drain the day is not known, and nothing is said of it.
        Assert.Equal(Severity.Warning, Of(60, 14, day => Wet(day) with { InitialDrain = Volume.FromMilliliters(1700) })?.Severity);
        Assert.Null(Of(60, 14, day => Wet(day) with { InitialDrain = Volume.FromMilliliters(1900) }));
        Assert.Null(Of(60, 14, Wet));

        // Seven days are enough, six are not.
        Assert.NotNull(Of(60, 7, day => Plain(day) with { WrittenUltrafiltration = Volume.FromMilliliters(300), Urine = default(Volume) }));
        Assert.Null(Of(60, 6, day => Plain(day) with { WrittenUltrafiltration = Volume.FromMilliliters(300), Urine = default(Volume) }));

        // 900 mL every other night, and no treatment between, is 450 mL a day.
        Assert.Contains("about 450 mL a day", Of(60, 14, day => Plain(day) with { IsSkipped = day % 2 == 1, Urine = default(Volume) })!.Message, StringComparison.Ordinal);

        static NightRecord Wet(int day) => Plain(day) with { Regimen = WetDay, WrittenUltrafiltration = Volume.FromMilliliters(900), Urine = default(Volume) };
    }

    // Nine days at 900 mL. Below 100 is as good as none; a second such value is a fall already, a value of 150 is not yet one.
    [Theory]
    [InlineData("900 900 50", true)]
    [InlineData("900 900 150", false)]
    [InlineData("900 50 50", false)]
    [InlineData("50 900 900", false)]
    public void One_urine_of_next_to_nothing_is_said_and_not_called_a_fall(string last, bool isSaid)
    {
        int[] values = [.. Enumerable.Repeat(900, 9), .. last.Split(' ').Select(int.Parse)];
        var said = Review(values.Length, day => Plain(day) with { Urine = Volume.FromMilliliters(values[day]) }).Findings;
        Assert.Equal(isSaid, said.Any(finding => finding.Code == "record-urine-once"));
    }

    // 70 kg for two weeks. 2 kg in two days are fluid, a scale or clothes (the distance from a target that counts, a choice); one day may be a slip.
    [Theory]
    [InlineData(73.2, 74.5, true)]
    [InlineData(72.0, 72.0, true)]
    [InlineData(70.0, 73.9, false)]
    [InlineData(70.0, 74.5, true)] // one of two may be a slip, and from 4 kg on is said all the same (choice)
    [InlineData(71.5, 71.9, false)]
    public void Kilograms_of_two_days_are_said(double before, double last, bool isSaid)
    {
        var said = Review(16, day => Plain(day) with { Weight = Mass.FromKilograms(day < 14 ? 70 : day == 14 ? before : last) }).Findings;
        Assert.Equal(isSaid, said.Any(finding => finding.Code == "record-weight-step"));
    }

    [Fact]
    public void A_level_far_from_the_test_since_the_book_begins_is_said()
    {
        // The book of a person whose nights return 1000 mL less than the membrane of the test from the first on: no change, and what is expected has followed. As the fit has it, nothing is said.
        var (person, truth, ensemble) = VirtualPerson.Of(2026, 3);
        var nights = new VirtualBook(person, truth, DryDay).Write(5, 60, 150, BookKind.NightAlone);
        Assert.Null(Said(0));
        Assert.Contains(" less a night than the test lets expect", Said(1000), StringComparison.Ordinal);
        Assert.Contains(" more a night than the test lets expect", Said(-1000), StringComparison.Ordinal);

        string? Said(double less) => RecordReview.Run(person, ensemble, RecordBook.From([.. nights.Select(night => night with { WrittenUltrafiltration = night.WrittenUltrafiltration - Volume.FromMilliliters(less) })], "virtual"), new() { Tested = DialysisSolution.Glucose227 })
            .Findings.SingleOrDefault(finding => finding.Code == "record-level-off-test")?.Message;
    }

    // Blood-glucose meters err for two weeks after the last icodextrin (as on every page with icodextrin); a page shows values of five weeks.
    [Theory]
    [InlineData(0, "Icodextrin is in use: some blood-glucose meters")]
    [InlineData(20, "Icodextrin was in use until 2025-01-31: some blood-glucose meters")]
    [InlineData(45, null)]
    public void Icodextrin_of_long_ago_is_not_in_use(int daysAgo, string? begins)
    {
        var nights = Enumerable.Range(0, 31 + daysAgo).Select(day => Plain(day) with { DayFluid = new(day <= 30 ? DialysisSolution.Icodextrin : DialysisSolution.Glucose227, []) });
        var (person, _, ensemble) = VirtualPerson.Of(2026, 3);
        var said = RecordReview.Run(person, ensemble, RecordBook.From([.. nights], "virtual")).Findings.SingleOrDefault(finding => finding.Code == "record-icodextrin-meter")?.Message;
        Assert.Equal(begins, said?[..Math.Min(said.Length, begins?.Length ?? 0)]);
    }

    [Fact]
    public void What_the_sheet_has_no_room_to_draw_is_named()
    {
        // Ten remarks of danger take the sheet: what is left for a picture is less than a panel.
        var (person, truth, ensemble) = VirtualPerson.Of(2026, 3);
        var nights = new VirtualBook(person, truth, WetDay).Write(5, 60, 150, BookKind.WithCycles);
        string Page(string remark) => RecordPage.Of(RecordReview.Run(person, ensemble, RecordBook.From([.. nights.Select((night, t) => t < nights.Count - 1 ? night : night with
        {
            Effluent = remark.Length > 0 ? EffluentLook.Cloudy : EffluentLook.Clear,
            TemperatureCelsius = remark.Length > 0 ? 39 : 36.5,
            BloodGlucose = Concentration.FromMillimolesPerLiter(remark.Length > 0 ? 28 : 6),
            Sitting = BloodPressure.FromMillimetersOfMercury(remark.Length > 0 ? 80 : 130, 50),
            Remark = remark,
        })], "virtual")));
        Assert.DoesNotContain("Not drawn", Page(""), StringComparison.Ordinal);
        Assert.Contains(
            "Not drawn, since the sheet has no room: ultrafiltration of the night, initial drain, average dwell.",
            Page("short of breath; pain on filling; exit site red with pus; vomiting; " + string.Concat(Enumerable.Repeat("unwell and cannot say why; ", 30))),
            StringComparison.Ordinal);
    }

    private static NightRecord Plain(int day) => new()
    {
        Date = new DateOnly(2025, 1, 1).AddDays(day),
        Row = day + 2,
        Regimen = DryDay,
        NightFluid = new(DialysisSolution.Glucose227, []),
        WrittenUltrafiltration = Volume.FromMilliliters(900),
        Counts = UltrafiltrationCount.Night,
    };

    private static Finding? Of(double age, int days, Func<int, NightRecord> night) => Review(days, night, age).Findings.SingleOrDefault(finding => finding.Code == "record-removal-low");

    private static RecordReview Review(int days, Func<int, NightRecord> night, double age = 60)
    {
        var (person, _, ensemble) = VirtualPerson.Of(2026, 3);
        return RecordReview.Run(person with { AgeYears = age }, ensemble, RecordBook.From([.. Enumerable.Range(0, days).Select(night)], "virtual"));
    }
}
