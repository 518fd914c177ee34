using System.Collections.Immutable;
using Transport.Reporting;
using static Transport.Tests.Regimens.RegimenTests;

namespace Transport.Tests.Optimization;

/// <summary>The search against brute force, and against what a nephrologist must not be offered. Patients are invented data.</summary>
public sealed class RegimenSearchTests
{
    // The noise that the search announces: ultrafiltration 100 mL, Kt/V 5 %, glucose 5 g.
    private const double FluidNoise = 100;
    private const double DoseNoise = 0.05;
    private const double GlucoseNoise = 5;

    private static readonly DialysisSolution Weak = DialysisSolution.Glucose136;
    private static readonly DialysisSolution Medium = DialysisSolution.Glucose227;
    private static readonly ThreePoreMembrane Membrane = ReferenceMembranes.MeanIncidentAdult().ScaledTo(Patient.Example.BodySurface);

    // A: 1000 mL of urine, needs 200 to 500 mL. B: the same membrane, no urine, needs 900 to 1300 mL.
    private static readonly Patient PatientA = Patient.Example with
    {
        ResidualFunction = new(Clearance.FromMillilitersPerMinute(3), Clearance.FromMillilitersPerMinute(5), Milliliters(1_000)),
    };

    private static readonly Patient PatientB = Patient.Example;
    private static readonly RegimenGoals GoalsA = new(FluidTarget.Between(Milliliters(200), Milliliters(500)));
    private static readonly RegimenGoals GoalsB = new(FluidTarget.Between(Milliliters(900), Milliliters(1_300)));

    private static readonly Regimen Present = Regimen.Cycling(
        TimeSpan.FromHours(9), 5, Milliliters(2_000), Medium, new(Weak, Milliliters(1_500)));

    private static readonly RegimenSpace Small = new()
    {
        NightLengths = [TimeSpan.FromHours(8), TimeSpan.FromHours(9)],
        Cycles = [3, 5, 7],
        VolumesPerCycle = [Milliliters(1_500), Milliliters(2_000), Milliliters(2_500)],
        NightSolutions = [Weak, Medium],
        DayFills = [null, new(Weak, Milliliters(1_000)), new(Medium, Milliliters(2_000))],
    };

    // The bare model, so that brute force can repeat it; the doubt about the model has its own test.
    private static readonly RegimenSearchOptions All = new() { MostOptions = 1_000, EnsembleMembers = 20, Layers = DoubtLayers.ParametersAlone };

    [Fact]
    public void A_night_of_an_untested_strength_is_shifted_and_widened_by_the_models_misses()
    {
        // Tested at 3.86 %: 1.36 % has an offset of 25 mL and a deviation of 92 mL at 4 h, a night of cycles 50 mL besides (together 104.7 mL), in proportion to each
        // dwell until then. Five dwells of the night add up, because exchanges of one strength err together.
        var space = Small with { NightLengths = [TimeSpan.FromHours(9)], Cycles = [5], VolumesPerCycle = [Milliliters(2_000)], NightSolutions = [Weak], DayFills = [null] };
        var goals = GoalsA with { Clearance = null, Fluid = FluidTarget.Between(Milliliters(-2_000), Milliliters(3_000)) };
        var bare = Assert.Single(RegimenSearch.Run(PatientA, MembraneEnsemble.Of(Membrane), goals, space, null, All).Options);
        var held = Assert.Single(RegimenSearch.Run(
            PatientA, MembraneEnsemble.Of(Membrane), goals, space, null, All with { Layers = DoubtLayers.Default, Tested = DialysisSolution.Glucose386 }).Options);
        var shares = bare.Outcome.Cycles.Sum(cycle => cycle.DwellTime.TotalHours / 4);
        Assert.Equal(25 * shares, (held.Ultrafiltration.Median - bare.Ultrafiltration.Median).Milliliters, 2.0);
        Assert.Equal(2 * 1.645 * 104.7 * shares, (held.Ultrafiltration.High - held.Ultrafiltration.Low).Milliliters, 0.03 * 2 * 1.645 * 104.7 * shares);
        Assert.Equal(Doubt.Parameters | Doubt.ModelForm, held.Ultrafiltration.Doubt);
        Assert.Equal(Doubt.Parameters | Doubt.ModelForm | Doubt.NightToNight, held.UltrafiltrationOfOneDay.Doubt);
    }

    [Fact]
    public void Bags_of_one_strength_err_together_whatever_they_are_called()
    {
        // The same night twice, the second time with two makes of the one strength: no doubt may cancel between two names.
        var other = new DialysisSolution("another make", Weak.Glucose, Weak.Sodium);
        var held = All with { Layers = DoubtLayers.Default, Tested = DialysisSolution.Glucose386 };
        var one = new Regimen(TimeSpan.FromHours(9), Enumerable.Repeat(new Exchange(Weak, Milliliters(2_000)), 4));
        var two = one with { Night = one.Night.SetItem(0, new(other, Milliliters(2_000))).SetItem(2, new(other, Milliliters(2_000))) };
        var (expected, found) = (Doubt(one), Doubt(two));
        Assert.True(expected > 100, $"{expected} mL");
        Assert.Equal(expected, found, 1e-6);

        double Doubt(Regimen regimen) => DailyDoubt.ModelForm(RegimenSimulation.Run(PatientA, Membrane, regimen), held.Layers, held.Tested).Deviation;
    }

