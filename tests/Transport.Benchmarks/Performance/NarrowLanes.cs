using System.Diagnostics;
using System.Globalization;
using System.Runtime.Intrinsics;

namespace Transport.Benchmarks;

/// <summary>The dwells in lanes once more, in a process of its own in which the runtime does without 512-bit vectors.</summary>
internal sealed record NarrowLanes(double Microseconds, double Error)
{
    /// <summary>What the program is called with to do this and nothing else.</summary>
    public const string Command = "narrow-lanes";

    /// <summary>Starts the other process; null where this one is narrow already.</summary>
    public static NarrowLanes? Run()
    {
        if (!Vector512.IsHardwareAccelerated)
        {
            return null;
        }

        var start = new ProcessStartInfo(Environment.ProcessPath!, [typeof(NarrowLanes).Assembly.Location, Command]) { RedirectStandardOutput = true };
        if (!Path.GetFileNameWithoutExtension(Environment.ProcessPath!).Equals("dotnet", StringComparison.OrdinalIgnoreCase))
        {
            start.ArgumentList.RemoveAt(0);
        }

        start.Environment["DOTNET_EnableAVX512"] = "0";
        using var other = Process.Start(start)!;
        var words = other.StandardOutput.ReadToEnd().Split(' ');
        other.WaitForExit();
        return other.ExitCode == 0 && words.Length == 3 && words[0] == "256"
            ? new(double.Parse(words[1], CultureInfo.InvariantCulture), double.Parse(words[2], CultureInfo.InvariantCulture))
            : throw new InvalidOperationException("The process without 512-bit vectors did not answer.");
    }

    /// <summary>What the other process does: width, µs a dwell, error.</summary>
    public static string Measure()
    {
        using var setting = new PerformanceSetting(onlyLanes: true);
        var best = double.PositiveInfinity;
        for (var i = 0; i < 500; i++)
        {
            var watch = Stopwatch.GetTimestamp();
            DwellBatch.Run(setting.Cases, setting.Samples, setting.BatchOptions);
            best = Math.Min(best, Stopwatch.GetElapsedTime(watch).TotalMicroseconds / PeerProblem.Members);
        }

        var width = Vector512.IsHardwareAccelerated ? 512 : Vector256.IsHardwareAccelerated ? 256 : 64;
        return string.Create(CultureInfo.InvariantCulture, $"{width} {best:R} {setting.BatchError:R}");
    }
}
