using BenchmarkDotNet.Attributes;
using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Toolchains.InProcess.Emit;

namespace Transport.Benchmarks;

/// <summary>The public calls and CVODE, each at the tolerance that meets one target. They share one process and the membranes.</summary>
[MemoryDiagnoser]
[Config(typeof(Short))]
public class SolverBenchmarks
{
    private static PerformanceSetting setting = null!;

    private int next;

    internal static void Use(PerformanceSetting tuned) => setting = tuned;

    /// <summary>One dwell with its course.</summary>
    [Benchmark]
    public DwellCourse OwnDwell() => setting.Problem.Run(next = (next + 1) % PeerProblem.Members, setting.DwellTolerance);

    /// <summary>One dwell with its samples.</summary>
    [Benchmark]
    public long CvodeDwell()
    {
        next = (next + 1) % PeerProblem.Members;
        return setting.Cvode?.Dwell(setting.Coefficients[next], setting.Starts[next], setting.Minutes, setting.States) ?? 0;
    }

    /// <summary>A thousand different dwells side by side, on one core.</summary>
    [Benchmark(OperationsPerInvoke = PeerProblem.Members)]
    public void OwnLanes() => DwellBatch.Run(setting.Cases, setting.Samples, setting.BatchOptions);

    /// <summary>A day in its steady rhythm.</summary>
    [Benchmark]
    public RegimenOutcome OwnDay() => RegimenSimulation.Run(setting.Problem.Patient, setting.Problem.Membranes[0], NightPeer.Regimen, setting.DayOptions);

    /// <summary>The same phases.</summary>
    [Benchmark]
    public double[]? CvodeDay() => setting.NightPeer?.Run();

    private sealed class Short : ManualConfig
    {
        public Short() => AddJob(Job.ShortRun.WithToolchain(InProcessEmitToolchain.Instance).WithIterationCount(7));
    }
}
