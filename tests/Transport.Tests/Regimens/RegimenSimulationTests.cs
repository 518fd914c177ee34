using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using static Transport.Tests.Regimens.RegimenTests;

namespace Transport.Tests.Regimens;

/// <summary>One night and day, against a published night, tables computed with another program, and the laws of conservation.</summary>
public sealed class RegimenSimulationTests
{
    // The incident adult at exactly 1.73 m², so that nothing is scaled.
    private static readonly Patient Standard = Patient.Example with
    {
        Weight = Mass.FromKilograms(70 * Math.Pow(1.73 / Patient.Example.BodySurface.SquareMeters, 1 / 0.425)),
    };

    // The tables' settings: 200 mL of used fluid before the night, no transient, one pressure slope.
    private static readonly RegimenSettings TableSettings = RegimenSettings.Default with { Residual = Milliliters(200) };

    private static readonly RegimenOptions TableOptions = new()
    {
        Transient = TransientUse.None,
        SupineVolumePerPressure = null,
        FirstNight = ResidualFluid.Used(Milliliters(200), Patient.Example.Plasma),
    };

    [Theory]
    [InlineData(AreaLaw.Constant, 668, 36.0, 40.9, 47)]
    [InlineData(AreaLaw.TwoThirds, 619, 33.7, 38.4, 44)]
    [InlineData(AreaLaw.Exponential, 630, 33.8, 38.9, 45)]
    public void Six_cycles_of_2_L_reproduce_the_published_night(AreaLaw law, double fluid, double creatinine, double urea, double glucose)
    {
        // Published: ultrafiltration 0.5 L, creatinine clearance 35 L/week (Perit Dial Int 2021, doi 10.1177/08968608211010055, read), which is
        // met if the transient is not restarted each cycle (40 to 43). The table is our own model in another program (computed): 2 % is what
        // its handling of the drain and its rounding may make.
        var outcome = RegimenSimulation.Run(Standard, ReferenceMembranes.Textbook with { AreaLaw = law }, Night(6, null, TableSettings), TableOptions);
        var found = outcome.NightUltrafiltration.Milliliters;
        Assert.InRange(found, 615, 675);
        Assert.InRange(outcome.CreatinineDose.Total.LitersPerWeek, 33.35, 36.1);
        Within(fluid, found, 0.02);
        Within(creatinine, outcome.CreatinineDose.Total.LitersPerWeek, 0.02);
        Within(urea, outcome.PeritonealUreaClearance.LitersPerWeek, 0.02);
        Within(glucose, outcome.GlucoseAbsorbed.Grams, 0.03);
    }

    [Theory]
    [InlineData(14_000, 3, 559, 19.7)]
    [InlineData(14_000, 5, 697, 21.7)]
    [InlineData(14_000, 7, 756, 22.4)]
    [InlineData(14_000, 10, 787, 22.4)]
    [InlineData(25_000, 3, 394, 27.5)]
    [InlineData(25_000, 5, 579, 32.6)]
    [InlineData(25_000, 7, 666, 34.6)]
    [InlineData(25_000, 10, 722, 35.6)]
    [InlineData(40_000, 3, 210, 33.8)]
    [InlineData(40_000, 5, 437, 43.4)]
    [InlineData(40_000, 7, 554, 48.0)]
    [InlineData(40_000, 10, 640, 50.9)]
    public void How_many_cycles_pay_depends_on_the_speed_of_transfer(double area, int cycles, double fluid, double creatinine)
    {
        // 9 h, 2 L, 1.36 %, exponential area; computed with another program. The volume at which its area law is 1 was not on record: 4 mL
        // of ultrafiltration and 2.6 % of clearance cover that.
        var membrane = ReferenceMembranes.Textbook with { AreaLaw = AreaLaw.Exponential, DiffusionArea = DiffusionArea.FromCentimeters(area) };
        var outcome = RegimenSimulation.Run(Standard, membrane, Night(cycles, null, TableSettings), TableOptions);
        Assert.InRange(outcome.NightUltrafiltration.Milliliters, fluid - 4, fluid + 4);
        Within(creatinine, outcome.CreatinineDose.Total.LitersPerWeek, 0.026);
    }

