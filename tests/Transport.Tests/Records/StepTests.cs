using Transport.Studies;
using static Transport.Tests.Records.Books;

namespace Transport.Tests.Records;

/// <summary>
/// Two last days beside the two weeks before: somebody who dries out or fills up within a week. Weights and pressures are invented; the limits are choices of this project
/// (2 kg of an adult, 30 mmHg), checked by hand in each line.
/// </summary>
public sealed class StepTests
{
    // 16 days at 70 kg and 132 mmHg, then eight that go down (or up) in equal steps. Of days 7 to 20 before the last three the middle is still 70.0 kg.
    [Theory]
    [InlineData(-3.5, -35, "below the 70.0 kg", "fallen beside it, from about 132 to about 99 mmHg")]
    [InlineData(3.5, 35, "above the 70.0 kg", "risen beside it, from about 132 to about 165 mmHg")]
    [InlineData(-3.5, 0, "below the 70.0 kg", null)]
    [InlineData(-3.5, 35, "below the 70.0 kg", null)] // the pressure has its own sentence
    [InlineData(-1.5, -10, null, null)]
    public void Drying_out_and_filling_up_within_a_week_are_said(double kilograms, double pressure, string? weight, string? beside)
    {
        var said = Of(70, 60, day => (kilograms * Share(day), pressure * Share(day)));
        var step = said.SingleOrDefault(finding => finding.Code == "record-weight-step");
        Assert.Equal(weight is not null, step is not null);
        if (weight is not null)
        {
            Assert.Contains(weight, step!.Message, StringComparison.Ordinal);
            Assert.Contains(kilograms < 0 ? "dried out" : "fluid that has built up", step.Message, StringComparison.Ordinal);
            Assert.Equal(beside is not null, step.Message.Contains(beside ?? "beside it", StringComparison.Ordinal));
        }

        Assert.Equal(Math.Sign(pressure) * Math.Sign(kilograms) < 0, said.Any(finding => finding.Code == "record-pressure-step"));

        static double Share(int day) => Math.Clamp((day - 15) / 8.0, 0, 1);
    }

    // Without a step of weight: 30 mmHg on both last days, and not on one of them, nor 29, nor to either side of what was usual.
    [Theory]
    [InlineData(-30, -34, "30 or more below the 132 of the two weeks before")]
    [InlineData(31, 40, "31 or more above the 132 of the two weeks before")]
    [InlineData(-29, -40, null)]
    [InlineData(0, -45, null)] // one of two: from 60 on
    [InlineData(-35, 35, null)]
    public void A_pressure_that_is_another_on_two_days_is_said(double before, double last, string? expected)
    {
        var said = Of(70, 60, day => (0, day == 23 ? last : day == 22 ? before : 0)).SingleOrDefault(finding => finding.Code == "record-pressure-step");
        Assert.Equal(expected is null, said is null);
        Assert.Contains(expected ?? "", said?.Message ?? "", StringComparison.Ordinal);
    }

    // A step of ten days is among its own two weeks, and not among the four before these (46 days in all). One value alone has to be 3 kg off, or 4 beside another that is not (choices); 1.2 kg and 20 mmHg that
    // go one way are half of each limit.
    [Theory]
    [InlineData(10, -3.5, 0, "3.5 kg or more below the 70.0 kg of the four weeks that ended two weeks ago")]
    [InlineData(14, 3.5, 0, "3.5 kg or more above the 70.0 kg of the four weeks that ended two weeks ago")]
    [InlineData(1, 5, 0, "The last empty weight is 5.0 kg above the 70.0 kg")]
    [InlineData(1, 3.5, 0, null)]
    [InlineData(5, -1.2, -20, "fallen beside it, from about 132 to about 112 mmHg")]
    [InlineData(5, -1.2, 20, null)]
    [InlineData(5, -1.2, -10, null)]
    public void What_lasts_longer_is_not_quieter(int days, double kilograms, double pressure, string? expected)
    {
        var said = Of(70, 60, day => day >= 46 - days ? (kilograms, pressure) : (0, 0), 46);
        Assert.Equal(expected is not null, said.Any(finding => finding.Code == "record-weight-step"));
        Assert.Contains(expected ?? "", said.SingleOrDefault(finding => finding.Code == "record-weight-step")?.Message ?? "", StringComparison.Ordinal);

        // A line through a step is longer than the step: one of the two is said.
        Assert.Equal(expected is null && said.Any(finding => finding.Code == "record-weight-against-uf"), said.Any(finding => finding.Code == "record-weight-against-uf"));
    }

