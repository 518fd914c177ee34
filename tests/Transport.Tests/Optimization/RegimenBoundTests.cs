using MathNet.Numerics.Distributions;
using static Transport.Tests.Regimens.RegimenTests;

namespace Transport.Tests.Optimization;

/// <summary>Bounds over the ensemble, limits of the patient, and what becomes of a choice when something is other than thought. Invented patients.</summary>
public sealed class RegimenBoundTests
{
    private static readonly Patient Person = Patient.Example with
    {
        ResidualFunction = new(Clearance.FromMillilitersPerMinute(3), Clearance.FromMillilitersPerMinute(5), Milliliters(800)),
    };

    private static readonly MembraneEnsemble Ensemble = PopulationPrior.IncidentAdults().ToEnsemble(Person.BodySurface, 60, 3);
    private static readonly RegimenGoals Goals = new(FluidTarget.Between(Milliliters(200), Milliliters(1_200)));

    private static readonly RegimenSpace Space = new()
    {
        NightLengths = [TimeSpan.FromHours(8), TimeSpan.FromHours(9)],
        Cycles = [3, 5, 7],
        VolumesPerCycle = [Milliliters(1_500), Milliliters(2_000), Milliliters(2_500)],
        NightSolutions = [DialysisSolution.Glucose136, DialysisSolution.Glucose227],
        DayFills = [null, new(DialysisSolution.Glucose136, Milliliters(1_500))],
    };

    private static readonly RegimenSearchOptions Bare = new() { MostOptions = 1_000, EnsembleMembers = 60, Layers = DoubtLayers.ParametersAlone };

    [Fact]
    public void What_is_offered_keeps_its_probability_when_every_member_is_simulated_phase_after_phase()
    {
        // Shared exchanges decide; the public simulation of every member is the judge, and what the options say comes from it: to rounding.
        var bound = RegimenBound.AtLeast(RegimenMeasure.Ultrafiltration, 400).WithProbability(0.8);
        var front = RegimenSearch.Run(Person, Ensemble, Goals with { Bounds = [bound] }, Space, null, Bare);
        Assert.NotEmpty(front.Options);
        Assert.All(front.Options.Take(4), option =>
        {
            var answer = Assert.Single(option.Answers);
            var kept = Enumerable.Range(0, 60).Count(member =>
                RegimenSimulation.Run(Person, Ensemble[member], option.Regimen, Bare.Simulation).Ultrafiltration.Milliliters >= 400) / 60.0;
            Assert.True(answer.IsMet);
            Assert.Equal(kept, answer.ProbabilityOfMean.Value, 1e-12);
            Assert.True(answer.ProbabilityOfSingleDay?.Value < answer.ProbabilityOfMean.Value || answer.ProbabilityOfMean.Value < 0.9);
            Assert.StartsWith("On about", answer.Words, StringComparison.Ordinal);
        });
        Assert.Equal(front.CandidateCount, front.DroppedBecause.Values.Sum() + front.Options.Length);
    }

    [Fact]
    public void What_lies_nearer_to_a_bound_than_maps_are_exact_is_decided_by_the_simulation_of_every_member()
    {
        // The probability of each regimen written out from the public simulation of every member. Where a millionth less is asked for it is kept, where a millionth more, missed:
        // maps alone are off by 1e-5 in the middle and 5e-4 at most (measured), and would decide half of these by chance.
        var held = Bare with { Tested = DialysisSolution.Glucose386, Layers = DoubtLayers.Default };
        var wide = Goals with { Fluid = FluidTarget.Between(Milliliters(-2_000), Milliliters(4_000)) };
        var tried = 0;
        foreach (var cycles in new[] { 3, 5, 7 })
        {
            foreach (var day in Space.DayFills)
            {
                var one = Space with { NightLengths = [TimeSpan.FromHours(9)], Cycles = [cycles], VolumesPerCycle = [Milliliters(2_000)], NightSolutions = [DialysisSolution.Glucose227], StrongerFirstCycles = [0], DayFills = [day] };
                var regimen = Assert.Single(one.All());
                var deviation = DailyDoubt.ModelForm(RegimenSimulation.Run(Person, Ensemble.Center, regimen, held.Simulation), held.Layers, held.Tested).Deviation;
                var probability = Enumerable.Range(0, 60).Average(member =>
                {
                    var day = RegimenSimulation.Run(Person, Ensemble[member], regimen, held.Simulation);
                    return 1 - Normal.CDF(day.Ultrafiltration.Milliliters + DailyDoubt.ModelForm(day, held.Layers, held.Tested).Shift, deviation, 500);
                });
                if (probability is < 0.01 or > 0.99)
                {
                    continue;
                }

                tried++;
                Assert.True(Keeps(probability - 1e-6), $"{regimen}: {probability}");
                Assert.False(Keeps(probability + 1e-6), $"{regimen}: {probability}");

                bool Keeps(double asked) => RegimenSearch.Run(
                    Person, Ensemble, wide with { Bounds = [RegimenBound.AtLeast(RegimenMeasure.Ultrafiltration, 500).WithProbability(asked)] }, one, null, held).NothingMeets is null;
            }
        }

        Assert.True(tried >= 4, $"{tried}");
    }

