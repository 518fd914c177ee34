using BenchmarkDotNet.Attributes;

namespace Transport.Benchmarks;

/// <summary>The public calls that everything else is made of, at the tolerances they ship with.</summary>
[MemoryDiagnoser]
public class DwellBenchmarks
{
    private static readonly Patient Person = Patient.Example;
    private static readonly ThreePoreMembrane Membrane = ReferenceMembranes.MeanIncidentAdult().ScaledTo(Person.BodySurface);

    private static readonly Dwell Dwell = new(
        DialysisSolution.Glucose386, Volume.FromLiters(2), TimeSpan.FromHours(4), ResidualFluid.Used(Volume.FromMilliliters(250), Person.Plasma));

    private static readonly Regimen Night = Regimen.Cycling(
        TimeSpan.FromHours(9), 6, Volume.FromLiters(2), DialysisSolution.Glucose136, new(DialysisSolution.Glucose227, Volume.FromLiters(2)));

    private static readonly DwellOptions FullPanel = new() { Panel = SolutePanel.Full };

    /// <summary>A 4-h dwell, four solutes.</summary>
    [Benchmark(Baseline = true)]
    public DwellCourse OneDwell() => DwellSimulation.Run(Person, Membrane, Dwell);

    /// <summary>A 4-h dwell, seven solutes.</summary>
    [Benchmark]
    public DwellCourse OneDwellFullPanel() => DwellSimulation.Run(Person, Membrane, Dwell, FullPanel);

    /// <summary>24 h of six cycles and a day fill, to its periodic steady state.</summary>
    [Benchmark]
    public RegimenOutcome OneDay() => RegimenSimulation.Run(Person, Membrane, Night);
}