    [Fact]
    public void Brute_force_over_the_same_grid_finds_the_same()
    {
        var front = RegimenSearch.Run(PatientA, MembraneEnsemble.Of(Membrane), GoalsA, Small, null, All);
        var outcomes = Grid().Select(regimen => RegimenSimulation.Run(PatientA, Membrane, regimen, All.Simulation)).ToList();
        var feasible = outcomes
            .Where(outcome => outcome.Ultrafiltration.Milliliters is >= 200 and <= 500 && outcome.UreaDose.TotalKtOverV >= 1.7 * 0.95)
            .ToList();
        Assert.Equal(outcomes.Count, front.CandidateCount);
        Assert.Equal(feasible.Count, front.FeasibleCount);
        Assert.Equal(front.CandidateCount, front.DroppedBecause.Values.Sum() + front.Options.Length);
        Assert.NotEmpty(front.Options);

        // What is offered is feasible and unbeaten; what is unbeaten and not offered lies within the noise of something that is.
        var unbeaten = feasible.Where(outcome => !feasible.Any(other => Beats(Axes(other), Axes(outcome)))).ToList();
        Assert.All(front.Options, option => Assert.Contains(unbeaten, outcome => outcome.Regimen.Equals(option.Regimen)));
        Assert.All(unbeaten, outcome => Assert.Contains(front.Options, option => WithinNoise(option.Outcome, outcome)));
        Assert.DoesNotContain(
            front.Options, option => front.Options.Any(other => other != option && WithinNoise(option.Outcome, other.Outcome)));
        Assert.Equal(front.Options.OrderBy(option => option.Outcome.GlucoseAbsorbed), front.Options);
    }

    // The comparison is the reference: its bands are tested against its own draws. It follows more solutes, so that its steps differ: 1e-5 at a tolerance of 1e-5 a step,
    // where a common stream for all strengths had moved the bands by up to 12 mL.
    [Fact]
    public void The_list_of_options_and_a_comparison_give_a_regimen_the_same_bands()
    {
        var members = PopulationPrior.IncidentAdults().ToEnsemble(PatientA.BodySurface, 40, 5);
        var goals = GoalsA with { Clearance = null, Fluid = FluidTarget.Between(Milliliters(-2_000), Milliliters(4_000)) };
        var space = Small with { NightLengths = [TimeSpan.FromHours(9)], Cycles = [5], VolumesPerCycle = [Milliliters(2_000)], NightSolutions = [Weak, DialysisSolution.Glucose386], StrongerFirstCycles = [2] };
        var options = All with { EnsembleMembers = 40, Layers = DoubtLayers.Default, Tested = Medium };
        var front = RegimenSearch.Run(PatientA, members, goals, space, Present, options);
        Assert.Contains(front.Options, option => option.Regimen.Exchanges.Select(exchange => exchange.Solution).Distinct().Count() > 1);
        var look = new OutlookOptions { EnsembleMembers = 40, Tested = Medium };
        var oneDay = look with { Layers = DoubtLayers.OfSingleNight };
        Assert.All(front.Options.Append(front.Present!), option =>
        {
            var row = RegimenComparison.Run(PatientA, members, option.Regimen, look);
            Same(row[OutcomeMeasures.Ultrafiltration], option.Ultrafiltration, volume => volume.Milliliters);
            Same(row[OutcomeMeasures.KtOverV], option.UreaDose, dose => dose);
            Same(row[OutcomeMeasures.SodiumRemoved], option.SodiumRemoved, sodium => sodium.Millimoles);
            Same(row[OutcomeMeasures.GlucoseAbsorbed], option.GlucoseAbsorbed, glucose => glucose.Grams);
            Same(RegimenComparison.Run(PatientA, members, option.Regimen, oneDay)[OutcomeMeasures.Ultrafiltration], option.UltrafiltrationOfOneDay, volume => volume.Milliliters);
        });

        static void Same<T>(MeasuredOutcome expected, Band<T> found, Func<T, double> read)
            where T : struct
        {
            var band = expected.Value!.Value;
            Assert.Equal(band.Median, read(found.Median), 1e-5 * Math.Max(1, Math.Abs(band.Median)));
            Assert.Equal(band.Low, read(found.Low), 1e-5 * Math.Max(1, Math.Abs(band.Median)));
            Assert.Equal(band.High, read(found.High), 1e-5 * Math.Max(1, Math.Abs(band.Median)));
            Assert.Equal(band.Doubt, found.Doubt);
        }
    }