    // 9 h, 2 L, 1.36 %, exponential area. Top of the clearance of creatinine by another program, in whole cycles of 0.22 L/h. Published for nights of tidal cycles (abstract read, the values of
    // D/P cut off): plateau, then a fall, best at 1.8 L/h in a person of low D/P and at 4.2 in one of high. The direction and the slow one hold; the fast one is a stated miss.
    [Theory]
    [InlineData(14_000, 1.8, 2.0)]
    [InlineData(25_000, 2.2, 2.4)]
    [InlineData(40_000, 2.7, 3.1)]
    public void Creatinine_clearance_has_a_flat_top_at_a_flow_that_grows_with_the_speed_of_transfer(double area, double from, double to)
    {
        var membrane = ReferenceMembranes.Textbook with { AreaLaw = AreaLaw.Exponential, DiffusionArea = DiffusionArea.FromCentimeters(area) };
        var cleared = Enumerable.Range(3, 13).ToDictionary(cycles => cycles, cycles =>
            RegimenSimulation.Run(Standard, membrane, Night(cycles, null, TableSettings), TableOptions).CreatinineDose.Total.LitersPerWeek);
        var top = cleared.MaxBy(one => one.Value);
        var flow = top.Key * 2 / 9.0;
        Assert.InRange(flow, from - 0.05, to + 0.05);
        Assert.True(cleared[15] < top.Value, $"{cleared[15]}, {top.Value}");
        Assert.True(flow < 0.8 * 4.2, "The published best flow of fast transfer is reached; the page says that it is missed.");

        // Flat: ten cycles instead of seven are 43 % more fluid. For the average person it is 2.9 % more creatinine (35.6 and 34.6, to the digit printed: 0.5 %); for nobody more than 7 %.
        var gain = cleared[10] / cleared[7] - 1;
        Assert.True(gain < 0.07, $"{gain}");
        if (area == 25_000)
        {
            Assert.Equal(0.029, gain, 0.005);
        }
    }

    [Fact]
    public void Restarting_the_transient_with_every_fill_overstates_clearance()
    {
        // Computed with another program: 587 mL and 43.1 L/week instead of 668 and 36.0.
        var outcome = RegimenSimulation.Run(
            Standard, ReferenceMembranes.Textbook, Night(6, null, TableSettings), TableOptions with { Transient = TransientUse.EveryFill });
        Within(587, outcome.NightUltrafiltration.Milliliters, 0.02);
        Within(43.1, outcome.CreatinineDose.Total.LitersPerWeek, 0.02);
    }

    [Fact]
    public void A_long_day_with_weak_glucose_gives_fluid_back()
    {
        // 14 h of 2 L 1.36 % in the mean incident adult, computed as a single dwell with the transient and an instant fill: −535 mL. With the
        // transient a regimen's day differs by its fill and drain, 22 min at about 1 mL/min: 3 %. Without it, as regimens are
        // simulated, glucose lasts longer and some 40 mL less are lost. It must not level off: after 6 h the loss goes on at
        // 0.8 to 1.2 mL/min.
        var night = TimeSpan.FromMinutes(1440 - 10 - 12 - 14 * 60);
        var regimen = Regimen.Cycling(night, 6, Milliliters(2_000), DialysisSolution.Glucose136, Day(2_000));
        var options = RegimenOptions.Default with { Timeline = TimeSpan.FromMinutes(5) };
        var restarted = RegimenSimulation.Run(
            Standard, ReferenceMembranes.MeanIncidentAdult(), regimen, options with { Transient = TransientUse.EveryFill });
        Within(-535, restarted.DayUltrafiltration.Milliliters, 0.03);
        var outcome = RegimenSimulation.Run(Standard, ReferenceMembranes.MeanIncidentAdult(), regimen, options);
        Assert.InRange(outcome.DayUltrafiltration.Milliliters - restarted.DayUltrafiltration.Milliliters, 30, 50);
        Assert.Contains(outcome.Findings, finding => finding.Code is "day-takes-up-fluid" or "fluid-taken-up");

        var day = outcome.Timeline.Where(point => point.Phase == RegimenPhase.Day).ToList();
        var late = day.Where(point => point.Time - day[0].Time >= TimeSpan.FromHours(6)).ToList();
        var rates = late.Zip(late.Skip(1), (a, b) => (a.Volume - b.Volume).Milliliters / (b.Time - a.Time).TotalMinutes);
        Assert.All(rates, rate => Assert.InRange(rate, 0.8, 1.2));
        Assert.Equal(14 * 60, (day[^1].Time - day[0].Time).TotalMinutes, 6.0);
    }

