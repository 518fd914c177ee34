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

    public static void Run(TextWriter output)
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
        table.Append("| regimens | exchanges that differ | at the center, s | µs each | managed memory, MB | bounds over 400 draws, s | asked in draws, million |\n|---|---|---|---|---|---|---|\n");
        Measure(membrane, 1_000);
        foreach (var size in new[] { 1_000, 10_000, 100_000, 1_000_000 })
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
        var space = Space(size);
        var options = new RegimenSearchOptions { EnsembleMembers = 400, Tested = DialysisSolution.Glucose386 };
        GC.Collect();
        var before = GC.GetTotalMemory(true);
        var grid = space.ToGrid();
        var watch = Stopwatch.StartNew();
        var screening = Screening.Run(Person, ensemble.Center, grid, goals, options.Screening, null, options, RunControl.None, 1);
        var center = watch.Elapsed.TotalSeconds;
        var memory = (GC.GetTotalMemory(true) - before) / 1e6;
        var bounded = goals with
        {
            Bounds =
            [
                RegimenBound.AtLeast(RegimenMeasure.Ultrafiltration, 800).WithProbability(0.9),
                RegimenBound.AtLeast(RegimenMeasure.UreaDose, 1.7).WithProbability(0.9),
            ],
        };
        var again = Screening.Run(Person, ensemble.Center, grid, bounded, options.Screening, null, options, RunControl.None, 1);
        var stage = new PosteriorStage(Person, ensemble, bounded, options.Screening, options, RunControl.None);
        watch.Restart();
        var kept = stage.Sift(again.Survivors);
        var posterior = watch.Elapsed.TotalSeconds;
        GC.KeepAlive(screening);
        return string.Create(
            CultureInfo.InvariantCulture,
            $"| {grid.Count:#,0} | {screening.Kinds:#,0} | {center:0.00} | {1e6 * center / grid.Count:0.0} | {memory:0} | {posterior:0.00} ({again.Survivors.Count:#,0} asked, {kept.Count:#,0} kept) | {stage.Runs / 1e6:0.00} |");
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
