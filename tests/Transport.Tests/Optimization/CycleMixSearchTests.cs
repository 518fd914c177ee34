using System.Collections.Immutable;
using Xunit.Abstractions;
using static Transport.Tests.Regimens.RegimenTests;

namespace Transport.Tests.Optimization;

/// <summary>Nights of any cycles: the programme's bound against all nights of a space small enough to simulate, and its answer against a grid's. Patients are invented.</summary>
public sealed class CycleMixSearchTests(ITestOutputHelper output)
{
    private static readonly ThreePoreMembrane Membrane = ReferenceMembranes.MeanIncidentAdult().ScaledTo(Patient.Example.BodySurface);
    private static readonly RegimenSearchOptions Bare = new() { MostOptions = 50, EnsembleMembers = 1, Layers = DoubtLayers.ParametersAlone };

    [Fact]
    public void No_night_of_a_space_beats_the_relaxed_bound_by_more_than_carried_over_fluid_is_worth()
    {
        // Eight kinds, at most five cycles, two days: every multiset simulated, 2,574 nights and days. The bound is of cycles that do not act on each other; the best simulated
        // night may lie below it by what the residual carries from one kind to the next: 3 %.
        var space = new CycleMixSpace
        {
            Fills = [Milliliters(1_500), Milliliters(2_200)],
            Dwells = [TimeSpan.FromMinutes(60), TimeSpan.FromMinutes(120)],
            Solutions = [DialysisSolution.Glucose136, DialysisSolution.Glucose227],
            NightLengths = [TimeSpan.FromHours(9)],
            DayFills = [null, new(DialysisSolution.Glucose136, Milliliters(1_500))],
            MostCycles = 5,
        };
        Assert.Equal(8, space.Kinds);
        Assert.Equal(1287.0 * 2, space.Count, 1e-6);
        foreach (var floor in new[] { 400.0, 800 })
        {
            var goals = new RegimenGoals(FluidTarget.Between(Milliliters(floor), Milliliters(floor + 500))) { Clearance = new(1.5, 0, "here") };
            var yields = new CycleYields(Patient.Example, Membrane, goals, space, Bare);
            var all = new RegimenSpace
            {
                VolumesPerCycle = [],
                Cycles = [],
                NightLengths = [],
                DayFills = [],
                Others = [.. from day in Enumerable.Range(0, 2) from numbers in Multisets(8, 5) let regimen = yields.ToRegimen(numbers, TimeSpan.FromHours(9), day) where regimen is not null select regimen],
            };
            var brute = RegimenSearch.Run(Patient.Example, MembraneEnsemble.Of(Membrane), goals, all, options: Bare);
            var mix = CycleMixSearch.Run(Patient.Example, MembraneEnsemble.Of(Membrane), goals, space, options: Bare);
            var (best, found) = (brute.Options.Min(option => option.Outcome.GlucoseAbsorbed.Grams), mix.Front.Options.Min(option => option.Outcome.GlucoseAbsorbed.Grams));
            output.WriteLine(FormattableString.Invariant($"floor {floor}: bound {mix.RelaxedGlucose?.Grams:0.0} g, best of {all.Others.Length} {best:0.0} g, found {found:0.0} g, gap {mix.Gap:0.000}"));
            Assert.True(best >= 0.97 * mix.RelaxedGlucose!.Value.Grams);

            // The programme's answer is within a tenth of the best night there is, and its gap says at least how far it is.
            Assert.InRange(found, best - 0.5, 1.1 * best);
            Assert.True(mix.Gap >= found / best - 1 - 0.03);
        }
    }

    [Fact]
    public void What_a_programme_adds_up_is_what_a_simulation_says_but_for_carried_over_fluid()
    {
        var goals = new RegimenGoals(FluidTarget.Between(Milliliters(600), Milliliters(1_200)));
        var space = CycleMixSpace.Usual(Patient.Example, goals);
        var yields = new CycleYields(Patient.Example, Membrane, goals, space, Bare);
        foreach (var day in new[] { 0, 3 })
        {
            var numbers = yields.Programme(TimeSpan.FromHours(9), day, 0.3)!.Solve(yields.Cost, isWhole: true)!.Value;
            var regimen = yields.ToRegimen(numbers, TimeSpan.FromHours(9), day)!;
            var outcome = RegimenSimulation.Run(Patient.Example, Membrane, regimen, Bare.Simulation);
            var (uf, dose, glucose) = (Sum(RegimenMeasure.Ultrafiltration), Sum(RegimenMeasure.UreaDose), Sum(RegimenMeasure.GlucoseAbsorbed));
            output.WriteLine(FormattableString.Invariant($"{regimen}: ultrafiltration {uf:0} and {outcome.Ultrafiltration.Milliliters:0} mL, Kt/V {dose:0.000} and {outcome.UreaDose.TotalKtOverV:0.000}, glucose {glucose:0.0} and {outcome.GlucoseAbsorbed.Grams:0.0} g"));
            // What is left out: what each kind finds of another's residual, a last dwell of up to 10 min more, and the faster start of diffusion in the first fill, which is that of a
            // cycle of middling strength. It decides nothing but which candidates are simulated.
            Assert.Equal(outcome.Ultrafiltration.Milliliters, uf, 120.0);
            Assert.Equal(outcome.UreaDose.TotalKtOverV, dose, 0.06 * dose);
            Assert.Equal(outcome.GlucoseAbsorbed.Grams, glucose, 0.12 * glucose);

            double Sum(RegimenMeasure measure) => yields.SumOf(measure, numbers, TimeSpan.FromHours(9), day);
        }
    }

