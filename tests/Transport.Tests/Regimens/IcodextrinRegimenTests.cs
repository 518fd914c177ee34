using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace Transport.Tests.Regimens;

/// <summary>Icodextrin as the long dwell of a regimen.</summary>
public sealed class IcodextrinRegimenTests
{
    private static readonly Patient Person = Patient.Example;
    private static readonly ThreePoreMembrane Membrane = ReferenceMembranes.MeanIncidentAdult().ScaledTo(Person.BodySurface);

    [Fact]
    public void A_long_day_gains_fluid_where_glucose_loses_it()
    {
        // Direction in print: icodextrin gives more than glucose in the long dwell (meta-analysis +187 mL, −47 to 421, read).
        var (polymer, glucose) = (Run(Day(DialysisSolution.Icodextrin)), Run(Day(DialysisSolution.Glucose227)));
        Assert.True(polymer.DayUltrafiltration.Milliliters > 300);
        Assert.True(polymer.DayUltrafiltration.Milliliters > glucose.DayUltrafiltration.Milliliters + 187);
    }

    [Fact]
    public void Glucose_and_polymer_absorbed_stand_apart_and_add_up_with_what_is_drained()
    {
        // 2 L of 75 g/L. About 35 % in the 14.6 h of the day (computed for one dwell: 36 %). What is drained was integrated on its own: in the rhythm
        // absorbed = instilled − drained to the rhythm's tolerance.
        var outcome = Run(Day(DialysisSolution.Icodextrin));
        Assert.Equal(150.0, outcome.PolymerUsed.Grams, 1e-9);
        Assert.InRange(outcome.PolymerAbsorbed / outcome.PolymerUsed, 0.32, 0.42);
        Assert.True(outcome.GlucoseAbsorbed < outcome.GlucoseUsed);
        Assert.Equal(0, Run(Day(DialysisSolution.Glucose227)).PolymerUsed.Grams);
        Assert.Equal(0, Run(Day(DialysisSolution.Glucose227)).PolymerAbsorbed.Grams);

        // The night starts from what the day left: polymer is in the residual fluid, and in the night's first cycle.
        Assert.Contains(outcome.Cycles[0].Carried.Others, pair => pair.Value.MillimolesPerLiter > 0.1);
    }

    [Fact]
    public void As_the_day_of_a_regimen_it_is_the_single_dwell()
    {
        // One cycle at night so long that the day is short would be another thing: here the day of 14 h on what a night leaves, without transient, against one dwell
        // of the same volumes and residual. Fill of ten minutes at both ends: 5 %.
        var outcome = Run(Day(DialysisSolution.Icodextrin));
        var regimen = outcome.Regimen;
        var residual = ResidualFluid.Used(Volume.FromMilliliters(250 * Person.SurfaceFactor), Person.Plasma);
        var course = DwellSimulation.Run(
            Person, Membrane with { TransientAmplitude = 0 }, new(DialysisSolution.Icodextrin, Volume.FromLiters(2), TimeSpan.FromMinutes(regimen.DayDwellTimes[0].TotalMinutes), residual));
        Assert.InRange(outcome.DayUltrafiltration / course.NetUltrafiltrationAt(course.Dwell.Duration), 0.93, 1.07);
    }

    [Fact]
    public void The_order_of_runs_in_one_workspace_makes_no_difference()
    {
        // Panels of different size in turn: every bit.
        var workspace = new RegimenWorkspace();
        Regimen[] days = [Day(DialysisSolution.Icodextrin), Day(DialysisSolution.Glucose227), Day(DialysisSolution.Icodextrin)];
        foreach (var day in days)
        {
            var outcome = workspace.Run(Person, Membrane, day, RegimenOptions.Default, RunControl.None);
            Assert.Equal(Run(day).Ultrafiltration, outcome.Ultrafiltration);
            Assert.Equal(Run(day).PolymerAbsorbed, outcome.PolymerAbsorbed);
        }
    }

    [Fact]
    public void A_short_dwell_and_a_second_one_are_warned_of_and_the_meters_always()
    {
        Assert.Equal(["icodextrin-in-use"], Codes(Day(DialysisSolution.Icodextrin)));
        Assert.Empty(Codes(Day(DialysisSolution.Glucose136)));
        var night = Regimen.Cycling(TimeSpan.FromHours(9), 4, Volume.FromLiters(2), DialysisSolution.Icodextrin);
        Assert.Equal(["icodextrin-dwell-short", "icodextrin-in-use", "icodextrin-more-than-once"], Codes(night));
        var both = new Regimen(
            TimeSpan.FromHours(9.5), [new(DialysisSolution.Icodextrin, Volume.FromLiters(2))], new DayFill(DialysisSolution.Icodextrin, Volume.FromLiters(2)));
        Assert.Equal(["icodextrin-in-use", "icodextrin-more-than-once"], Codes(both));
        Assert.Contains("glucose meters", Day(DialysisSolution.Icodextrin).Findings[0].Message, StringComparison.Ordinal);

        static IEnumerable<string> Codes(Regimen regimen) =>
            regimen.Findings.Select(finding => finding.Code).Where(code => code.StartsWith("icodextrin", StringComparison.Ordinal)).Order(StringComparer.Ordinal);
    }

    [Fact]
    public void Two_polymers_and_amino_acids_are_refused()
    {
        var other = DialysisSolution.Icodextrin with { Polymer = PolymerDistribution.LogNormal("other", 6000, 15_000, 75, [4000, 20_000]) };
        Assert.Contains("two-polymers", Refused(() => new Regimen(
            TimeSpan.FromHours(9), [new(other, Volume.FromLiters(2))], new DayFill(DialysisSolution.Icodextrin, Volume.FromLiters(2)))));
        var aminoAcids = new DialysisSolution("amino acids", default, Concentration.FromMillimolesPerLiter(132), OsmoticAgent.AminoAcids);
        Assert.Contains("solution-not-simulated", Refused(() => Day(aminoAcids)));

        static IEnumerable<string> Refused(Func<Regimen> make) => Assert.Throws<RegimenException>(make).Findings.Select(finding => finding.Code);
    }

    [Property(MaxTest = 40, Replay = Transport.Tests.Properties.Seeds.Fixed)]
    public Property A_day_with_icodextrin_balances_whatever_the_night()
    {
        // Fluid: what came through the pores minus lymph is what was removed, in the steady rhythm. Polymer: no more absorbed than instilled, and not less than nothing.
        var days = from cycles in Gen.Choose(2, 6)
                   from fill in Gen.Choose(1200, 2500)
                   from dayFill in Gen.Choose(1000, 2500)
                   select Regimen.Cycling(
                       TimeSpan.FromHours(9), cycles, Volume.FromMilliliters(fill), DialysisSolution.Glucose136, new(DialysisSolution.Icodextrin, Volume.FromMilliliters(dayFill)));
        return Prop.ForAll(days.ToArbitrary(), day =>
        {
            var outcome = Run(day);
            var through = outcome.PoreVolumes.Total.Milliliters - outcome.LymphaticRemoval.Milliliters;
            return Math.Abs(through - outcome.Ultrafiltration.Milliliters) < 0.01
                && outcome.PolymerAbsorbed.Grams > 0
                && outcome.PolymerAbsorbed < outcome.PolymerUsed;
        });
    }

    private static Regimen Day(DialysisSolution solution) => Regimen.Cycling(
        TimeSpan.FromHours(9), 4, Volume.FromLiters(2), DialysisSolution.Glucose136, new(solution, Volume.FromLiters(2)));

    private static RegimenOutcome Run(Regimen regimen) => RegimenSimulation.Run(Person, Membrane, regimen);
}
