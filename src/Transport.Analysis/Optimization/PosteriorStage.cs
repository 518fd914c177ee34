using System.Collections.Concurrent;
using System.Diagnostics;

namespace Transport.Analysis;

/// <summary>Asks of many regimens whether they keep their bounds over the members of an ensemble, the same for all.</summary>
/// <remarks>
/// <para>Nothing is lost: a regimen goes only when no outcome of the draws that are left could save it, or when one that keeps every bound beats it at the center.
/// The draws that are hardest come first, so that what fails shows it early. What maps leave open, because it is nearer to a bound than they are exact, is simulated
/// phase after phase, the draws first in which maps can err most, until those that are left to the maps decide nothing.</para>
/// <para>The order in which draws are worked on, and by how many, changes nothing: counts are whole numbers.</para>
/// </remarks>
internal sealed class PosteriorStage
{
    private const int Block = 32;

    // Those whose tables of every draw are at hand together.
    private const int Together = 64;

    private readonly Patient patient;
    private readonly MembraneEnsemble ensemble;
    private readonly RegimenGoals goals;
    private readonly RegimenOptions simulation;
    private readonly RegimenSearchOptions options;
    private readonly RunControl control;
    private readonly PosteriorGoals bounds;
    private readonly NonDominated order;
    private readonly CenterSimulation center;
    private readonly RegimenFigures reader;
    private readonly bool asksPeak;
    private readonly Stopwatch watch = new();
    private int[] draws;

    public PosteriorStage(
        Patient patient, MembraneEnsemble ensemble, RegimenGoals goals, RegimenOptions simulation, RegimenSearchOptions options, RunControl control)
    {
        center = new(patient, ensemble.Center, goals, options, control);
        reader = new(patient, options.Plain, goals.Pressure);
        this.patient = patient;
        this.ensemble = ensemble;
        this.goals = goals;
        this.simulation = simulation;
        this.options = options;
        this.control = control;
        order = new(goals);
        asksPeak = goals.Bounds.Any(bound => bound.Measure is RegimenMeasure.PeakVolume or RegimenMeasure.PeakPressure);
        draws = [.. Enumerable.Range(0, Math.Min(ensemble.Count, options.EnsembleMembers))];
        bounds = new(goals, simulation, options.Layers, Count);
    }

    /// <summary>How many members.</summary>
    public int Count => draws.Length;

    /// <summary>How many regimens met how many draws, in all.</summary>
    public long Runs { get; private set; }

    /// <summary>How many regimens were simulated with members, because maps left open on which side of a bound they are.</summary>
    public int Simulated { get; private set; }

    /// <summary>Time spent on that.</summary>
    public TimeSpan Elapsed => watch.Elapsed;

    /// <summary>
    /// Of some regimens those that keep every bound and that no other of those certainly beats. The rest is marked.
    /// </summary>
    public List<Candidate> Sift(IReadOnlyList<Candidate> candidates)
    {
        watch.Start();
        var sifted = SiftOf(candidates);
        watch.Stop();
        return sifted;
    }

    private List<Candidate> SiftOf(IReadOnlyList<Candidate> candidates)
    {
        if (candidates.Count == 0)
        {
            return [];
        }

        if (bounds.Bounds.Count == 0)
        {
            return Front(candidates);
        }

        var states = candidates.Select(candidate => new State(candidate, bounds.Bounds.Count)).ToList();
        HardestFirst(candidates[candidates.Count / 2]);

        // What fails as badly as it can fails within so many draws.
        var most = bounds.Bounds.Max(bound => bound.Probability is { } p ? (int)Math.Ceiling((1 - p) * Count) + Block : 0);
        List<State> open = states;
        for (var done = 0; done < Math.Min(most, Count) && open.Count > 0; done += Block)
        {
            Advance(open, Math.Min(done + Block, Count));
            open = [.. open.Where(state => !Misses(state))];
        }

        List<Candidate> proven = [];
        while (open.Count > 0)
        {
            // Whom none of the others certainly beats is asked to the end; then it counts against those that it beats.
            var byCandidate = open.ToDictionary(state => state.Candidate);
            var layer = order.Of([.. byCandidate.Keys], areExact: false).ConvertAll(candidate => byCandidate[candidate]);
            Advance(layer, Count);
            Settle([.. layer.Where(state => !Misses(state) && !Keeps(state))]);
            List<Candidate> kept = [.. layer.Where(state => state.Candidate.Dropped is null).Select(state => state.Candidate)];
            proven.AddRange(kept);
            List<State> rest = [.. open.Except(layer)];
            var beaten = order.Beaten(rest.ConvertAll(state => state.Candidate), kept);
            foreach (var candidate in beaten)
            {
                candidate.Dropped = DropReason.Dominated;
            }

            open = [.. rest.Where(state => !beaten.Contains(state.Candidate))];
        }

        return [.. proven.OrderBy(candidate => candidate.Index)];
    }

