using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace Transport.Tests.Regimens;

/// <summary>The arithmetic of a prescription. Its identities are exact, so 1e-9 relative only leaves room for rounding.</summary>
public sealed class RegimenTests
{
    private const double Rounding = 1e-9;

    private static readonly DialysisSolution Weak = DialysisSolution.Glucose136;

    [Theory]
    [InlineData(540, 12_000, 2_000, 2_000, 200, 20, 5, 78.0, 0)]
    [InlineData(480, 15_000, 0, 2_500, 208.333333333333333, 18, 6, 50.0, 0)]
    [InlineData(540, 13_000, 2_000, 2_000, 200, 20, 5, 78.0, 1_000)]
    public void Fluid_in_all_makes_whole_cycles_and_leaves_the_spare(
        double night, double fluid, double day, double fill, double flow, double drain, int cycles, double dwell, double spare)
    {
        var regimen = Regimen.OfFluidInAll(
            TimeSpan.FromMinutes(night), Milliliters(fluid), Milliliters(fill), Weak, SpareFluid.Leave, Day(day), Settings(flow, drain));
        Assert.Equal(cycles, regimen.Cycles);
        Assert.All(regimen.DwellTimes, time => Assert.InRange(time.TotalMinutes, dwell * (1 - Rounding), dwell * (1 + Rounding)));
        Assert.Equal(spare, regimen.SpareOf(Milliliters(fluid)).Milliliters, Rounding * fluid);
    }

    [Fact]
    public void The_spare_can_be_shared_out()
    {
        // 13 L with 2 L for the day: five cycles of 2.2 instead of 2.0 L.
        var regimen = Regimen.OfFluidInAll(
            TimeSpan.FromHours(9), Milliliters(13_000), Milliliters(2_000), Weak, SpareFluid.Share, Day(2_000), Settings(200, 20));
        Assert.Equal(5, regimen.Cycles);
        Assert.Equal(2_200, regimen.VolumePerCycle!.Value.Milliliters, Rounding);
        Assert.Equal(13_000, regimen.FluidInAll.Milliliters, Rounding);
    }

    [Fact]
    public void Varied_cycles_share_what_the_others_leave()
    {
        // 2 × (7.5 + 45 + 12) + 3 × (15 + d + 12) = 540 gives d = 110.
        var regimen = Varied();
        Assert.Equal([45, 45, 110, 110, 110], regimen.DwellTimes.Select(time => time.TotalMinutes));
        Assert.Null(regimen.VolumePerCycle);
    }

    [Fact]
    public void A_night_too_short_is_refused_with_the_shortest_that_works()
    {
        // Fills of 10 and drains of 20 min: 150 min for five cycles, so 120 min leave −6 min each; with 20 min of dwell, 250 min.
        var thrown = Assert.Throws<RegimenException>(() =>
            Regimen.Cycling(TimeSpan.FromMinutes(120), 5, Milliliters(2_000), Weak, settings: Settings(200, 20)));
        var finding = Assert.Single(thrown.Findings);
        Assert.Equal("night-too-short", finding.Code);
        Assert.Contains("120 min", finding.Message, StringComparison.Ordinal);
        Assert.Contains("5 cycles", finding.Message, StringComparison.Ordinal);
        Assert.Contains("250 min", finding.Message, StringComparison.Ordinal);
        Assert.Equal(20, Regimen.Cycling(TimeSpan.FromMinutes(250), 5, Milliliters(2_000), Weak, settings: Settings(200, 20)).DwellTimes[0].TotalMinutes);
    }

    [Fact]
    public void Everything_that_is_wrong_is_named_at_once()
    {
        var settings = RegimenSettings.Default with { LargestFill = Milliliters(2_500) };
        var thrown = Assert.Throws<RegimenException>(() =>
            Regimen.Cycling(TimeSpan.FromHours(25), 0, Milliliters(-100), Weak, Day(3_000), settings));
        Assert.Equal(
            ["cycles", "day-fill-above-limit", "fill-not-positive", "night-too-long"], thrown.Findings.Select(finding => finding.Code).Order());

        thrown = Assert.Throws<RegimenException>(() =>
            Regimen.Cycling(TimeSpan.FromHours(1), 5, Milliliters(3_000), Weak, Day(3_000), settings));
        Assert.Equal(
            ["day-fill-above-limit", "fill-above-limit", "night-too-short"], thrown.Findings.Select(finding => finding.Code).Order());
        Assert.All(thrown.Findings, finding => Assert.Contains(finding.Message, thrown.Message, StringComparison.Ordinal));
    }

