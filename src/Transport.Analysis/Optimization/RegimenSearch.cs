using System.Collections.Immutable;
using System.Globalization;

namespace Transport.Analysis;

/// <summary>Looks through regimens for those that meet a patient's goals, and says what each of them costs.</summary>
public static class RegimenSearch
{
    /// <summary>All regimens of a space, simulated; the options that remain, over an ensemble.</summary>
    /// <remarks>
    /// <para>First every regimen runs on the membrane at the ensemble's center. Out go those that break a limit, those that remove more fluid than the
    /// ceiling (whatever else they do), those below the floor and below the clearance goal. Of the rest, those stay that no other beats in clearance,
    /// absorbed glucose, sodium, fluid used, night length, number of cycles and strongest bags at once, and of those within the noise of each other
    /// (ultrafiltration 100 mL, Kt/V 5 %, glucose 5 g) one: with less glucose, then fewer changes from the present regimen, then fewer cycles.</para>
    /// <para>Then the options and the present regimen run over the members of the ensemble, the same for all.</para>
    /// <para>The grid is complete: nothing between its points is looked at, and nothing in it is left out.</para>
    /// </remarks>
    /// <param name="patient">Whose plasma, kidneys and size.</param>
    /// <param name="ensemble">The membranes, at the patient's size.</param>
    /// <param name="goals">What is wanted and what is not.</param>
    /// <param name="space">Where to look.</param>
    /// <param name="present">What the patient does now.</param>
    /// <param name="options">How to go about it.</param>
    /// <param name="control">Watches and stops.</param>
    /// <exception cref="RegimenException">The present regimen cannot be carried out.</exception>
    /// <exception cref="ArgumentException">The space is empty.</exception>
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
        var reference = present is null ? null : new Candidate(-1, present.OrThrow(), 0);
        var candidates = space.All()
            .Select((regimen, i) => new Candidate(i, regimen, present is null ? 0 : RegimenChange.Between(present, regimen).Count))
            .ToList();
        if (candidates.Count == 0)
        {
            throw new ArgumentException("The space holds no regimen.", nameof(space));
        }

        foreach (var candidate in candidates)
        {
            candidate.Dropped = Limits(candidate, patient, goals);
        }

        List<Candidate> simulated = [.. candidates.Where(candidate => candidate.Dropped is null)];
        List<Candidate> runs = reference is null ? simulated : [reference, .. simulated];
        var plain = options.Simulation with { Timeline = null };
        ParallelRuns.Run(runs.Count, options.Workers, control, 0, 0.6, () => new RegimenWorkspace(), (workspace, i) =>
            runs[i].Take(workspace.Run(patient, ensemble.Center, runs[i].Regimen, plain, RunControl.None), options));
        foreach (var candidate in simulated)
        {
            candidate.Dropped = Judge(candidate, goals);
        }

        List<Candidate> feasible = [.. simulated.Where(candidate => candidate.Dropped is null)];
        var (kept, width) = NonDominated.Thin(NonDominated.Of(feasible), options.MostOptions);
        UnmetGoal? unmet = null;
        if (feasible.Count == 0)
        {
            (unmet, var nearest) = Nearest(simulated, goals);
            kept = nearest is null ? [] : [nearest];
        }

        List<Candidate> rows = reference is null ? kept : [reference, .. kept];
        var stage = EnsembleStage.Run(patient, ensemble, rows, options, control);
        var skip = reference is null ? 0 : 1;
        var list = kept
            .Select((candidate, i) => Option(
                stage, i + skip, candidate, OptionWords.Why(i > 0 ? kept[i - 1] : null, candidate, i + 1 < kept.Count ? kept[i + 1] : null)))
            .ToImmutableArray();
        var first = reference is null ? null : Option(stage, 0, reference, "The present regimen, as it was given.");
        return new()
        {
            Goals = goals,
            Present = first,
            Options = list,
            CandidateCount = candidates.Count,
            FeasibleCount = feasible.Count,
            DroppedBecause = candidates.Where(candidate => !kept.Contains(candidate) && candidate.Dropped is not null)
                .GroupBy(candidate => candidate.Dropped!.Value)
                .ToImmutableSortedDictionary(group => group.Key, group => group.Count()),
            NothingMeets = unmet,
            EnsembleMembers = Math.Min(ensemble.Count, options.EnsembleMembers),
            TieWidth = width,
            Findings = FrontFindings(patient, goals, reference, list, unmet),
        };