    // A gain acts on what each member removes; moved by the center's miss alone, every member had been moved alike, and the probability of a strong night differed by 0.06. Tolerance: what the
    // search integrates is drawn here as a comparison draws it; four standard errors of a share of a half.
    [Fact]
    public void The_list_of_options_and_a_comparison_give_a_regimen_the_same_probability()
    {
        var members = PopulationPrior.IncidentAdults().ToEnsemble(PatientA.BodySurface, 40, 5);
        var space = Small with { NightLengths = [TimeSpan.FromHours(9)], Cycles = [5], VolumesPerCycle = [Milliliters(2_000)], NightSolutions = [Weak, DialysisSolution.Glucose386], StrongerFirstCycles = [2] };
        var options = All with { EnsembleMembers = 40, Layers = DoubtLayers.Default, Tested = Medium };
        var range = FluidTarget.Between(Milliliters(600), Milliliters(1_400));
        var front = RegimenSearch.Run(PatientA, members, GoalsA with { Clearance = null, Fluid = range }, space, Present, options);
        Assert.All(front.Options.Append(front.Present!), option =>
        {
            var days = Enumerable.Range(0, 40).Select(member => SimulatedRhythm.Of(RegimenSimulation.Run(PatientA, members[member], option.Regimen, options.Simulation))).ToList();
            var drawn = Enumerable.Range(0, 500).SelectMany(seed => new CommonDoubt(new() { Tested = Medium, Layers = DoubtLayers.Default with { ModelFormSeed = seed } }, 0).Of(days)).ToList();
            var share = drawn.Average(day => day.Ultrafiltration >= 600 && day.Ultrafiltration <= 1_400 ? 1.0 : 0);
            Assert.Equal(share, option.ProbabilityOfMeanInRange.Value, 4 * 0.5 / Math.Sqrt(drawn.Count));
        });
    }

    [Fact]
    public void Clearance_against_cycles_is_flat_and_the_search_does_not_go_beyond_the_top()
    {
        // Most creatinine is asked for and nothing else. Every number of cycles is simulated here. Beyond the top more fluid clears less, so that such a night is beaten; and because fluid and cycles always
        // count, a night with two cycles fewer that clears all but 3 % stands beside the top ("seven is enough": published, read).
        // The membrane and the settings of the published table's slow person, but in a steady rhythm.
        var slow = ReferenceMembranes.Textbook with { AreaLaw = AreaLaw.Exponential, DiffusionArea = DiffusionArea.FromCentimeters(14_000) };
        var options = All with { Simulation = All.Simulation with { Transient = TransientUse.None, SupineVolumePerPressure = null } };
        var goals = new RegimenGoals(FluidTarget.Between(Milliliters(-2_000), Milliliters(4_000))) { Clearance = null, Objectives = [RegimenObjective.Most(RegimenMeasure.CreatinineClearance)] };
        var space = new RegimenSpace { NightLengths = [TimeSpan.FromHours(9)], Cycles = [3, 4, 5, 6, 7, 8, 9, 10, 11, 12], VolumesPerCycle = [Milliliters(2_000)], NightSolutions = [Weak], StrongerFirstCycles = [0], DayFills = [null] };
        var cleared = space.All().ToDictionary(regimen => regimen.Cycles, regimen => RegimenSimulation.Run(PatientB, slow, regimen, options.Simulation).CreatinineDose.Total.LitersPerWeek);
        var top = cleared.MaxBy(one => one.Value);
        Assert.InRange(top.Key, 6, 11);
        var front = RegimenSearch.Run(PatientB, MembraneEnsemble.Of(slow), goals, space, null, options);
        Assert.DoesNotContain(front.Options, option => option.Regimen.Cycles > top.Key);
        Assert.True(front.DroppedBecause[DropReason.Dominated] >= 12 - top.Key);
        Assert.Contains(front.Options, option => option.Regimen.Cycles <= top.Key - 2 && cleared[option.Regimen.Cycles] > 0.97 * top.Value);
    }

    [Fact]
    public void Two_patients_with_one_membrane_get_different_answers()
    {
        var a = RegimenSearch.Run(PatientA, MembraneEnsemble.Of(Membrane), GoalsA, Small, Present, All);
        var b = RegimenSearch.Run(PatientB, MembraneEnsemble.Of(Membrane), GoalsB, Small, Present, All);
        Assert.NotEmpty(a.Options);
        Assert.NotEmpty(b.Options);
        Assert.Empty(a.Options.Select(option => option.Regimen).Intersect(b.Options.Select(option => option.Regimen)));

        // No option dries A out; what A does now would, and it is said.
        Assert.All(a.Options, option => Assert.InRange(option.Outcome.Ultrafiltration.Milliliters, 200, 500));
        Assert.True(a.Present!.Outcome.Ultrafiltration.Milliliters > 500);
        Assert.Contains(a.Present.Findings, finding => finding.Code == "above-fluid-ceiling");
        Assert.Contains(a.Findings, finding => finding.Code == "above-fluid-ceiling");

        // B's list shows sodium: below the model's, with the doubt of its calibration.
        Assert.All(b.Options, option =>
        {
            Assert.InRange(option.SodiumRemoved.Median.Millimoles, 1, option.Outcome.SodiumRemovedByModel.Millimoles * 0.6);
            Assert.True(option.SodiumRemoved.Doubt.HasFlag(Doubt.ModelForm));
            Assert.True(option.SodiumRemoved.High > option.SodiumRemoved.Low);
        });
    }

