using System.Collections.Immutable;
using Transport.Reporting;
using static Transport.Tests.Regimens.RegimenTests;

namespace Transport.Tests.Optimization;

/// <summary>The space that a user edits: bags, mixes, clocks, hands, nights off. And what must hold for every space. Patients are invented.</summary>
public sealed class SearchSpaceTests
{
    private static readonly ThreePoreMembrane Membrane = ReferenceMembranes.MeanIncidentAdult().ScaledTo(Patient.Example.BodySurface);
    private static readonly DialysisSolution Weak = DialysisSolution.Glucose136;
    private static readonly DialysisSolution Medium = DialysisSolution.Glucose227;
    private static readonly DialysisSolution Strong = DialysisSolution.Glucose386;
    private static readonly RegimenSearchOptions Bare = new() { MostOptions = 1_000, EnsembleMembers = 1, Layers = DoubtLayers.ParametersAlone };
    private static readonly RegimenGoals Goals = new(FluidTarget.Between(Milliliters(600), Milliliters(1_400))) { Clearance = null };

    private static readonly RegimenSpace Space = new()
    {
        NightLengths = [TimeSpan.FromHours(8), TimeSpan.FromHours(9)],
        Cycles = [3, 4, 5],
        VolumesPerCycle = [Milliliters(1_500), Milliliters(2_000)],
        NightSolutions = [Weak, Medium],
    };

    [Fact]
    public void Nothing_is_offered_that_is_not_on_the_shelf()
    {
        // A shelf with one strength: the other is left out, alone and in a mix.
        var mix = new SolutionMix(Weak, 1, Medium, 1).ToSolution();
        var goals = Goals with { Fluid = FluidTarget.Between(Milliliters(0), Milliliters(3_000)), Shelf = new(new FluidBag(Weak, Milliliters(5_000)), new FluidBag(Weak, Milliliters(2_000))) };
        var front = Search(goals, Space with { NightSolutions = [Weak, Medium, mix], DayFills = [null, new(Weak, Milliliters(2_000))] });
        Assert.NotEmpty(front.Options);
        Assert.All(front.Options.SelectMany(option => option.Regimen.Exchanges), exchange => Assert.Equal(Weak, exchange.Solution));
        Assert.True(front.DroppedBecause[DropReason.NotAllowed] > 0);

        // A day fill has to come out of one bag.
        var small = goals with { Shelf = new(new FluidBag(Weak, Milliliters(1_500))) };
        Assert.False(small.Shelf.Holds(Regimen.Cycling(TimeSpan.FromHours(9), 3, Milliliters(1_500), Weak, new(Weak, Milliliters(2_000)))));
        Assert.True(small.Shelf.Holds(Regimen.Cycling(TimeSpan.FromHours(9), 3, Milliliters(2_000), Weak, new(Weak, Milliliters(1_500)))));
    }

    [Fact]
    public void Bags_count_as_they_are_opened()
    {
        // By hand: 4 × 2.0 L are 8 L, of 5-L bags 2 with 2 L left over, of 2-L bags 4 with nothing over. The rule is least left over, then fewest.
        var night = Regimen.Cycling(TimeSpan.FromHours(9), 4, Milliliters(2_000), Weak);
        Assert.Equal([5_000, 5_000], Bags(new(new FluidBag(Weak, Milliliters(5_000))), night));
        Assert.Equal([2_000, 2_000, 2_000, 2_000], Bags(new(new FluidBag(Weak, Milliliters(5_000)), new FluidBag(Weak, Milliliters(2_000))), night));

        // A mix of one and one takes 4 L of each, here one bag of each with 1 L over.
        var shelf = new BagShelf(new FluidBag(Weak, Milliliters(5_000)), new FluidBag(Medium, Milliliters(5_000)));
        var mixed = Regimen.Cycling(TimeSpan.FromHours(9), 4, Milliliters(2_000), new SolutionMix(Weak, 1, Medium, 1).ToSolution());
        Assert.Equal([5_000, 5_000], Bags(shelf, mixed));

        // As a bound and a cost of the search: two bags at most, and no option that opens more for no gain.
        var goals = Goals with
        {
            Fluid = FluidTarget.Between(Milliliters(0), Milliliters(3_000)),
            Shelf = shelf,
            Bounds = [RegimenBound.AtMost(RegimenMeasure.Bags, 2), RegimenBound.AtMost(RegimenMeasure.FluidOpened, 10)],
            Objectives = [RegimenObjective.Least(RegimenMeasure.Bags), RegimenObjective.Least(RegimenMeasure.GlucoseAbsorbed)],
        };
        var front = Search(goals, Space);
        Assert.NotEmpty(front.Options);
        Assert.All(front.Options, option => Assert.InRange(Bags(shelf, option.Regimen).Length, 1, 2));
        var all = Space.All().Where(regimen => Bags(shelf, regimen).Length <= 2 && regimen.FluidInAll.Liters <= 10).Select(regimen => RegimenSimulation.Run(Patient.Example, Membrane, regimen))
            .Where(outcome => outcome.Ultrafiltration.Milliliters is >= 0 and <= 3_000).ToList();
        Assert.Equal(all.Min(outcome => outcome.GlucoseAbsorbed.Grams), front.Options.Min(option => option.Outcome.GlucoseAbsorbed.Grams), 0.5);

        static double[] Bags(BagShelf shelf, Regimen regimen) => [.. shelf.For(regimen).SelectMany(cover => cover.Bags).Select(bag => bag.Milliliters)];
    }

