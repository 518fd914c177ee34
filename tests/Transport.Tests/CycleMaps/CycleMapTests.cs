using Xunit.Abstractions;

namespace Transport.Tests.CycleMaps;

/// <summary>
/// Nights made of maps against nights that are simulated phase after phase: two ways to the same numbers, of which the second is the reference.
/// Tolerances: what the search widens its judgement by before it simulates, so that nothing is lost to the maps.
/// </summary>
public sealed class CycleMapTests(ITestOutputHelper output)
{
    private static readonly Patient Person = Patient.Example;
    private static readonly ThreePoreMembrane Average = ReferenceMembranes.MeanIncidentAdult().ScaledTo(Person.BodySurface);
    private static readonly RegimenOptions Screened = new() { Integration = new() { RelativeTolerance = 1e-4 } };
    private static readonly RegimenOptions Careful = new() { Integration = new() { RelativeTolerance = 1e-7 } };

    [Theory]
    [InlineData(1.0)]
    [InlineData(1.8)]
    [InlineData(0.6)]
    public void Maps_give_the_days_of_the_usual_space(double area)
    {
        // The fast one with a larger area at night than by day, and more so for solutes than for water.
        var membrane = Average with { DiffusionArea = DiffusionArea.FromCentimeters(area * Average.DiffusionArea.Centimeters), LyingAreaFactor = Math.Max(1, 0.7 * area), LyingConductanceFactor = Math.Max(1, 0.6 * area) };
        var goals = new RegimenGoals(FluidTarget.Between(Volume.FromMilliliters(0), Volume.FromMilliliters(100)));
        var all = Possible(RegimenSpace.Usual(Person, goals).All());
        Compare(membrane, [.. all.Where((_, i) => i % 41 == 0)], Screened, Careful, beside: all);
    }

    [Fact]
    public void Maps_give_days_with_two_slopes_of_the_drain_and_with_exchanges_of_the_day()
    {
        var settings = RegimenSettings.Default with
        {
            Drain = DrainProfile.TwoSlope(FlowRate.FromMillilitersPerMinute(200), FlowRate.FromMillilitersPerMinute(45), 0.8),
        };
        var hour = TimeSpan.FromHours(1);
        var (weak, strong) = (DialysisSolution.Glucose136, DialysisSolution.Glucose386);
        Regimen[] regimens =
        [
            Regimen.Cycling(9 * hour, 5, Volume.FromLiters(2), weak, new(weak, Volume.FromLiters(2)), settings),
            Regimen.Cycling(9 * hour, 4, Volume.FromLiters(2.5), strong, null, settings),
            new(8 * hour, [new(strong, Volume.FromLiters(1.5), hour), new(strong, Volume.FromLiters(1.5), hour), new(weak, Volume.FromLiters(2.5)), new(weak, Volume.FromLiters(2.5))],
                [new Exchange(DialysisSolution.Glucose227, Volume.FromLiters(2), 5 * hour), new(weak, Volume.FromLiters(2))], settings),
            new(8 * hour, [new(strong, Volume.FromLiters(2)), new(weak, Volume.FromLiters(2))], [new Exchange(DialysisSolution.Glucose227, Volume.FromLiters(2), 5 * hour)], settings),
        ];
        Compare(Average, regimens, Screened, Careful);
    }

    [Fact]
    public void What_a_drain_or_a_line_leaves_behind_is_not_read_as_a_ring_of_exchanges()
    {
        // A drain that time ends and a line that runs back carry over what one exchange does not know of the next: such a night is simulated phase after phase.
        bool Reads(RegimenSettings settings) => CyclePlan.TryRead(
            Regimen.Cycling(TimeSpan.FromHours(9), 4, Volume.FromLiters(2), DialysisSolution.Glucose136, null, settings), 250, TransientUse.FirstFill, []);
        Assert.True(Reads(RegimenSettings.Default));
        Assert.False(Reads(RegimenSettings.Default with { LongestDrain = TimeSpan.FromMinutes(8) }));
        Assert.False(Reads(RegimenSettings.Default with { LineVolume = Volume.FromMilliliters(25) }));
        Assert.False(CyclePlan.TryRead(
            Regimen.Tidal(TimeSpan.FromHours(9), 8, new TidalPlan(Volume.FromLiters(2), 0.5), DialysisSolution.Glucose136), 250, TransientUse.FirstFill, []));
    }

