using System.Collections.Immutable;
using FsCheck;
using FsCheck.Xunit;
using static Transport.Tests.Regimens.RegimenTests;

namespace Transport.Tests.Body;

/// <summary>The body behind the membrane: its books, its rhythm, and what a blood sample makes of it.</summary>
public sealed class BodyKineticsTests
{
    private static readonly Patient Person = Patient.Example with
    {
        ResidualFunction = new(Clearance.FromMillilitersPerMinute(1.5), Clearance.FromMillilitersPerMinute(3.5), Milliliters(800)),
    };

    private static readonly ThreePoreMembrane Membrane = ReferenceMembranes.MeanIncidentAdult().ScaledTo(Person.BodySurface);

    private static readonly RegimenOptions WithBody = RegimenOptions.Default with { Body = BodyKinetics.Default };

    private static readonly TimeOnly Morning = new(7, 0);

    private static readonly TimeOnly Evening = new(22, 0);

    private static readonly Solute[] Pooled = [Solutes.Urea, Solutes.Creatinine];

    [Property(MaxTest = 25)]
    public bool The_books_of_a_day_close(PositiveInt cycles, PositiveInt fill, PositiveInt day, PositiveInt strength, PositiveInt kidneys)
    {
        // From results alone: generated = drained − infused + kidneys, infused + crossed − lymph = drained. An integrator conserves
        // linear sums to rounding, and the rhythm closes to 1e-9 of each unknown: 1e-9 of what went round.
        DayFill? dayFill = day.Get % 3 == 0 ? null : new(DialysisSolution.UsualGlucose[day.Get % 3], Milliliters(500 + day.Get * 37 % 1700));
        var regimen = Regimen.Cycling(
            TimeSpan.FromHours(9), 1 + cycles.Get % 8, Milliliters(800 + fill.Get * 53 % 1900), DialysisSolution.UsualGlucose[strength.Get % 3], dayFill);
        var person = Person with
        {
            ResidualFunction = new(Clearance.FromMillilitersPerMinute(kidneys.Get % 6), Clearance.FromMillilitersPerMinute(kidneys.Get % 9), default),
        };
        var outcome = RegimenSimulation.Run(person, Membrane, regimen, WithBody);
        var water = outcome.FluidUsed + outcome.PoreVolumes.Total - outcome.LymphaticRemoval - Drained(outcome) - outcome.VolumeChange;
        return Math.Abs(water.Milliliters) <= 1e-9 * outcome.FluidUsed.Milliliters
            && Math.Abs(outcome.VolumeChange.Milliliters) <= 1e-9 * outcome.FluidUsed.Milliliters
            && Pooled.All(solute => Math.Abs(Gap(outcome.Plasma!, outcome.RemovalOf(solute), 1)) <= 1e-9)
            && Pooled.All(solute => outcome.Plasma!.Change(solute) / outcome.Plasma.GenerationPerDay(solute) is < 1e-7 and > -1e-7);
    }

    [Theory]
    [InlineData(7)]
    [InlineData(5)]
    [InlineData(3)]
    public void The_books_of_a_week_close(int nights)
    {
        // As above, over seven days with some of them dry.
        var outcome = WeekSimulation.Run(Person, Membrane, RegimenWeek.OfNights(Night(5, Day(2_000)), nights));
        Assert.Equal(nights, outcome.Days.Count(day => day is not null));
        var crossed = outcome.Days.Aggregate(
            outcome.Rest.PoreVolumes.Total - outcome.Rest.LymphaticRemoval,
            (sum, day) => sum + (day is null ? default : day.PoreVolumes.Total - day.LymphaticRemoval));
        var drained = outcome.Days.Aggregate(outcome.Rest.Drained, (sum, day) => sum + (day is null ? default : Drained(day)));
        Assert.Equal(0, (outcome.FluidUsed + crossed - drained).Milliliters, 1e-9 * outcome.FluidUsed.Milliliters);
        Assert.Equal(outcome.Ultrafiltration.Milliliters, (drained - outcome.FluidUsed).Milliliters, 1e-9 * outcome.FluidUsed.Milliliters);
        Assert.All(Pooled, solute => Assert.Equal(0, Gap(outcome.Plasma!, outcome.RemovalOf(solute), 7), 1e-9));
    }