    [Fact]
    public void The_list_and_the_row_of_the_present_regimen_judge_it_by_one_figure()
    {
        // Tested at 2.27 %, the model's ultrafiltration at 3.86 % counts 0.83 of itself. A ceiling between the two figures parts those who ask the
        // center alone from those who ask with the model's miss.
        var strong = Regimen.Cycling(TimeSpan.FromHours(9), 4, Milliliters(2_000), DialysisSolution.Glucose386);
        var held = All with { Layers = DoubtLayers.Default, Tested = Medium };
        var model = RegimenSimulation.Run(PatientB, Membrane, strong, All.Simulation).Ultrafiltration.Milliliters;
        foreach (var share in new[] { 0.75, 0.92 })
        {
            var goals = GoalsB with { Fluid = FluidTarget.Between(Milliliters(-2_000), Milliliters(share * model)) };
            var front = RegimenSearch.Run(PatientB, MembraneEnsemble.Of(Membrane), goals, Small, strong, held);
            Assert.Equal(share < 0.83, front.Present!.Findings.Any(finding => finding.Code == "above-fluid-ceiling"));
            Assert.Equal(share < 0.83, front.Findings.Any(finding => finding.Code == "above-fluid-ceiling"));
        }
    }

    [Fact]
    public void A_day_that_takes_up_fluid_is_never_free()
    {
        var front = RegimenSearch.Run(PatientB, MembraneEnsemble.Of(Membrane), GoalsB, Small, Present, All);
        var wet = front.Options.Where(option => option.Outcome.DayUltrafiltration.Milliliters < 0).ToList();
        Assert.NotEmpty(wet);
        Assert.All(wet, option =>
        {
            Assert.True(option.Outcome.Ultrafiltration < option.Outcome.NightUltrafiltration);
            Assert.Contains(option.Findings, finding => finding.Code == "day-takes-up-fluid");
        });
    }

    // The center's own volumes and an option's, which are moved by the model's miss, would contradict each other on one page.
    [Fact]
    public void An_option_carries_no_volume_of_the_center_alone_and_the_list_names_the_doubt_of_posture()
    {
        var front = RegimenSearch.Run(PatientB, MembraneEnsemble.Of(Membrane), GoalsB, Small, Present, All);
        Assert.All(front.Options.Append(front.Present!), option =>
        {
            Assert.DoesNotContain(option.Findings, finding => finding.Code == "fluid-taken-up" || (finding.Code == "above-fluid-ceiling" && finding.Message.StartsWith("Ultrafiltration and urine", StringComparison.Ordinal)));
            Assert.All(option.Findings.Where(finding => finding.Code == "day-takes-up-fluid"), finding => Assert.DoesNotMatch(@"\d", finding.Message));
        });
        Assert.Contains(front.Findings, finding => finding.Code == "night-is-supine");
        Assert.Equal(
            front.Options.All(option => option.StrongestExchanges > 0), front.Findings.Any(finding => finding.Code == "every-option-strongest"));
    }

    [Fact]
    public void The_present_regimen_is_row_one_and_every_option_says_what_changes()
    {
        var front = RegimenSearch.Run(PatientB, MembraneEnsemble.Of(Membrane), GoalsB, Small, Present, All);
        Assert.Equal(Present, front.Present!.Regimen);
        Assert.Equal(new RegimenChange(0, "as now"), front.Present.Change);
        Assert.All(front.Options, option => Assert.Equal(option.Regimen.Equals(Present) ? 0 : 1, Math.Min(1, option.Change!.Count)));
        Assert.All(front.Options, option => Assert.False(string.IsNullOrWhiteSpace(option.Why)));
        Assert.DoesNotContain(front.Options, option => option.Why.Contains("best", StringComparison.OrdinalIgnoreCase));
    }

    [Fact]
    public void Tightening_a_limit_never_improves_the_answer()
    {
        // Feasible regimens can only become fewer; the least glucose can only rise, but for the 5 g within which options count as ties.
        var free = RegimenSearch.Run(PatientB, MembraneEnsemble.Of(Membrane), GoalsB, Small, null, All);
        foreach (var goals in new[]
        {
            GoalsB with { LongestNight = TimeSpan.FromHours(8) },
            GoalsB with { LargestFill = Milliliters(2_000) },
            GoalsB with { LargestFillPerSquareMeter = 1_200 },
            GoalsB with { Fluid = FluidTarget.Between(Milliliters(1_000), Milliliters(1_200)) },
            GoalsB with { Clearance = ClearanceGoal.Usual with { WeeklyUreaDose = 1.9 } },
            GoalsB with { LargestVolume = Milliliters(2_600) },
        })
        {
            var tight = RegimenSearch.Run(PatientB, MembraneEnsemble.Of(Membrane), goals, Small, null, All);
            Assert.True(tight.FeasibleCount <= free.FeasibleCount);
            if (tight.FeasibleCount > 0)
            {
                Assert.True(tight.Options[0].Outcome.GlucoseAbsorbed.Grams >= free.Options[0].Outcome.GlucoseAbsorbed.Grams - GlucoseNoise);
            }
        }
    }

