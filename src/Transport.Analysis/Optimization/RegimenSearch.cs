using System.Collections.Immutable;
using System.Globalization;

namespace Transport.Analysis;

/// <summary>Looks through regimens for those that meet a patient's goals, and says what each of them costs.</summary>
public static class RegimenSearch
{
    /// <summary>All regimens of a space, looked at; the options that remain, over an ensemble.</summary>
    /// <remarks>
    /// <para>First every regimen runs on the membrane at the ensemble's center. Out go those that break a limit, those that remove more fluid than the
    /// ceiling (whatever else they do), those below the floor and below the clearance goal. Then those that miss a bound over the members of the ensemble,
    /// the same for all. Of the rest, those stay that no other beats in every objective, fluid used and number of cycles at once, and of those within the noise
    /// of each other (ultrafiltration 100 mL, Kt/V 5 %, glucose 5 g) one: with less glucose, then fewer changes from the present regimen, then fewer
    /// cycles.</para>
    /// <para>The grid is complete: nothing between its points is looked at, and nothing in it is left out. Regimens share exchanges, and an exchange is
    /// simulated once; what lies closer to a limit or to another regimen than that is exact, is simulated phase after phase before it is judged.</para>
    /// </remarks>
    /// <param name="patient">Whose plasma, kidneys and size.</param>
    /// <param name="ensemble">The membranes, at the patient's size.</param>
    /// <param name="goals">What is wanted and what is not.</param>
    /// <param name="space">Where to look.</param>
    /// <param name="present">What the patient does now.</param>
    /// <param name="options">How to go about it.</param>
    /// <param name="control">Watches and stops.</param>
    /// <exception cref="RegimenException">The present regimen cannot be carried out.</exception>
    /// <exception cref="ArgumentException">The space is empty, or a goal asks for a solute that the panel does not follow.</exception>
    /// <exception cref="IntegrationException">A day could not be integrated.</exception>
    /// <exception cref="OperationCanceledException">The search was stopped.</exception>
    public static RegimenFront Run(
        Patient patient,
        MembraneEnsemble ensemble,
        RegimenGoals goals,
        RegimenSpace space,
        Regimen? present = null,
        RegimenSearchOptions? options = null,
        RunControl? control = null)
    {
        ArgumentNullException.ThrowIfNull(patient);
        ArgumentNullException.ThrowIfNull(ensemble);
        ArgumentNullException.ThrowIfNull(goals);
        ArgumentNullException.ThrowIfNull(space);
        options ??= RegimenSearchOptions.Default;
        control ??= RunControl.None;
        ensemble = options.Layers.AtNight(ensemble);
        var reader = new RegimenFigures(patient, options.Plain, goals.Pressure);
        var center = new CenterSimulation(patient, ensemble.Center, goals, options, control);
        foreach (var measure in goals.Bounds.Select(bound => bound.Measure).Concat(goals.Objectives.Select(objective => objective.Measure)))
        {
            if (!reader.Has(measure))
            {
                throw new ArgumentException($"The panel does not follow what {RegimenBound.Name(measure)} is asked of.", nameof(goals));
            }
        }

        var grid = space.ToGrid();
        if (grid.Count == 0)
        {
            throw new ArgumentException("The space holds no regimen.", nameof(space));
        }

        var reference = present is null ? null : new Candidate(-1, present.OrThrow(), goals.ToBagCounter());
        var screening = new Screening(patient, ensemble.Center, grid, goals, options.Screening, present, options);
        var stage = new PosteriorStage(patient, ensemble, goals, options.Screening, options, control);
        var sieve = new Sieve(patient, goals, screening, center, stage);
        center.Run(reference is null ? [] : [reference]);
        foreach (var (sure, perhaps) in screening.Slabs(control, 0.9))
        {
            sieve.Take(sure, perhaps);
        }

        var front = sieve.Front;
        foreach (var candidate in front)
        {
            candidate.Changes = present is null ? 0 : RegimenChange.Between(present, candidate.Regimen).Count;
            candidate.Forget();
        }

        var (kept, width) = NonDominated.Thin(front, options.MostOptions);
        UnmetGoal? unmet = null;
        var reasons = sieve.Dropped.ToDictionary();
        reasons[DropReason.Tie] = front.Count - kept.Count;
        if (front.Count == 0)
        {
            (unmet, var nearest) = sieve.Short.Count > 0
                ? NearestRegimen.OverEnsemble(sieve.Short, stage)
                : NearestRegimen.AtCenter(screening, new(patient, goals), goals, center.Run);
            kept = nearest is null ? [] : [nearest];
            center.Run(kept);
            if (nearest is not null)
            {
                // It is shown although a goal drops it.
                reasons[nearest.Dropped ?? nearest.Reason!.Value]--;
            }
        }

        var list = kept
            .Select((candidate, i) => Option(
                candidate, OptionWords.Why(i > 0 ? kept[i - 1] : null, candidate, i + 1 < kept.Count ? kept[i + 1] : null)))
            .ToImmutableArray();
        var first = reference is null ? null : Option(reference, "The present regimen, as it was given.");
        control.Progress?.Report(1);
        return new()
        {
            Goals = goals,
            Present = first,
            Options = list,
            CandidateCount = grid.Count,
            FeasibleCount = sieve.FeasibleCount,
            DroppedBecause = reasons.Where(pair => pair.Value > 0).ToImmutableSortedDictionary(),
            NothingMeets = unmet,
            EnsembleMembers = stage.Count,
            TieWidth = width,
            Findings = FrontFindings(patient, goals, reference, list, unmet, options.Layers),
        };

        RegimenOption Option(Candidate candidate, string why)
        {
            var days = stage.Days(candidate.Regimen);
            var table = new double[days.Length * RegimenFigures.Count];
            for (var member = 0; member < days.Length; member++)
            {
                var figures = table.AsSpan(member * RegimenFigures.Count, RegimenFigures.Count);
                candidate.Figures.CopyTo(figures);
                reader.Read(days[member], options, figures);
            }

            var bands = new EnsembleBands(days, table, candidate.ModelForm.Deviation, options);
            var probability = bands.ProbabilityOfDay(goals.Fluid);
            var outcome = RegimenSimulation.Run(patient, ensemble.Center, candidate.Regimen, options.Simulation);
            return new()
            {
                Regimen = candidate.Regimen,
                Outcome = outcome,
                Change = present is null ? null : RegimenChange.Between(present, candidate.Regimen),
                SingleDay = OptionWords.SingleDay(probability, bands.ShareOfDaysAbove(goals.Fluid), goals.Fluid),
                ProbabilityOfDayInRange = probability,
                ProbabilityOfMeanInRange = bands.ProbabilityOfMean(goals.Fluid),
                Ultrafiltration = bands.MeanUltrafiltration,
                UltrafiltrationOfOneDay = bands.UltrafiltrationOfOneDay,
                UreaDose = bands.UreaDose,
                GlucoseAbsorbed = bands.Glucose,
                SodiumRemoved = bands.Sodium,
                Answers = [.. stage.Answers(candidate, table)],
                StrongestExchanges = candidate.Strongest,
                Why = why,
                Findings = [.. OfTheDay(outcome), .. GoalFindings(outcome.Patient, candidate, bands, goals), .. BeyondTheTest.FillAboveTested([candidate.Regimen], options.LargestTestedFill), .. BeyondTheTest.FillOfChild(outcome.Patient, [candidate.Regimen])],
            };
        }
    }