    [Fact]
    public void To_ask_for_more_certainty_never_gives_less_glucose()
    {
        var last = 0.0;
        foreach (var probability in new[] { 0.5, 0.7, 0.8, 0.9, 0.999 })
        {
            var front = Search(Goals with { Bounds = [RegimenBound.AtLeast(RegimenMeasure.Ultrafiltration, 400).WithProbability(probability)] });
            var least = front.NothingMeets is null ? front.Options.Min(option => option.Outcome.GlucoseAbsorbed.Grams) : double.MaxValue;

            // But for the 5 g within which options count as ties.
            Assert.True(least >= last - 5, $"{probability}: {least} g after {last} g.");
            last = least;
        }

        Assert.Equal(double.MaxValue, last);
    }

    [Fact]
    public void What_nothing_meets_is_named_with_the_shortfall_of_the_nearest()
    {
        var bound = RegimenBound.AtLeast(RegimenMeasure.SodiumRemoved, 400).WithProbability(0.9);
        var front = Search(Goals with { Bounds = [bound] });
        Assert.Equal("sodium removed", front.NothingMeets!.Goal);
        Assert.Contains("0.90 less", front.NothingMeets.ByHowMuch, StringComparison.Ordinal);
        Assert.Equal(front.NothingMeets.Nearest, Assert.Single(front.Options).Regimen);
        Assert.Equal(front.CandidateCount, front.DroppedBecause.Values.Sum() + 1);
    }

    [Fact]
    public void Limits_of_patient_machine_and_pressure_are_kept()
    {
        var polymer = Space with { DayFills = [.. Space.DayFills, new(DialysisSolution.Icodextrin, Milliliters(1_500))] };
        var wide = Goals with { Clearance = null, Fluid = FluidTarget.Between(Milliliters(-2_000), Milliliters(4_000)) };
        Assert.All(Search(wide with { IsDayDry = true }).Options, option => Assert.Null(option.Regimen.DayFill));
        Assert.All(Search(wide with { MostCycles = 5 }).Options, option => Assert.True(option.Regimen.Cycles <= 5));
        Assert.All(Search(wide with { MostFluid = Milliliters(9_000) }).Options, option => Assert.True(option.Regimen.FluidInAll <= Milliliters(9_000)));
        Assert.Contains(RegimenSearch.Run(Person, Ensemble, wide, polymer, null, Bare).Options, option => option.Regimen.DayFill?.Solution == DialysisSolution.Icodextrin);
        Assert.DoesNotContain(
            RegimenSearch.Run(Person, Ensemble, wide with { ShortestIcodextrin = null }, polymer, null, Bare).Options,
            option => option.Regimen.DayFill?.Solution == DialysisSolution.Icodextrin);

        // 13.5 cmH2O at 2 L and 2.0 per litre: 14.0 at 2.25 L, which no fill of 2.5 L keeps.
        var gentle = wide with { HighestPressure = Pressure.FromCentimetersOfWater(14) };
        Assert.Equal(2_250, gentle.LargestFillOf(Person).Milliliters, 1e-6);
        var front = Search(gentle);
        Assert.NotEmpty(front.Options);
        Assert.All(front.Options, option => Assert.True(option.Outcome.Peak.Volume.Milliliters <= 2_250 + 0.1));
        Assert.True(front.DroppedBecause[DropReason.PressureTooHigh] > 0);
    }

    [Fact]
    public void The_present_regimen_is_no_option_besides()
    {
        var free = Search(Goals);
        var again = RegimenSearch.Run(Person, Ensemble, Goals, Space, free.Options[0].Regimen, Bare);
        Assert.DoesNotContain(again.Options, option => option.Regimen.Equals(free.Options[0].Regimen));
        Assert.Equal(1, again.DroppedBecause[DropReason.IsPresent]);
    }

    [Fact]
    public void Goals_that_make_no_sense_are_refused()
    {
        Assert.Throws<ArgumentException>(() => RegimenObjective.Most(RegimenMeasure.Ultrafiltration));
        Assert.Throws<InvalidOperationException>(() => RegimenBound.AtLeast(RegimenMeasure.UreaDose, 1.7).WithProbabilityOfSingleDay(0.9));
        Assert.Throws<ArgumentOutOfRangeException>(() => RegimenBound.AtLeast(RegimenMeasure.UreaDose, 1.7).WithProbability(1.2));
        Assert.Throws<ArgumentOutOfRangeException>(() => Goals with { LargestFillPerSquareMeter = double.NaN });
        Assert.Throws<ArgumentOutOfRangeException>(() => Goals with { MostStrongestExchanges = -1 });
        Assert.Throws<ArgumentOutOfRangeException>(() => ClearanceGoal.Usual with { Noise = -0.1 });
        Assert.Throws<ArgumentException>(() => RegimenSearch.Run(
            Person, Ensemble, Goals with { Bounds = [RegimenBound.AtLeast(RegimenMeasure.PhosphateClearance, 30)] }, Space, null, Bare));
    }