    [Fact]
    public void Every_cycle_starts_with_what_the_last_one_left()
    {
        var outcome = RegimenSimulation.Run(Standard, ReferenceMembranes.MeanIncidentAdult(), Night(6, Day(2_000)));
        var carried = outcome.Cycles[5].Carried;
        Assert.InRange(carried.Creatinine / Standard.Plasma.Creatinine, 0.35, 0.7);
        Assert.Equal(250, carried.Volume.Milliliters, 1e-6);
        Assert.InRange(outcome.CreatinineDose.Peritoneal.LitersPerWeek, 35, 50);

        // The day's fluid has had 14 h: nearly equilibrated when the night begins.
        Assert.True(outcome.Cycles[0].Carried.Creatinine / Standard.Plasma.Creatinine > 0.85);
    }

    [Fact]
    public void The_steady_rhythm_ends_where_it_began()
    {
        // Started alone from the fluid that the rhythm starts with, the day must come back to it: 1e-6 mL of 250 and the same cycles.
        foreach (var regimen in new[] { Night(5, Day(2_000)), Night(6), Night(1) })
        {
            var rhythm = RegimenSimulation.Run(Standard, ReferenceMembranes.MeanIncidentAdult(), regimen);
            var options = RegimenOptions.Default with { FirstNight = rhythm.Cycles[0].Carried };
            var single = RegimenSimulation.Run(Standard, ReferenceMembranes.MeanIncidentAdult(), regimen, options);
            Assert.Equal(0, single.VolumeChange.Milliliters, 1e-6);
            Assert.All(rhythm.Cycles.Zip(single.Cycles), pair => Assert.Equal(pair.First.Drained.Milliliters, pair.Second.Drained.Milliliters, 0.02));
            Assert.Equal(rhythm.GlucoseAbsorbed.Grams, single.GlucoseAbsorbed.Grams, 0.01);
        }
    }

    [Fact]
    public void The_record_book_of_a_day_adds_up()
    {
        // Σ infused + what crossed the membrane − lymph = Σ drained + change of volume, from the bags on one side and from the pores on
        // the other; 1e-6 of the fluid is the integrator's share.
        foreach (var (regimen, options) in new[]
        {
            (Night(5, Day(2_000)), RegimenOptions.Default),
            (Night(6), RegimenOptions.Default),
            (Night(6, null, TableSettings), TableOptions),
        })
        {
            var outcome = RegimenSimulation.Run(Standard, ReferenceMembranes.MeanIncidentAdult(), regimen, options);
            var drained = outcome.Cycles.Sum(cycle => cycle.Drained.Milliliters) + outcome.EveningDrain.Milliliters;
            var crossed = (outcome.PoreVolumes.Total - outcome.LymphaticRemoval).Milliliters;
            Assert.Equal(outcome.FluidUsed.Milliliters + crossed, drained + outcome.VolumeChange.Milliliters, 1e-6 * outcome.FluidUsed.Milliliters);
            Assert.Equal(outcome.Ultrafiltration.Milliliters, drained - outcome.FluidUsed.Milliliters, 1e-9 * outcome.FluidUsed.Milliliters);
        }
    }

