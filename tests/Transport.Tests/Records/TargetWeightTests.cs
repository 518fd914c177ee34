using System.Globalization;

namespace Transport.Tests.Records;

/// <summary>The dated target weight of a book, and empty weight beside it. Books are invented, one row a day from 2026-02-01.</summary>
public sealed class TargetWeightTests
{
    [Fact]
    public void A_target_is_written_once_with_its_date_and_holds_until_another_is_written()
    {
        var nights = Books.Read("date;target weight (kg);target date\n2026-02-01;;\n2026-02-02;68;2026-01-10\n2026-02-03;;\n2026-02-04;67,5;\n2026-02-05;67.5;2026-02-04").Nights;
        Assert.Equal([null, 68, 68, 67.5, 67.5], nights.Select(night => night.TargetWeight?.Kilograms));
        Assert.Equal([null, new DateOnly(2026, 1, 10), new DateOnly(2026, 1, 10), null, new DateOnly(2026, 2, 4)], nights.Select(night => night.TargetWeightOn));
    }

    [Fact]
    public void A_date_of_a_target_that_can_be_read_two_ways_is_a_finding_and_the_target_stays()
    {
        var book = Books.Read("date;target weight (kg);target date\n2026-02-02;68;02/03/2026");
        Assert.Equal("not-a-date", Assert.Single(book.Findings).Code);
        Assert.Equal((68, null), (book.Nights[0].TargetWeight?.Kilograms, book.Nights[0].TargetWeightOn));
    }

    // No book is of the years before 1900 and after 2200 (choice).
    [Theory]
    [InlineData("9999-01-10")]
    [InlineData("0206-01-10")]
    public void A_target_of_a_year_far_from_ours_is_a_finding_and_has_no_date(string date)
    {
        var book = Books.Read($"date;target weight (kg);target date\n2026-02-02;68;{date}");
        Assert.Equal(("not-a-date", Severity.Warning, 2, date), Assert.Single(book.Findings) is var found ? (found.Code, found.Severity, found.Row!.Value, found.Found) : default);
        Assert.Null(book.Nights[0].TargetWeightOn);
    }

    // 2 kg and 3 months (choices): 90 days before 28 February 2026 is 30 November 2025; three months of 30.44 days are 91.3.
    [Theory]
    [InlineData(69.9, "2026-01-10", null, "")]
    [InlineData(70.1, "2026-01-10", "record-weight-off-target", "2.1 kg above the target weight of 68.0 kg of 2026-01-10.")]
    [InlineData(65.9, "2026-01-10", "record-weight-off-target", "2.1 kg below the target weight of 68.0 kg of 2026-01-10.")]
    [InlineData(68.0, "2025-11-30", null, "")]
    [InlineData(68.0, "2025-11-28", "record-target-old", "target weight of 68.0 kg of 2025-11-28, older than 3 months: ask whether it still holds.")]
    [InlineData(68.0, "", "record-target-old", "target weight of 68.0 kg without a date: ask of when it is and whether it holds.")]
    [InlineData(71.0, "2025-11-28", "record-weight-off-target", "3.0 kg above the target weight of 68.0 kg of 2025-11-28, older than 3 months: ask whether it still holds.")]
    public void Distance_and_age_of_the_target_are_said_beyond_their_limits(double weight, string set, string? code, string words)
    {
        var said = Of(_ => weight, $"68;{set}").Where(found => found.Code.Contains("target", StringComparison.Ordinal)).ToList();
        Assert.Equal(code, said.SingleOrDefault()?.Code);
        Assert.EndsWith(words, said.SingleOrDefault()?.Message ?? "", StringComparison.Ordinal);
    }

    [Fact]
    public void A_trend_of_weight_says_how_far_it_is_from_the_target_and_of_when_that_is()
    {
        // 0.1 kg a day from 68 kg: the median of the last seven of 28 days is that of the 25th, 70.4 kg.
        var trend = Of(day => 68 + 0.1 * day, "68;2025-08-01").Single(found => found.Code == "record-weight-against-uf").Message;
        Assert.EndsWith("It is about 70.4 kg, 2.4 kg above the target weight of 68.0 kg of 2025-08-01, older than 3 months: ask whether it still holds.", trend, StringComparison.Ordinal);
        Assert.EndsWith("Compare with the target weight and its date; the book has none.", Of(day => 68 + 0.1 * day, ";").Single(found => found.Code == "record-weight-against-uf").Message, StringComparison.Ordinal);
    }

    private static List<Finding> Of(Func<int, double> weight, string target)
    {
        var rows = Enumerable.Range(0, 28).Select(day => string.Create(
            CultureInfo.InvariantCulture, $"{new DateOnly(2026, 2, 1).AddDays(day):yyyy-MM-dd};{weight(day):0.00};{(day == 0 ? target : ";")}"));
        var nights = Books.Read(["date;weight (kg);target weight (kg);target date", .. rows]).Nights;
        return NurseFindings.Of(
            Patient.Example, nights, [.. nights.Select(night => new ReviewedNight { Record = night, EmptyWeight = night.Weight })], new NightResponse?[nights.Count], [], ReviewLimits.Default, 0, RecordBook.From(nights, "virtual"));
    }
}