    [Fact]
    public void Residual_function_is_needed_down_to_where_the_goal_is_just_met()
    {
        // Against a search of its own: the same regimen, with the kidneys that the reserve says, comes up to the goal to the last digit.
        var option = Search(Goals).Options[0];
        var reserve = RegimenSensitivity.ReserveOf(option, Goals with { Fluid = FluidTarget.Between(Milliliters(-900), Milliliters(1_200)) });
        Assert.Equal(CenterGoal.Clearance, reserve.FirstToFail);
        var share = reserve.Share!.Value;
        Assert.InRange(share, 0.01, 1);
        var kidneys = Person.ResidualFunction;
        var then = Person with { ResidualFunction = new(kidneys.UreaClearance * share, kidneys.CreatinineClearance * share, kidneys.UrineVolumePerDay * share) };
        Assert.Equal(1.7 * 0.95, RegimenSimulation.Run(then, Ensemble.Center, option.Regimen, Bare.Simulation).UreaDose.TotalKtOverV, 1e-6);
    }

    [Fact]
    public void Without_any_residual_function_no_share_of_it_can_be_needed()
    {
        // Nothing can be had of nothing: neither infinity nor the largest number that there is.
        var found = Search(Goals).Options[0];
        var anuric = Person with { ResidualFunction = new(default, default, default) };
        var option = found with { Outcome = RegimenSimulation.Run(anuric, Ensemble.Center, found.Regimen, Bare.Simulation) };
        var reserve = RegimenSensitivity.ReserveOf(option, Goals with { Fluid = FluidTarget.Between(Milliliters(-900), Milliliters(1_200)), Clearance = ClearanceGoal.Usual with { WeeklyUreaDose = 9 } });
        Assert.Null(reserve.Share);
        Assert.Equal(CenterGoal.Clearance, reserve.FirstToFail);
        Assert.Contains("no residual function today", reserve.Words, StringComparison.Ordinal);

        // Of what nobody measured it is not said that there is none.
        var unmeasured = found with { Outcome = RegimenSimulation.Run(Person with { ResidualFunction = new(default, default, Milliliters(900)) }, Ensemble.Center, found.Regimen, Bare.Simulation) };
        var unknown = RegimenSensitivity.ReserveOf(unmeasured, Goals with { Fluid = FluidTarget.Between(Milliliters(-900), Milliliters(1_200)), Clearance = ClearanceGoal.Usual with { WeeklyUreaDose = 9 } });
        Assert.Equal("By the peritoneum alone it does not come up to the clearance goal; renal clearance was not stated.", unknown.Words);
    }

    [Fact]
    public void What_if_says_what_becomes_of_the_choice()
    {
        var chosen = Search(Goals).Options[0].Regimen;
        var rows = RegimenSensitivity.Run(Person, Ensemble, Goals, Space, chosen, Bare);
        Assert.Equal(8, rows.Length);

        // A faster membrane absorbs glucose sooner and clears more; without kidneys the dose is the peritoneum's alone.
        var center = RegimenSimulation.Run(Person, Ensemble.Center, chosen, Bare.Simulation);
        Assert.True(rows[0].Outcome!.GlucoseAbsorbed > center.GlucoseAbsorbed);
        Assert.True(rows[1].Outcome!.GlucoseAbsorbed < center.GlucoseAbsorbed);
        // A larger surface lying clears more; water that passes as before is then less, and more where it passes more easily too.
        Assert.True(rows[3].Outcome!.UreaDose.TotalKtOverV > center.UreaDose.TotalKtOverV && rows[3].Outcome!.Ultrafiltration < center.Ultrafiltration);
        Assert.True(rows[4].Outcome!.Ultrafiltration > center.Ultrafiltration);
        Assert.Equal(center.UreaDose.PeritonealKtOverV, rows[6].Outcome!.UreaDose.TotalKtOverV, 1e-6);
        Assert.True(rows[7].Outcome!.UreaDose.TotalKtOverV < center.UreaDose.TotalKtOverV);
        Assert.All(rows, row => Assert.Contains(row.StillMeets ? "still met" : "missed", row.Words, StringComparison.Ordinal));
    }

    private static RegimenFront Search(RegimenGoals goals) => RegimenSearch.Run(Person, Ensemble, goals, Space, null, Bare);
}
