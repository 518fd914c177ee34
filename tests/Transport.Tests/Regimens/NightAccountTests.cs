using FsCheck;
using FsCheck.Xunit;
using static Transport.Tests.Regimens.RegimenTests;

namespace Transport.Tests.Regimens;

/// <summary>
/// What a record of a night says and what it means: the sums of a written night, and what a simulated one would have in the book. Sums of whole mL
/// and minutes are exact; 1e-9 leaves room for rounding only.
/// </summary>
public sealed class NightAccountTests
{
    private const double Rounding = 1e-9;

    private static readonly DialysisSolution Weak = DialysisSolution.Glucose136;

    private static readonly ThreePoreMembrane Membrane = ReferenceMembranes.MeanIncidentAdult().ScaledTo(Patient.Example.BodySurface);

    // The worked book of the arithmetic in docs/concepts/regimens.md (computed by hand): 2 L stayed in, five fills of 2 L.
    private static readonly NightAccount Written = new(
        new[] { (2_090, 71), (2_120, 75), (2_150, 76), (2_160, 78), (2_180, 78) }.Select(cycle =>
            new CycleAccount(Milliliters(2_000), Milliliters(cycle.Item1))
            {
                DwellTime = TimeSpan.FromMinutes(cycle.Item2),
                PlannedDwellTime = TimeSpan.FromMinutes(78),
            }))
    {
        InitialDrain = Milliliters(2_350),
        DayFilled = Milliliters(2_000),
    };

    [Fact]
    public void The_worked_book_adds_up()
    {
        // Day 2350 − 2000 = 350; night 2090 + 2120 + 2150 + 2160 + 2180 − 10,000 = 700; together 1050.
        Assert.Equal(350, Written.DayUltrafiltration!.Value.Milliliters, Rounding);
        Assert.Equal(700, Written.NightUltrafiltration.Milliliters, Rounding);
        Assert.Equal(1_050, Written.Ultrafiltration!.Value.Milliliters, Rounding);
        Assert.Equal(2_350 / 2_000.0, Written.InitialDrainShare!.Value, Rounding);

        // Planned 5 × 78 = 390 min, done 378: 12 lost, none added, 75.6 on average.
        Assert.Equal(390, Written.PlannedDwellTime!.Value.TotalMinutes, Rounding);
        Assert.Equal(12, Written.LostDwellTime!.Value.TotalMinutes, Rounding);
        Assert.Equal(-12, Written.DwellDeviation!.Value.TotalMinutes, Rounding);
        Assert.Equal(TimeSpan.Zero, Written.AddedDwellTime);
        Assert.Equal(75.6, Written.AverageDwellTime!.Value.TotalMinutes, Rounding);
        Assert.Equal([-90.0, -210, -360, -520, -700], Written.NotYetDrained.Select(volume => volume.Milliliters));
    }

    [Fact]
    public void A_total_counts_what_its_book_counts()
    {
        // The same night in three books. The third forgets to take the day fill away.
        Assert.Equal(700, Written.UltrafiltrationCountedAs(UltrafiltrationCount.Night)!.Value.Milliliters, Rounding);
        Assert.Equal(1_050, Written.UltrafiltrationCountedAs(UltrafiltrationCount.NightAndDay)!.Value.Milliliters, Rounding);
        Assert.Equal(3_050, Written.UltrafiltrationCountedAs(UltrafiltrationCount.NightAndInitialDrain)!.Value.Milliliters, Rounding);
        Assert.Throws<ArgumentOutOfRangeException>(() => Written.UltrafiltrationCountedAs((UltrafiltrationCount)9));
    }

    [Fact]
    public void What_was_not_written_down_stays_unknown()
    {
        var sparse = new NightAccount(
            new CycleAccount(Milliliters(2_000), Milliliters(2_100)) { DwellTime = TimeSpan.FromMinutes(90), PlannedDwellTime = TimeSpan.FromMinutes(80) },
            new CycleAccount(Milliliters(2_000), default));
        Assert.Equal(-1_900, sparse.NightUltrafiltration.Milliliters, Rounding);
        Assert.Null(sparse.Ultrafiltration);
        Assert.Null(sparse.DayUltrafiltration);
        Assert.Null(sparse.InitialDrainShare);
        Assert.Null(sparse.AverageDwellTime);
        Assert.Null(sparse.LostDwellTime);
        Assert.Null(sparse.DrainTime);
        Assert.Null(sparse.Cycles[0].CrossedMembrane);
        Assert.Null(sparse.UltrafiltrationCountedAs(UltrafiltrationCount.NightAndInitialDrain));

        var faster = new NightAccount(sparse.Cycles[0]);
        Assert.Equal(10, faster.AddedDwellTime!.Value.TotalMinutes, Rounding);
        Assert.Equal(TimeSpan.Zero, faster.LostDwellTime);
    }

