using System.Diagnostics;
using System.Runtime.Intrinsics;

namespace Transport.Benchmarks;

/// <summary>What the machine's cores give together in arithmetic that touches no memory: what no program can exceed.</summary>
internal static class CoreScaling
{
    private const int Rounds = 4_000_000;

    /// <summary>Work done in the same time by all cores over that of one.</summary>
    public static double Measure()
    {
        Seconds(1);
        var one = Enumerable.Range(0, 7).Min(_ => Seconds(1));
        var all = Enumerable.Range(0, 7).Min(_ => Seconds(Environment.ProcessorCount));
        return Environment.ProcessorCount * one / all;
    }

    private static double Seconds(int threads)
    {
        var start = Stopwatch.GetTimestamp();
        Thread[] workers = [.. Enumerable.Range(0, threads).Select(_ => new Thread(() => Multiply(1.0)))];
        foreach (var worker in workers)
        {
            worker.Start();
        }

        foreach (var worker in workers)
        {
            worker.Join();
        }

        return Stopwatch.GetElapsedTime(start).TotalSeconds;
    }

    // Eight chains, so that none waits for the one before.
    private static double Multiply(double start)
    {
        var (by, plus) = (Vector512.Create(0.999999), Vector512.Create(1e-6));
        Vector512<double> a = Vector512.Create(start), b = a, c = a, d = a, e = a, f = a, g = a, h = a;
        for (var i = 0; i < Rounds; i++)
        {
            a = Vector512.MultiplyAddEstimate(a, by, plus);
            b = Vector512.MultiplyAddEstimate(b, by, plus);
            c = Vector512.MultiplyAddEstimate(c, by, plus);
            d = Vector512.MultiplyAddEstimate(d, by, plus);
            e = Vector512.MultiplyAddEstimate(e, by, plus);
            f = Vector512.MultiplyAddEstimate(f, by, plus);
            g = Vector512.MultiplyAddEstimate(g, by, plus);
            h = Vector512.MultiplyAddEstimate(h, by, plus);
        }

        return Vector512.Sum(a + b + c + d + e + f + g + h);
    }
}
