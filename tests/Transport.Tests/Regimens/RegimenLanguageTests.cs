using static Transport.Tests.Regimens.RegimenTests;

namespace Transport.Tests.Regimens;

/// <summary>What else can be said of a regimen: dry nights, alternating weeks, drains that are ended, the line, the whole timeline.</summary>
public sealed class RegimenLanguageTests
{
    private static readonly DialysisSolution Weak = DialysisSolution.Glucose136;

    private static readonly ThreePoreMembrane Membrane = ReferenceMembranes.MeanIncidentAdult().ScaledTo(Patient.Example.BodySurface);

    [Fact]
    public void Exchanges_by_day_can_leave_the_night_dry()
    {
        // 7:00 fill 10 min, dwell to 12:00; drain 12 and fill 10 min, dwell to 17:00; dry from 17:12 on, 13 h 48 min.
        HandExchange[] two = [new(new(7, 0), Weak, Milliliters(2_000)), new(new(12, 0), Weak, Milliliters(2_000))];
        var regimen = Regimen.Ambulatory(two, dryFrom: new(17, 0));
        Assert.Equal(new TimeOnly(17, 12), regimen.NightStart);
        Assert.Empty(regimen.Night);
        Assert.Equal(13.8, regimen.NightLength.TotalHours, 1e-9);
        Assert.Equal([290.0, 278], regimen.DayDwellTimes.Select(time => Math.Round(time.TotalMinutes, 6)));
        Assert.Equal("2 exchanges by hand: by day 1 × 2.0 L glucose 1.36 % (dwell 4 h 50 min), 1 × 2.0 L glucose 1.36 % (dwell 4 h 38 min); dry for 13 h 48 min", regimen.Describe());
        var outcome = RegimenSimulation.Run(Patient.Example, Membrane, regimen);
        Assert.Empty(outcome.Cycles);
        Assert.Equal(4_000, outcome.FluidUsed.Milliliters, 1e-9);
        Assert.True(outcome.UreaDose.PeritonealKtOverV > 0.5);
        Assert.Equal(0, outcome.VolumeChange.Milliliters, 1e-5);
        Assert.Throws<ArgumentException>(() => NightAccount.Of(outcome));

        // One exchange is enough where the rest is dry, and drained later it is in contact for longer.
        var one = RegimenSimulation.Run(Patient.Example, Membrane, Regimen.Ambulatory(two[..1], dryFrom: new(12, 0)));
        Assert.Equal(0.5, one.UreaDose.PeritonealKtOverV / outcome.UreaDose.PeritonealKtOverV, 0.05);
        Assert.Throws<ArgumentException>(() => Regimen.Ambulatory(two[..1]));
        Assert.Throws<RegimenException>(() => new Regimen(TimeSpan.FromHours(9), [], (DayFill?)null));
        Assert.Equal("hand-exchanges-too-close", Assert.Single(Assert.Throws<RegimenException>(() => Regimen.Ambulatory(two, dryFrom: new(12, 5))).Findings).Code);
    }

