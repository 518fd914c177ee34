using FsCheck;
using FsCheck.Xunit;
using static Transport.Tests.Regimens.RegimenTests;

namespace Transport.Tests.Regimens;

/// <summary>Tidal exchanges: their arithmetic, the limits they run into, and a published comparison.</summary>
public sealed class TidalTests
{
    private static readonly ThreePoreMembrane Membrane = ReferenceMembranes.MeanIncidentAdult();

    // 1.73 m².
    private static readonly Patient Standard = Patient.Example with
    {
        Weight = Mass.FromKilograms(70 * Math.Pow(1.73 / Patient.Example.BodySurface.SquareMeters, 1 / 0.425)),
    };

    [Fact]
    public void A_supply_makes_one_full_and_many_tidal_cycles()
    {
        // 14 L, fill 2 L, half of it tidal: 1 + (14 − 2)/1 = 13; an expected 1300 mL make each drain 1100 mL.
        var plan = new TidalPlan(Milliliters(2_000), 0.5) { ExpectedUltrafiltration = Milliliters(1_300) };
        Assert.Equal(13, plan.CyclesOf(Milliliters(14_000)));
        var regimen = Regimen.Tidal(TimeSpan.FromHours(10), 13, plan, DialysisSolution.Glucose136);
        Assert.Equal(14_000, regimen.FluidInAll.Milliliters, 1e-9);
        Assert.Equal([2_000.0, .. Enumerable.Repeat(1_000.0, 12)], regimen.Night.Select(exchange => exchange.Fill.Milliliters));
        Assert.All(regimen.Night[..^1], exchange => Assert.Equal(1_100, exchange.PartialDrain!.Total.Milliliters, 1e-9));
        Assert.Null(regimen.Night[^1].PartialDrain);

        // By hand: fills 10 + 12 × 5 min; a whole drain takes 12 min, 1100 of 2100 mL above the residual 6.286 min; (600 − 70 − 75.43 − 12) / 13.
        Assert.All(regimen.DwellTimes, time => Assert.Equal(34.0439560, time.TotalMinutes, 1e-6));
        Assert.Equal("10 h at night: 1 × 2.0 L glucose 1.36 % (drains 1.1 L), 11 × 1.0 L glucose 1.36 % (drains 1.1 L), 1 × 1.0 L glucose 1.36 %; day: dry", regimen.Describe());
    }

    [Property(MaxTest = 20)]
    public bool All_of_the_fill_is_no_tidal_regimen(PositiveInt cycles, PositiveInt fill, PositiveInt expected)
    {
        // A share of 1 drains completely, whatever is expected: the same regimen, hence the same day.
        var (count, volume) = (1 + cycles.Get % 8, Milliliters(500 + fill.Get * 53 % 2_200));
        var plan = new TidalPlan(volume, 1) { ExpectedUltrafiltration = Milliliters(expected.Get) };
        return Regimen.Tidal(TimeSpan.FromHours(9), count, plan, DialysisSolution.Glucose136)
            == Regimen.Cycling(TimeSpan.FromHours(9), count, volume, DialysisSolution.Glucose136);
    }

    [Fact]
    public void Every_tidal_drain_takes_what_it_was_asked_for()
    {
        // A set volume at a known flow ends at a known time: exact, unless the cavity runs out first.
        var outcome = Run(650);
        Assert.All(outcome.Cycles[..^1], cycle => Assert.Equal(1_050, cycle.Drained.Milliliters, 1e-6));
    }

    [Fact]
    public void Too_little_expected_fills_the_cavity_up_and_the_peak_is_found_with_its_minute()
    {
        // About 100 mL come from the blood per cycle. With none expected the cavity climbs by 12 times that; with all expected it stays. Volume moves
        // ultrafiltration a little: 10 % of the climb. The night's own balance does not care: its last drain is complete.
        var (none, all) = (Run(0), Run(1_300));
        Assert.Equal(1_200, (none.Peak.Volume - all.Peak.Volume).Milliliters, 120.0);
        Assert.Equal(none.NightUltrafiltration.Milliliters, all.NightUltrafiltration.Milliliters, 0.06 * all.NightUltrafiltration.Milliliters);
        var finding = Assert.Single(none.Findings, finding => finding.Code == "overfill");
        Assert.Contains(FormattableString.Invariant($"{none.Peak.Volume.Milliliters:0} mL at minute {none.Peak.Time.TotalMinutes:0}"), finding.Message, StringComparison.Ordinal);
        Assert.Equal(588, none.Peak.Time.TotalMinutes, 1.0);
        Assert.DoesNotContain(all.Findings, found => found.Code == "overfill");
    }