    [Fact]
    public void A_larger_set_of_bags_and_mixes_never_worsens_the_optimum_on_simulated_regimens()
    {
        // regimens.md 7.4. The least glucose that keeps the fluid; every set holds the one before. 0.5 g: the search's own margin.
        ImmutableArray<DialysisSolution>[] sets =
        [
            [Medium],
            [Weak, Medium],
            [Weak, Medium, Strong],
            new BagShelf(new[] { Weak, Medium, Strong }.Select(solution => new FluidBag(solution, Milliliters(5_000)))).WithMixes((1, 1)),
        ];
        Assert.Equal([3, 6], sets[2..].Select(set => set.Length));
        var least = sets.Select(set => LeastGlucose(Goals, Space with { NightSolutions = set, TriesEveryStronger = true })).ToList();
        for (var i = 1; i < least.Count; i++)
        {
            Assert.True(least[i] <= least[i - 1] + 0.5, $"{least[i]} g after {least[i - 1]} g");
        }

        // The mix is of use: a floor between what whole strengths give costs less with it.
        Assert.True(least[3] <= least[2]);
    }

    [Fact]
    public void More_time_never_lowers_the_best_attainable_clearance_on_simulated_regimens()
    {
        // regimens.md 7.4, with the night at most so long and the extra time free to stay unused. 0.2 %: the search's margin.
        var goals = Goals with { Fluid = FluidTarget.Between(Milliliters(-1_000), Milliliters(4_000)), Objectives = [RegimenObjective.Most(RegimenMeasure.CreatinineClearance)] };
        var before = 0.0;
        for (var hours = 7; hours <= 10; hours++)
        {
            var front = Search(goals, Space with { NightLengths = [.. Enumerable.Range(7, hours - 6).Select(length => TimeSpan.FromHours(length))] });
            var best = front.Options.Max(option => option.Outcome.CreatinineDose.Total.LitersPerWeek);
            Assert.True(best >= before * 0.998, $"{best} L after {before} L");
            before = best;
        }
    }

    [Fact]
    public void More_certainty_never_leaves_more_regimens()
    {
        // regimens.md 7.4: probability goals are monotone in the probability. By the count of all that keep them.
        var ensemble = PopulationPrior.IncidentAdults().ToEnsemble(Patient.Example.BodySurface, 40, 3);
        int[] kept = [.. new[] { 0.5, 0.7, 0.9, 0.99 }.Select(asked => RegimenSearch.Run(
            Patient.Example,
            ensemble,
            Goals with { Fluid = FluidTarget.Between(Milliliters(0), Milliliters(3_000)), Bounds = [RegimenBound.AtLeast(RegimenMeasure.UreaDose, 1.2).WithProbability(asked)], Objectives = [RegimenObjective.Least(RegimenMeasure.GlucoseAbsorbed)] },
            Space,
            options: Bare with { EnsembleMembers = 40 }).FeasibleCount)];
        Assert.Equal(kept.OrderDescending(), kept);
        Assert.True(kept[0] > kept[^1]);
    }