    [Fact]
    public void Glucose_absorbed_is_what_the_drains_do_not_hold()
    {
        // The drains summed from the timeline, volume flow times concentration by the trapezoid rule on 0.1 min: 1e-4.
        var outcome = RegimenSimulation.Run(
            Standard, ReferenceMembranes.MeanIncidentAdult(), Night(5, Day(2_000)), RegimenOptions.Default with { Timeline = TimeSpan.FromMinutes(0.1) });
        var flows = outcome.Cycles.Select(cycle => cycle.Drained.Milliliters / cycle.DrainTime.TotalMinutes).ToList();
        var millimoles = 0.0;
        var cycle = -1;
        RegimenPhase? before = null;
        for (var i = 0; i + 1 < outcome.Timeline.Length; i++)
        {
            var (a, b) = (outcome.Timeline[i], outcome.Timeline[i + 1]);
            cycle += a.Phase == RegimenPhase.Drain && before != RegimenPhase.Drain ? 1 : 0;
            before = a.Phase;
            if (a.Phase is not (RegimenPhase.Drain or RegimenPhase.EveningDrain))
            {
                continue;
            }

            var minutes = (b.Time - a.Time).TotalMinutes;
            var flow = a.Phase == RegimenPhase.Drain ? flows[cycle] : EveningFlow(outcome);
            millimoles += flow * minutes * 0.5 * (a.Glucose + b.Glucose).MillimolesPerLiter / 1000;
        }

        Assert.Equal(4, cycle);
        var drained = (outcome.GlucoseUsed - outcome.GlucoseAbsorbed).Grams;
        Within(drained, millimoles * 0.18016, 1e-4);
    }

    [Fact]
    public void A_dry_day_takes_up_the_residual_and_the_first_drain_pays()
    {
        var outcome = RegimenSimulation.Run(Standard, ReferenceMembranes.MeanIncidentAdult(), Night(6));
        Assert.Equal(10, outcome.SmallestVolume.Milliliters, 0.01);
        Assert.Equal(0, outcome.EveningDrain.Milliliters, 1e-9);
        Assert.Equal(0, outcome.DayUltrafiltration.Milliliters, 1e-9);
        Assert.True(outcome.Cycles[0].Ultrafiltration < outcome.Cycles[1].Ultrafiltration - Milliliters(200));
        Assert.Contains(outcome.Findings, finding => finding.Code == "cavity-runs-empty");
    }

    [Fact]
    public void A_person_of_another_size_has_the_same_concentrations_and_volumes_in_proportion()
    {
        // Membrane, fills, flows and residual scale with the surface; the equations then have the same solution. So does the plan, which takes the
        // person's own residual: with two slopes it decides how long a drain is planned to take. 1e-6 is the integrator.
        const double factor = 1.2;
        var large = Standard with { Height = Standard.Height, Weight = Mass.FromKilograms(Standard.Weight.Kilograms * Math.Pow(factor, 1 / 0.425)) };
        foreach (var twoSlopes in new[] { false, true })
        {
            RegimenSettings Settings(double size) => RegimenSettings.Default with
            {
                FillFlow = FlowRate.FromMillilitersPerMinute(200 * size),
                Drain = twoSlopes
                    ? DrainProfile.TwoSlope(FlowRate.FromMillilitersPerMinute(200 * size), FlowRate.FromMillilitersPerMinute(45 * size), 0.8)
                    : DrainProfile.Default,
            };
            foreach (var law in Enum.GetValues<AreaLaw>())
            {
                var membrane = ReferenceMembranes.MeanIncidentAdult() with { AreaLaw = law };
                var small = RegimenSimulation.Run(Standard, membrane, Night(6, null, Settings(1)));
                var regimen = Regimen.Cycling(TimeSpan.FromHours(9), 6, Milliliters(2_000 * factor), DialysisSolution.Glucose136, null, Settings(factor));
                var scaled = RegimenSimulation.Run(large, membrane.ScaledTo(large.BodySurface), regimen);
                Within(small.NightUltrafiltration.Milliliters * factor, scaled.NightUltrafiltration.Milliliters, 1e-6);
                Within(small.CreatinineDose.Total.LitersPerWeek, scaled.CreatinineDose.Total.LitersPerWeek, 1e-6);
                Within(small.SodiumRemovedByModel.Millimoles * factor, scaled.SodiumRemovedByModel.Millimoles, 1e-5);
            }
        }
    }