    /// <summary>A regimen's day with every member, simulated phase after phase.</summary>
    public RegimenOutcome[] Days(Regimen regimen)
    {
        var days = new RegimenOutcome[Count];
        ParallelRuns.Run(Count, options.Workers, new() { Cancellation = control.Cancellation }, 0, 1, () => new RegimenWorkspace { SeesLimit = false }, (workspace, member) =>
            days[member] = workspace.Run(patient, ensemble[member], regimen, options.Plain, RunControl.None));
        return days;
    }

    /// <summary>The measures of regimens in every draw, by maps: [regimen][draw · measures].</summary>
    public double[][] Tables(IReadOnlyList<Candidate> candidates)
    {
        var tables = candidates.Select(_ => new double[Count * RegimenFigures.Count]).ToArray();
        Run(candidates, 0, Count, () => (i, draw, figures) => figures.CopyTo(tables[i].AsSpan(draw * RegimenFigures.Count)));
        return tables;
    }

    /// <summary>How far a regimen is from the bound that it stands worst to, at the center, in shares of the bound.</summary>
    public double CenterGap(Candidate candidate) => bounds.Bounds.Max(bound =>
    {
        var value = candidate[bound.Measure];
        var size = Math.Max(1e-9, Math.Abs(double.IsFinite(bound.Floor) ? bound.Floor : bound.Ceiling));
        return (double.IsFinite(bound.Floor) ? bound.Floor - value : value - bound.Ceiling) / size;
    });

    /// <summary>How much of each bound's promise is kept, from a regimen's table.</summary>
    public IEnumerable<GoalAnswer> Answers(Candidate candidate, double[] table)
    {
        foreach (var bound in bounds.Bounds)
        {
            double mean = 0, day = 0, expected = 0;
            for (var draw = 0; draw < Count; draw++)
            {
                var figures = table.AsSpan(draw * RegimenFigures.Count, RegimenFigures.Count);
                expected += figures[(int)bound.Measure] / Count;
                mean += bounds.Share(bound, figures, candidate.ModelForm.Deviation, false) / Count;
                day += bounds.Share(bound, figures, candidate.ModelForm.Deviation, true) / Count;
            }

            var holds = bounds.DoubtOf(bound.Measure);
            yield return new(
                bound,
                expected,
                new(Math.Min(1, mean), holds),
                bound.Measure == RegimenMeasure.Ultrafiltration ? new(Math.Min(1, day), DailyDoubt.OfSingle(options.Layers)) : null)
            {
                Kidneys = patient.ResidualFunction,
            };
        }
    }

    private List<Candidate> Front(IReadOnlyList<Candidate> candidates)
    {
        var front = order.Of(candidates, areExact: false);
        foreach (var beaten in candidates.Except(front))
        {
            beaten.Dropped = DropReason.Dominated;
        }

        return front;
    }

    // Whether a bound is missed for certain, whatever the draws that are left say.
    private bool Misses(State state)
    {
        var left = Count - state.Done;
        for (var b = 0; b < bounds.Bounds.Count; b++)
        {
            var bound = bounds.Bounds[b];
            var misses = bound.Probability is { } asked
                ? state.Sums[b] + state.Errors[b] + PosteriorGoals.Units(1) * left < Asked(asked)
                : left == 0 && bound.Gap(Mean(state.Sums[b])) > Mean(state.Errors[b]);
            if (misses)
            {
                state.Candidate.Dropped = DropReason.MissesBound;
                return true;
            }
        }

        return false;
    }