    [Fact]
    public void The_clock_limits_the_night()
    {
        // 22:30 to 07:00 is eight and a half hours, over midnight.
        var window = new ClockWindow(new(22, 30), new(7, 0));
        Assert.Equal(8.5, window.Length.TotalHours);
        Assert.True(window.Contains(new(23, 0), TimeSpan.FromHours(8)));
        Assert.False(window.Contains(new(23, 0), TimeSpan.FromHours(8.1)));
        Assert.False(window.Contains(new(22, 0), TimeSpan.FromHours(1)));
        Assert.Equal("22:30 to 07:00", window.ToString());
        var goals = Goals with { NightWindow = window };
        var space = RegimenSpace.Usual(Patient.Example, goals) with { VolumesPerCycle = [Milliliters(2_000)], DayFills = [null] };
        var front = Search(goals, space);
        Assert.NotEmpty(front.Options);
        Assert.All(front.Options, option => Assert.Equal((new(22, 30), TimeSpan.FromHours(8)), (option.Regimen.NightStart, option.Regimen.NightLength)));
        Assert.True(front.DroppedBecause[DropReason.NightTooLong] > 0);

        // A start outside is no night; the present regimen is the present one at whatever time it begins.
        Assert.Empty(Search(goals, space with { NightStart = new(21, 0) }).Options);
        var present = front.Options[0].Regimen with { NightStart = new(20, 0) };
        Assert.Equal(1, RegimenSearch.Run(Patient.Example, MembraneEnsemble.Of(Membrane), goals, space, present, Bare).DroppedBecause[DropReason.IsPresent]);
    }

    [Fact]
    public void Hands_are_free_only_at_certain_hours()
    {
        // A day of two exchanges from 06:00 (22:00 + 8 h): the one in the middle falls at about 14:00, halfway. A dwell of its own moves it to noon.
        ImmutableArray<Exchange> halves = [new(Weak, Milliliters(1_500)), new(Weak, Milliliters(1_500))];
        ImmutableArray<Exchange> noon = [new(Weak, Milliliters(1_500), TimeSpan.FromHours(6)), new(Weak, Milliliters(1_500))];
        var space = Space with { NightLengths = [TimeSpan.FromHours(8)], Cycles = [4], VolumesPerCycle = [Milliliters(2_000)], NightSolutions = [Medium], OtherDays = [halves, noon] };
        var goals = Goals with { Fluid = FluidTarget.Between(Milliliters(-2_000), Milliliters(4_000)) };
        Assert.Equal(3, space.ToGrid().Count);
        Assert.Equal(3, Search(goals, space).FeasibleCount);
        Assert.Equal([noon, []], Days(goals with { HandWindows = [new(new(11, 30), new(12, 30))] }).OrderByDescending(day => day.Length));
        Assert.Equal([[]], Days(goals with { MostHandExchanges = 0 }));

        // Who needs a carer at 22:00, at 06:00 and for what lies between: there morning, noon and evening, or not at noon, or not before seven.
        ClockWindow morning = new(new(5, 30), new(6, 30)), midday = new(new(11, 30), new(12, 30)), evening = new(new(21, 0), new(23, 0));
        Assert.Equal([noon, []], Days(goals with { CarerWindows = [morning, midday, evening] }).OrderByDescending(day => day.Length));
        Assert.Equal([[]], Days(goals with { CarerWindows = [morning, evening] }));
        Assert.Empty(Days(goals with { CarerWindows = [new(new(7, 0), new(9, 0)), midday, evening] }));
        Assert.Contains("a carer there within 05:30 to 06:30 or 21:00 to 23:00", (goals with { CarerWindows = [morning, evening] }).ToString(), StringComparison.Ordinal);

        List<ImmutableArray<Exchange>> Days(RegimenGoals asked) =>
            [.. space.All().Where(regimen => new CenterJudge(Patient.Example, asked).Limits(regimen) is null).Select(regimen => regimen.Day)];
    }