    [Fact]
    public void Dose_is_the_arithmetic_of_the_worked_case()
    {
        // Man 60 y, 170 cm, 70 kg, residual urea 1.5 and creatinine 3.5 mL/min: renal Kt/V 0.3924, renal creatinine clearance 24.090 L/week.
        var kidneys = new ResidualFunction(
            Clearance.FromMillilitersPerMinute(1.5), Clearance.FromMillilitersPerMinute(3.5), Milliliters(800));
        var outcome = RegimenSimulation.Run(
            Patient.Example with { ResidualFunction = kidneys }, ReferenceMembranes.Textbook.ScaledTo(Patient.Example.BodySurface), Night(5));
        Assert.Equal(0.3924, outcome.UreaDose.RenalKtOverV, 0.00005);
        Assert.Equal(24.090, outcome.CreatinineDose.Renal.LitersPerWeek, 0.0005);
        Assert.Equal(800, (outcome.FluidRemoval - outcome.Ultrafiltration).Milliliters, 1e-9);
        Assert.Equal(outcome.UreaDose.PeritonealKtOverV * 38.5294 / 7, outcome.PeritonealUreaClearance.LitersPerDay, 1e-4);
    }

    [Fact]
    public void Sodium_is_centred_on_published_series_and_the_model_is_shown_beside_it()
    {
        // √(0.3 · 1.0) = 0.5477; ln(1/0.3) / (2 · 1.645) = 0.366.
        Assert.Equal(0.55, SodiumCalibration.Published.Factor, 0.005);
        Assert.Equal(0.37, SodiumCalibration.Published.DeviationOfLogFactor, 0.005);
        var outcome = RegimenSimulation.Run(Standard, ReferenceMembranes.Textbook, Night(6, null, TableSettings), TableOptions);

        // Published series: 18 to 51 mmol (read); the model: 65 to 75 (computed).
        Assert.InRange(outcome.SodiumRemovedByModel.Millimoles, 65, 75);
        Assert.InRange(outcome.SodiumRemoved.Millimoles, 18, 51);
    }

    [Fact]
    public void An_overfull_cavity_is_found_with_its_minute()
    {
        var settings = RegimenSettings.Default with { LargestVolume = Milliliters(2_300) };
        var outcome = RegimenSimulation.Run(Standard, ReferenceMembranes.MeanIncidentAdult(), Night(6, null, settings));
        var finding = Assert.Single(outcome.Findings, finding => finding.Code == "overfill");
        Assert.Contains(Invariant($"minute {outcome.Peak.Time.TotalMinutes:0}"), finding.Message, StringComparison.Ordinal);
        Assert.True(outcome.Peak.Volume > Milliliters(2_300));
        Assert.DoesNotContain(
            RegimenSimulation.Run(Standard, ReferenceMembranes.MeanIncidentAdult(), Night(6)).Findings, found => found.Code == "overfill");
    }

    [Theory]
    [InlineData(2_100)]
    [InlineData(2_290)]
    public void The_first_minute_above_the_limit_is_that_of_a_fine_timeline(double limit)
    {
        // 250 mL are left and 200 mL/min run in: 2100 mL are passed in the first fill, about minute 9, 2290 mL in the first dwell. Against a timeline of 0.1 min.
        var regimen = Night(3, Day(2_000), RegimenSettings.Default with { LargestVolume = Milliliters(limit), Residual = Milliliters(250) });
        var options = RegimenOptions.Default with { Timeline = TimeSpan.FromMinutes(0.1) };
        var outcome = RegimenSimulation.Run(Standard, ReferenceMembranes.MeanIncidentAdult(), regimen, options);
        var first = outcome.Timeline.First(point => point.Volume > Milliliters(limit)).Time;
        Assert.InRange((first - outcome.FirstAboveLimit!.Value).TotalMinutes, -1e-3, 0.1 + 1e-3);
        Assert.True(outcome.FirstAboveLimit < outcome.Peak.Time);
        var finding = Assert.Single(outcome.Findings, finding => finding.Code == "overfill");
        Assert.StartsWith(Invariant($"From minute {outcome.FirstAboveLimit.Value.TotalMinutes:0} on the cavity holds more than {limit:0} mL"), finding.Message, StringComparison.Ordinal);

        // Looking for it changes nothing else, with a body neither; below the limit there is nothing.
        var wide = regimen with { Settings = regimen.Settings with { LargestVolume = null } };
        foreach (var body in new[] { null, BodyKinetics.Default })
        {
            var (here, there) = (Run(regimen, body), Run(wide, body));
            Assert.Null(there.FirstAboveLimit);
            Assert.Equal(there.Ultrafiltration.Milliliters, here.Ultrafiltration.Milliliters, 1e-5);
            Assert.Equal(there.UreaDose.TotalKtOverV, here.UreaDose.TotalKtOverV, 1e-8);
        }

        static RegimenOutcome Run(Regimen regimen, BodyKinetics? body) =>
            RegimenSimulation.Run(Standard, ReferenceMembranes.MeanIncidentAdult(), regimen, RegimenOptions.Default with { Body = body });
    }