    [Fact]
    public void A_space_that_no_grid_can_hold_gives_a_night_with_less_glucose_than_the_grid_and_says_how_far_the_best_may_be()
    {
        var goals = new RegimenGoals(FluidTarget.Between(Milliliters(700), Milliliters(1_300))) { LongestNight = TimeSpan.FromHours(9) };
        var space = CycleMixSpace.Usual(Patient.Example, goals);
        Assert.True(space.Count > 1e20);
        var grid = RegimenSpace.Usual(Patient.Example, goals);
        var ensemble = PopulationPrior.IncidentAdults().ToEnsemble(Patient.Example.BodySurface, 20, 5);
        var alone = RegimenSearch.Run(Patient.Example, ensemble, goals, grid, options: Bare with { EnsembleMembers = 20 });
        var watch = System.Diagnostics.Stopwatch.StartNew();
        var mix = CycleMixSearch.Run(Patient.Example, ensemble, goals, space, grid, options: Bare with { EnsembleMembers = 20 });
        output.WriteLine(FormattableString.Invariant($"{watch.Elapsed.TotalSeconds:0.0} s; {mix.Kinds} kinds, {mix.SpaceSize:0.0e0} regimens; bound {mix.RelaxedGlucose?.Grams:0.0} g, grid {Least(alone):0.0} g, any {Least(mix.Front):0.0} g, gap {mix.Gap:0.000}: {mix.Front.Options[0].Regimen}"));
        Assert.True(Least(mix.Front) < Least(alone));
        Assert.True(mix.Gap is >= -0.03 and < 0.35, $"{mix.Gap}");

        // The same again, on other workers.
        var again = CycleMixSearch.Run(Patient.Example, ensemble, goals, space, grid, options: Bare with { EnsembleMembers = 20, Workers = 1 });
        Assert.Equal(mix.Front.Options.Select(option => option.Regimen), again.Front.Options.Select(option => option.Regimen));
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        Assert.ThrowsAny<OperationCanceledException>(() => CycleMixSearch.Run(Patient.Example, ensemble, goals, space, grid, control: new() { Cancellation = stop.Token }));

        static double Least(RegimenFront front) => front.Options.Min(option => option.Outcome.GlucoseAbsorbed.Grams);
    }

    [Fact]
    public void Two_phases_with_and_without_glucose_spare_glucose_but_less_than_published()
    {
        // Öberg, Perit Dial Int 2021 (abstract read): of nights with the creatinine clearance and ultrafiltration of 6 × 2 L 1.36 %, two-phase ones, cycles of 1200 mL/m² with much
        // glucose for fluid and of 1400 mL/m² with low or no glucose for clearance, absorb more than 40 % less. Strengths, dwells and membrane are not in the abstract, so the
        // direction is tested: with the textbooks' three-pore membrane, fluids of this library and dwells in steps of 10 min it is about a fifth. More than 40 % is missed, and asserted as a miss.
        var membrane = ReferenceMembranes.Textbook.ScaledTo(Patient.Example.BodySurface);
        var surface = Patient.Example.BodySurface.SquareMeters;
        var nine = TimeSpan.FromHours(9);
        var usual = RegimenSimulation.Run(Patient.Example, membrane, Regimen.Cycling(nine, 6, Milliliters(2_000), DialysisSolution.Glucose136));
        var nights =
            from strong in new[] { DialysisSolution.Glucose227, DialysisSolution.Glucose386 }
            from low in new[] { DialysisSolution.OfGlucose(0), DialysisSolution.OfGlucose(28) }
            from first in Enumerable.Range(1, 6)
            from minutes in new[] { 20, 30, 40, 50, 60, 80 }
            from second in Enumerable.Range(1, 5)
            let night = Night(strong, low, first, minutes, second)
            where night.Findings.All(finding => finding.Severity != Severity.Error)
            select RegimenSimulation.Run(Patient.Example, membrane, night);
        var alike = nights.Where(outcome => outcome.CreatinineDose.Total.LitersPerWeek >= 0.99 * usual.CreatinineDose.Total.LitersPerWeek && outcome.Ultrafiltration >= usual.Ultrafiltration).ToList();
        Assert.NotEmpty(alike);
        var best = alike.MinBy(outcome => outcome.GlucoseAbsorbed)!;
        output.WriteLine(FormattableString.Invariant($"6 × 2 L: {usual.Ultrafiltration.Milliliters:0} mL, {usual.CreatinineDose.Total.LitersPerWeek:0.0} L, {usual.GlucoseAbsorbed.Grams:0.0} g; {best.Regimen}: {best.Ultrafiltration.Milliliters:0} mL, {best.CreatinineDose.Total.LitersPerWeek:0.0} L, {best.GlucoseAbsorbed.Grams:0.0} g, {100 * (1 - best.GlucoseAbsorbed / usual.GlucoseAbsorbed):0} % less"));
        Assert.InRange(1 - best.GlucoseAbsorbed / usual.GlucoseAbsorbed, 0.15, 0.40);

        Regimen Night(DialysisSolution strong, DialysisSolution low, int first, int minutes, int second)
        {
            Exchange fluid = new(strong, Milliliters(1_200 * surface), TimeSpan.FromMinutes(minutes)), clearance = new(low, Milliliters(1_400 * surface));
            return Present with { Night = [.. Enumerable.Repeat(fluid, first), .. Enumerable.Repeat(clearance, second)] };
        }
    }

    private static readonly Regimen Present = Regimen.Cycling(TimeSpan.FromHours(9), 3, Milliliters(2_000), DialysisSolution.Glucose136);

    private static IEnumerable<ImmutableArray<double>> Multisets(int kinds, int most)
    {
        if (kinds == 0)
        {
            yield return [];
            yield break;
        }

        for (var number = 0; number <= most; number++)
        {
            foreach (var rest in Multisets(kinds - 1, most - number))
            {
                yield return [number, .. rest];
            }
        }
    }
}