    [Fact]
    public void Maps_give_days_with_icodextrin()
    {
        var hour = TimeSpan.FromHours(1);
        var day = new DayFill(DialysisSolution.Icodextrin, Volume.FromLiters(2));
        Regimen[] regimens =
        [
            Regimen.Cycling(9 * hour, 5, Volume.FromLiters(2), DialysisSolution.Glucose136, day),
            Regimen.Cycling(10 * hour, 4, Volume.FromLiters(2.5), DialysisSolution.Glucose227, day),
        ];
        var panel = SolutePanel.Small.With(regimens[0].Polymer);
        Compare(Average, regimens, Screened with { Panel = panel }, Careful with { Panel = panel });
    }

    [Fact]
    public void What_drains_in_part_is_no_ring_of_maps()
    {
        var tidal = Regimen.Tidal(
            TimeSpan.FromHours(9), 8, new TidalPlan(Volume.FromLiters(2), 0.5) { ExpectedUltrafiltration = Volume.FromMilliliters(80) }, DialysisSolution.Glucose136);
        Assert.False(CyclePlan.TryRead(tidal, 250, TransientUse.FirstFill, []));
    }

    [Fact]
    public void A_day_that_empties_the_cavity_or_leaves_nothing_to_drain_is_a_map_wherever_it_says_that_it_is()
    {
        // Small fills of weak glucose for 15 h in people who take up 0.1 to 4 mL/min: some days drain, some leave less than a residual, some nothing. Nights of weak and of strong glucose
        // leave more or less of it for the day. What lies at the edge of two courses may be refused; the rest is as exact as any other map (Compare).
        var night = TimeSpan.FromHours(9);
        Regimen[] regimens =
        [
            .. from fill in new[] { 600, 800, 1000 }
               from day in new[] { DialysisSolution.Glucose136, DialysisSolution.Glucose227 }
               from strong in new[] { DialysisSolution.Glucose136, DialysisSolution.Glucose386 }
               select Regimen.Cycling(night, 5, Volume.FromLiters(2), strong, new(day, Volume.FromMilliliters(fill))),
        ];
        Dictionary<int, int> courses = [];
        List<int> held = [];
        foreach (var taken in new[] { 0.1, 0.2, 0.3, 0.4, 0.5, 0.75, 1, 1.5, 2.5, 4 })
        {
            var membrane = Average with { LymphaticRemoval = FlowRate.FromMillilitersPerMinute(taken) };
            RegimenOutcome[] days = [.. regimens.Select(regimen => RegimenSimulation.Run(Person, membrane, regimen, Careful))];
            held.Add(Compare(membrane, regimens, Screened, Careful, leastHold: 0.6, days: days));
            foreach (var day in days)
            {
                var left = day.DayExchanges[0].Drained.Milliliters;
                courses[left > 0 ? 1 : 0] = courses.GetValueOrDefault(left > 0 ? 1 : 0) + 1;
            }
        }

        // Both happen often enough for the comparison to mean something.
        output.WriteLine($"{courses[0]} days drain nothing, {courses[1]} do; of {regimens.Length} regimens were maps: {string.Join(", ", held)}");
        Assert.True(courses[0] > 30 && courses[1] > 30);
    }

    [Fact]
    public void A_start_that_rings_share_gives_what_going_around_exchange_by_exchange_gives()
    {
        // The same linear maps, multiplied first: to rounding and to the tolerance at which a rhythm counts as settled (1e-5 of a tenth of the contents).
        var goals = new RegimenGoals(FluidTarget.Between(Volume.FromMilliliters(0), Volume.FromMilliliters(100)));
        var some = Possible(RegimenSpace.Usual(Person, goals).All()).Where((_, i) => i % 23 == 0).ToArray();
        var (kinds, rings) = Rings(some, Screened);
        var library = new CycleLibrary(Person, Screened, some[0], kinds, CycleGroup.Of(kinds), false, rings.Length);
        var (whole, shared) = (new double[library.SumCount], new double[library.SumCount]);
        foreach (var membrane in new[] { Average, Average with { LymphaticRemoval = FlowRate.FromMillilitersPerMinute(1.2) } })
        {
            library.Prepare(membrane);
            for (var i = 0; i < rings.Length; i++)
            {
                Assert.Equal(library.TryRun(rings[i], whole), library.TryRunShared(rings[i], i, shared));
                Assert.All(whole.Zip(shared).SkipLast(1), pair => Assert.Equal(pair.First, pair.Second, 2e-6 * Math.Max(1, Math.Abs(pair.First))));
            }
        }
    }