    [Fact]
    public void In_a_week_the_minute_is_told_from_the_start_of_its_own_night()
    {
        // As above, on the fourth day: (2100 − 250)/200 = 9.25 min.
        var (low, high) = (Night(3, Day(2_000)), Night(3, Day(2_000), RegimenSettings.Default with { LargestVolume = Milliliters(2_100) }));
        var week = WeekSimulation.Run(Standard, ReferenceMembranes.MeanIncidentAdult(), new RegimenWeek(low, low, low, high, low, low, null));
        Assert.Equal([false, false, false, true, false, false], week.Days.OfType<RegimenOutcome>().Select(day => day.FirstAboveLimit is not null));
        Assert.InRange(week.Days[3]!.FirstAboveLimit!.Value.TotalMinutes, 8.75, 9.75);
        Assert.All(week.Days.OfType<RegimenOutcome>(), day => Assert.InRange(day.Peak.Time.TotalMinutes, 0, 1440));
        Assert.All(week.Days.OfType<RegimenOutcome>(), day => Assert.InRange(day.Cycles[0].FillStart.TotalMinutes, -1, 1));
    }

    [Fact]
    public void The_timeline_holds_the_pressure_of_who_lies()
    {
        // 13.5 cmH2O at 2 L and 2.0 per litre (read) where it was not measured; measured, 10 cmH2O at 1.5 L and 3 per litre.
        var regimen = Night(3, Day(2_000));
        Assert.All(Of(null), point => Assert.Equal(13.5 + 2.0 * (point.Volume.Liters - 2), point.Pressure.CentimetersOfWater, 1e-9));
        var measured = new CavityPressure(Pressure.FromCentimetersOfWater(10), Volume.FromLiters(1.5)) { CentimetersOfWaterPerLiter = 3 };
        Assert.All(Of(measured), point => Assert.Equal(10 + 3 * (point.Volume.Liters - 1.5), point.Pressure.CentimetersOfWater, 1e-9));

        System.Collections.Immutable.ImmutableArray<TimelinePoint> Of(CavityPressure? pressure) => RegimenSimulation.Run(
            Standard, ReferenceMembranes.MeanIncidentAdult(), regimen, RegimenOptions.Default with { Timeline = TimeSpan.FromMinutes(30), Pressure = pressure }).Timeline;
    }

    [Fact]
    public void Removal_above_a_ceiling_is_a_finding_and_no_gain()
    {
        var options = RegimenOptions.Default with { LargestFluidRemoval = Milliliters(800) };
        var strong = Regimen.Cycling(TimeSpan.FromHours(9), 5, Milliliters(2_000), DialysisSolution.Glucose386);
        var outcome = RegimenSimulation.Run(Standard, ReferenceMembranes.MeanIncidentAdult(), strong, options);
        Assert.Contains(outcome.Findings, finding => finding.Code == "above-fluid-ceiling");
        Assert.Contains(outcome.Findings, finding => finding.Code == "strongest-bag-daily");
    }

    [Fact]
    public void The_peak_is_the_top_of_the_timeline()
    {
        // The peak lies inside a dwell and is located to 0.001 min; sampled every 0.1 min the timeline misses it by less than 0.01 mL.
        var outcome = RegimenSimulation.Run(
            Standard, ReferenceMembranes.MeanIncidentAdult(), Night(3, Day(2_000)), RegimenOptions.Default with { Timeline = TimeSpan.FromMinutes(0.1) });
        var highest = outcome.Timeline.MaxBy(point => point.Volume);
        Assert.InRange(outcome.Peak.Volume.Milliliters, highest.Volume.Milliliters, highest.Volume.Milliliters + 0.01);
        Assert.Equal(highest.Time.TotalMinutes, outcome.Peak.Time.TotalMinutes, 1.0);
        Assert.True(outcome.Timeline.Zip(outcome.Timeline.Skip(1)).All(pair => pair.First.Time <= pair.Second.Time));
    }