    [Fact]
    public void The_order_of_the_lists_and_the_number_of_workers_do_not_matter()
    {
        var shuffled = Small with
        {
            NightLengths = [.. Small.NightLengths.Reverse(), Small.NightLengths[0]],
            Cycles = [7, 3, 5, 3],
            VolumesPerCycle = [.. Small.VolumesPerCycle.Reverse()],
            NightSolutions = [Medium, Weak],
            DayFills = [.. Small.DayFills.Reverse()],
            StrongerFirstCycles = [2, 0],
        };
        var a = RegimenSearch.Run(PatientA, Ensemble(), GoalsA, Small, Present, All with { Workers = 1, Layers = DoubtLayers.Default });
        var b = RegimenSearch.Run(PatientA, Ensemble(), GoalsA, shuffled, Present, All with { Workers = 3, Layers = DoubtLayers.Default });
        Assert.Equal(a.CandidateCount, b.CandidateCount);
        Assert.Equal(a.Options.Select(option => option.Regimen), b.Options.Select(option => option.Regimen));
        Assert.Equal(a.Options.Select(option => option.UreaDose), b.Options.Select(option => option.UreaDose));
        Assert.Equal(a.Options.Select(option => option.UltrafiltrationOfOneDay), b.Options.Select(option => option.UltrafiltrationOfOneDay));
        Assert.Equal(a.DroppedBecause, b.DroppedBecause);
    }

    [Fact]
    public void A_regimen_gives_the_same_day_whatever_ran_before_it()
    {
        // To the last bit: searches run regimens in an order that depends on how many workers there are.
        var dry = Small.All().First(regimen => regimen.DayFill is null);
        var wet = Small.All().Last(regimen => regimen.DayFill is not null);
        var workspace = new RegimenWorkspace();
        var first = workspace.Run(PatientA, Membrane, dry, All.Simulation, RunControl.None);
        workspace.Run(PatientA, Membrane, wet, All.Simulation, RunControl.None);
        var again = workspace.Run(PatientA, Membrane, dry, All.Simulation, RunControl.None);
        Assert.Equal(first.Ultrafiltration, again.Ultrafiltration);
        Assert.Equal(first.SodiumRemovedByModel, again.SodiumRemovedByModel);
    }

    [Fact]
    public void A_single_day_is_less_sure_than_the_mean_of_many()
    {
        var front = RegimenSearch.Run(PatientA, Ensemble(), GoalsA, Small, Present, All);
        Assert.Equal(20, front.EnsembleMembers);
        Assert.All(front.Options, option =>
        {
            Assert.InRange(option.ProbabilityOfDayInRange.Value, 0, 1);
            Assert.InRange(option.ProbabilityOfMeanInRange.Value, 0, 1);
            Assert.True(Width(option.UltrafiltrationOfOneDay) > Width(option.Ultrafiltration));
            Assert.Equal(Doubt.Parameters | Doubt.NightToNight, option.UltrafiltrationOfOneDay.Doubt);
            Assert.Equal(Doubt.Parameters, option.Ultrafiltration.Doubt);

            // 300 mL wide, with 150 mL from night to night: a normal distribution has at most 68 % within one deviation to both sides.
            Assert.True(option.ProbabilityOfDayInRange.Value < 0.69);
            Assert.Matches("^On (about [1-7] days? in 10|fewer than 1 day in 10) the ultrafiltration lies between 200 and 500 mL(, on about [1-9] in 10 below)?(,? (and )?on about [1-9] in 10 above, when the patient may dry out)?\\.$", option.SingleDay);
        });

        static double Width(Band<Volume> band) => (band.High - band.Low).Milliliters;
    }

    [Fact]
    public void A_known_membrane_still_has_its_night_to_night_noise()
    {
        // A point ensemble: the mean is in the range or not, and 90 % of single days lie within 1.645 · 150 mL of it; 3 % for the
        // 200 draws.
        var front = RegimenSearch.Run(PatientA, MembraneEnsemble.Of(Membrane), GoalsA, Small, null, All);
        Assert.All(front.Options, option =>
        {
            Assert.Equal(1, option.ProbabilityOfMeanInRange.Value);
            Assert.Equal(option.Ultrafiltration.Low, option.Ultrafiltration.High);
            var half = (option.UltrafiltrationOfOneDay.High - option.UltrafiltrationOfOneDay.Low).Milliliters / 2;
            Assert.InRange(half, 1.645 * 150 * 0.97, 1.645 * 150 * 1.03);
        });
    }

    [Fact]
    public void Where_nothing_meets_the_floor_it_is_named_with_the_gap_and_the_nearest()
    {
        var goals = new RegimenGoals(FluidTarget.Between(Milliliters(4_000), Milliliters(5_000))) { Clearance = null };
        var front = RegimenSearch.Run(PatientB, MembraneEnsemble.Of(Membrane), goals, Small, null, All);
        Assert.Equal(0, front.FeasibleCount);
        Assert.Equal("fluid floor", front.NothingMeets!.Goal);
        var nearest = Assert.Single(front.Options);
        Assert.Equal(nearest.Regimen, front.NothingMeets.Nearest);
        var most = Grid().Max(regimen => RegimenSimulation.Run(PatientB, Membrane, regimen, All.Simulation).Ultrafiltration.Milliliters);
        Assert.Equal(most, nearest.Outcome.Ultrafiltration.Milliliters, 1e-6);
        Assert.Contains(FormattableString.Invariant($"{4_000 - most:0} mL less"), front.NothingMeets.ByHowMuch, StringComparison.Ordinal);
        Assert.Contains(nearest.Findings, finding => finding.Code == "below-fluid-floor");
    }