    // Whether every bound is kept for certain; all draws are done.
    private bool Keeps(State state)
    {
        for (var b = 0; b < bounds.Bounds.Count; b++)
        {
            var bound = bounds.Bounds[b];
            var (sum, error) = (state.Sums[b], state.Errors[b]);
            var keeps = bound.Probability is { } asked
                ? sum - error >= Asked(asked)
                : bound.Holds(Mean(sum - error)) && bound.Holds(Mean(sum + error));
            if (!keeps)
            {
                return false;
            }
        }

        return true;
    }

    // Simulated until a bound is missed or all are kept for certain.
    private void Settle(IReadOnlyList<State> open)
    {
        Simulated += open.Count;
        center.Run([.. open.Select(state => state.Candidate)]);
        foreach (var some in open.Chunk(Together))
        {
            var tables = Tables([.. some.Select(state => state.Candidate)]);
            for (var i = 0; i < some.Length; i++)
            {
                Settle(some[i], tables[i]);
                some[i].Candidate.IsOpen = true;
            }
        }
    }

    private void Settle(State state, double[] table)
    {
        var candidate = state.Candidate;
        var parts = new Part[Count];
        for (var draw = 0; draw < Count; draw++)
        {
            parts[draw] = PartOf(candidate, table.AsSpan(draw * RegimenFigures.Count, RegimenFigures.Count), ofMaps: candidate.Ring is not null);
        }

        state.Restart(parts);
        int[] order = [.. Enumerable.Range(0, Count).OrderByDescending(draw => parts[draw].Errors.Sum()).ThenBy(draw => draw)];
        for (var done = 0; !Misses(state) && !Keeps(state) && done < Count;)
        {
            var to = Count - done < Block + PosteriorGoals.FewestInTheMean ? Count : done + Block;
            Runs += to - done;
            ParallelRuns.Run(
                to - done,
                options.Workers,
                new() { Cancellation = control.Cancellation },
                0,
                1,
                () => new RegimenWorkspace { SeesLimit = false },
                (workspace, i) =>
                {
                    var figures = new double[RegimenFigures.Count];
                    candidate.Figures.CopyTo(figures, 0);
                    reader.Read(workspace.Run(patient, ensemble[order[done + i]], candidate.Regimen, options.Plain, RunControl.None), options, figures);
                    parts[order[done + i]] = PartOf(candidate, figures, ofMaps: false);
                });
            state.Restart(parts);
            done = to;
        }
    }

    // What one draw adds to each bound.
    private Part PartOf(Candidate candidate, ReadOnlySpan<double> figures, bool ofMaps)
    {
        var part = new Part(new long[bounds.Bounds.Count], new long[bounds.Bounds.Count]);
        Add(candidate, figures, ofMaps, part.Sums, part.Errors);
        return part;
    }

    private void Add(Candidate candidate, ReadOnlySpan<double> figures, bool ofMaps, Span<long> sums, Span<long> errors)
    {
        for (var b = 0; b < sums.Length; b++)
        {
            var (bound, modelForm) = (bounds.Bounds[b], candidate.ModelForm.Deviation);
            sums[b] += PosteriorGoals.Units(bound.Probability is null
                ? figures[(int)bound.Measure]
                : bounds.Share(bound, figures, modelForm, bound.IsOfSingleDay));
            errors[b] += ofMaps ? PosteriorGoals.Units(bounds.MapError(bound, figures, modelForm)) : 0;
        }
    }

    // A unit for each draw is rounding.
    private long Asked(double probability) => PosteriorGoals.Units(probability) * Count - Count;

    private double Mean(long units) => PosteriorGoals.FromUnits(units) / Count;