    [Theory]
    [InlineData(6)]
    [InlineData(5)]
    public void Two_rest_nights_a_week_are_asked_of_the_treated_days(int nights)
    {
        // The week of the first options, simulated as a week with plasma held, against the goals of the week. On a day off the body takes up at most what a drain leaves,
        // 250 mL per 1.73 m²; that is in the floor. 12 mL and 1 %: what the composition of the residual is worth after a day off.
        var patient = Patient.Example with { ResidualFunction = new(Clearance.FromMillilitersPerMinute(2), Clearance.FromMillilitersPerMinute(3), Milliliters(500)) };
        var goals = Goals with { Fluid = FluidTarget.Between(Milliliters(500), Milliliters(900)), Clearance = ClearanceGoal.Usual, Bounds = [RegimenBound.AtMost(RegimenMeasure.GlucoseAbsorbed, 150)] };
        var asked = goals.OnNights(nights, patient);
        var front = RegimenSearch.Run(patient, MembraneEnsemble.Of(Membrane), asked, RegimenSpace.Usual(patient, asked), options: Bare);
        Assert.Null(front.NothingMeets);
        foreach (var option in front.Options.Take(5))
        {
            var week = WeekSimulation.Run(patient, Membrane, RegimenWeek.OfNights(option.Regimen, nights), RegimenOptions.Default);
            var perDay = week.Ultrafiltration.Milliliters / 7;
            Assert.InRange(perDay, 500 - 12, 900 + 12);
            var ofTreated = option.Outcome.Ultrafiltration.Milliliters * nights / 7;
            Assert.InRange(perDay, ofTreated - 250 * patient.SurfaceFactor * (7 - nights) / 7 - 12, ofTreated + 12);
            var dose = option.Outcome.UreaDose;
            Assert.Equal(dose.RenalKtOverV + dose.PeritonealKtOverV * nights / 7, week.UreaDose.TotalKtOverV, 0.01 * week.UreaDose.TotalKtOverV);
            Assert.True(week.UreaDose.TotalKtOverV >= 0.99 * 1.7 * 0.95);
        }

        Assert.Equal(goals.ToString(), goals.OnNights(7, patient).ToString());
    }

    [Fact]
    public void Two_polymers_in_one_space_do_not_depend_on_who_is_first()
    {
        // Two distributions, the same but in name and place: one worker and four, and both orders, come to the same figures.
        var other = DialysisSolution.Icodextrin with { Polymer = new PolymerDistribution(PolymerDistribution.Icodextrin.Fractions) };
        var goals = Goals with { Fluid = FluidTarget.Between(Milliliters(-1_000), Milliliters(4_000)) };
        string[] found = [.. from workers in new[] { 1, 4 } from days in new[] { new[] { DialysisSolution.Icodextrin, other }, [other, DialysisSolution.Icodextrin] } select Told(workers, days)];
        Assert.Single(found.Distinct());
        Assert.Contains("icodextrin", found[0], StringComparison.Ordinal);

        string Told(int workers, DialysisSolution[] polymers)
        {
            var space = Space with { Cycles = [3, 4], NightSolutions = [Weak], DayFills = [null, .. polymers.Select(polymer => new DayFill(polymer, Milliliters(2_000)))] };
            var front = RegimenSearch.Run(Patient.Example, MembraneEnsemble.Of(Membrane), goals, space, options: Bare with { Workers = workers });
            return string.Join('\n', front.Options.Select(option => FormattableString.Invariant($"{option.Regimen}: {option.Ultrafiltration.Median.Milliliters:R} {option.GlucoseAbsorbed.Median.Grams:R}")));
        }
    }

    [Fact]
    public void A_fill_above_the_largest_tested_says_so_beside_the_option()
    {
        var goals = Goals with { Fluid = FluidTarget.Between(Milliliters(0), Milliliters(3_000)) };
        var space = Space with { VolumesPerCycle = [Milliliters(2_000), Milliliters(2_400)], NightSolutions = [Medium] };
        var front = RegimenSearch.Run(Patient.Example, MembraneEnsemble.Of(Membrane), goals, space, options: Bare with { LargestTestedFill = Milliliters(2_000) });
        Assert.Contains(front.Options, option => option.Regimen.VolumePerCycle == Milliliters(2_400));
        Assert.All(front.Options, option => Assert.Equal(
            option.Regimen.VolumePerCycle > Milliliters(2_000), option.Findings.Any(finding => finding.Code == "fill-above-tested" && finding.Message.Contains("2400 mL", StringComparison.Ordinal))));
        Assert.DoesNotContain(Search(goals, space).Options.SelectMany(option => option.Findings), finding => finding.Code == "fill-above-tested");
    }

