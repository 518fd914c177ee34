using System.Globalization;
using System.Text.RegularExpressions;

namespace Transport.Tests.Records;

/// <summary>Trends of weight and pressure, and what they are set beside.</summary>
public sealed class TrendTests
{
    private static readonly DateOnly First = new(2025, 1, 1);

    [Fact]
    public void The_error_of_a_slope_is_that_of_textbooks_where_days_do_not_resemble_their_neighbors()
    {
        // Least squares over n = 28 days in a row: SD √(12/(n(n² − 1))), 0.66 SD in 28 days (any textbook; computed by hand). Days that differ by +1 and −1 in turn have an SD of
        // √(28/26), and resemble their neighbors less than not at all, which widens nothing.
        var trend = Trend.Of(Enumerable.Range(0, 28).Select(day => (day, 50 + 0.5 * day + (day % 2 == 0 ? 1.0 : -1))), 28)!;
        Assert.Equal(0.5, trend.SlopePerDay, 0.01);
        Assert.Equal(0.655 * Math.Sqrt(28.0 / 26), 28 * trend.Error, 0.01);

        // Three days up and three days down: neighbors resemble each other by 0.3 or so, and the error grows by √((1 + r)/(1 − r)), a third.
        var runs = Trend.Of(Enumerable.Range(0, 28).Select(day => (day, 50 + 0.5 * day + (day / 3 % 2 == 0 ? 1.0 : -1))), 28)!;
        Assert.InRange(runs.Error / trend.Error, 1.25, 1.5);
        Assert.Null(Trend.Of(Enumerable.Range(0, 13).Select(day => (day, (double)day)), 28));
    }

    // By how much pressure changes in four weeks, how much days differ, and whether it is said: 15 mmHg and four errors (0.68 of what days differ) are the limits.
    [Theory]
    [InlineData(17, 3, "rises")]
    [InlineData(-17, 3, "falls")]
    [InlineData(13, 3, null)] // below 15 mmHg
    [InlineData(24, 10, null)] // below four errors of 6.8
    [InlineData(32, 10, "rises")]
    public void A_trend_of_pressure_is_said_beyond_its_limits_and_not_within(double inFourWeeks, double scatter, string? word)
    {
        var findings = Of(Nights(day => 140 + (day - 14) * inFourWeeks / 28 + (day % 2 == 0 ? scatter : -scatter)), slow: 0);
        if (word is null)
        {
            Assert.DoesNotContain(findings, found => found.Code == "record-pressure-trend");
            return;
        }

        var finding = Assert.Single(findings, found => found.Code == "record-pressure-trend");
        Assert.Equal(Severity.Warning, finding.Severity);
        Assert.StartsWith("Systolic pressure " + word, finding.Message, StringComparison.Ordinal);
        var said = double.Parse(Regex.Match(finding.Message, "by ([0-9]+) mmHg in four weeks").Groups[1].Value, CultureInfo.InvariantCulture);
        Assert.Equal(Math.Abs(inFourWeeks), said, 0.6 + 0.16 * scatter); // whole mmHg; +1 and −1 in turn have a slope of 0.155 in 28 days themselves
    }

    // Where the slow charts stand in their own limits, from −1 (a loss is signalled) to 1.
    [Theory]
    [InlineData(-0.9, "while nights return less than expected")]
    [InlineData(0, "while ultrafiltration is as expected")]
    [InlineData(0.9, "while nights return more than expected")]
    public void Pressure_is_set_beside_what_nights_return(double slow, string beside) =>
        Assert.Contains(beside, Of(Nights(day => 120 + day), slow).Single(found => found.Code == "record-pressure-trend").Message, StringComparison.Ordinal);

    [Theory]
    [InlineData(0.1, -0.9, "while nights return less than expected: fluid may be building up")]
    [InlineData(0.1, 0.9, "although nights return more than expected")]
    [InlineData(0.1, 0, "while ultrafiltration is as expected")]
    [InlineData(-0.1, 0.9, "more fluid may be taken off than is wanted")]
    [InlineData(-0.1, -0.9, "lost flesh can hide fluid")]
    [InlineData(-0.1, 0, "less fluid, or with lost flesh")]
    public void And_so_is_weight(double kilogramsADay, double slow, string beside)
    {
        var finding = Of(Nights(_ => 130, day => 70 + kilogramsADay * day), slow).Single(found => found.Code == "record-weight-against-uf");
        Assert.Contains(beside, finding.Message, StringComparison.Ordinal);
        Assert.Contains(kilogramsADay > 0 ? "rises by 2.8 kg" : "falls by 2.8 kg", finding.Message, StringComparison.Ordinal); // 28 days of 0.1 kg
        Assert.Contains("target weight", finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Days_without_a_cuff_are_left_out_and_thirteen_values_say_nothing()
    {
        var nights = Nights(day => 120 + day);
        Assert.Contains(Of([.. nights.Select((night, day) => day % 2 == 0 ? night : night with { Sitting = null })], 0), found => found.Code == "record-pressure-trend");
        Assert.DoesNotContain(Of([.. nights.Select((night, day) => day >= 15 ? night : night with { Sitting = null })], 0), found => found.Code == "record-pressure-trend");
    }

    private static List<NightRecord> Nights(Func<int, double> systolic, Func<int, double>? weight = null) => [.. Enumerable.Range(0, 28).Select(day => new NightRecord
    {
        Date = First.AddDays(day),
        Row = day + 2,
        Sitting = BloodPressure.FromMillimetersOfMercury((int)Math.Round(systolic(day)), 70),
        Weight = weight is null ? null : Mass.FromKilograms(weight(day)),
    })];

    private static List<Finding> Of(List<NightRecord> nights, double slow) => NurseFindings.Of(
        Patient.Example, nights, [.. nights.Select(night => new ReviewedNight { Record = night, EmptyWeight = night.Weight })], new NightResponse?[nights.Count], [], ReviewLimits.Default, slow, RecordBook.From(nights, "virtual"));
}