    // 40 and 130 per minute (early-warning scores, memory), of adults and of the last three days.
    [Theory]
    [InlineData(40, 60, 0, true)]
    [InlineData(41, 60, 0, false)]
    [InlineData(129, 60, 0, false)]
    [InlineData(130, 60, 3, true)]
    [InlineData(130, 60, 4, false)]
    [InlineData(130, 5, 0, false)]
    public void A_pulse_that_does_not_wait_is_said(double pulse, double age, int daysAgo, bool isSaid)
    {
        var (person, _, ensemble) = VirtualPerson.Of(2026, 3);
        var said = Review(person with { AgeYears = age }, ensemble, [.. Enumerable.Range(0, 10).Select(day => new NightRecord { Date = new DateOnly(2026, 2, 1).AddDays(day), Row = day + 2, PulsePerMinute = day == 9 - daysAgo ? pulse : 72 })]).Findings;
        Assert.Equal(isSaid, said.Any(finding => finding.Code == "record-pulse-now"));
    }

    // Weighed once a week: three before are enough, and 3 kg of one are said.
    [Theory]
    [InlineData(3.1, true)]
    [InlineData(2.5, false)]
    public void Weights_of_once_a_week_show_a_step_too(double kilograms, bool isSaid)
    {
        var (person, _, ensemble) = VirtualPerson.Of(2026, 3);
        var said = Review(person with { AgeYears = 60, Weight = Mass.FromKilograms(70) }, ensemble, [.. Enumerable.Range(0, 29).Select(day => new NightRecord
        {
            Date = new DateOnly(2026, 2, 1).AddDays(day),
            Row = day + 2,
            Weight = day % 7 != 0 ? null : Mass.FromKilograms(70 + (day == 28 ? kilograms : 0)),
        })]).Findings;
        Assert.Equal(isSaid, said.Any(finding => finding.Code == "record-weight-step"));
    }

    // 2 kg of 70 are 0.457 kg of 16: the same share of the body. Limits of pressure are those of adults.
    [Theory]
    [InlineData(0.5, true)]
    [InlineData(-0.5, true)]
    [InlineData(0.4, false)]
    public void Kilograms_of_a_child_are_those_of_its_body(double kilograms, bool isSaid)
    {
        var said = Of(16, 5, day => day >= 22 ? (kilograms, -40) : (0, 0));
        Assert.Equal(isSaid, said.Any(finding => finding.Code == "record-weight-step"));
        Assert.DoesNotContain(said, finding => finding.Code == "record-pressure-step");
    }

    // Somebody else's book, or pounds from its first line on: a quarter more or less than the sheet has (choice).
    [Theory]
    [InlineData(154, true)]
    [InlineData(52, true)]
    [InlineData(87, false)]
    [InlineData(53, false)]
    public void A_book_whose_weights_are_not_those_of_the_test_is_said(double kilograms, bool isSaid) =>
        Assert.Equal(isSaid, Of(70, 60, _ => (kilograms - 70, 0)).Any(finding => finding.Code == "record-weight-off-test"));

    private static IReadOnlyList<Finding> Of(double kilograms, double age, Func<int, (double Kilograms, double Systolic)> change, int days = 24)
    {
        var (person, _, ensemble) = VirtualPerson.Of(2026, 3);
        return Review(person with { AgeYears = age, Weight = Mass.FromKilograms(kilograms) }, ensemble, [.. Enumerable.Range(0, days).Select(day => new NightRecord
        {
            Date = new DateOnly(2026, 2, 1).AddDays(day),
            Row = day + 2,
            Weight = Mass.FromKilograms(kilograms + change(day).Kilograms),
            Sitting = BloodPressure.FromMillimetersOfMercury((int)Math.Round(132 + change(day).Systolic), 60),
        })]).Findings;
    }
}
