namespace Transport.Tests.Fitting;

/// <summary>Equilibration tests simulated from a known membrane, without noise: what a fit should find again.</summary>
internal static class InventedTests
{
    public static EquilibrationTest Of(
        IMembrane membrane, DialysisSolution solution, Patient? who = null, bool withVolume = true, double glucoseFactor = 0)
    {
        var patient = who ?? Patient.Example;
        var residual = ObservedExchange.TypicalResidual(patient);
        var dwell = new Dwell(solution, Volume.FromLiters(2), TimeSpan.FromHours(4), ResidualFluid.Used(residual, patient.Plasma));
        var course = DwellSimulation.Run(patient, membrane, dwell);
        var times = new[] { 0, 60, 120, 240 };
        return new()
        {
            Patient = patient,
            Solution = solution,
            InstilledVolume = Volume.FromLiters(2),
            FillBasis = FillBasis.Measured,
            DrainedVolume = withVolume ? Volume.FromLiters(2) + course.NetUltrafiltrationAt(TimeSpan.FromHours(4)) : null,
            ResidualVolume = residual,
            Dwell = TimeSpan.FromHours(4),
            CreatinineAssay = new(CreatinineMethod.Enzymatic, null),
            Plasma =
            [
                new(TimeSpan.FromHours(2))
                {
                    Creatinine = patient.Plasma.Creatinine,
                    Urea = patient.Plasma.Urea,
                    Glucose = patient.Plasma.Glucose,
                    Sodium = patient.Plasma.Sodium,
                },
            ],
            Dialysate =
            [
                .. times.Select(minutes => TimeSpan.FromMinutes(minutes)).Select(time => new DialysateSample(time)
                {
                    Creatinine = course.DialysateAt(Solutes.Creatinine, time)
                        + Concentration.FromGramsPerLiter(
                            glucoseFactor * course.DialysateAt(Solutes.Glucose, time).GramsPerLiter(Solutes.Glucose), Solutes.Creatinine),
                    Urea = course.DialysateAt(Solutes.Urea, time),
                    Glucose = course.DialysateAt(Solutes.Glucose, time),
                    Sodium = course.DialysateAt(Solutes.Sodium, time),
                }),
            ],
        };
    }
}