    [Fact]
    public void Blood_and_bags_of_the_simulated_day_give_the_dose_that_the_time_of_the_sample_makes_of_it()
    {
        // The worked case: 38.5 L, 200 mmol a day, 0.9 L/h for the 9 h of the night and 0.13 L/h by day, solved in closed form: evening 21.05,
        // morning 18.81, mean 19.92 mmol/L, crossed 7.3 h after the night; a morning sample gives +5.9 %, an evening sample −5.4 %. Here 0.13
        // L/h are kidneys and the rest is a night with a dry day, whose clearance is not quite constant: 0.5 % and 0.5 h for that.
        var kidneys = Clearance.FromLitersPerDay(24 * 0.13);
        var body = new BodyKinetics(
            SolutePool.Urea with { GenerationPerDay = AmountOfSubstance.FromMillimoles(200), RenalClearance = kidneys }, SolutePool.Creatinine);
        RegimenOutcome Six(double fill) => RegimenSimulation.Run(
            Patient.Example,
            Membrane,
            Regimen.Cycling(TimeSpan.FromHours(9), 6, Milliliters(fill), DialysisSolution.Glucose136),
            WithBody with { Body = body });
        var (low, high) = (1_000.0, 2_000.0);
        while (high - low > 0.5)
        {
            var middle = 0.5 * (low + high);
            (low, high) = Six(middle).PeritonealUreaClearance.LitersPerDay < 9 * (0.9 - 0.13) ? (middle, high) : (low, middle);
        }

        var outcome = Six(low);
        var plasma = outcome.Plasma!;
        var mean = plasma.MeanOf(Solutes.Urea);
        Assert.Equal(19.92, mean.MillimolesPerLiter, 0.02);

        // The collection's own formula: Σ V D / P, weekly over body water.
        double Collected(Concentration level) => 7 / Patient.Example.BodyWater.Liters
            * outcome.Drains.Where(drain => drain.Volume.Milliliters > 0)
                .Sum(drain => drain.Volume.Liters * drain.ConcentrationOf(Solutes.Urea).MillimolesPerLiter) / level.MillimolesPerLiter;
        var own = outcome.UreaDose.PeritonealKtOverV;
        Assert.Equal(own, Collected(mean), 1e-6 * own);
        Assert.Equal(0.059, Collected(plasma.LevelAt(Solutes.Urea, Morning)) / own - 1, 0.005);
        Assert.Equal(-0.054, Collected(plasma.LevelAt(Solutes.Urea, Evening)) / own - 1, 0.005);
        var crossing = Enumerable.Range(0, 900).First(minute => plasma.LevelAt(Solutes.Urea, Morning.AddMinutes(minute)) >= mean) / 60.0;
        Assert.Equal(7.3, crossing, 0.5);
    }

    [Fact]
    public void A_measured_level_is_met_at_its_clock_time_and_its_generation_brings_it_back()
    {
        // Both are conditions of the same rhythm, converged to 1e-9.
        var level = Concentration.FromMillimolesPerLiter(23);
        var body = new BodyKinetics(SolutePool.Urea with { Measured = new(level, Morning) }, SolutePool.Creatinine);
        var found = RegimenSimulation.Run(Person, Membrane, Night(5, Day(2_000)), WithBody with { Body = body }).Plasma!;
        Assert.Equal(23, found.LevelAt(Solutes.Urea, Morning).MillimolesPerLiter, 23e-8);
        Assert.True(found.LevelAt(Solutes.Urea, Evening) > level);
        Assert.Equal(0.8, found.MeanOf(Solutes.Creatinine).MillimolesPerLiter, 0.8e-8);

        var given = body.WithGenerationOf(found);
        Assert.All(given.Pools, pool => Assert.NotNull(pool.GenerationPerDay));
        var again = RegimenSimulation.Run(Person, Membrane, Night(5, Day(2_000)), WithBody with { Body = given }).Plasma!;
        Assert.Equal(23, again.LevelAt(Solutes.Urea, Morning).MillimolesPerLiter, 23e-8);
    }