    [Fact]
    public void Exchanges_by_hand_are_told_without_words_of_a_machine()
    {
        // 2 L in at 200 mL/min are 10 min, what is in drains before the next: 5 h, 5 h, 5 h and 9 h less that.
        HandExchange At(int hour, DialysisSolution bag) => new(new(hour, 0), bag, Milliliters(2_000));
        var hand = Regimen.Ambulatory([At(7, Weak), At(12, Weak), At(17, Weak), At(22, DialysisSolution.Glucose227)]);
        Assert.Equal("4 exchanges by hand: by day 3 × 2.0 L glucose 1.36 % (dwell 4 h 38 min); overnight 2.0 L glucose 2.27 % (dwell 8 h 38 min)", hand.Describe());
        Assert.Equal("7 days a week: " + hand.Describe(), RegimenWeek.OfNights(hand, 7).Describe());
        var weaker = Regimen.Ambulatory([At(7, Weak), At(12, Weak), At(17, Weak), At(22, Weak)]);
        Assert.Equal("overnight 2.0 L glucose 1.36 % instead of 2.0 L glucose 2.27 %", RegimenChange.Between(hand, weaker).Text);
        var machine = Night(5, Day(2_000));
        Assert.StartsWith("cycles at night instead of exchanges by hand; overnight glucose 1.36 % instead of glucose 2.27 %; by day 2.0 L ", RegimenChange.Between(hand, machine).Text, StringComparison.Ordinal);
        Assert.StartsWith("exchanges by hand instead of cycles at night; overnight glucose 2.27 % instead of glucose 1.36 %; ", RegimenChange.Between(machine, hand).Text, StringComparison.Ordinal);
        Assert.Equal("as now", RegimenChange.Between(hand, hand).Text);
        var late = Regimen.Ambulatory([At(7, Weak), At(12, Weak), At(17, Weak), At(23, DialysisSolution.Glucose227)]);
        Assert.Equal("overnight 60 min shorter", RegimenChange.Between(hand, late).Text);

        // Another bag hides no other length.
        var both = Regimen.Ambulatory([At(7, Weak), At(12, Weak), At(17, Weak), At(23, Weak)]);
        Assert.Equal(new RegimenChange(2, "overnight 2.0 L glucose 1.36 % instead of 2.0 L glucose 2.27 %; overnight 60 min shorter"), RegimenChange.Between(hand, both));

        // Between hand and machine as well: 23 to 7 o'clock is 8 h, the machine's night 9 h. Fluid, length and day are counted beside the hand itself; ten minutes are nothing.
        const string swapped = "exchanges by hand instead of cycles at night; overnight glucose 2.27 % instead of glucose 1.36 %; overnight 60 min shorter; by day ";
        Assert.StartsWith(swapped, RegimenChange.Between(machine, late).Text, StringComparison.Ordinal);
        Assert.Equal(4, RegimenChange.Between(machine, late).Count);
        Assert.StartsWith(
            "cycles at night instead of exchanges by hand; overnight glucose 1.36 % instead of glucose 2.27 %; overnight 60 min longer; by day ", RegimenChange.Between(late, machine).Text, StringComparison.Ordinal);
        var tenMinutes = Regimen.Cycling(TimeSpan.FromMinutes(550), 5, Milliliters(2_000), Weak, Day(2_000));
        Assert.DoesNotContain("min longer", RegimenChange.Between(hand, tenMinutes).Text, StringComparison.Ordinal);

        // A dry night has another length because the day has; it is told as dry.
        var dry = Regimen.Ambulatory([At(7, Weak), At(12, Weak), At(17, Weak)], dryFrom: new(21, 0));
        Assert.StartsWith("overnight dry instead of 2.0 L glucose 2.27 %; by day ", RegimenChange.Between(hand, dry).Text, StringComparison.Ordinal);
        Assert.StartsWith("exchanges by hand instead of cycles at night; overnight dry instead of glucose 1.36 %; by day ", RegimenChange.Between(machine, dry).Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Weeks_that_alternate_are_means_per_week()
    {
        // Two alike weeks are one week. Between two unlike ones everything lies between what each gives by itself.
        var (five, four) = (Night(5, Day(2_000)), Night(4, Day(2_000)));
        var once = WeekSimulation.Run(Patient.Example, Membrane, RegimenWeek.OfNights(five, 6));
        var twice = WeekSimulation.Run(Patient.Example, Membrane, new([.. once.Week.Days, .. once.Week.Days]));
        Assert.Equal(2, twice.Week.Weeks);
        Assert.Equal(once.Ultrafiltration.Milliliters, twice.Ultrafiltration.Milliliters, 1e-3);
        Assert.Equal(once.UreaDose.TotalKtOverV, twice.UreaDose.TotalKtOverV, 1e-6);
        Assert.Equal(once.RemovalOf(Solutes.Urea).Removed!.Value.Millimoles, twice.RemovalOf(Solutes.Urea).Removed!.Value.Millimoles, 1e-3);
        Assert.Equal(once.GlucoseAbsorbed.Grams, twice.GlucoseAbsorbed.Grams, 1e-3);
        Assert.Equal(once.Rest.PoreVolumes.Total.Milliliters, twice.Rest.PoreVolumes.Total.Milliliters, 1e-3);

        double Dose(RegimenWeek week) => WeekSimulation.Run(Patient.Example, Membrane, week).UreaDose.TotalKtOverV;
        var mixed = RegimenWeek.Alternating(five, four);
        Assert.InRange(Dose(mixed), Dose(RegimenWeek.OfNights(four, 7)), Dose(RegimenWeek.OfNights(five, 7)));
        Assert.StartsWith("7 days in 2 weeks: 9 h at night: 5 × 2.0 L", mixed.Describe(), StringComparison.Ordinal);
        Assert.EndsWith("day: 2.0 L glucose 1.36 %; 1 without", once.Week.ToString(), StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => RegimenWeek.Alternating(five));
        Assert.Throws<ArgumentException>(() => new RegimenWeek(Enumerable.Repeat(five, 8)));
    }

    [Fact]
    public void A_drain_that_is_ended_leaves_fluid_for_the_next_cycle()
    {
        // 2250 mL at 150 mL/min down to 450, then 40 mL/min: 12 min to the break, 5 more to 250 mL. Ended after 10 min it leaves 750 mL; the next one
        // starts with 2750, runs 1500 mL in 10 min, and leaves 1250. Ultrafiltration comes on top.
        var slow = DrainProfile.TwoSlope(FlowRate.FromMillilitersPerMinute(150), FlowRate.FromMillilitersPerMinute(40), 0.8);
        var settings = RegimenSettings.Default with { Drain = slow, Residual = Milliliters(250), LongestDrain = TimeSpan.FromMinutes(10) };
        Assert.Equal((10, 750), settings.DrainOf(2_250, 250, 250));
        Assert.Equal((10, 1_250), settings.DrainOf(2_750, 250, 250));
        var (minutes, left) = (settings with { LongestDrain = TimeSpan.FromMinutes(14) }).DrainOf(2_250, 250, 250);
        Assert.Equal((14, 370), (minutes, Math.Round(left, 9)));

        var regimen = new Regimen(TimeSpan.FromHours(9), Enumerable.Repeat(new Exchange(Weak, Milliliters(2_000)), 3), (DayFill?)null, settings);
        var account = NightAccount.Of(RegimenSimulation.Run(Patient.Example, Membrane, regimen));
        Assert.All(account.Cycles, cycle => Assert.Equal(10, cycle.DrainTime!.Value.TotalMinutes, 1e-9));
        Assert.All(account.Cycles, cycle => Assert.Equal(1_500, cycle.Drained.Milliliters, 1e-6));
        Assert.True(account.Cycles[1].CarriedIn > Milliliters(700));
        Assert.True(account.Cycles[2].LeftBehind > account.Cycles[1].LeftBehind);

        // Nothing is ended that was done in time; other steps of the integrator move the day by its tolerance.
        var patient = settings with { LongestDrain = TimeSpan.FromHours(2) };
        var whole = RegimenSimulation.Run(Patient.Example, Membrane, regimen with { Settings = patient });
        var unlimited = RegimenSimulation.Run(Patient.Example, Membrane, regimen with { Settings = patient with { LongestDrain = null } });
        Assert.Equal(unlimited.Ultrafiltration.Milliliters, whole.Ultrafiltration.Milliliters, 1e-3);
        Assert.Throws<ArgumentOutOfRangeException>(() => settings with { LongestDrain = TimeSpan.Zero });
    }

    [Fact]
    public void What_stays_in_the_line_comes_back_and_as_much_fresh_fluid_is_lost()
    {
        // 30 of 2000 mL are 1.5 %: they bring back spent fluid and never reach the cavity, so clearance and absorbed glucose fall by somewhat
        // less than that (0.3 to 1.8 %). All balances stay.
        var plain = RegimenSimulation.Run(Patient.Example, Membrane, Night(6));
        var outcome = RegimenSimulation.Run(Patient.Example, Membrane, Night(6, null, RegimenSettings.Default with { LineVolume = Milliliters(30) }));
        Assert.InRange(1 - outcome.PeritonealCreatinineClearance / plain.PeritonealCreatinineClearance, 0.003, 0.018);
        Assert.InRange(1 - outcome.GlucoseAbsorbed / plain.GlucoseAbsorbed, 0.003, 0.03);
        Assert.True(outcome.Ultrafiltration < plain.Ultrafiltration);
        Assert.Equal(12_000, outcome.FluidUsed.Milliliters, 1e-9);
        foreach (var solute in new[] { Solutes.Urea, Solutes.Glucose, Solutes.Sodium })
        {
            Assert.Equal(
                outcome.RemovalOf(solute).Drained!.Value.Micromoles,
                outcome.Drains.Sum(drain => drain.AmountOf(solute).Micromoles),
                1e-9 * outcome.RemovalOf(solute).Drained!.Value.Micromoles);
        }

        Assert.Throws<ArgumentOutOfRangeException>(() => RegimenSettings.Default with { LineVolume = Milliliters(-1) });
    }

    [Fact]
    public void Solutes_close_with_a_line_too()
    {
        // With a body: generation = kidneys + membrane, and the membrane's share is in the bags. 1e-9 as for a week without one.
        var options = RegimenOptions.Default with { Body = BodyKinetics.Default };
        var patient = Patient.Example with { ResidualFunction = new(Clearance.FromMillilitersPerMinute(2), Clearance.FromMillilitersPerMinute(3), Milliliters(500)) };
        var outcome = RegimenSimulation.Run(patient, Membrane, Night(5, Day(2_000), RegimenSettings.Default with { LineVolume = Milliliters(25) }), options);
        foreach (var solute in new[] { Solutes.Urea, Solutes.Creatinine })
        {
            var generation = outcome.Plasma!.GenerationPerDay(solute).Micromoles;
            var removed = outcome.RemovalOf(solute).Removed!.Value.Micromoles + outcome.Plasma.RemovedByKidneys(solute).Micromoles;
            Assert.Equal(generation, removed, 1e-7 * generation);
        }
    }

    [Fact]
    public void The_timeline_holds_every_solute_and_the_flows_of_the_pores()
    {
        // ∫ of the pore flows by trapezoid over a minute's samples is what passed the pores: 1 % for the bend at the start of each fill.
        var outcome = RegimenSimulation.Run(
            Patient.Example, Membrane, Night(3), RegimenOptions.Default with { Timeline = TimeSpan.FromMinutes(1), Body = BodyKinetics.Default });
        var timeline = outcome.Timeline;
        double Integral(Func<PoreFlows, FlowRate> read) => timeline.Zip(timeline.Skip(1)).Sum(pair =>
            (pair.Second.Time - pair.First.Time).TotalMinutes * 0.5 * (read(pair.First.PoreFlows) + read(pair.Second.PoreFlows)).MillilitersPerMinute);
        Assert.Equal(outcome.PoreVolumes.Ultrasmall.Milliliters, Integral(flows => flows.Ultrasmall), 0.01 * outcome.PoreVolumes.Ultrasmall.Milliliters);
        Assert.Equal(outcome.PoreVolumes.Total.Milliliters, Integral(flows => flows.Total), 0.01 * outcome.PoreVolumes.Total.Milliliters);
        var last = timeline.Last(point => point.Phase == RegimenPhase.Dwell);
        Assert.True(last.ConcentrationOf(Solutes.Urea) > last.ConcentrationOf(Solutes.Creatinine));
        Assert.Equal(last.Glucose, last.ConcentrationOf(Solutes.Glucose));
        Assert.Throws<ArgumentException>(() => last.ConcentrationOf(Solutes.Phosphate));
    }
}
