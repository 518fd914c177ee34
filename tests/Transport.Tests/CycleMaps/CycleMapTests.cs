using System.Diagnostics;
using Xunit.Abstractions;

namespace Transport.Tests.CycleMaps;

public sealed class CycleMapTests(ITestOutputHelper output)
{
    private static readonly Patient Person = Patient.Example;
    private static readonly ThreePoreMembrane Membrane = ReferenceMembranes.MeanIncidentAdult().ScaledTo(Person.BodySurface);

    [Fact]
    public void Scratch()
    {
        var options = new RegimenOptions { Integration = new() { RelativeTolerance = 1e-4 } };
        var goals = new Transport.Analysis.RegimenGoals(Transport.Analysis.FluidTarget.Between(Volume.FromMilliliters(0), Volume.FromMilliliters(100)));
        var all = Transport.Analysis.RegimenSpace.Usual(Person, goals).All().Where(r => r.Findings.All(f => f.Severity != Severity.Error)).ToList();
        List<CycleKind> kinds = [];
        Dictionary<CycleKind, int> places = [];
        var watch = Stopwatch.StartNew();
        List<int[]> rings = [];
        foreach (var r in all)
        {
            List<CycleKind> ring = [];
            Assert.True(CyclePlan.TryRead(r, r.ResidualFor(Person), options.Transient, ring));
            rings.Add([.. ring.Select(k => { if (!places.TryGetValue(k, out var p)) { p = kinds.Count; kinds.Add(k); places[k] = p; } return p; })]);
        }
        output.WriteLine($"{all.Count} regimens, {kinds.Count} kinds, plan {watch.ElapsedMilliseconds} ms");
        var library = new CycleLibrary(Person, options, all[0], kinds, false);
        double[] sums = new double[library.SumCount];
        for (var rep = 0; rep < 6; rep++)
        {
            watch.Restart();
            library.Prepare(Membrane);
            for (var k = 0; k < kinds.Count; k++) { int[] one = [k]; library.TryRun(one, sums); }
            var t1 = watch.Elapsed.TotalMilliseconds;
            var fails = 0;
            watch.Restart();
            foreach (var ring in rings) { if (!library.TryRun(ring, sums)) { fails++; } }
            output.WriteLine($"maps {t1:0.0} ms, rings {watch.Elapsed.TotalMilliseconds:0.0} ms, fails {fails}");
        }
        double worst = 0, worstUrea = 0, worstNa = 0, worstG = 0, worstPeak = 0; var at = "";
        var workspace = new RegimenWorkspace();
        var tight = new RegimenOptions { Integration = new() { RelativeTolerance = 1e-6 } };
        for (var i = 0; i < all.Count; i += 7)
        {
            if (!library.TryRun(rings[i], sums)) { output.WriteLine("no " + all[i]); continue; }
            var o = workspace.Run(Person, Membrane, all[i], tight, RunControl.None);
            var uf = sums[0] - all[i].FluidInAll.Milliliters;
            var d = Math.Abs(uf - o.Ultrafiltration.Milliliters);
            if (d > worst) { worst = d; at = $"{all[i]} {uf} {o.Ultrafiltration.Milliliters}"; }
            worstUrea = Math.Max(worstUrea, Math.Abs(sums[1] / o.Solutes[0].Drained!.Value.Micromoles - 1));
            worstG = Math.Max(worstG, Math.Abs(sums[3] - o.Solutes[2].Drained!.Value.Micromoles) * 180e-6);
            worstNa = Math.Max(worstNa, Math.Abs(sums[4] - o.Solutes[3].Drained!.Value.Micromoles) / 1000);
            worstPeak = Math.Max(worstPeak, Math.Abs(sums[5] - o.Peak.Volume.Milliliters));
        }
        output.WriteLine($"UF {worst:0.000} mL at {at}; urea {worstUrea:e2}; glucose {worstG:0.000} g; Na {worstNa:0.000} mmol; peak {worstPeak:0.00} mL");
        watch.Restart();
        for (var i = 0; i < all.Count; i += 7) { workspace.Run(Person, Membrane, all[i], options with { Integration = new() { RelativeTolerance = 1e-5 } }, RunControl.None); }
        output.WriteLine($"full {watch.Elapsed.TotalMilliseconds / (all.Count / 7.0):0.000} ms each");
        Assert.Fail("scratch");
    }
}