    // One regimen is run over all draws; where it stands worst to a bound stands first, the bounds taking turns.
    private void HardestFirst(Candidate reference)
    {
        var table = Tables([reference])[0];
        var lists = bounds.Bounds
            .Select(bound => draws.OrderBy(draw =>
            {
                var value = table[draw * RegimenFigures.Count + (int)bound.Measure];
                return Math.Min(double.IsFinite(bound.Floor) ? value - bound.Floor : double.MaxValue, double.IsFinite(bound.Ceiling) ? bound.Ceiling - value : double.MaxValue);
            }).ThenBy(draw => draw).ToArray())
            .ToArray();
        draws = [.. Enumerable.Range(0, Count).SelectMany(i => lists.Select(list => list[i])).Distinct()];
    }

    private void Advance(IReadOnlyList<State> states, int to)
    {
        var each = bounds.Bounds.Count;
        foreach (var together in states.Where(state => state.Done < to).GroupBy(state => state.Done))
        {
            List<State> group = [.. together];
            ConcurrentBag<Part> parts = [];
            Run(group.ConvertAll(state => state.Candidate), together.Key, to, () =>
            {
                // Each worker counts for itself: whole numbers, so that their sum is the same whoever met which draw.
                var own = new Part(new long[each * group.Count], new long[each * group.Count]);
                parts.Add(own);
                return (i, _, figures) =>
                    Add(group[i].Candidate, figures, group[i].Candidate.Ring is not null, own.Sums.AsSpan(each * i, each), own.Errors.AsSpan(each * i, each));
            });
            for (var i = 0; i < group.Count; i++)
            {
                foreach (var part in parts)
                {
                    group[i].Add(part.Sums.AsSpan(each * i, each), part.Errors.AsSpan(each * i, each));
                }

                group[i].Done = to;
            }
        }
    }

    private void Run(IReadOnlyList<Candidate> candidates, int from, int to, Func<Taking> taking)
    {
        var catalog = new RegimenCatalog(patient, simulation, candidates[0].Regimen, goals.Pressure);
        List<CycleKind> scratch = [];
        foreach (var candidate in candidates)
        {
            candidate.Ring = candidate.IsOpen ? null : catalog.Add(candidate.Regimen, scratch);
        }

        catalog.Complete(options);
        Runs += (long)candidates.Count * (to - from);
        ParallelRuns.Run(
            to - from,
            options.Workers,
            new() { Cancellation = control.Cancellation },
            0,
            1,
            () => (Worker: new RingWorker(patient, catalog, simulation, options, goals.Pressure, asksPeak), Take: taking()),
            (own, i) =>
            {
                var (worker, take) = own;
                var draw = draws[from + i];
                worker.Prepare(ensemble[draw]);
                Span<double> figures = stackalloc double[RegimenFigures.Count];
                for (var k = 0; k < candidates.Count; k++)
                {
                    if (k % 64 == 0)
                    {
                        control.Cancellation.ThrowIfCancellationRequested();
                    }

                    candidates[k].Figures.CopyTo(figures);
                    worker.RunFigures(candidates[k].Regimen, candidates[k].Ring, candidates[k].ModelForm.Offset, figures);
                    take(k, draw, figures);
                }
            });
    }

    private delegate void Taking(int candidate, int draw, ReadOnlySpan<double> figures);

    private sealed class State(Candidate candidate, int bounds)
    {
        public Candidate Candidate { get; } = candidate;

        public int Done { get; set; }

        /// <summary>Of each bound the shares kept so far, or the figures where the expected value is asked for, in units.</summary>
        public long[] Sums { get; } = new long[bounds];

        /// <summary>By how much maps can be wrong in them.</summary>
        public long[] Errors { get; } = new long[bounds];

        public void Add(ReadOnlySpan<long> sums, ReadOnlySpan<long> errors)
        {
            for (var b = 0; b < Sums.Length; b++)
            {
                Sums[b] += sums[b];
                Errors[b] += errors[b];
            }
        }

        /// <summary>All draws anew.</summary>
        public void Restart(ReadOnlySpan<Part> parts)
        {
            Array.Clear(Sums);
            Array.Clear(Errors);
            foreach (var part in parts)
            {
                Add(part.Sums, part.Errors);
            }

            Done = parts.Length;
        }
    }

    // What some draws add to bounds, in units.
    private readonly record struct Part(long[] Sums, long[] Errors);
}
