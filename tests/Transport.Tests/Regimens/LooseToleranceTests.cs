namespace Transport.Tests.Regimens;

/// <summary>Days in their rhythm when the phases are integrated loosely, as over an ensemble.</summary>
public sealed class LooseToleranceTests
{
    [Theory]
    [InlineData(3, 9)]
    [InlineData(6, 8)]
    [InlineData(5, 10)]
    public void A_loosely_integrated_day_settles_in_every_membrane_of_a_population(int cycles, double hours)
    {
        // Steps are accepted or refused by a hair, so that a day integrated to 1e-5 does not come back to itself to 1e-9: once, a day dry after three cycles
        // went on for sixty days and was given up. It settles to its own tolerance; ultrafiltration is then that of a careful run within 1 mL, a hundred
        // times the tolerance over some 15 L of fluid that goes through.
        var patient = Patient.Example;
        var population = Transport.Analysis.PopulationPrior.IncidentAdults().ToEnsemble(patient.BodySurface, 60, 5);
        var regimen = Regimen.Cycling(TimeSpan.FromHours(hours), cycles, Volume.FromLiters(2), DialysisSolution.Glucose136);
        var full = SolutePanel.Of(Solutes.Beta2Microglobulin, Solutes.Albumin, Solutes.ImmunoglobulinG);
        for (var i = 0; i < population.Count; i++)
        {
            var loose = RegimenSimulation.Run(patient, population[i], regimen, new() { Panel = full, Integration = new() { RelativeTolerance = 1e-5 } });
            var careful = RegimenSimulation.Run(patient, population[i], regimen, new() { Panel = full });
            Assert.Equal(careful.Ultrafiltration.Milliliters, loose.Ultrafiltration.Milliliters, 1.0);
        }
    }
}
