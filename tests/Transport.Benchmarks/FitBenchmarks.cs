using BenchmarkDotNet.Attributes;
using Transport.Analysis;

namespace Transport.Benchmarks;

/// <summary>A fit from five starts with its covariance.</summary>
[MemoryDiagnoser]
public class FitBenchmarks
{
    private EquilibrationTest test = null!;

    /// <summary>An invented test, simulated from the mean incident adult.</summary>
    [GlobalSetup]
    public void Simulate()
    {
        var patient = Patient.Example;
        var membrane = ReferenceMembranes.MeanIncidentAdult().ScaledTo(patient.BodySurface);
        var residual = ResidualFluid.Used(Volume.FromMilliliters(250), patient.Plasma);
        var course = DwellSimulation.Run(
            patient, membrane, new(DialysisSolution.Glucose227, Volume.FromLiters(2), TimeSpan.FromHours(4), residual));
        test = new()
        {
            Patient = patient,
            Solution = DialysisSolution.Glucose227,
            InstilledVolume = Volume.FromLiters(2),
            FillBasis = FillBasis.Measured,
            DrainedVolume = Volume.FromLiters(2) + course.NetUltrafiltrationAt(TimeSpan.FromHours(4)),
            Dwell = TimeSpan.FromHours(4),
            CreatinineAssay = new(CreatinineMethod.Enzymatic, null),
            Plasma = [new(TimeSpan.FromHours(2)) { Creatinine = patient.Plasma.Creatinine, Glucose = patient.Plasma.Glucose }],
            Dialysate = [.. new[] { 0, 2, 4 }.Select(hours => TimeSpan.FromHours(hours)).Select(time => new DialysateSample(time)
            {
                Creatinine = course.DialysateAt(Solutes.Creatinine, time),
                Glucose = course.DialysateAt(Solutes.Glucose, time),
            })],
        };
    }

    /// <summary>One sheet.</summary>
    [Benchmark]
    public FittedMembrane OneTest() => MembraneFit.Run(test);
}
