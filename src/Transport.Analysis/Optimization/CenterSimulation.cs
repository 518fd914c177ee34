namespace Transport.Analysis;

/// <summary>Simulates regimens phase after phase on the membrane at the ensemble's center, those whose figures are still a map's.</summary>
internal sealed class CenterSimulation(Patient patient, ThreePoreMembrane center, RegimenGoals goals, RegimenSearchOptions options, RunControl control)
{
    private readonly RegimenFigures reader = new(patient, options.Plain, goals.Pressure);

    public void Run(IReadOnlyList<Candidate> candidates)
    {
        List<Candidate> missing = [.. candidates.Where(candidate => !candidate.IsExact)];
        ParallelRuns.Run(missing.Count, options.Workers, new() { Cancellation = control.Cancellation }, 0, 1, () => new RegimenWorkspace { SeesLimit = false }, (workspace, i) =>
            missing[i].Take(workspace.Run(patient, center, missing[i].Regimen, options.Plain, RunControl.None), reader, options));
    }
}