    [Fact]
    public void A_run_can_be_stopped()
    {
        using var source = new CancellationTokenSource();
        source.Cancel();
        Assert.Throws<OperationCanceledException>(() => RegimenSimulation.Run(
            Standard, ReferenceMembranes.Textbook, Night(6), null, new RunControl { Cancellation = source.Token }));
    }

    [Fact]
    public void A_workspace_gives_the_same_result_whatever_it_ran_before()
    {
        var workspace = new RegimenWorkspace();
        var membrane = ReferenceMembranes.MeanIncidentAdult();
        var regimen = Night(5, Day(2_000));
        var first = workspace.Run(Standard, membrane, regimen, RegimenOptions.Default, RunControl.None);
        workspace.Run(Standard, ReferenceMembranes.Textbook, Night(9), TableOptions, RunControl.None);
        var again = workspace.Run(Standard, membrane, regimen, RegimenOptions.Default, RunControl.None);
        Assert.Equal(first.Ultrafiltration, again.Ultrafiltration);
        Assert.Equal(first.SodiumRemoved, again.SodiumRemoved);
    }

    [Property(MaxTest = 30)]
    public bool Whatever_is_prescribed_the_water_balance_closes_and_the_cavity_never_empties(
        PositiveInt cycles, PositiveInt fill, PositiveInt day, PositiveInt strength, PositiveInt area, bool twoSlopes)
    {
        var solution = DialysisSolution.UsualGlucose[strength.Get % 3];
        var settings = RegimenSettings.Default with
        {
            Drain = twoSlopes
                ? DrainProfile.TwoSlope(FlowRate.FromMillilitersPerMinute(200), FlowRate.FromMillilitersPerMinute(45), 0.8)
                : DrainProfile.Default,
        };
        DayFill? dayFill = day.Get % 3 == 0 ? null : new(DialysisSolution.UsualGlucose[day.Get % 3], Milliliters(200 + day.Get * 37 % 2000));
        var regimen = Regimen.Cycling(
            TimeSpan.FromHours(9), 1 + cycles.Get % 9, Milliliters(500 + fill.Get * 53 % 2200), solution, dayFill, settings);
        var membrane = ReferenceMembranes.MeanIncidentAdult() with
        {
            DiffusionArea = DiffusionArea.FromCentimeters(10_000 + area.Get * 997 % 35_000),
            AreaLaw = (AreaLaw)(area.Get % 3),
        };
        var outcome = RegimenSimulation.Run(Standard, membrane, regimen);
        var drained = outcome.Cycles.Sum(cycle => cycle.Drained.Milliliters) + outcome.EveningDrain.Milliliters;
        var crossed = (outcome.PoreVolumes.Total - outcome.LymphaticRemoval).Milliliters;
        return Math.Abs(outcome.FluidUsed.Milliliters + crossed - drained) <= 1e-6 * outcome.FluidUsed.Milliliters
            && outcome.SmallestVolume.Milliliters >= 9.999
            && outcome.GlucoseAbsorbed < outcome.GlucoseUsed;
    }

    [Property(MaxTest = 20)]
    public bool A_night_written_as_shares_or_as_times_is_the_same_night(PositiveInt cycles, PositiveInt fill)
    {
        var shared = Regimen.Cycling(
            TimeSpan.FromHours(9), 2 + cycles.Get % 7, Milliliters(1_000 + fill.Get * 53 % 1500), DialysisSolution.Glucose227);
        var written = shared with
        {
            Night = [.. shared.Night.Zip(shared.DwellTimes, (exchange, time) => exchange with { DwellTime = time })],
        };
        var a = RegimenSimulation.Run(Standard, ReferenceMembranes.MeanIncidentAdult(), shared);
        var b = RegimenSimulation.Run(Standard, ReferenceMembranes.MeanIncidentAdult(), written);
        return Math.Abs((a.Ultrafiltration - b.Ultrafiltration).Milliliters) < 1e-3;
    }

