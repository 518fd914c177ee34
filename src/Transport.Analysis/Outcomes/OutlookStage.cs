using System.Collections.Immutable;

namespace Transport.Analysis;

/// <summary>Runs regimens over an ensemble: the same members and the same draws of the model's own doubt for all, so that differences pair.</summary>
internal static class OutlookStage
{
    /// <summary>The rows, each with its difference from the first.</summary>
    public static ImmutableArray<RegimenOutlook> Run(
        IReadOnlyList<(string Name, Patient Patient, RegimenWeek Week)> cases, MembraneEnsemble ensemble, OutlookOptions options, RunControl control)
    {
        ensemble = options.Layers.AtNight(ensemble);
        var members = Math.Min(ensemble.Count, options.EnsembleMembers);

        // One panel for all, so that the equations on hand are known again. Where days differ plasma cannot be taken as constant.
        var simulation = options.SimulationFor(cases[0].Patient);
        simulation = simulation.Body is null && cases.Any(one => one.Week.Only is null) ? simulation with { Body = BodyKinetics.Default } : simulation;
        var plain = simulation with { Timeline = null };
        var rhythms = new SimulatedRhythm[cases.Count, members];
        ParallelRuns.Run(members, options.Workers, control, 0, 1, () => new RegimenWorkspace(), (workspace, member) =>
        {
            // The member outside, so that the equations of a membrane are set up once.
            var membrane = ensemble[member];
            for (var k = 0; k < cases.Count; k++)
            {
                control.Cancellation.ThrowIfCancellationRequested();
                rhythms[k, member] = Simulate(workspace, cases[k], membrane, OfTheSamePerson(plain, k == 0 ? null : rhythms[0, member]));
            }
        });

        var doubt = new CommonDoubt(options, ensemble.Seed);
        OutlookDraws[] draws = [.. cases.Select((_, k) => new OutlookDraws([.. doubt.Of(MembersOf(k))], options.Layers))];
        var centers = new SimulatedRhythm[cases.Count];
        for (var k = 0; k < cases.Count; k++)
        {
            centers[k] = Simulate(new(), cases[k], ensemble.Center, OfTheSamePerson(simulation, k == 0 ? null : centers[0]));
        }

        return [.. cases.Select((one, k) => new RegimenOutlook(
            one.Name,
            centers[k],
            options,
            k == 0 ? null : RegimenChange.Between(cases[0].Week, one.Week),
            draws[k],
            k == 0 ? null : draws[0],
            PlasmaOutlook.Of(MembersOf(k), k == 0 ? null : MembersOf(0), options)))];

        SimulatedRhythm[] MembersOf(int k) => [.. Enumerable.Range(0, members).Select(member => rhythms[k, member])];
    }

    // A week of equal days is a day that is repeated.
    private static SimulatedRhythm Simulate(
        RegimenWorkspace workspace, (string Name, Patient Patient, RegimenWeek Week) one, ThreePoreMembrane membrane, RegimenOptions options) => one.Week.Only is { } day
        ? SimulatedRhythm.Of(workspace.Run(one.Patient, membrane, day, options, RunControl.None))
        : SimulatedRhythm.Of(workspace.Run(one.Patient, membrane, one.Week, options, RunControl.None));

    // Who makes so much urea on the present regimen makes as much on another; the level is what changes.
    private static RegimenOptions OfTheSamePerson(RegimenOptions options, SimulatedRhythm? present) => present?.Plasma is { } plasma
        ? options with { Body = options.Body!.WithGenerationOf(plasma) }
        : options;
}