    [Fact]
    public void A_body_left_to_itself_comes_to_the_rhythm_that_is_found_at_once()
    {
        // Day after day as single days, from a quarter below: after 40 days, eight time constants, e^−8 of 5 mmol/L is left. A single day starts
        // at the planned minute, the rhythm some seconds beside it: 0.02 mmol/L.
        var regimen = Night(5, Day(2_000));
        var rhythm = RegimenSimulation.Run(Person, Membrane, regimen, WithBody);
        var options = WithBody with { Body = BodyKinetics.Default.WithGenerationOf(rhythm.Plasma!), FirstNight = rhythm.Cycles[0].Carried };
        var (urea, creatinine) = (15.0, 0.6);
        for (var day = 0; day < 40; day++)
        {
            var person = Person with
            {
                Plasma = Person.Plasma with { Urea = Concentration.FromMillimolesPerLiter(urea), Creatinine = Concentration.FromMillimolesPerLiter(creatinine) },
            };
            var plasma = RegimenSimulation.Run(person, Membrane, regimen, options).Plasma!;
            urea += plasma.Change(Solutes.Urea).Millimoles / plasma.VolumeOf(Solutes.Urea).Liters;
            creatinine += plasma.Change(Solutes.Creatinine).Millimoles / plasma.VolumeOf(Solutes.Creatinine).Liters;
        }

        Assert.Equal(rhythm.Plasma!.LevelAt(Solutes.Urea, Evening).MillimolesPerLiter, urea, 0.02);
        Assert.Equal(rhythm.Plasma.LevelAt(Solutes.Creatinine, Evening).MillimolesPerLiter, creatinine, 0.001);
    }

    [Fact]
    public void Five_nights_a_week_are_solved_anew_and_not_five_sevenths_of_seven()
    {
        // The same person: generation as with seven nights. Plasma rises until generation is removed again; it is the clearance that falls, and by
        // more than 2/7: two mornings a week find no fresh fluid for 24 h.
        var regimen = Night(5, Day(2_000));
        var daily = RegimenSimulation.Run(Person, Membrane, regimen, WithBody);
        var options = WithBody with { Body = BodyKinetics.Default.WithGenerationOf(daily.Plasma!) };
        var seven = WeekSimulation.Run(Person, Membrane, RegimenWeek.OfNights(regimen, 7), options);
        Assert.Equal(daily.UreaDose.PeritonealKtOverV, seven.UreaDose.PeritonealKtOverV, 1e-7);
        Assert.Equal(7 * daily.RemovalOf(Solutes.Urea).Removed!.Value.Millimoles, seven.RemovalOf(Solutes.Urea).Removed!.Value.Millimoles, 1e-4);

        var five = WeekSimulation.Run(Person, Membrane, RegimenWeek.OfNights(regimen, 5), options);
        var share = five.UreaDose.PeritonealKtOverV / daily.UreaDose.PeritonealKtOverV;
        Assert.InRange(share, 0.68, 0.71);
        Assert.True(Math.Abs(share - 5.0 / 7) > 0.01);
        var (before, after) = (daily.Plasma!.MeanOf(Solutes.Urea), five.Plasma!.MeanOf(Solutes.Urea));
        Assert.Equal(1 / (share * daily.UreaDose.PeritonealKtOverV + daily.UreaDose.RenalKtOverV) * daily.UreaDose.TotalKtOverV, after / before, 1e-6);

        // The highest evening of the week ends a day off.
        var highest = Enumerable.Range(0, 7).MaxBy(day => five.Plasma!.LevelAt(Solutes.Urea, Evening.AddMinutes(-1), day));
        Assert.Null(five.Week.Days[highest]);
    }