        RegimenOption Option(EnsembleStage from, int row, Candidate candidate, string why)
        {
            var probability = from.ProbabilityOfDay(row, goals.Fluid);
            var outcome = options.Simulation.Timeline is null && candidate.Outcome is { } known
                ? known
                : RegimenSimulation.Run(patient, ensemble.Center, candidate.Regimen, options.Simulation);
            return new()
            {
                Regimen = candidate.Regimen,
                Outcome = outcome,
                Change = present is null ? null : RegimenChange.Between(present, candidate.Regimen),
                SingleDay = OptionWords.SingleDay(probability, goals.Fluid),
                ProbabilityOfDayInRange = probability,
                ProbabilityOfMeanInRange = from.ProbabilityOfMean(row, goals.Fluid),
                Ultrafiltration = from.MeanUltrafiltration(row),
                UltrafiltrationOfOneDay = from.UltrafiltrationOfOneDay(row),
                UreaDose = from.UreaDose(row),
                GlucoseAbsorbed = from.Glucose(row),
                SodiumRemoved = from.Sodium(row, options.Simulation.Sodium),
                StrongestExchanges = candidate.Strongest,
                Why = why,
                Findings = [.. OfTheDay(outcome), .. GoalFindings(candidate, goals)],
            };
        }
    }

    // Findings of the center alone carry its own volumes; an option's are moved by the model's miss, so that two figures would contradict each other.
    private static IEnumerable<Finding> OfTheDay(RegimenOutcome outcome) => outcome.Findings
        .Where(finding => finding.Code is not ("fluid-taken-up" or "over-removal"))
        .Select(finding => finding.Code == "day-takes-up-fluid"
            ? finding with { Message = "The day takes up part of what the night removes." }
            : finding);

    // What can be judged before anything is simulated.
    private static DropReason? Limits(Candidate candidate, Patient patient, RegimenGoals goals)
    {
        var regimen = candidate.Regimen;
        var largest = regimen.Exchanges.Max(exchange => exchange.Fill);
        var findings = regimen.Findings;
        return regimen.NightLength > goals.LongestNight ? DropReason.NightTooLong
            : largest > goals.LargestFillOf(patient) ? DropReason.FillTooLarge
            : candidate.Strongest > (goals.MostStrongestExchanges ?? int.MaxValue) ? DropReason.TooManyStrongest
            : findings.Any(finding => finding.Severity == Severity.Error) ? DropReason.NotPossible
            : findings.Any(finding => finding.Code == "short-dwell") ? DropReason.DwellTooShort
            : null;
    }

    private static DropReason? Judge(Candidate candidate, RegimenGoals goals) =>
        candidate.Peak > (goals.LargestVolume?.Milliliters ?? double.PositiveInfinity) ? DropReason.Overfill
        : candidate.Ultrafiltration > goals.Fluid.Ceiling.Milliliters ? DropReason.AboveFluidCeiling
        : candidate.Ultrafiltration < goals.Fluid.Floor.Milliliters ? DropReason.BelowFluidFloor
        : candidate.UreaDose < (goals.Clearance?.Least ?? 0) ? DropReason.BelowClearanceGoal
        : null;

    // The least violation, in units of 100 mL and of the noise of Kt/V; never above the ceiling or the volume limit.
    private static (UnmetGoal Goal, Candidate? Nearest) Nearest(List<Candidate> simulated, RegimenGoals goals)
    {
        if (simulated.Count == 0)
        {
            return (new("limits", "Every regimen that was looked at breaks a limit on night, fill, dwell or strongest bags.", null), null);
        }

        var nearest = simulated
            .Where(candidate => candidate.Dropped is DropReason.BelowFluidFloor or DropReason.BelowClearanceGoal)
            .OrderBy(candidate => FluidGap(candidate, goals) / 100 + DoseGap(candidate, goals) / (goals.Clearance is { } goal ? goal.Noise * goal.WeeklyUreaDose : 1))
            .ThenBy(candidate => candidate.Glucose)
            .ThenBy(candidate => candidate.Index)
            .FirstOrDefault();
        if (nearest is null)
        {
            var least = simulated.Min(candidate => candidate.Ultrafiltration) - goals.Fluid.Ceiling.Milliliters;
            return least > 0
                ? (new("fluid ceiling", Text($"Every regimen that was looked at removes too much: the gentlest {least:0} mL more than {goals.Fluid.Ceiling.Milliliters:0} mL."), null), null)
                : (new("limits", "Every regimen within the fluid range would overfill the cavity.", null), null);
        }

        var (fluid, dose) = (FluidGap(nearest, goals), DoseGap(nearest, goals));
        var goalName = (fluid > 0, dose > 0) switch
        {
            (true, true) => "fluid floor and clearance",
            (true, false) => "fluid floor",
            _ => "clearance",
        };
        var parts = new List<string>();
        if (fluid > 0)
        {
            parts.Add(Text($"the nearest regimen removes {nearest.Ultrafiltration:0} mL, {fluid:0} mL less than the floor of {goals.Fluid.Floor.Milliliters:0} mL"));
        }

        if (dose > 0)
        {
            parts.Add(Text($"its weekly Kt/V is {nearest.UreaDose:0.00}, {dose:0.00} below {goals.Clearance!.WeeklyUreaDose:0.00}"));
        }

        var sentence = string.Join("; ", parts);
        return (new(goalName, char.ToUpperInvariant(sentence[0]) + sentence[1..] + ".", nearest.Regimen), nearest);
    }

    private static double FluidGap(Candidate candidate, RegimenGoals goals) => Math.Max(0, goals.Fluid.Floor.Milliliters - candidate.Ultrafiltration);

    private static double DoseGap(Candidate candidate, RegimenGoals goals) =>
        goals.Clearance is { } goal && candidate.UreaDose < goal.Least ? goal.WeeklyUreaDose - candidate.UreaDose : 0;

    private static IEnumerable<Finding> GoalFindings(Candidate candidate, RegimenGoals goals)
    {
        var fluid = candidate.Ultrafiltration;
        if (fluid > goals.Fluid.Ceiling.Milliliters)
        {
            yield return new(
                Severity.Warning,
                "above-fluid-ceiling",
                Text($"It removes {fluid:0} mL in 24 h, {fluid - goals.Fluid.Ceiling.Milliliters:0} mL above the ceiling: the patient may dry out and lose urine."));
        }
        else if (fluid < goals.Fluid.Floor.Milliliters)
        {
            yield return new(
                Severity.Warning, "below-fluid-floor", Text($"It {(fluid < 0 ? "gives the body" : "removes")} {Math.Abs(fluid):0} mL in 24 h, {goals.Fluid.Floor.Milliliters - fluid:0} mL below the floor."));
        }

        if (goals.Clearance is { } goal && candidate.UreaDose < goal.Least)
        {
            yield return new(
                Severity.Note, "below-clearance-goal", Text($"Weekly Kt/V {candidate.UreaDose:0.00}, where {goal.WeeklyUreaDose:0.00} was asked for."));
        }
    }

    private static List<Finding> FrontFindings(
        Patient patient, RegimenGoals goals, Candidate? present, ImmutableArray<RegimenOption> options, UnmetGoal? unmet)
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
                "present-above-ceiling",
                Text($"The present regimen removes {present.Ultrafiltration:0} mL, more than {goals.Fluid.Ceiling.Milliliters:0} mL.")));
        }

        if (options.Length > 0 && options.All(option => option.StrongestExchanges > 0))
        {
            findings.Add(new(
                Severity.Warning,
                "every-option-strongest",
                Text($"Every option uses the strongest glucose, in {options.Min(option => option.StrongestExchanges):0} exchanges a day or more. That says more about the question than about the night: whether the fluid range is right, whether salt and drink can be less, whether the catheter drains, and what a long dwell of icodextrin would do.")));
        }

        // Lying, children had a surface of 29,400 cm where standing it was 21,900 (read); nothing of that is in the bands.
        findings.Add(new(
            Severity.Note,
            "night-is-supine",
            "A clinic test is done upright and the night is spent lying, when the exchange surface may be up to a third larger (children, read): small solutes and glucose may then cross faster, and ultrafiltration peak earlier, than shown. The bands do not hold this."));

        // Fluid cycles are given 1200 mL/m² in print, clearance cycles 1400 (Perit Dial Int 2021, doi 10.1177/08968608211010055, read).
        var large = 1200 * patient.BodySurface.SquareMeters;
        if (options.Any(option => option.Regimen.Night.Any(exchange => exchange.Fill.Milliliters > large)))
        {
            findings.Add(new(
                Severity.Note,
                "large-fills-overstated",
                Text($"Above {large:0} mL per fill the model overstates ultrafiltration: measured, a litre more lowered it, and the model raises it.")));
        }

        findings.Add(new(
            Severity.Note,
            "options-not-orders",
            "The options are listed by absorbed glucose, not by merit. Symptoms, volume state, pressure and nutrition are not assessed here; local protocol rules."));
        return findings;
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
