namespace Transport.Analysis;

/// <summary>What remains of a grid that comes slab after slab: the regimens that keep every bound and that no other beats, by simulated figures. Of the others only
/// their number is kept, by reason.</summary>
internal sealed class Sieve
{
    private readonly CenterJudge judge;
    private readonly CenterSimulation center;
    private readonly PosteriorStage stage;
    private readonly NonDominated order;
    private readonly Screening screening;
    private readonly SortedDictionary<DropReason, int> dropped = [];
    private int feasible;

    public Sieve(Patient patient, RegimenGoals goals, Screening screening, CenterSimulation center, PosteriorStage stage)
    {
        (this.screening, this.center, this.stage) = (screening, center, stage);
        judge = new(patient, goals);
        order = new(goals);
    }

    /// <summary>What keeps every bound and is unbeaten so far, in order of the grid.</summary>
    public List<Candidate> Front { get; private set; } = [];

    /// <summary>While nothing keeps every bound: what meets the goals at the center and may come nearest.</summary>
    public List<Candidate> Short { get; private set; } = [];

    /// <summary>How many meet everything, those that others dominate counted.</summary>
    public int FeasibleCount => screening.SurelyFeasible + feasible;

    /// <summary>How many were dropped, by reason.</summary>
    public IReadOnlyDictionary<DropReason, int> Dropped
    {
        get
        {
            var all = screening.Dropped.ToDictionary();
            foreach (var (reason, number) in dropped)
            {
                all[reason] = all.GetValueOrDefault(reason) + number;
            }

            return all;
        }
    }

    /// <summary>Takes the next slab.</summary>
    /// <param name="sure">What meets the goals at the center.</param>
    /// <param name="perhaps">What has to be simulated before that is certain.</param>
    public void Take(List<Candidate> sure, List<Candidate> perhaps)
    {
        center.Run(perhaps);
        perhaps.ForEach(candidate => candidate.Dropped = judge.Judge(candidate));
        screening.KeepNearest(perhaps.Where(candidate => candidate.Dropped is DropReason.BelowFluidFloor or DropReason.BelowClearanceGoal));
        feasible += perhaps.Count(candidate => candidate.Dropped is null);

        List<Candidate> asked = [.. sure.Concat(perhaps.Where(candidate => candidate.Dropped is null)).OrderBy(candidate => candidate.Index)];
        Drop(order.Beaten(asked, Front), DropReason.Dominated);
        var sifted = stage.Sift([.. asked.Where(candidate => candidate.Dropped is null)]);
        feasible -= asked.Count(candidate => candidate.Dropped == DropReason.MissesBound);

        // The last judgement is by simulated figures.
        center.Run(sifted);
        var front = order.Of([.. Front, .. sifted], areExact: true);
        Drop(Front.Concat(sifted).Except(front), DropReason.Dominated);
        foreach (var group in perhaps.Concat(sure).Where(candidate => candidate.Dropped is not null).GroupBy(candidate => candidate.Dropped!.Value))
        {
            Count(group.Key, group.Count());
        }

        Count(DropReason.Dominated, Front.Count(candidate => candidate.Dropped is not null));
        Front = front;
        Short = front.Count > 0 ? [] : NearestRegimen.Closest([.. Short, .. asked], stage);
        Front.ForEach(candidate => candidate.Forget());
        Short.ForEach(candidate => candidate.Forget());
    }

    private void Count(DropReason reason, int number) => dropped[reason] = dropped.GetValueOrDefault(reason) + number;

    private static void Drop(IEnumerable<Candidate> candidates, DropReason reason)
    {
        foreach (var candidate in candidates)
        {
            candidate.Dropped = reason;
        }
    }
}
