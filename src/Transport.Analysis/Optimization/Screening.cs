namespace Transport.Analysis;

/// <summary>A whole grid at the ensemble's center, by maps, slab after slab, so that it takes no more room than a slab.</summary>
internal sealed class Screening
{
    private const int SlabSize = 1 << 17;
    private const int ShareSize = 256;
    private const int NearestKept = 20;

    private readonly Patient patient;
    private readonly ThreePoreMembrane center;
    private readonly RegimenGrid grid;
    private readonly RegimenGoals goals;
    private readonly RegimenOptions simulation;
    private readonly RegimenSearchOptions options;
    private readonly CenterJudge judge;
    private readonly NonDominated order;
    private readonly BagCounter? bags;
    private readonly Regimen? present;
    private readonly SortedDictionary<DropReason, int> dropped = [];
    private List<Candidate> nearest = [];

    public Screening(
        Patient patient, ThreePoreMembrane center, RegimenGrid grid, RegimenGoals goals, RegimenOptions simulation, Regimen? present, RegimenSearchOptions options)
    {
        this.patient = patient;
        this.center = center;
        this.grid = grid;
        this.goals = goals;
        this.simulation = simulation;
        this.present = present;
        this.options = options;
        judge = new(patient, goals);
        order = new(goals);
        bags = goals.ToBagCounter();
    }

    /// <summary>How many exchanges differ, slab by slab.</summary>
    public int Kinds { get; private set; }

    /// <summary>How many are certainly in, those that others dominate counted.</summary>
    public int SurelyFeasible { get; private set; }

    public IReadOnlyDictionary<DropReason, int> Dropped => dropped;

    /// <summary>What comes nearest among what misses floor or clearance, by maps.</summary>
    public IReadOnlyList<Candidate> Nearest => nearest;

    /// <summary>The gentlest of all that could be simulated; null: nothing could.</summary>
    public Candidate? Gentlest { get; private set; }

    /// <summary>Slab after slab, in order of the grid, what may be in: certainly, or perhaps, which has to be simulated before it is certain. Nothing of a slab is kept.</summary>
    /// <param name="control">Watches and stops.</param>
    /// <param name="to">Which share of the progress this is.</param>
    public IEnumerable<(List<Candidate> Sure, List<Candidate> Perhaps)> Slabs(RunControl control, double to)
    {
        for (var first = 0; first < grid.Count; first += SlabSize)
        {
            var count = Math.Min(SlabSize, grid.Count - first);
            yield return Slab(first, count, control, to * first / grid.Count, to * (first + count) / grid.Count);
        }
    }

    /// <summary>Of what misses floor or clearance, in the screening or once it was simulated, the nearest is kept.</summary>
    public void KeepNearest(IEnumerable<Candidate> candidates) => nearest = [.. Least([.. nearest.Concat(candidates).Select(candidate => (judge.Violation(candidate), candidate))]).Select(pair => pair.Candidate)];

    private (List<Candidate> Sure, List<Candidate> Perhaps) Slab(int first, int count, RunControl control, double from, double to)
    {
        var catalog = new RegimenCatalog(patient, simulation, grid[first], goals.Pressure);
        var rings = new RegimenRingOf?[count];
        var reasons = new DropReason?[count];
        var shares = (count + ShareSize - 1) / ShareSize;
        var middle = from + 0.5 * (to - from);
        ParallelRuns.Run(shares, options.Workers, control, from, middle, () => new List<CycleKind>(), (scratch, share) =>
        {
            for (var i = share * ShareSize; i < Math.Min(count, (share + 1) * ShareSize); i++)
            {
                var regimen = grid[first + i];
                reasons[i] = judge.Limits(regimen) ?? (IsPresent(regimen) ? DropReason.IsPresent : null);
                rings[i] = reasons[i] is null ? catalog.Add(regimen, scratch) : null;
            }
        });
        catalog.Complete(options);
        Kinds += catalog.KindCount;
        var found = new Share[shares];
        ParallelRuns.Run(
            shares,
            options.Workers,
            control,
            middle,
            to,
            () =>
            {
                var worker = new RingWorker(patient, catalog, simulation, options, goals.Pressure, seesPeak: true);
                worker.Prepare(center);
                return worker;
            },
            (worker, share) =>
            {
                var own = found[share] = new();
                for (var i = share * ShareSize; i < Math.Min(count, (share + 1) * ShareSize); i++)
                {
                    if (reasons[i] is { } reason)
                    {
                        own.Count(reason);
                        continue;
                    }

                    control.Cancellation.ThrowIfCancellationRequested();
                    var candidate = new Candidate(first + i, grid[first + i], bags, grid);
                    var figures = candidate.Figures;
                    candidate.Take(figures, worker.Run(candidate.Regimen, rings[i], figures));
                    Judge(candidate, own);
                }
            });
        return Merge(found);
    }