    [Fact]
    public void About_the_same_mean_a_body_moves_the_dose_by_a_few_percent_only()
    {
        // Constant plasma is the search's short cut. Night drains meet a plasma below the mean, day drains one above it.
        foreach (var regimen in new[] { Night(6), Night(5, Day(2_000)) })
        {
            var constant = RegimenSimulation.Run(Person, Membrane, regimen);
            var body = RegimenSimulation.Run(Person, Membrane, regimen, WithBody);
            Assert.Null(constant.Plasma);
            Assert.Equal(20, body.Plasma!.MeanOf(Solutes.Urea).MillimolesPerLiter, 20e-8);
            Assert.InRange(body.UreaDose.PeritonealKtOverV / constant.UreaDose.PeritonealKtOverV, 0.97, 1.03);
            Assert.Equal(constant.Ultrafiltration.Milliliters, body.Ultrafiltration.Milliliters, 10.0);
        }
    }

    [Fact]
    public void Potassium_and_phosphate_are_removed_and_cleared_and_their_plasma_is_not_predicted()
    {
        // Constant plasma: removal is clearance times level. 4 × 2 L by hand removed 27.9 ± 6.9 mmol of potassium a day (read), phosphate
        // clearance of cyclers was 24.7 ± 13.4 L/week (read): two standard deviations of each.
        var person = WithMinor(Person);
        var options = WithBody with { Panel = SolutePanel.Of(Solutes.Potassium, Solutes.Phosphate) };
        var outcome = RegimenSimulation.Run(person, Membrane, Night(5, Day(2_000)), options);
        foreach (var (solute, level) in person.Plasma.Others)
        {
            var removal = outcome.RemovalOf(solute);
            Assert.Equal(removal.Clearance!.Value.LitersPerDay * level.MillimolesPerLiter, removal.Removed!.Value.Millimoles, 1e-7);
            Assert.Throws<ArgumentException>(() => outcome.Plasma!.MeanOf(solute));
            Assert.Throws<ArgumentException>(() => outcome.Plasma!.LevelAt(solute, Morning));
        }

        Assert.InRange(outcome.RemovalOf(Solutes.Potassium).Removed!.Value.Millimoles, 14.1, 41.7);
        Assert.InRange(outcome.RemovalOf(Solutes.Phosphate).Clearance!.Value.LitersPerWeek, 0, 51.5);

        var research = options with { Body = new([.. BodyKinetics.Default.Pools, SolutePool.ForResearch(Solutes.Potassium, Volume.FromLiters(20))]) };
        var studied = RegimenSimulation.Run(person, Membrane, Night(5, Day(2_000)), research);
        Assert.Contains(studied.Findings, finding => finding.Code == "research-pool" && finding.Message.Contains("potassium", StringComparison.Ordinal));
        Assert.DoesNotContain(outcome.Findings, finding => finding.Code == "research-pool");
        Assert.Throws<ArgumentException>(() => studied.Plasma!.MeanOf(Solutes.Potassium));
        Assert.InRange(studied.Plasma!.ResearchLevelAt(Solutes.Potassium, Evening).MillimolesPerLiter, 4.5, 5.5);
        Assert.Throws<ArgumentException>(() => SolutePool.ForResearch(Solutes.Sodium, Volume.FromLiters(20)));
    }

    [Fact]
    public void Beta2_microglobulin_has_a_fluid_of_its_own_and_needs_hours_rather_than_litres()
    {
        // 0.2 L/kg of 70 kg. Its clearance was 0.84 to 1.14 mL/min over 24 h with glucose (read), which this membrane's large pores miss by half;
        // what is tested is that a day of contact adds a fifth and more to the clearance of a night with five times the fluid.
        var pool = SolutePool.Beta2Microglobulin with
        {
            OtherClearance = Clearance.FromMillilitersPerMinute(3),
            Measured = new(Concentration.FromMillimolesPerLiter(25.0 / 11_800), Morning),
        };
        var options = WithBody with { Panel = SolutePanel.Of(Solutes.Beta2Microglobulin), Body = new([.. BodyKinetics.Default.Pools, pool]) };
        var wet = RegimenSimulation.Run(Person, Membrane, Night(5, Day(2_000)), options);
        var dry = RegimenSimulation.Run(Person, Membrane, Night(5), options);
        Assert.Equal(14, wet.Plasma!.VolumeOf(Solutes.Beta2Microglobulin).Liters, 1e-9);
        Assert.Equal(25.0 / 11_800, wet.Plasma.LevelAt(Solutes.Beta2Microglobulin, Morning).MillimolesPerLiter, 1e-11);
        Assert.Equal(0, Gap(wet.Plasma, wet.RemovalOf(Solutes.Beta2Microglobulin), 1), 1e-9);
        var (both, night) = (Minute(wet), Minute(dry));
        Assert.InRange(both, 0.3, 1.2);
        Assert.True(both - night > 0.2 * night);

        // Relative to plasma, without a body, it is the same membrane: the clearance within what moving levels make of it.
        var relative = RegimenSimulation.Run(Person, Membrane, Night(5, Day(2_000)), RegimenOptions.Default with { Panel = options.Panel });
        Assert.Null(relative.RemovalOf(Solutes.Beta2Microglobulin).Removed);
        Assert.Equal(both, Minute(relative), 0.03 * both);

        static double Minute(RegimenOutcome outcome) => outcome.RemovalOf(Solutes.Beta2Microglobulin).Clearance!.Value.MillilitersPerMinute;
    }