    [Fact]
    public void The_page_prints_the_answers_the_neighbours_and_one_figure_for_one_thing()
    {
        var ensemble = PopulationPrior.IncidentAdults().ToEnsemble(Patient.Example.BodySurface, 60, 3);
        var goals = Goals with
        {
            Fluid = FluidTarget.Between(Milliliters(0), Milliliters(3_000)),
            Bounds = [RegimenBound.AtLeast(RegimenMeasure.Ultrafiltration, 300).WithProbability(0.6), RegimenBound.AtLeast(RegimenMeasure.UreaDose, 1.2).WithProbability(0.6)],
        };
        var present = Regimen.Cycling(TimeSpan.FromHours(9), 3, Milliliters(1_500), Weak, new(Weak, Milliliters(2_000)));
        var front = RegimenSearch.Run(Patient.Example, ensemble, goals with { Fluid = FluidTarget.Between(Milliliters(400), Milliliters(3_000)) }, Space, present, new() { EnsembleMembers = 60 });
        var page = Reports.Of(front).Text;
        Assert.All(front.Options.SelectMany(option => option.Answers), answer => Assert.Contains(answer.Words, page, StringComparison.Ordinal));
        Assert.All(front.Options, option => Assert.Contains(option.SingleDay[..^1], page, StringComparison.Ordinal));
        Assert.Contains("It goes without what the option after it gives", page, StringComparison.Ordinal);
        Assert.DoesNotContain("It goes without", front.Options[^1].Why, StringComparison.Ordinal);

        // The sentence about the present regimen holds the median that the table holds, not the center's figure.
        var below = Assert.Single(front.Present!.Findings, finding => finding.Code == "below-fluid-floor");
        Assert.Contains(FormattableString.Invariant($"{Math.Abs(front.Present.Ultrafiltration.Median.Milliliters):0} mL in 24 h"), below.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_day_on_which_another_regimen_is_needed_follows_from_the_stated_decline()
    {
        // By hand: filtration rate (3 + 5) / 2 = 4 mL/min, 0.1 mL/min lost in 30 days. A share s is left after (1 − s) · 4 / 0.1 · 30 days.
        var patient = Patient.Example with { ResidualFunction = new(Clearance.FromMillilitersPerMinute(3), Clearance.FromMillilitersPerMinute(5), Milliliters(800)) };
        var goals = Goals with { Fluid = FluidTarget.Between(Milliliters(600), Milliliters(1_400)), Clearance = ClearanceGoal.Usual };
        var space = RegimenSpace.Usual(patient, goals);
        var ensemble = MembraneEnsemble.Of(Membrane);
        var front = RegimenSearch.Run(patient, ensemble, goals, space, options: Bare);
        var decline = new RenalDecline(new(2026, 11, 26), Clearance.FromMillilitersPerMinute(0.1));
        var option = front.Options[0];
        var reserve = RegimenSensitivity.ReserveOf(option, goals, decline);
        Assert.InRange(reserve.Share!.Value, 0.01, 1);
        Assert.Equal(new DateOnly(2026, 11, 26).AddDays((int)Math.Floor((1 - reserve.Share.Value) * 4 / 0.1 * 30)), reserve.Until);
        Assert.Contains($"that is about {reserve.Until!.Value.ToString("d MMMM yyyy", System.Globalization.CultureInfo.InvariantCulture)}", reserve.Words, StringComparison.Ordinal);

        // Two months before the goals are met, two months after they are not, and then the search lists another.
        var rows = RegimenSensitivity.AsKidneysFail(patient, ensemble, goals, space, option.Regimen, decline, [reserve.Until.Value.AddDays(-60), reserve.Until.Value.AddDays(60)], Bare);
        Assert.Equal([true, false], rows.Select(row => row.StillMeets));
        Assert.NotEqual(option.Regimen, rows[1].WouldBe);

        // Nothing lost, or nothing there to lose: no day.
        Assert.Null(RegimenSensitivity.ReserveOf(option, goals, decline with { FiltrationRateLostPerMonth = default }).Until);
        Assert.Null(RegimenSensitivity.ReserveOf(option, goals).Until);
    }

    private static RegimenFront Search(RegimenGoals goals, RegimenSpace space) =>
        RegimenSearch.Run(Patient.Example, MembraneEnsemble.Of(Membrane), goals, space, options: Bare);

    private static double LeastGlucose(RegimenGoals goals, RegimenSpace space) => Search(goals, space).Options.Min(option => option.Outcome.GlucoseAbsorbed.Grams);
}