    [Fact]
    public void Four_lanes_and_eight_find_the_same_map()
    {
        // Other neighbors, other steps of the integrator: the tolerance of 1e-4, not the last bit.
        var kind = new CycleKind(DialysisSolution.Glucose227, 2000, 75, 12, true, true);
        var group = Assert.Single(CycleGroup.Of([kind]));
        var (four, eight) = (new double[CycleMap.RowsOf(4)], new double[CycleMap.RowsOf(4)]);
        Outcome(new CycleMapper<Lanes4>(Person, Screened, Sample(), true), four);
        Outcome(new CycleMapper<Lanes8>(Person, Screened, Sample(), true), eight);
        Assert.All(four.Zip(eight), pair => Assert.Equal(pair.First, pair.Second, 2e-4 * Math.Max(1, Math.Abs(pair.First))));

        void Outcome(ICycleMapper mapper, double[] into)
        {
            var map = new CycleMap(4);
            mapper.Prepare(Average);
            mapper.Map(kind, mapper.Dwell(group, null), 0, map);
            Assert.True(map.Holds);
            var found = new double[6];
            mapper.UsualStart(found);
            map.Apply(found, into);
        }
    }

    [Fact]
    public void A_library_gives_the_same_whatever_it_was_asked_before()
    {
        var goals = new RegimenGoals(FluidTarget.Between(Volume.FromMilliliters(0), Volume.FromMilliliters(100)));
        var some = Possible(RegimenSpace.Usual(Person, goals).All()).Where((_, i) => i % 97 == 0).ToArray();
        var (kinds, rings) = Rings(some, Screened);
        var groups = CycleGroup.Of(kinds);
        var (busy, fresh) = (new CycleLibrary(Person, Screened, some[0], kinds, groups, false), new CycleLibrary(Person, Screened, some[0], kinds, groups, false));
        var (first, second) = (new double[busy.SumCount], new double[busy.SumCount]);
        busy.Prepare(Average with { AreaLaw = AreaLaw.TwoThirds });
        Assert.All(rings, ring => busy.TryRun(ring, first));
        busy.Prepare(Average);
        fresh.Prepare(Average);
        foreach (var ring in rings.Reverse())
        {
            Assert.True(busy.TryRun(ring, first));
            Assert.True(fresh.TryRun(ring, second));
            Assert.Equal(first, second);
        }
    }

    [Fact]
    public void Exchanges_between_a_few_dwells_are_those_made_one_by_one()
    {
        // Sixty dwells of 15 to 300 min from eight, found with a third more than usual. The tolerance is half of what a map may be off by itself. Five of the six are within 7e-5; the sixth
        // dwells in such long steps that what is read inside them is off by as much, whoever reads it.
        var tried = new List<(bool Holds, double Worst)>();
        foreach (var membrane in new[] { Average, Average with { DiffusionArea = Average.DiffusionArea * 1.8 }, Average with { DiffusionArea = Average.DiffusionArea * 0.6, AreaLaw = AreaLaw.TwoThirds } })
        {
            foreach (var (solution, first) in new[] { (DialysisSolution.Glucose136, true), (DialysisSolution.Glucose386, false) })
            {
                List<CycleKind> kinds = [.. Enumerable.Range(0, 60).Select(i => new CycleKind(solution, 2000, 15 + 285 * i / 59.0, 12, true, first))];
                var group = Assert.Single(CycleGroup.Of(kinds));
                var mapper = new CycleMapper<Lanes8>(Person, Screened, Sample(), false);
                mapper.Prepare(membrane);
                var found = new double[6];
                mapper.UsualStart(found);
                var polynomial = new CyclePolynomial(DwellPoints.Of(group)!, 4);
                polynomial.Make(mapper, found);
                found[1] *= 4.0 / 3;
                var dwells = mapper.Dwell(group, null);
                var (alone, between) = (new CycleMap(4), new CycleMap(4));
                var (expected, read) = (new double[CycleMap.RowsOf(4)], new double[CycleMap.RowsOf(4)]);
                var worst = 0.0;
                for (var member = 0; member < kinds.Count; member++)
                {
                    mapper.Map(kinds[member], dwells, member, alone);
                    polynomial.Read(member, kinds[member].Drain, between);
                    alone.Apply(found, expected);
                    between.Apply(found, read);
                    worst = Math.Max(worst, 0.1 * Math.Abs(read[0] - expected[0]));
                    for (var i = 1; i < 6; i++)
                    {
                        var drained = alone.DrainedRow + i - 1;
                        worst = Math.Max(worst, Math.Max(Math.Abs(expected[i] - read[i]), Math.Abs(expected[drained] - read[drained])) / (expected[i] + expected[drained]));
                    }
                }

                tried.Add((polynomial.Holds, worst));
            }
        }

        output.WriteLine(string.Join("; ", tried.Select(one => $"{one.Holds} {one.Worst:0.0e0}")));
        Assert.All(tried, one => Assert.True(one is { Holds: true, Worst: < 5e-4 }));
        Assert.True(tried.Count(one => one.Worst < 1e-4) >= 5);
    }