    // The clock matters for nothing but blood samples and hands.
    private bool IsPresent(Regimen regimen) => present is not null && regimen.NightLength == present.NightLength
        && (regimen.NightStart == present.NightStart ? regimen : regimen with { NightStart = present.NightStart }).Equals(present);

    private void Judge(Candidate candidate, Share own)
    {
        own.Gentlest = own.Gentlest is { } gentlest && gentlest.Ultrafiltration <= candidate.Ultrafiltration ? gentlest : candidate;
        var (reason, isSure) = judge.JudgeMaps(candidate);
        if (reason is null)
        {
            own.Survivors.Add((candidate, isSure));
            return;
        }

        own.Count(reason.Value);
        if (reason is DropReason.BelowFluidFloor or DropReason.BelowClearanceGoal)
        {
            candidate.Reason = reason;
            own.Nearest.Add((judge.Violation(candidate), candidate));
            if (own.Nearest.Count >= 4 * NearestKept)
            {
                own.Nearest = Least(own.Nearest);
            }
        }
    }

    private (List<Candidate> Sure, List<Candidate> Perhaps) Merge(Share[] shares)
    {
        foreach (var share in shares)
        {
            foreach (var (reason, number) in share.Counts)
            {
                Add(reason, number);
            }

            if (share.Gentlest is { } candidate && !(Gentlest?.Ultrafiltration <= candidate.Ultrafiltration))
            {
                Gentlest = candidate;
            }
        }

        KeepNearest(shares.SelectMany(share => share.Nearest).Select(pair => pair.Candidate));
        List<Candidate> sure = [.. shares.SelectMany(share => share.Survivors).Where(pair => pair.IsSure).Select(pair => pair.Candidate)];
        SurelyFeasible += sure.Count;
        if (goals.Bounds.IsEmpty)
        {
            // What another one of the slab beats for certain is beaten in the end.
            var unbeaten = order.Of(sure, areExact: false);
            Add(DropReason.Dominated, sure.Count - unbeaten.Count);
            sure = unbeaten;
        }

        return (sure, [.. shares.SelectMany(share => share.Survivors).Where(pair => !pair.IsSure).Select(pair => pair.Candidate)]);
    }

    private void Add(DropReason reason, int number)
    {
        if (number > 0)
        {
            dropped[reason] = dropped.GetValueOrDefault(reason) + number;
        }
    }

    private static List<(double Violation, Candidate Candidate)> Least(List<(double Violation, Candidate Candidate)> all) =>
        [.. all.OrderBy(pair => pair.Violation).ThenBy(pair => pair.Candidate.Glucose).ThenBy(pair => pair.Candidate.Index).Take(NearestKept)];

    private sealed class Share
    {
        public Dictionary<DropReason, int> Counts { get; } = [];

        public List<(Candidate Candidate, bool IsSure)> Survivors { get; } = [];

        public List<(double Violation, Candidate Candidate)> Nearest { get; set; } = [];

        public Candidate? Gentlest { get; set; }

        public void Count(DropReason reason) => Counts[reason] = Counts.GetValueOrDefault(reason) + 1;
    }
}
