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
    public void Simulate() => test = FitCases.Of(ReferenceMembranes.MeanIncidentAdult().ScaledTo(FitCases.Person.BodySurface));

    /// <summary>One sheet.</summary>
    [Benchmark]
    public FittedMembrane OneTest() => MembraneFit.Run(test);
}