    [Fact]
    public void Where_everything_exceeds_the_ceiling_nothing_is_offered()
    {
        var goals = new RegimenGoals(FluidTarget.Between(Milliliters(0), Milliliters(50)));
        var strong = Small with { NightSolutions = [DialysisSolution.Glucose386], Cycles = [5] };
        var front = RegimenSearch.Run(PatientB, MembraneEnsemble.Of(Membrane), goals, strong, Present, All);
        Assert.Empty(front.Options);
        Assert.Equal("fluid ceiling", front.NothingMeets!.Goal);
        Assert.Null(front.NothingMeets.Nearest);
        Assert.NotNull(front.Present);
    }

    [Fact]
    public void What_cannot_be_done_is_counted_by_reason()
    {
        var space = Small with
        {
            NightLengths = [TimeSpan.FromHours(2), TimeSpan.FromHours(9), TimeSpan.FromHours(11)],
            VolumesPerCycle = [Milliliters(2_000), Milliliters(3_000)],
            NightSolutions = [DialysisSolution.Glucose386],
            StrongerFirstCycles = [0],
            DayFills = [null],
        };
        var goals = GoalsB with { MostStrongestExchanges = 4 };
        var front = RegimenSearch.Run(PatientB, MembraneEnsemble.Of(Membrane), goals, space, null, All);
        Assert.Equal(3 * 3 * 2, front.CandidateCount);
        Assert.Equal(6, front.DroppedBecause[DropReason.NightTooLong]);
        Assert.Equal(6, front.DroppedBecause[DropReason.FillTooLarge]);
        Assert.Equal(4, front.DroppedBecause[DropReason.TooManyStrongest]);

        // 2 h for three cycles of 22 min: 18 min of dwell each.
        Assert.Equal(1, front.DroppedBecause[DropReason.DwellTooShort]);
    }

    [Fact]
    public void The_strongest_bag_every_day_is_flagged_whatever_its_place()
    {
        var space = new RegimenSpace
        {
            NightLengths = [TimeSpan.FromHours(10)],
            Cycles = [5],
            VolumesPerCycle = [Milliliters(1_500)],
            NightSolutions = [Medium, DialysisSolution.Glucose386],
            DayFills = [new(Weak, Milliliters(2_000))],
        };
        var goals = new RegimenGoals(FluidTarget.Between(Milliliters(900), Milliliters(1_500)));
        var front = RegimenSearch.Run(PatientB, MembraneEnsemble.Of(Membrane), goals, space, null, All);
        var strong = front.Options.Where(option => option.StrongestExchanges > 0).ToList();
        Assert.NotEmpty(strong);
        Assert.All(strong, option => Assert.Contains(option.Findings, finding => finding.Code == "strongest-bag-daily"));
    }

    [Fact]
    public void Too_many_options_are_thinned_by_a_wider_noise()
    {
        var few = RegimenSearch.Run(PatientB, MembraneEnsemble.Of(Membrane), GoalsB, Small, null, All with { MostOptions = 3 });
        Assert.InRange(few.Options.Length, 1, 3);
        Assert.True(few.TieWidth > 1);
        Assert.Equal(few.CandidateCount, few.DroppedBecause.Values.Sum() + few.Options.Length);
    }

    [Fact]
    public void A_search_can_be_watched_and_stopped()
    {
        using var source = new CancellationTokenSource();
        var shares = new List<double>();
        var watcher = new Watcher(share =>
        {
            shares.Add(share);
            if (share > 0.2)
            {
                source.Cancel();
            }
        });
        var control = new RunControl { Cancellation = source.Token, Progress = watcher };
        Assert.ThrowsAny<OperationCanceledException>(() =>
            RegimenSearch.Run(PatientB, MembraneEnsemble.Of(Membrane), GoalsB, Small, null, All, control));
        Assert.InRange(shares.Max(), 0.2, 0.6);

        shares.Clear();
        RegimenSearch.Run(PatientB, MembraneEnsemble.Of(Membrane), GoalsB, Small, null, All, new RunControl { Progress = new Watcher(shares.Add) });
        Assert.Equal(shares.Order(), shares);
        Assert.Equal(1, shares[^1], 1e-9);
    }

    [Fact]
    public void The_usual_space_is_a_few_thousand_regimens_within_the_largest_fill()
    {
        var space = RegimenSpace.Usual(PatientB, GoalsB);
        Assert.InRange(space.All().Count, 2_000, 3_000);
        Assert.All(space.VolumesPerCycle, volume => Assert.True(volume <= GoalsB.LargestFillOf(PatientB)));
        Assert.Equal(space.All().Count, space.All().Distinct().Count());
    }

