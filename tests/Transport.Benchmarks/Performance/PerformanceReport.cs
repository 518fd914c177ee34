using System.Diagnostics;
using System.Globalization;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using System.Text;
using BenchmarkDotNet.Reports;
using BenchmarkDotNet.Running;

namespace Transport.Benchmarks;

/// <summary>Times the library against its peers and writes docs/performance.md.</summary>
internal static class PerformanceReport
{
    public static void Run(string path)
    {
        using var setting = new PerformanceSetting();
        SolverBenchmarks.Use(setting);
        var summary = BenchmarkRunner.Run<SolverBenchmarks>();
        var lsoda = LsodaPeer.Run(setting.Problem);
        File.WriteAllText(path, Page(setting, summary, lsoda, Scaling(setting), NarrowLanes.Run(), CoreScaling.Measure()) + "\n" + FitTable.Make());
    }

    private static string Page(PerformanceSetting setting, Summary summary, LsodaPeer? lsoda, IReadOnlyList<(int Count, double One, double All, long Bytes)> scaling, NarrowLanes? narrow, double cores)
    {
        var own = Of(summary, nameof(SolverBenchmarks.OwnDwell));
        var lanes = Of(summary, nameof(SolverBenchmarks.OwnLanes));
        var day = Of(summary, nameof(SolverBenchmarks.OwnDay));
        var cvode = setting.Cvode is null ? null : (double?)Of(summary, nameof(SolverBenchmarks.CvodeDwell)).Microseconds;
        var cvodeDay = setting.Cvode is null ? null : (double?)Of(summary, nameof(SolverBenchmarks.CvodeDay)).Microseconds;
        var width = Vector512.IsHardwareAccelerated ? 512 : Vector256.IsHardwareAccelerated ? 256 : 64;
        var reach = width == 512 ? 40 : 20;
        var text = new StringBuilder();
        Line($"# Performance");
        Line($"");
        Line($"Written by `dotnet run -c Release --project tests/Transport.Benchmarks -- performance`; all rows come from one run.");
        Line($"");
        Line($"A 4-h dwell of 2 L on 250 mL with eight solutes, {PeerProblem.Members} membranes drawn from the population of incident adults (seeded) and three strengths in turn.");
        Line($"Each solver's tolerance is the loosest that keeps the worst relative error of any volume, concentration or pore volume at seven times below {PeerProblem.Target:0e0}");
        Line($"(of what has passed the ultrasmall or the small pores, which may come back through zero, relative to {PeerProblem.PoreFloor} mL at least);");
        Line($"the reference is our own run at 1e-13, which CVODE, with coefficients formed outside the kinetics, confirms by reaching the target.");
        Line($"Ours is timed as the public call with its result.");
        Line($"");
        Line($"Machine: {RuntimeInformation.ProcessArchitecture}, {Environment.ProcessorCount} cores, {RuntimeInformation.FrameworkDescription}, vectors of {width} bits.");
        if (width != 512)
        {
            Line($"The eight-patient lanes of 512-bit machines are tested here for equal results, and were not timed.");
        }

        Line($"");
        Line($"| what | ours, µs | error | peer | peer, µs | error | ratio | reach |");
        Line($"| --- | ---: | ---: | --- | ---: | ---: | ---: | ---: |");
        Row("one dwell, with its whole course", own.Microseconds, setting.DwellError, "CVODE Adams", cvode, setting.CvodeError, 10);
        Row("one dwell, with its whole course", own.Microseconds, setting.DwellError, "SciPy LSODA", lsoda?.Microseconds, lsoda?.Error ?? 0, 1000);
        Row("different dwells in lanes, each, one core", lanes.Microseconds, setting.BatchError, "CVODE Adams", cvode, setting.CvodeError, reach);
        if (narrow is not null)
        {
            Row("the same in vectors of 256 bits", narrow.Microseconds, narrow.Error, "CVODE Adams", cvode, setting.CvodeError, 20);
        }

        Row("24 h: six cycles and a day dwell", day.Microseconds, setting.DayError, "CVODE Adams", cvodeDay, setting.CvodeDayError, 10);
        Line($"");
        Line($"Allocated: {own.Bytes:0} bytes for one dwell with its course, {lanes.Bytes:0.0} bytes a dwell in a batch of {PeerProblem.Members}, {day.Bytes:0} bytes for a day.");
        if (setting.Cvode is not null)
        {
            Line($"CVODE evaluates the right-hand side {setting.CvodeEvaluations:0} times a dwell.");
        }

        Line($"The day is the public simulation, which finds the steady rhythm by itself; CVODE is given its phases, a day and six cycles. Both follow the eight solutes.");
        Line($"");
        Line($"| dwells in one call | µs each, one core | µs each, all cores | bytes allocated a dwell |");
        Line($"| ---: | ---: | ---: | ---: |");
        foreach (var (count, one, all, bytes) in scaling)
        {
            Line($"| {count:N0} | {one:0.00} | {all:0.00} | {(double)bytes / count:0.00} |");
        }

        Line($"");
        Line($"In arithmetic alone, without memory, the {Environment.ProcessorCount} cores of this machine do {cores:0.00} times the work of one (measured in this run).");
        return text.ToString();

        void Line(FormattableString line) => text.Append(line.ToString(CultureInfo.InvariantCulture)).Append('\n');

        void Row(string what, double microseconds, double error, string peer, double? theirs, double theirError, double wanted)
        {
            var rest = theirs is { } time
                ? FormattableString.Invariant($"{time:0.0} | {theirError:0.0e0} | {time / microseconds:0.0} | {wanted:0} |")
                : "missing | | | |";
            Line($"| {what} | {microseconds:0.00} | {error:0.0e0} | {peer} | {rest}");
        }
    }