    [Fact]
    public void Too_much_expected_eats_the_reserve_and_the_drain_runs_dry_at_the_residual()
    {
        // 250 mL more than comes are asked for each time: the reserve of 1000 mL lasts about four cycles. Then a drain ends at the residual, to
        // the bisection's 1e-11 min, and brings less than it was asked for.
        var outcome = Run(13 * 350);
        var dry = outcome.Cycles[6..^1];
        Assert.All(dry, cycle => Assert.True(cycle.Drained.Milliliters < 1_340));
        Assert.All(outcome.Cycles[8..], cycle => Assert.Equal(250, cycle.Carried.Volume.Milliliters, 1e-6));
        Assert.True(outcome.SmallestVolume.Milliliters > 0);
    }

    [Fact]
    public void A_complete_drain_in_between_takes_the_climb_back()
    {
        var plan = new TidalPlan(Milliliters(2_000), 0.5);
        var outcome = RegimenSimulation.Run(
            Standard, Membrane, Regimen.Tidal(TimeSpan.FromHours(10), 12, plan with { CompleteDrainEvery = 4 }, DialysisSolution.Glucose227));
        Assert.Equal(250, outcome.Cycles[4].Carried.Volume.Milliliters, 1e-6);
        Assert.Equal(250, outcome.Cycles[8].Carried.Volume.Milliliters, 1e-6);
        Assert.Equal(2_000, outcome.Cycles[4].Filled.Milliliters, 1e-9);
        Assert.True(outcome.Peak.Volume < Run(0).Peak.Volume - Milliliters(600));
    }

    [Fact]
    public void Thirty_litres_in_eight_hours_clear_the_same_full_or_tidal()
    {
        // 15 × 2 L against 2 L + 28 × 1 L, 1.9 % dextrose, D/P creatinine 0.64, six patients: creatinine 9 ± 2 and 10 ± 3, urea 19 ± 3 and
        // 20 ± 3 mL/min, ultrafiltration 2.9 ± 0.9 and 3.3 ± 1.6 mL/min, no difference (abstract read without its authors, probably Perit Dial Int
        // 1994). A0/Δx 20,000 cm gives that D/P; urea
        // by 2.4 times creatinine's permeability. One standard deviation of each.
        var membrane = ReferenceMembranes.Textbook with { DiffusionArea = DiffusionArea.FromCentimeters(20_000), UreaToCreatininePermeability = 2.4 };
        var solution = DialysisSolution.OfGlucose(19.0 / 198.17 * 1000);
        var settings = RegimenSettings.Default with { FillFlow = FlowRate.FromMillilitersPerMinute(300), Residual = Milliliters(200) };
        var options = new RegimenOptions { Transient = TransientUse.None, FirstNight = ResidualFluid.Used(Milliliters(200), Standard.Plasma) };
        var plan = new TidalPlan(Milliliters(2_000), 0.5) { ExpectedUltrafiltration = Milliliters(1_400) };
        var night = TimeSpan.FromHours(8);
        var full = RegimenSimulation.Run(Standard, membrane, Regimen.Cycling(night, 15, Milliliters(2_000), solution, null, settings), options);
        var tidal = RegimenSimulation.Run(Standard, membrane, Regimen.Tidal(night, 29, plan, solution, null, settings), options);
        Assert.Equal(full.FluidUsed, tidal.FluidUsed);
        foreach (var (outcome, creatinine, urea, fluid) in new[] { (full, (9.0, 2.0), (19.0, 3.0), (2.9, 0.9)), (tidal, (10.0, 3.0), (20.0, 3.0), (3.3, 1.6)) })
        {
            Assert.Equal(creatinine.Item1, outcome.PeritonealCreatinineClearance.LitersPerDay / 0.48, creatinine.Item2);
            Assert.Equal(urea.Item1, outcome.PeritonealUreaClearance.LitersPerDay / 0.48, urea.Item2);
            Assert.Equal(fluid.Item1, outcome.NightUltrafiltration.Milliliters / 480, fluid.Item2);
        }

        Assert.Equal(1, tidal.PeritonealCreatinineClearance / full.PeritonealCreatinineClearance, 0.06);
    }

    private static RegimenOutcome Run(double expected) => RegimenSimulation.Run(
        Standard,
        Membrane,
        Regimen.Tidal(
            TimeSpan.FromHours(10),
            13,
            new TidalPlan(Milliliters(2_000), 0.5) { ExpectedUltrafiltration = Milliliters(expected) },
            DialysisSolution.Glucose227));
}