    [Fact]
    public void A_fluid_target_is_what_is_drunk_less_what_leaves()
    {
        // 1500 drunk, 1000 of urine, 200 otherwise: 300 needed. A need below zero is none, and the floor stays at zero.
        var target = FluidTarget.From(Milliliters(1_500), Milliliters(1_000), Milliliters(200), Milliliters(150));
        Assert.Equal((150.0, 450.0), (target.Floor.Milliliters, target.Ceiling.Milliliters));
        var none = FluidTarget.From(Milliliters(1_000), Milliliters(1_500), Milliliters(200), Milliliters(150));
        Assert.Equal((0.0, 150.0), (none.Floor.Milliliters, none.Ceiling.Milliliters));
        Assert.Throws<ArgumentOutOfRangeException>(() => FluidTarget.Between(Milliliters(500), Milliliters(500)));

        // The 700 mL that are lost beyond the intake are told, and of a need of exactly nothing there is nothing to tell.
        var found = Assert.Single(none.Findings);
        Assert.Equal(("losses-exceed-intake", Severity.Warning), (found.Code, found.Severity));
        Assert.Contains("by 700 mL", found.Message, StringComparison.Ordinal);
        Assert.Contains("the losses are 700 mL more than the intake", none.Basis, StringComparison.Ordinal);
        Assert.Empty(target.Findings);
        Assert.Empty(FluidTarget.From(Milliliters(1_000), Milliliters(800), Milliliters(200), Milliliters(150)).Findings);
    }

    [Fact]
    public void A_range_that_rests_on_no_urine_because_none_was_stated_says_so_and_so_does_the_search()
    {
        // 1500 taken in, 500 lost otherwise: 1000 ± 200 where nothing is known of urine. A stated zero gives the same numbers without the words.
        var (silent, stated) = (From(ResidualFunction.NotStated), From(ResidualFunction.None));
        Assert.Equal((800.0, 1_200.0), (silent.Floor.Milliliters, silent.Ceiling.Milliliters));
        Assert.Contains("urine not stated, taken as 0", silent.Basis, StringComparison.Ordinal);
        Assert.Contains("drink and food", silent.Basis, StringComparison.Ordinal);
        Assert.DoesNotContain("not stated", stated.Basis, StringComparison.Ordinal);
        Assert.Contains("less 0 mL of urine", stated.Basis, StringComparison.Ordinal);

        var patient = PatientB with { ResidualFunction = ResidualFunction.NotStated };
        var front = RegimenSearch.Run(patient, MembraneEnsemble.Of(Membrane), new RegimenGoals(silent), Small, null, All);
        Assert.Equal(Severity.Warning, Assert.Single(front.Findings, finding => finding.Code == "urine-not-stated").Severity);
        Assert.Contains("urine not stated, taken as 0", Reports.Of(front).Text, StringComparison.Ordinal);

        // Its clearance is the peritoneum's, and named so in table, small print and chart.
        Assert.Contains("peritoneal Kt/V only", Reports.Of(front).Text, StringComparison.Ordinal);
        Assert.Contains("here the peritoneum's alone: urine was not stated", Reports.Of(front).Text.Replace('’', '\''), StringComparison.Ordinal);
        Assert.Contains(RegimenCharts.TradeOff(front).Panels, panel => panel.XAxis.Label == "weekly Kt/V urea, peritoneal only");

        // So it is where nothing meets the goals, and in every what-if but that of no function at all, which is known.
        const string alone = "weekly peritoneal Kt/V (urine not stated)";
        var wide = new RegimenGoals(FluidTarget.Between(Milliliters(-2_000), Milliliters(2_000))) { Clearance = ClearanceGoal.Usual with { WeeklyUreaDose = 9 } };
        Assert.Contains($"Its {alone} is ", RegimenSearch.Run(patient, MembraneEnsemble.Of(Membrane), wide, Small, null, All).NothingMeets!.ByHowMuch, StringComparison.Ordinal);
        Assert.All(
            RegimenSensitivity.Run(patient, MembraneEnsemble.Of(Membrane), new RegimenGoals(silent), Small, front.Options[0].Regimen, All).Where(row => row.Outcome is not null),
            row => Assert.Contains(alone, row.Words, StringComparison.Ordinal));
        var urine = patient with { ResidualFunction = new(default, default, Milliliters(900)) };
        var failing = RegimenSensitivity.Run(urine, MembraneEnsemble.Of(Membrane), new RegimenGoals(silent), Small, front.Options[0].Regimen, All);
        Assert.Contains("weekly peritoneal Kt/V (renal clearance not stated)", failing.Single(row => row.What.StartsWith("half of", StringComparison.Ordinal)).Words, StringComparison.Ordinal);

        // And it is in a further bound, in the answer to it, and in what the list says was asked for.
        var bound = RegimenBound.AtLeast(RegimenMeasure.UreaDose, 0.2);
        var creatinine = RegimenBound.AtLeast(RegimenMeasure.CreatinineClearance, 1);
        var bounded = RegimenSearch.Run(urine, MembraneEnsemble.Of(Membrane), wide with { Clearance = null, Bounds = [bound, creatinine] }, Small, null, All);
        Assert.Equal("weekly peritoneal Kt/V (renal clearance not stated) at least 0.2", bound.Describe(urine.ResidualFunction));
        Assert.Equal("weekly Kt/V at least 0.2", bound.Describe(ResidualFunction.None));
        Assert.StartsWith("Weekly peritoneal Kt/V (renal clearance not stated) at least 0.2: ", bounded.Options[0].Answers[0].Words, StringComparison.Ordinal);
        Assert.StartsWith("Weekly peritoneal creatinine clearance (renal clearance not stated) at least 1 L per 1.73 m²: ", bounded.Options[0].Answers[1].Words, StringComparison.Ordinal);
        Assert.Contains("; weekly peritoneal Kt/V (renal clearance not stated) at least 0.2", Reports.Of(bounded).Text, StringComparison.Ordinal);
        var beyond = RegimenSearch.Run(urine, MembraneEnsemble.Of(Membrane), wide with { Clearance = null, Bounds = [RegimenBound.AtLeast(RegimenMeasure.UreaDose, 9)] }, Small, null, All).NothingMeets!;
        Assert.Contains("weekly peritoneal Kt/V (renal clearance not stated) at least 9", beyond.ByHowMuch, StringComparison.Ordinal);
        Assert.Contains("weekly Kt/V ", failing.Single(row => row.What.StartsWith("no residual", StringComparison.Ordinal)).Words, StringComparison.Ordinal);

        static FluidTarget From(ResidualFunction kidneys) => FluidTarget.From(Milliliters(1_500), kidneys, Milliliters(500), Milliliters(200));
    }