    // Findings of the center alone carry its own volumes; an option's are moved by the model's miss, so that two figures would contradict each other.
    private static IEnumerable<Finding> OfTheDay(RegimenOutcome outcome) => outcome.Findings
        .Where(finding => finding.Code is not ("fluid-taken-up" or "above-fluid-ceiling"))
        .Select(finding => finding.Code == "day-takes-up-fluid"
            ? finding with { Message = "The day takes up part of what the night removes." }
            : finding);

    // Judged at the center, told by the middle of the bands that stand beside it: two figures for one thing would only confuse.
    private static IEnumerable<Finding> GoalFindings(Patient patient, Candidate candidate, EnsembleBands bands, RegimenGoals goals)
    {
        var (floor, ceiling) = (goals.Fluid.Floor.Milliliters, goals.Fluid.Ceiling.Milliliters);
        var fluid = bands.MeanUltrafiltration.Median.Milliliters;
        if (candidate.Ultrafiltration > ceiling)
        {
            yield return new(
                Severity.Warning,
                "above-fluid-ceiling",
                fluid > ceiling
                    ? Text($"It removes {fluid:0} mL in 24 h, {fluid - ceiling:0} mL above the ceiling: the patient may dry out and lose urine.")
                    : "It lies at the ceiling of the fluid range: the patient may dry out and lose urine.");
        }
        else if (candidate.Ultrafiltration < floor)
        {
            yield return new(
                Severity.Warning,
                "below-fluid-floor",
                fluid < floor
                    ? Text($"It {(fluid < 0 ? "gives the body" : "removes")} {Math.Abs(fluid):0} mL in 24 h, {floor - fluid:0} mL below the floor.")
                    : "It lies at the floor of the fluid range.");
        }

        if (goals.Clearance is { } goal && candidate.UreaDose < goal.Least)
        {
            yield return new(
                Severity.Note, "below-clearance-goal", Text($"{Wording.Capital(OptionWords.Dose(patient.ResidualFunction))} {bands.UreaDose.Median:0.00}, where {goal.WeeklyUreaDose:0.00} was asked for."));
        }
    }

    private static List<Finding> FrontFindings(
        Patient patient, RegimenGoals goals, Candidate? present, ImmutableArray<RegimenOption> options, UnmetGoal? unmet, DoubtLayers layers)
    {
        List<Finding> findings = [];
        if (unmet is not null)
        {
            findings.Add(new(Severity.Warning, "no-regimen-meets-all", unmet.ByHowMuch) { Field = unmet.Goal });
        }

        if (present is not null && present.Ultrafiltration > goals.Fluid.Ceiling.Milliliters)
        {
            findings.Add(new(
                Severity.Warning,
                "above-fluid-ceiling",
                Text($"The present regimen removes {present.Ultrafiltration:0} mL, more than {goals.Fluid.Ceiling.Milliliters:0} mL.")));
        }

        if (options.Length > 0 && options.All(option => option.StrongestExchanges > 0))
        {
            findings.Add(new(
                Severity.Warning,
                "every-option-strongest",
                Text($"Every option uses the strongest glucose, in {options.Min(option => option.StrongestExchanges):0} exchanges a day or more. That says more about the question than about the night: whether the fluid range is right, whether salt and drink can be less, whether the catheter drains, and what a long dwell of icodextrin would do.")));
        }

        findings.AddRange([
            .. goals.Fluid.Findings,
            .. BeyondTheTest.Urine(patient),
            BeyondTheTest.NightIsSupine(layers),
            .. BeyondTheTest.LargeFills(patient, options.Select(option => option.Regimen)),
        ]);
        findings.Add(new(
            Severity.Note,
            "options-not-orders",
            "The options are listed by absorbed glucose, not by merit. Symptoms, volume state, pressure and nutrition are not assessed here; local protocol rules."));
        return findings;
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