    [Fact]
    public void Where_the_longest_dwell_leaves_nothing_to_drain_no_polynomial_is_laid_through_it()
    {
        // 6 mL/min taken up: 1.5 L are gone after four hours. Asked one by one, the short ones drain.
        List<CycleKind> kinds = [.. Enumerable.Range(0, 20).Select(i => new CycleKind(DialysisSolution.Glucose136, 1500, 30 + 20 * i, 12, true, false))];
        var group = Assert.Single(CycleGroup.Of(kinds));
        var mapper = new CycleMapper<Lanes8>(Person, Screened, Sample(), false);
        mapper.Prepare(Average with { LymphaticRemoval = FlowRate.FromMillilitersPerMinute(6) });
        var found = new double[6];
        mapper.UsualStart(found);
        var polynomial = new CyclePolynomial(DwellPoints.Of(group)!, 4);
        polynomial.Make(mapper, found);
        Assert.False(polynomial.Holds);
        var map = new CycleMap(4);
        mapper.Map(kinds[0], mapper.Dwell(group, null), 0, map);
        Assert.True(map.Holds && map.Drains);
    }

    private static int Compare(
        ThreePoreMembrane membrane, Regimen[] regimens, RegimenOptions screened, RegimenOptions careful, double leastHold = 0.95, List<Regimen>? beside = null, RegimenOutcome[]? days = null)
    {
        // With the fullest moment every exchange is mapped; without it those of many dwells come from a few.
        var (kinds, rings) = Rings([.. regimens, .. beside ?? []], screened);
        days ??= [.. regimens.Select(regimen => RegimenSimulation.Run(Person, membrane, regimen, careful))];
        return new[] { true, false }.Min(seesPeak => Compare(
            membrane, regimens, new(Person, screened, regimens[0], kinds, CycleGroup.Of(kinds), seesPeak), rings, days, seesPeak, leastHold));
    }

    private static int Compare(
        ThreePoreMembrane membrane, Regimen[] regimens, CycleLibrary library, int[][] rings, RegimenOutcome[] days, bool seesPeak, double leastHold)
    {
        library.Prepare(membrane);
        var sums = new double[library.SumCount];
        var held = 0;
        for (var i = 0; i < regimens.Length; i++)
        {
            if (!library.TryRun(rings[i], sums))
            {
                continue;
            }

            held++;
            var simulated = days[i];
            Near(simulated.Ultrafiltration.Milliliters, sums[0] - regimens[i].FluidInAll.Milliliters, 1 + 1e-3 * Math.Abs(simulated.Ultrafiltration.Milliliters), "ultrafiltration, mL");
            Near(simulated.Solutes[0].Drained!.Value.Micromoles, sums[1], 1e-3 * sums[1], "urea");
            Near(simulated.Solutes[1].Drained!.Value.Micromoles, sums[2], 1e-3 * sums[2], "creatinine");
            Near(simulated.Solutes[2].Drained!.Value.Micromoles, sums[3], 0.25 / 180e-6, "glucose, 0.25 g");
            Near(simulated.Solutes[3].Drained!.Value.Micromoles, sums[4], 200, "sodium, 0.2 mmol");
            if (seesPeak)
            {
                Near(simulated.Peak.Volume.Milliliters, sums[^1], 5, "fullest moment, mL");
            }

            void Near(double expected, double found, double tolerance, string what) =>
                Assert.True(Math.Abs(expected - found) <= tolerance, $"{what} of {regimens[i]}: {found} where {expected} was simulated.");
        }

        Assert.True(held >= leastHold * regimens.Length, $"{held} of {regimens.Length} are rings of maps.");
        return held;
    }

    private static (List<CycleKind> Kinds, int[][] Rings) Rings(IEnumerable<Regimen> regimens, RegimenOptions options)
    {
        List<CycleKind> kinds = [];
        List<int[]> rings = [];
        foreach (var regimen in regimens)
        {
            List<CycleKind> ring = [];
            Assert.True(CyclePlan.TryRead(regimen, regimen.ResidualFor(Person), options.Transient, ring));
            kinds.AddRange(ring.Except(kinds).ToList());
            rings.Add([.. ring.Select(kind => kinds.IndexOf(kind))]);
        }

        return (kinds, [.. rings]);
    }

    private static List<Regimen> Possible(IEnumerable<Regimen> regimens) =>
        [.. regimens.Where(regimen => regimen.Findings.All(finding => finding.Severity != Severity.Error))];

    private static Regimen Sample() => Regimen.Cycling(TimeSpan.FromHours(9), 5, Volume.FromLiters(2), DialysisSolution.Glucose136);
}