    [Fact]
    public void What_cannot_be_a_number_of_anything_does_not_get_in()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Milliliters(double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Exchange(Weak, Milliliters(0)));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Exchange(Weak, Milliliters(2_000), TimeSpan.Zero));
        Assert.Throws<ArgumentOutOfRangeException>(() => new DayFill(Weak, Milliliters(-1)));
        Assert.Throws<ArgumentOutOfRangeException>(() => RegimenSettings.Default with { Residual = Milliliters(0) });
        Assert.Throws<RegimenException>(() => Regimen.Cycling(TimeSpan.Zero, 1, Milliliters(2_000), Weak));
    }

    [Fact]
    public void A_short_dwell_is_a_caution_and_not_a_refusal()
    {
        // 12 cycles of 22 min leave 276 min of 540: 23 min each. 13 leave 19.5.
        Assert.Empty(Night(12).Findings);
        var finding = Assert.Single(Night(13).Findings);
        Assert.Equal((Severity.Warning, "short-dwell"), (finding.Severity, finding.Code));
    }

    [Fact]
    public void An_edit_that_makes_it_impossible_is_found_and_not_simulated()
    {
        var edited = Night(6) with { NightLength = TimeSpan.FromHours(2) };
        Assert.Contains(edited.Findings, finding => finding.Code == "night-too-short");
        Assert.Throws<RegimenException>(() => RegimenSimulation.Run(Patient.Example, ReferenceMembranes.Textbook, edited));
    }

    [Fact]
    public void Edits_do_not_touch_the_original_and_equal_content_is_equal()
    {
        var regimen = Night(6);
        var longer = regimen with { NightLength = TimeSpan.FromHours(10) };
        Assert.Equal(68, regimen.DwellTimes[0].TotalMinutes, Rounding);
        Assert.Equal(78, longer.DwellTimes[0].TotalMinutes, Rounding);
        Assert.Equal(regimen, longer with { NightLength = TimeSpan.FromHours(9) });
        Assert.Equal(Night(6), Night(6));
        Assert.NotEqual(Night(6), Night(5));
    }

    [Fact]
    public void It_describes_itself_in_plain_words()
    {
        var regimen = Regimen.Cycling(
            TimeSpan.FromMinutes(510), 5, Milliliters(2_000), Weak, new(DialysisSolution.Glucose227, Milliliters(2_000)));
        Assert.Equal("8 h 30 min at night: 5 × 2.0 L glucose 1.36 %; day: 2.0 L glucose 2.27 %", regimen.Describe());
        Assert.Equal(
            "9 h at night: 2 × 1.5 L glucose 1.36 % (dwell 45 min), 3 × 3.0 L glucose 1.36 %; day: dry", Varied().ToString());
    }

    [Theory]
    [InlineData(2_200, 150, 40, 17.7)]
    [InlineData(2_200, 200, 45, 14.1)]
    [InlineData(2_200, 250, 50, 11.8)]
    [InlineData(2_700, 150, 40, 22.9)]
    [InlineData(2_700, 200, 45, 18.4)]
    [InlineData(2_700, 250, 50, 15.4)]
    public void A_drain_of_two_slopes_takes_its_time(double start, double fast, double slow, double minutes)
    {
        // Down to 200 mL with the break at a fifth of the start; computed by hand to 0.1 min.
        var drain = DrainProfile.TwoSlope(FlowRate.FromMillilitersPerMinute(fast), FlowRate.FromMillilitersPerMinute(slow), 0.8);
        Assert.Equal(minutes, drain.TimeFor(Milliliters(start), Milliliters(200)).TotalMinutes, 0.05);
    }

    [Property(MaxTest = 200)]
    public Property The_parts_of_the_night_add_up_to_its_length(PositiveInt cycles, PositiveInt fill, PositiveInt night)
    {
        var length = TimeSpan.FromMinutes(120 + night.Get % 600);
        var volume = Milliliters(500 + fill.Get % 2500);
        var count = 1 + cycles.Get % 10;
        var busy = count * (volume.Milliliters / 200 + 12);
        return (busy < length.TotalMinutes).Implies(() =>
        {
            var regimen = Regimen.Cycling(length, count, volume, Weak);
            var sum = regimen.DwellTimes.Sum(time => time.TotalMinutes) + busy;
            return Math.Abs(sum - length.TotalMinutes) <= 1e-6;
        });
    }

    internal static Volume Milliliters(double value) => Volume.FromMilliliters(value);

    internal static DayFill? Day(double milliliters) => milliliters == 0 ? null : new(Weak, Milliliters(milliliters));

    internal static Regimen Night(int cycles, DayFill? day = null, RegimenSettings? settings = null) =>
        Regimen.Cycling(TimeSpan.FromHours(9), cycles, Milliliters(2_000), Weak, day, settings);

    internal static RegimenSettings Settings(double flow, double drain) => new()
    {
        FillFlow = FlowRate.FromMillilitersPerMinute(flow),
        Drain = DrainProfile.Within(TimeSpan.FromMinutes(drain)),
    };

    private static Regimen Varied()
    {
        var brief = new Exchange(Weak, Milliliters(1_500), TimeSpan.FromMinutes(45));
        var large = new Exchange(Weak, Milliliters(3_000));
        return new(TimeSpan.FromHours(9), [brief, brief, large, large, large]);
    }
}
