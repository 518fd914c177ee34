using Xunit.Abstractions;
using static Transport.Tests.Regimens.RegimenTests;
namespace Transport.Tests.Optimization;
public sealed class ZGapProbe(ITestOutputHelper output)
{
    [Fact]
    public void Probe()
    {
        var membrane = ReferenceMembranes.MeanIncidentAdult().ScaledTo(Patient.Example.BodySurface);
        var options = new RegimenSearchOptions { MostOptions = 50, EnsembleMembers = 1, Layers = DoubtLayers.ParametersAlone };
        var goals = new RegimenGoals(FluidTarget.Between(Milliliters(700), Milliliters(1_300))) { LongestNight = TimeSpan.FromHours(9) };
        var space = CycleMixSpace.Usual(Patient.Example, goals);
        var ensemble = PopulationPrior.IncidentAdults().ToEnsemble(Patient.Example.BodySurface, 20, 5);
        foreach (var (name, center) in new[] { ("prior center", ensemble.Center), ("mean", membrane) })
        {
            var yields = new CycleYields(Patient.Example, center, goals, space, options);
            List<(TimeSpan L, int D, double B)> relaxed = [];
            foreach (var length in space.NightLengths.Distinct().Where(l => l <= goals.LongestNight))
                for (var day = 0; day < space.DayFills.Length; day++)
                    if (yields.Programme(length, day, 0)?.Solve(yields.Glucose, false) is { } parts)
                        relaxed.Add((length, day, yields.GlucoseOf(parts, length, day)));
            foreach (var (length, day, b) in relaxed.OrderBy(r => r.B).Take(4))
            {
                var parts = yields.Programme(length, day, 0)!.Solve(yields.Glucose, false)!.Value;
                output.WriteLine(FormattableString.Invariant($"{name} {length} day {space.DayFills[day]?.Solution} {space.DayFills[day]?.Volume}: bound {b:0.0} of {string.Join(" ", parts.Where(p => p > 1e-9).Select(p => p.ToString("0.00")))}"));
                foreach (var place in new[] { 0.0, 0.1, 0.35 })
                    foreach (var (cost, gap, n) in new[] { (yields.Glucose, 0.005, "glucose"), (yields.Cost, 0.02, "cost") })
                        if (yields.Programme(length, day, place)?.Solve(cost, true, gap) is { } whole)
                        {
                            var regimen = yields.ToRegimen(whole, length, day);
                            var o = regimen is null ? null : RegimenSimulation.Run(Patient.Example, center, regimen, options.Simulation);
                            output.WriteLine(FormattableString.Invariant($"   place {place} by {n}: programme {yields.GlucoseOf(whole, length, day):0.0} g, uf {yields.SumOf(RegimenMeasure.Ultrafiltration, whole, length, day):0}, KtV {yields.SumOf(RegimenMeasure.UreaDose, whole, length, day):0.00}; simulated {o?.GlucoseAbsorbed.Grams:0.0} g, uf {o?.Ultrafiltration.Milliliters:0}, KtV {o?.UreaDose.TotalKtOverV:0.00}  {regimen}"));
                        }
            }
        }
    }
}