    [Property(MaxTest = 30)]
    public bool A_dwell_split_by_a_drain_of_nothing_is_the_same_dwell(PositiveInt cycles, PositiveInt fill, PositiveInt strength, PositiveInt area, NonNegativeInt share)
    {
        // No fill may be empty: a millionth of a millilitre opens the second part, and moves the fluid by as much. The rest is the integrator's, which is
        // asked for 1e-11 and takes other steps: 1e-8 of the fluid and of each solute that comes out. Without the transient, which belongs to a fill.
        var solution = DialysisSolution.UsualGlucose[strength.Get % 3];
        var whole = Regimen.Cycling(TimeSpan.FromHours(9), 1 + cycles.Get % 6, Milliliters(800 + fill.Get * 53 % 1_700), solution, Day(1_500));
        var (first, time) = (whole.Night[0], whole.DwellTimes[0]);
        var early = time * (0.05 + 0.9 * (share.Get % 100 / 100.0));
        var split = whole with
        {
            Night =
            [
                first with { DwellTime = early, PartialDrain = new(default) },
                new(solution, Milliliters(1e-6), time - early),
                .. whole.Night.Skip(1).Select(exchange => exchange with { DwellTime = time }),
            ],
        };
        var membrane = ReferenceMembranes.MeanIncidentAdult() with { DiffusionArea = DiffusionArea.FromCentimeters(10_000 + area.Get * 997 % 35_000) };
        var exact = RegimenOptions.Default with { Transient = TransientUse.None, Integration = new() { RelativeTolerance = 1e-11 } };
        var (a, b) = (RegimenSimulation.Run(Standard, membrane, whole, exact), RegimenSimulation.Run(Standard, membrane, split, exact));
        return Math.Abs((a.Ultrafiltration - b.Ultrafiltration).Milliliters) <= 1e-8 * a.FluidUsed.Milliliters
            && Math.Abs((a.Peak.Volume - b.Peak.Volume).Milliliters) <= 1e-8 * a.Peak.Volume.Milliliters
            && a.Solutes.Zip(b.Solutes).All(pair => pair.First.Drained is not { } drained || Math.Abs(1 - drained / pair.Second.Drained!.Value) <= 1e-8);
    }

    [Theory]
    [InlineData(14_000)]
    [InlineData(25_000)]
    [InlineData(40_000)]
    public void One_more_cycle_costs_a_bag_and_pays_less_than_the_one_before(double area)
    {
        // By arithmetic a cycle is 2 L and 27.2 g (75.5 mmol/L × 2 L × 180.16 g/mol). What it brings in creatinine clearance shrinks with every cycle, and
        // some of its glucose is drained again: the lesson of the table above, cycle by cycle. The clearance may fall at the end, not rise faster.
        var membrane = ReferenceMembranes.Textbook with { DiffusionArea = DiffusionArea.FromCentimeters(area) };
        var nights = Enumerable.Range(3, 8).Select(cycles => RegimenSimulation.Run(Standard, membrane, Night(cycles))).ToList();
        var gains = nights.Zip(nights.Skip(1), (few, more) => (more.CreatinineDose.Peritoneal - few.CreatinineDose.Peritoneal).LitersPerWeek).ToList();
        for (var i = 1; i < nights.Count; i++)
        {
            Assert.Equal(2000, (nights[i].FluidUsed - nights[i - 1].FluidUsed).Milliliters, 1e-9);
            Assert.Equal(2 * 75.5 * 0.18016, (nights[i].GlucoseUsed - nights[i - 1].GlucoseUsed).Grams, 0.01);
            Assert.InRange((nights[i].GlucoseAbsorbed - nights[i - 1].GlucoseAbsorbed).Grams, 0, 27.2);
        }

        Assert.True(gains[0] > 0);
        Assert.All(gains.Zip(gains.Skip(1)), pair => Assert.True(pair.Second < pair.First));
    }

    private static double EveningFlow(RegimenOutcome outcome)
    {
        var points = outcome.Timeline.Where(point => point.Phase == RegimenPhase.EveningDrain).ToList();
        return outcome.EveningDrain.Milliliters / (outcome.Timeline[^1].Time - points[0].Time).TotalMinutes;
    }

    private static void Within(double expected, double found, double relative) =>
        Assert.True(Math.Abs(found - expected) <= relative * Math.Abs(expected), Invariant($"expected {expected} within {relative:P2}, found {found}"));

    private static string Invariant(FormattableString text) => FormattableString.Invariant(text);
}