    [Fact]
    public void A_space_without_regimens_is_no_space()
    {
        Assert.Throws<ArgumentException>(() =>
            RegimenSearch.Run(PatientB, MembraneEnsemble.Of(Membrane), GoalsB, Small with { Cycles = [] }));
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            RegimenSearch.Run(PatientB, MembraneEnsemble.Of(Membrane), GoalsB, Small with { Cycles = [0, 5] }));
    }

    [Fact]
    public void Changes_are_told_in_words()
    {
        var fewer = Present with { Night = Present.Night.RemoveAt(0), DayFill = new(Medium, Milliliters(1_500)) };
        Assert.Equal(
            new RegimenChange(2, "one cycle fewer; day fill glucose 2.27 % instead of glucose 1.36 %"), RegimenChange.Between(Present, fewer));
        var mixed = Present with
        {
            NightLength = TimeSpan.FromHours(8),
            Night = [.. Enumerable.Repeat(new Exchange(Medium, Milliliters(1_750)), 2), .. Enumerable.Repeat(new Exchange(Weak, Milliliters(1_750)), 5)],
            DayFill = null,
        };
        Assert.Equal(
            "night 60 min shorter; 2 cycles more; 250 mL less per cycle; at night 2 × glucose 2.27 %, then glucose 1.36 % instead of glucose 2.27 %; no day fill instead of 1.5 L",
            RegimenChange.Between(Present, mixed).Text);
        Assert.Equal("as now", RegimenChange.Between(mixed, mixed).Text);
    }

    // Written out a second time, by loops.
    private static List<Regimen> Grid()
    {
        List<Regimen> grid = [];
        foreach (var hours in new[] { 8, 9 })
        {
            foreach (var cycles in new[] { 3, 5, 7 })
            {
                foreach (var fill in new[] { 1_500, 2_000, 2_500 })
                {
                    foreach (var medium in new[] { 0, 2, cycles })
                    {
                        foreach (var day in Small.DayFills)
                        {
                            var night = Enumerable.Range(0, cycles).Select(i => new Exchange(i < medium ? Medium : Weak, Milliliters(fill)));
                            grid.Add(new(TimeSpan.FromHours(hours), night, day));
                        }
                    }
                }
            }
        }

        return grid;
    }

    private static MembraneEnsemble Ensemble()
    {
        // Twenty membranes on a line: conductance and area from −15 to +15 %.
        ImmutableArray<double> Around(double center, int sign) => [.. Enumerable.Range(0, 20).Select(i => center * (1 + sign * 0.15 * (i - 9.5) / 9.5))];
        return new(
            EnsembleSource.Posterior,
            1,
            Membrane,
            Around(Membrane.UltrafiltrationCoefficient.MillilitersPerMinutePerMillimeterOfMercury, 1),
            Around(Membrane.DiffusionArea.Centimeters, -1),
            Around(1.4, 1));
    }

    // More is better on each axis.
    private static double[] Axes(RegimenOutcome outcome) =>
    [
        outcome.UreaDose.TotalKtOverV,
        -outcome.GlucoseAbsorbed.Grams,
        outcome.SodiumRemoved.Millimoles,
        -outcome.FluidUsed.Milliliters,
        -outcome.Regimen.Cycles,
        -outcome.Regimen.NightLength.TotalHours,
        -outcome.Regimen.Night.Count(exchange => exchange.Solution == DialysisSolution.Glucose386),
    ];

    private static bool Beats(double[] a, double[] b) => a.Zip(b).All(pair => pair.First >= pair.Second) && a.Zip(b).Any(pair => pair.First > pair.Second);

    private static bool WithinNoise(RegimenOutcome a, RegimenOutcome b) =>
        Math.Abs((a.Ultrafiltration - b.Ultrafiltration).Milliliters) < FluidNoise
        && Math.Abs(Math.Log(a.UreaDose.TotalKtOverV / b.UreaDose.TotalKtOverV)) < DoseNoise
        && Math.Abs((a.GlucoseAbsorbed - b.GlucoseAbsorbed).Grams) < GlucoseNoise;

    private sealed class Watcher(Action<double> see) : IProgress<double>
    {
        public void Report(double value) => see(value);
    }
}