    [Fact]
    public void What_cannot_be_does_not_get_in()
    {
        Assert.Throws<ArgumentException>(() => new NightAccount());
        Assert.Throws<ArgumentException>(() => Written with { Cycles = [] });
        Assert.Throws<ArgumentOutOfRangeException>(() => Written with { InitialDrain = Milliliters(-1) });
        Assert.Throws<ArgumentOutOfRangeException>(() => Written with { DayFilled = Milliliters(-1) });
        Assert.Throws<ArgumentOutOfRangeException>(() => new CycleAccount(default, Milliliters(1)));
        Assert.Throws<ArgumentOutOfRangeException>(() => new CycleAccount(Milliliters(1), Milliliters(-1)));
        Assert.Throws<ArgumentOutOfRangeException>(() => Written.Cycles[0] with { DwellTime = TimeSpan.FromMinutes(-1) });
        Assert.Throws<ArgumentOutOfRangeException>(() => Written.Cycles[0] with { LeftBehind = Milliliters(-1) });
        Assert.Equal(Written, Written with { Cycles = [.. Written.Cycles] });
        Assert.NotEqual(Written, Written with { Cycles = Written.Cycles[1..] });
    }

    [Fact]
    public void A_simulated_night_is_laid_out_as_its_record_would_be()
    {
        var outcome = Run(Night(5, Day(2_000)));
        var account = NightAccount.Of(outcome);
        Assert.Equal(outcome.NightUltrafiltration.Milliliters, account.NightUltrafiltration.Milliliters, Rounding * 1e4);
        Assert.Equal(outcome.DayUltrafiltration.Milliliters, account.DayUltrafiltration!.Value.Milliliters, Rounding * 1e4);
        Assert.Equal(outcome.EveningDrain, account.InitialDrain);
        Assert.Equal(outcome.Regimen.DwellTimes[0].TotalMinutes, account.Cycles[0].PlannedDwellTime!.Value.TotalMinutes, 1e-6);

        // The cavity is empty but for the residual after each drain: nothing is carried over but the small difference that it grew by.
        Assert.All(account.Cycles[1..], cycle => Assert.Equal(0, cycle.CarryOver!.Value.Milliliters, 1e-6));
    }

    [Fact]
    public void A_midday_exchange_is_in_the_day_and_a_dry_day_has_hardly_an_initial_drain()
    {
        var fill = new Exchange(Weak, Milliliters(2_000));
        Exchange[] night = [.. Enumerable.Repeat(fill, 4)];
        var midday = NightAccount.Of(Run(new(TimeSpan.FromHours(9), night, [fill, fill])));
        Assert.Equal(4_000, midday.DayFilled.Milliliters, Rounding * 1e4);
        Assert.True(midday.DayDrained > Milliliters(1_500));
        Assert.Null(midday.InitialDrainShare);

        var dry = NightAccount.Of(Run(Night(4)));
        Assert.Equal(0, dry.InitialDrain!.Value.Milliliters, 1e-6);
        Assert.Equal(0, dry.DayUltrafiltration!.Value.Milliliters, 1e-6);
    }

    [Fact]
    public void Fluid_left_behind_is_missed_in_one_cycle_and_found_in_the_next()
    {
        // The third drain ends at 1500 mL: some 700 mL too few there, and as many too many in the fourth cycle. What crosses the membrane hardly
        // differs from the undisturbed night: 10 mL for the fuller cavity (choice). Neighbors move against each other, as carry-over makes them.
        var plain = new Exchange(Weak, Milliliters(2_000));
        var undisturbed = NightAccount.Of(Run(new(TimeSpan.FromHours(9), [plain, plain, plain, plain, plain])));
        var account = NightAccount.Of(Run(
            new(TimeSpan.FromHours(9), [plain, plain, plain with { PartialDrain = new(Milliliters(1_500)) }, plain, plain])));
        var (third, fourth) = (account.Cycles[2], account.Cycles[3]);
        Assert.Equal(1_500, third.Drained.Milliliters, 1e-6);
        Assert.Equal(-third.CarryOver!.Value.Milliliters, fourth.CarryOver!.Value.Milliliters, 1e-6);
        Assert.True(third.CarryOver!.Value.Milliliters < -400);
        Assert.Equal(undisturbed.Cycles[2].CrossedMembrane!.Value.Milliliters, third.CrossedMembrane!.Value.Milliliters, 10.0);
        Assert.Equal(third.LeftBehind, fourth.CarriedIn);
        Assert.True(account.NotYetDrained[2] > undisturbed.NotYetDrained[2] + Milliliters(400));
    }

