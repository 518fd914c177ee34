using System.Globalization;

namespace Transport.Analysis;

/// <summary>Where nothing meets every goal: which goal fails, by how much, and what comes nearest.</summary>
internal static class NearestRegimen
{
    // At most so many are asked of every member.
    private const int Most = 2000;

    /// <summary>At the center: the least violation, in units of 100 mL and of the noise of Kt/V; never above the ceiling or the volume limit.</summary>
    /// <param name="screening">What was looked at.</param>
    /// <param name="judge">Judges it.</param>
    /// <param name="goals">The goals.</param>
    /// <param name="simulate">Makes a candidate's figures exact.</param>
    public static (UnmetGoal Goal, Candidate? Nearest) AtCenter(
        Screening screening, CenterJudge judge, RegimenGoals goals, Action<IReadOnlyList<Candidate>> simulate)
    {
        if (screening.Gentlest is not { } gentlest)
        {
            return (new("limits", "Every regimen that was looked at breaks a limit on night, fill, dwell, strongest bags or what is allowed.", null), null);
        }

        var near = screening.Nearest;
        simulate(near);
        simulate([gentlest]);
        var nearest = near
            .Where(candidate => judge.Judge(candidate) is DropReason.BelowFluidFloor or DropReason.BelowClearanceGoal)
            .OrderBy(judge.Violation)
            .ThenBy(candidate => candidate.Glucose)
            .ThenBy(candidate => candidate.Index)
            .FirstOrDefault();
        if (nearest is null)
        {
            var least = gentlest.Ultrafiltration - goals.Fluid.Ceiling.Milliliters;
            return least > 0
                ? (new("fluid ceiling", Text($"Every regimen that was looked at removes too much: the gentlest {least:0} mL more than {goals.Fluid.Ceiling.Milliliters:0} mL."), null), null)
                : (new("limits", "Every regimen within the fluid range would overfill the cavity or exceed the pressure.", null), null);
        }

        var (fluid, dose) = (judge.FluidGap(nearest), judge.DoseGap(nearest));
        var goalName = (fluid > 0, dose > 0) switch
        {
            (true, true) => "fluid floor and clearance",
            (true, false) => "fluid floor",
            _ => "clearance",
        };
        List<string> parts = [];
        if (fluid > 0)
        {
            parts.Add(Text($"the nearest regimen removes {nearest.Ultrafiltration:0} mL, {fluid:0} mL less than the floor of {goals.Fluid.Floor.Milliliters:0} mL"));
        }

        if (dose > 0)
        {
            parts.Add(Text($"its {judge.Dose} is {nearest.UreaDose:0.00}, {dose:0.00} below {goals.Clearance!.WeeklyUreaDose:0.00}"));
        }

        var sentence = string.Join("; ", parts);
        return (new(goalName, Wording.Capital(sentence) + ".", nearest.Regimen), nearest);
    }

    /// <summary>Of some regimens those that stand best at the center to the bound that they stand worst to.</summary>
    public static List<Candidate> Closest(IReadOnlyList<Candidate> candidates, PosteriorStage stage) =>
        [.. candidates.OrderBy(candidate => stage.CenterGap(candidate)).ThenBy(candidate => candidate.Index).Take(Most)];

    /// <summary>Over the ensemble: of what meets the goals at the center, what falls least short of its bounds.</summary>
    /// <param name="asked">The closest at the center.</param>
    /// <param name="stage">Asks them of every member.</param>
    public static (UnmetGoal Goal, Candidate Nearest) OverEnsemble(IReadOnlyList<Candidate> asked, PosteriorStage stage)
    {
        var tables = stage.Tables(asked);
        var (nearest, worst) = asked
            .Select((candidate, i) => (candidate, Worst: stage.Answers(candidate, tables[i]).MaxBy(Shortfall)!))
            .OrderBy(pair => Shortfall(pair.Worst))
            .ThenBy(pair => pair.candidate.Glucose)
            .ThenBy(pair => pair.candidate.Index)
            .First();
        var kidneys = worst.Kidneys!;
        var how = worst.Bound.Probability is { } probability
            ? Text($"Asked for was {worst.Bound.Describe(kidneys)}; the nearest regimen reaches a probability of {worst.Asked:0.00}, {probability - worst.Asked:0.00} less.")
            : Text($"Asked for was {worst.Bound.Describe(kidneys)}; the nearest regimen's expected value is {worst.Expected:0.##}, {worst.Bound.Gap(worst.Expected):0.##} outside.");
        return (new(RegimenBound.Name(worst.Bound.Measure, kidneys), how, nearest.Regimen), nearest);
    }

    // Of probability; an expected value's in its share of the bound.
    private static double Shortfall(GoalAnswer answer) => answer.Bound.Probability is { } probability
        ? Math.Max(0, probability - answer.Asked)
        : answer.Bound.Gap(answer.Expected) / Math.Max(1e-9, Math.Abs(double.IsFinite(answer.Bound.Floor) ? answer.Bound.Floor : answer.Bound.Ceiling));

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