    [Fact]
    public void A_workspace_forgets_the_body_of_the_run_before()
    {
        var workspace = new RegimenWorkspace();
        RegimenOutcome Run(RegimenOptions options) => workspace.Run(Person, Membrane, Night(5, Day(2_000)), options, RunControl.None);
        var first = Run(RegimenOptions.Default);
        var body = Run(WithBody);
        Assert.Equal(first.Ultrafiltration, Run(RegimenOptions.Default).Ultrafiltration);
        Assert.Equal(body.Ultrafiltration, Run(WithBody).Ultrafiltration);
    }

    [Fact]
    public void What_says_too_little_about_a_body_is_refused()
    {
        var noLevel = WithBody with { Panel = SolutePanel.Of(Solutes.Beta2Microglobulin), Body = new(SolutePool.Beta2Microglobulin) };
        Assert.Throws<ArgumentException>(() => RegimenSimulation.Run(Person, Membrane, Night(5), noLevel));
        var notFollowed = WithBody with { Body = new(SolutePool.ForResearch(Solutes.Potassium, Volume.FromLiters(20))) };
        Assert.Throws<ArgumentException>(() => RegimenSimulation.Run(WithMinor(Person), Membrane, Night(5), notFollowed));
        var anotherDay = new BodyKinetics(SolutePool.Urea with { Measured = new(Concentration.FromMillimolesPerLiter(20), Morning) { Day = 1 } });
        Assert.Throws<ArgumentException>(() => RegimenSimulation.Run(Person, Membrane, Night(5), WithBody with { Body = anotherDay }));
        var single = WithBody with { FirstNight = ResidualFluid.Used(Milliliters(250), Person.Plasma) };
        Assert.Throws<ArgumentException>(() => RegimenSimulation.Run(Person, Membrane, Night(5), single));
        Assert.Throws<ArgumentException>(() => new BodyKinetics(SolutePool.Urea, SolutePool.Urea));
        Assert.Throws<ArgumentException>(() => new RegimenWeek(Enumerable.Repeat<Regimen?>(null, 7)));
        Assert.Throws<ArgumentException>(() => new RegimenWeek(Night(5)));
    }

    private static Patient WithMinor(Patient patient) => patient with
    {
        Plasma = patient.Plasma with
        {
            Others = ImmutableDictionary.CreateRange<Solute, Concentration>(
            [
                new(Solutes.Potassium, Concentration.FromMillimolesPerLiter(4.5)),
                new(Solutes.Phosphate, Concentration.FromMillimolesPerLiter(1.8)),
            ]),
        },
    };

    private static Volume Drained(RegimenOutcome outcome) => outcome.Drains.Aggregate(default(Volume), (sum, drain) => sum + drain.Volume);

    // (bags + kidneys + other ways + what stays − generated) / generated.
    private static double Gap(PlasmaRhythm plasma, SoluteRemoval removal, int days)
    {
        var generated = plasma.GenerationPerDay(removal.Solute) * days;
        var left = removal.Removed!.Value + plasma.RemovedByKidneys(removal.Solute) + plasma.RemovedOtherwise(removal.Solute) + plasma.Change(removal.Solute);
        return (left - generated) / generated;
    }
}