    [Fact]
    public void Slow_drains_lose_dwell_time_against_the_plan()
    {
        // Two slopes: the plan reckons with fill and residual; what came from the blood has to run out besides, and every dwell loses what the drain
        // before it took longer than planned: night of 108 min a cycle, 10 of them to fill. After a dry day the first cycle is short of
        // the residual, and its drain quicker. 2.27 % brings more than that.
        var drain = DrainProfile.TwoSlope(FlowRate.FromMillilitersPerMinute(200), FlowRate.FromMillilitersPerMinute(45), 0.8);
        var account = NightAccount.Of(Run(Regimen.Cycling(
            TimeSpan.FromHours(9), 5, Milliliters(2_000), DialysisSolution.Glucose227, null, RegimenSettings.Default with { Drain = drain })));
        var planned = 540.0 / 5 - 10 - account.Cycles[0].PlannedDwellTime!.Value.TotalMinutes;
        Assert.All(account.Cycles.Zip(account.Cycles.Skip(1)), pair => Assert.Equal(
            planned - pair.First.DrainTime!.Value.TotalMinutes, pair.Second.DwellDeviation!.Value.TotalMinutes, 1e-3));
        Assert.True(account.LostDwellTime > TimeSpan.FromMinutes(3));
        Assert.Equal(TimeSpan.Zero, account.AddedDwellTime);
        Assert.True(account.Cycles[1].DwellDeviation > account.Cycles[2].DwellDeviation);
    }

    [Fact]
    public void A_night_after_a_day_off_begins_with_an_empty_cavity()
    {
        var week = WeekSimulation.Run(Patient.Example, Membrane, RegimenWeek.OfNights(Night(4, Day(2_000)), 5));
        var accounts = NightAccount.Of(week);
        Assert.Equal(week.Days.Select(day => day is null), accounts.Select(account => account is null));
        for (var day = 0; day < 7; day++)
        {
            var before = (day + 6) % 7;
            if (accounts[day] is { } account)
            {
                Assert.Equal(week.EveningDrains[before], account.InitialDrain);
                Assert.Equal(week.Days[before] is null ? 0 : 2_000, account.DayFilled.Milliliters, 1e-6);
                Assert.Equal(week.Days[before] is null, account.InitialDrain < Milliliters(1));
            }
        }

        // Over the week the books hold what the outcome says.
        var sum = accounts.Sum(account => account?.Ultrafiltration!.Value.Milliliters ?? 0);
        var afterDaysOff = Enumerable.Range(0, 7).Where(day => accounts[day] is null).Sum(day => week.EveningDrains[(day + 6) % 7].Milliliters - 2_000);
        Assert.Equal(week.Ultrafiltration.Milliliters, sum + afterDaysOff, 1e-6);
    }

    [Fact]
    public void Of_a_single_night_nothing_is_known_before()
    {
        var options = RegimenOptions.Default with { FirstNight = ResidualFluid.Used(Milliliters(250), Patient.Example.Plasma) };
        Assert.Null(NightAccount.Of(RegimenSimulation.Run(Patient.Example, Membrane, Night(4, Day(2_000)), options)).InitialDrain);
    }

    [Property(MaxTest = 20)]
    public bool Whatever_the_drains_what_is_written_is_what_crossed_and_what_was_carried(NonEmptyArray<PositiveInt> draws)
    {
        // Σ infused + ultrafiltration = Σ drained, and per cycle D − F = crossed + carried in − left; carry-over telescopes over the night.
        var outcome = Run(new(
            TimeSpan.FromHours(11),
            draws.Get.Take(8).Select(draw => new Exchange(Weak, Milliliters(300 + draw.Get * 97 % 2_000))
            {
                PartialDrain = draw.Get % 3 == 0 ? new(Milliliters(draw.Get * 31 % 1_500)) : null,
            })));
        var account = NightAccount.Of(outcome);
        var carried = account.Cycles.Sum(cycle => cycle.CarryOver!.Value.Milliliters);
        var ends = (account.Cycles[0].CarriedIn - account.Cycles[^1].LeftBehind)!.Value.Milliliters;
        return Math.Abs(carried - ends) <= 1e-9 * outcome.FluidUsed.Milliliters
            && Math.Abs((account.NightFilled + account.NightUltrafiltration - account.NightDrained).Milliliters) <= 1e-9 * outcome.FluidUsed.Milliliters
            && account.Cycles.Zip(account.Cycles.Skip(1)).All(pair => pair.First.LeftBehind == pair.Second.CarriedIn);
    }

    private static RegimenOutcome Run(Regimen regimen) => RegimenSimulation.Run(Patient.Example, Membrane, regimen);
}
