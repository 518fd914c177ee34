using System.Diagnostics;
using System.Globalization;
using System.Text;
using Transport.Analysis;

namespace Transport.Benchmarks;

/// <summary>Time and room of a search as the grid grows: one run each after a warm-up, on all cores.</summary>
internal static class SearchTable
{
    private static readonly Patient Person = Patient.Example with
    {
        ResidualFunction = new(Clearance.FromMillilitersPerMinute(3), Clearance.FromMillilitersPerMinute(5), Volume.FromMilliliters(800)),
    };

    public static void Run(TextWriter output, int largest)
    {
        // As wide as a posterior: a third of the prior.
        var prior = PopulationPrior.IncidentAdults();
        var membrane = (prior with
        {
            DiffusionAreaLogDeviation = prior.DiffusionAreaLogDeviation / 3,
            GlucosePermeabilityLogDeviation = prior.GlucosePermeabilityLogDeviation / 3,
            OsmoticConductanceLogDeviation = prior.OsmoticConductanceLogDeviation / 3,
        }).ToEnsemble(Person.BodySurface, 400, 7);
        var table = new StringBuilder();
        table.Append("| regimens | exchanges that differ | centre, s | µs each | a slab, MB | bounds, s | asked | simulated | days run, millions | the whole, s | unbeaten | kept, MB |\n| ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: |\n");
        Measure(membrane, 1_000);
        foreach (var size in new[] { 1_000, 10_000, 100_000, 1_000_000 }.Where(size => size <= largest))
        {
            var row = Measure(membrane, size);
            output.WriteLine(row);
            table.Append(row).Append('\n');
        }

        output.WriteLine(table);
    }

    private static string Measure(MembraneEnsemble ensemble, int size)
    {
        var goals = new RegimenGoals(FluidTarget.Between(Volume.FromMilliliters(700), Volume.FromMilliliters(1_800)));
        var options = new RegimenSearchOptions { EnsembleMembers = 400, Tested = DialysisSolution.Glucose386 };
        var grid = Space(size).ToGrid();

        var bounded = goals with
        {
            Bounds =
            [
                RegimenBound.AtLeast(RegimenMeasure.Ultrafiltration, 800).WithProbability(0.9),
                RegimenBound.AtLeast(RegimenMeasure.UreaDose, 1.7).WithProbability(0.9),
            ],
        };
        var stage = new PosteriorStage(Person, ensemble, bounded, options.Screening, options, RunControl.None);
        var simulation = new CenterSimulation(Person, ensemble.Center, bounded, options, RunControl.None);
        Sieve? sieve = null;

        // The center alone: every night of the grid, and which no other of its slab beats. Nothing is kept but the slab at hand.
        var center = Pass(goals, (_, _) => { });

        // The whole of it: bounds over the members, then figures of the simulation, and which no other beats by those. That front is kept.
        var asked = 0;
        var whole = Pass(bounded, (sure, perhaps) =>
        {
            asked += sure.Count + perhaps.Count;
            sieve!.Take(sure, perhaps);
        });
        return string.Create(
            CultureInfo.InvariantCulture,
            $"| {grid.Count:#,0} | {center.Kinds:#,0} | {center.Seconds:0.00} | {1e6 * center.Seconds / grid.Count:0.0} | {center.Room:0} | {stage.Elapsed.TotalSeconds:0.00} | {asked:#,0} | {stage.Simulated:#,0} | {stage.Runs / 1e6:0.00} | {whole.Seconds:0.00} | {sieve!.Front.Count:#,0} | {whole.Room:0} |");

        (int Kinds, double Seconds, double Room) Pass(RegimenGoals goals, Action<List<Candidate>, List<Candidate>> take)
        {
            var before = GC.GetTotalMemory(true);
            var room = 0L;
            var watch = Stopwatch.StartNew();
            var screening = new Screening(Person, ensemble.Center, grid, goals, options.Screening, null, options);
            sieve = new Sieve(Person, goals, screening, simulation, stage);
            foreach (var (sure, perhaps) in screening.Slabs(RunControl.None, 1))
            {
                take(sure, perhaps);
                watch.Stop();
                room = Math.Max(room, GC.GetTotalMemory(true) - before);
                watch.Start();
            }

            return (screening.Kinds, watch.Elapsed.TotalSeconds, room / 1e6);
        }
    }

    // The usual space with finer steps.
    private static RegimenSpace Space(int size)
    {
        var (lengths, fills, days) = size switch
        {
            <= 1_000 => (2, 3, 5),
            <= 10_000 => (3, 6, 16),
            <= 100_000 => (5, 9, 65),
            _ => (9, 14, 240),
        };
        var day = from i in Enumerable.Range(0, (days + 1) / 2)
                  from solution in new[] { DialysisSolution.Glucose136, DialysisSolution.Glucose227 }
                  select (DayFill?)new DayFill(solution, Volume.FromMilliliters(800 + 1600.0 * i / ((days + 1) / 2)));
        return new()
        {
            NightLengths = [.. Enumerable.Range(0, lengths).Select(i => TimeSpan.FromMinutes(480 + 120.0 * i / Math.Max(1, lengths - 1)))],
            Cycles = [3, 4, 5, 6, 7, 8],
            VolumesPerCycle = [.. Enumerable.Range(0, fills).Select(i => Volume.FromMilliliters(1500 + 950.0 * i / Math.Max(1, fills - 1)))],
            DayFills = [null, .. day],
        };
    }
}
