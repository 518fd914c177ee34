using System.Collections.Immutable;

namespace Transport.Studies;

/// <summary>The answer to a search problem without any of the search's short cuts: every regimen, every draw, every pair.</summary>
internal static class BruteSearch
{
    public static (int Feasible, int Unbeaten, ImmutableArray<Regimen> Offered) Run(
        Patient patient, MembraneEnsemble ensemble, RegimenGoals goals, RegimenSpace space, RegimenSearchOptions options)
    {
        var judge = new CenterJudge(patient, goals);
        var reader = new RegimenFigures(patient, options.Simulation, goals.Pressure);
        var workspace = new RegimenWorkspace();
        List<Candidate> all = [.. space.All().Select((regimen, i) => new Candidate(i, regimen)).Where(candidate => judge.Limits(candidate.Regimen) is null)];
        foreach (var candidate in all)
        {
            candidate.Take(workspace.Run(patient, ensemble.Center, candidate.Regimen, options.Simulation, RunControl.None), reader, options);
        }

        List<Candidate> inRange = [.. all.Where(candidate => judge.Judge(candidate) is null)];
        var kept = Kept(patient, ensemble, goals, options, inRange);
        List<Candidate> feasible = [.. inRange.Where((_, i) => kept[i])];
        List<Candidate> unbeaten = [.. feasible.Where(candidate => !feasible.Any(other => Beats(other, candidate, goals)))];
        return (feasible.Count, unbeaten.Count, [.. NonDominated.Thin(unbeaten, options.MostOptions).Kept.Select(candidate => candidate.Regimen)]);
    }

    private static bool[] Kept(Patient patient, MembraneEnsemble ensemble, RegimenGoals goals, RegimenSearchOptions options, List<Candidate> candidates)
    {
        if (candidates.Count == 0)
        {
            return [];
        }

        var catalog = new RegimenCatalog(patient, options.Screening, candidates[0].Regimen, goals.Pressure);
        List<CycleKind> scratch = [];
        RegimenRingOf?[] rings = [.. candidates.Select(candidate => catalog.Add(candidate.Regimen, scratch))];
        catalog.Complete(options);
        var worker = new RingWorker(patient, catalog, options.Screening, options, goals.Pressure, seesPeak: false);
        var draws = Math.Min(ensemble.Count, options.EnsembleMembers);
        var promises = new PosteriorGoals(goals, options.Screening, options.Layers, draws);
        var shares = candidates.Select(_ => new double[goals.Bounds.Length]).ToArray();
        var errors = candidates.Select(_ => new double[goals.Bounds.Length]).ToArray();
        Draw(Enumerable.Range(0, candidates.Count), rings);
        List<int> open = [.. Enumerable.Range(0, candidates.Count).Where(i => !Holds(i, 1) && Holds(i, -1))];

        // What lies nearer to a bound than maps are exact is asked of the simulation.
        open.ForEach(i => Array.Clear(shares[i]));
        open.ForEach(i => Array.Clear(errors[i]));
        Draw(open, new RegimenRingOf?[candidates.Count]);
        return [.. Enumerable.Range(0, candidates.Count).Select(i => Holds(i, 1))];

        void Draw(IEnumerable<int> some, RegimenRingOf?[] rings)
        {
            var figures = new double[RegimenFigures.Count];
            for (var draw = 0; draw < draws; draw++)
            {
                worker.Prepare(ensemble[draw]);
                foreach (var i in some)
                {
                    candidates[i].Figures.CopyTo(figures, 0);
                    worker.RunFigures(candidates[i].Regimen, rings[i], candidates[i].ModelForm.Offset, figures);
                    for (var b = 0; b < goals.Bounds.Length; b++)
                    {
                        var bound = goals.Bounds[b];
                        errors[i][b] += rings[i] is null ? 0 : promises.MapError(bound, figures, candidates[i].ModelForm.Deviation) / draws;
                        shares[i][b] += (bound.Probability is null
                            ? figures[(int)bound.Measure]
                            : promises.Share(bound, figures, candidates[i].ModelForm.Deviation, bound.IsOfSingleDay)) / draws;
                    }
                }
            }
        }

        // With what maps may err by against it, or for it.
        bool Holds(int i, int against) => goals.Bounds.Select((bound, b) => bound.Probability is { } asked
            ? shares[i][b] - against * errors[i][b] >= asked - 1e-9
            : bound.Gap(shares[i][b]) is var gap && (against < 0 ? gap <= errors[i][b] : bound.Holds(shares[i][b] - errors[i][b]) && bound.Holds(shares[i][b] + errors[i][b]))).All(holds => holds);
    }

    // Written out a second time.
    private static bool Beats(Candidate a, Candidate b, RegimenGoals goals)
    {
        List<(double A, double B)> pairs = [(a.FluidUsed, b.FluidUsed), (a.Regimen.Night.Length, b.Regimen.Night.Length)];
        foreach (var objective in goals.Objectives)
        {
            var (x, y) = (a[objective.Measure], b[objective.Measure]);
            pairs.Add(objective.LessIsBetter ? (x, y) : (-x, -y));
        }

        return pairs.All(pair => pair.A <= pair.B) && pairs.Any(pair => pair.A < pair.B);
    }
}