    private static (double Microseconds, double Bytes) Of(Summary summary, string method)
    {
        var report = summary.Reports.Single(one => one.BenchmarkCase.Descriptor.WorkloadMethod.Name == method);
        var operations = report.BenchmarkCase.Descriptor.OperationsPerInvoke;
        var bytes = report.GcStats.GetBytesAllocatedPerOperation(report.BenchmarkCase) ?? 0;
        return (report.ResultStatistics!.Median / 1000, operations > 1 && bytes > 1e4 ? (double)bytes / operations : bytes);
    }

    // The same thousand membranes again and again, in one call.
    private static List<(int Count, double One, double All, long Bytes)> Scaling(PerformanceSetting setting)
    {
        var rows = new List<(int, double, double, long)>();
        foreach (var count in new[] { 1, 1000, 10_000, 100_000, 1_000_000 })
        {
            var cases = new Repeated(setting.Cases, count);
            var samples = new DwellSamples(PeerProblem.Panel, PeerProblem.Times, count);
            var tolerance = setting.BatchOptions.Integration.RelativeTolerance;
            var (one, bytes) = Best(cases, samples, PerformanceSetting.Batch(tolerance));
            var (all, _) = Best(cases, samples, PerformanceSetting.Batch(tolerance, Environment.ProcessorCount));
            rows.Add((count, one, all, bytes));
        }

        return rows;
    }

    private static (double Microseconds, long Bytes) Best(Repeated cases, DwellSamples samples, DwellBatchOptions options)
    {
        var best = double.PositiveInfinity;
        var bytes = long.MaxValue;
        for (var i = 0; i < Math.Max(3, 3000 / cases.Count); i++)
        {
            var before = GC.GetTotalAllocatedBytes(precise: true);
            var watch = Stopwatch.StartNew();
            DwellBatch.Run(cases, samples, options);
            best = Math.Min(best, watch.Elapsed.TotalMicroseconds / cases.Count);
            bytes = Math.Min(bytes, GC.GetTotalAllocatedBytes(precise: true) - before);
        }

        return (best, bytes);
    }

    private sealed class Repeated(DwellCase[] cases, int count) : IReadOnlyList<DwellCase>
    {
        public int Count => count;

        public DwellCase this[int index] => cases[index % cases.Length];

        public IEnumerator<DwellCase> GetEnumerator() => Enumerable.Range(0, count).Select(i => this[i]).GetEnumerator();

        System.Collections.IEnumerator System.Collections.IEnumerable.GetEnumerator() => GetEnumerator();
    }
}
