using static Transport.Tests.Regimens.RegimenTests;

namespace Transport.Tests.Regimens;

/// <summary>What a whole day errs by, in tolerances of its integration.</summary>
public sealed class DayToleranceTests
{
    [Theory]
    [InlineData(AreaLaw.Constant, 0)]
    [InlineData(AreaLaw.TwoThirds, 0)]
    [InlineData(AreaLaw.TwoThirds, 0.2)]
    public void A_day_keeps_its_tolerance_even_where_the_equations_have_kinks(AreaLaw law, double tissueConductance)
    {
        // Full contact and the loss into tissue begin at a volume that a cycle crosses several times. Against the same day at 1e-12. Two tolerances: seen are 0.5
        // at worst, with kinks or without; a day that steps over the kink of the two-thirds law has 116 (seen, at 1e-10), and 12 at 1e-8.
        var population = PopulationPrior.IncidentAdults().ToEnsemble(Patient.Example.BodySurface, 40, seed: 11);
        var regimen = Regimen.Cycling(TimeSpan.FromHours(9), 6, Milliliters(2000), DialysisSolution.Glucose227);
        double[] worst = [0, 0, 0];
        double[] tolerances = [1e-6, 1e-8, 1e-10];
        for (var i = 0; i < population.Count; i++)
        {
            var membrane = population[i] with
            {
                AreaLaw = law,
                TissueConductance = HydraulicConductance.FromMillilitersPerMinutePerMillimeterOfMercury(tissueConductance),
                TissueThreshold = Pressure.FromMillimetersOfMercury(5),
            };
            var exact = Results(1e-12);
            for (var t = 0; t < tolerances.Length; t++)
                worst[t] = Math.Max(worst[t], Results(tolerances[t]).Zip(exact, (found, wanted) => Math.Abs(found / wanted - 1)).Max() / tolerances[t]);

            double[] Results(double tolerance)
            {
                var day = RegimenSimulation.Run(
                    Patient.Example, membrane, regimen, new() { Integration = new() { RelativeTolerance = tolerance } });
                return
                [
                    day.Drains.Sum(drain => drain.Volume.Milliliters), 2000 + day.NightUltrafiltration.Milliliters, day.PeritonealUreaClearance.LitersPerWeek,
                    day.PeritonealCreatinineClearance.LitersPerWeek, day.GlucoseAbsorbed.Grams,
                ];
            }
        }

        Assert.True(worst.All(ratio => ratio <= 2), FormattableString.Invariant($"{law}: {worst[0]:0.0}, {worst[1]:0.0}, {worst[2]:0.0} tolerances"));
    }
}
