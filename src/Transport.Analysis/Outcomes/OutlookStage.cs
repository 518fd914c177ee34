using System.Collections.Immutable;

namespace Transport.Analysis;

/// <summary>Runs regimens over an ensemble: the same members and the same draws of the model's own doubt for all, so that differences pair.</summary>
internal static class OutlookStage
{
    /// <summary>The rows, each with its difference from the first.</summary>
    public static ImmutableArray<RegimenOutlook> Run(
        IReadOnlyList<(string Name, Patient Patient, Regimen Regimen)> cases, MembraneEnsemble ensemble, OutlookOptions options, RunControl control)
    {
        var members = Math.Min(ensemble.Count, options.EnsembleMembers);

        // One panel for all, so that the equations on hand are known again.
        var simulation = options.SimulationFor(cases[0].Patient);
        var plain = simulation with { Timeline = null };
        var outcomes = new RegimenOutcome[cases.Count, members];
        ParallelRuns.Run(members, options.Workers, control, 0, 1, () => new RegimenWorkspace(), (workspace, member) =>
        {
            // The member outside, so that the equations of a membrane are set up once.
            var membrane = ensemble[member];
            for (var k = 0; k < cases.Count; k++)
            {
                control.Cancellation.ThrowIfCancellationRequested();
                outcomes[k, member] = workspace.Run(cases[k].Patient, membrane, cases[k].Regimen, plain, RunControl.None);
            }
        });

        var doubt = new CommonDoubt(options, ensemble.Seed);
        var repeats = DoubtDraws.PerMember(members);
        OutlookDraws[] draws = [.. cases.Select((_, k) =>
            new OutlookDraws([.. Enumerable.Range(0, members * repeats).Select(draw => doubt.Of(outcomes[k, draw / repeats], draw))], options.Layers))];
        return [.. cases.Select((one, k) => new RegimenOutlook(
            one.Name,
            RegimenSimulation.Run(one.Patient, ensemble.Center, one.Regimen, simulation),
            options,
            k == 0 ? null : RegimenChange.Between(cases[0].Regimen, one.Regimen),
            draws[k],
            k == 0 ? null : draws[0]))];
    }
}
