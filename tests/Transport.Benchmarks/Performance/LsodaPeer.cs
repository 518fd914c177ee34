using System.Diagnostics;
using System.Text.Json;

namespace Transport.Benchmarks;

/// <summary>SciPy's LSODA on the same equations. It times itself in a process of its own.</summary>
internal sealed record LsodaPeer(double Microseconds, double Error, double Tolerance)
{
    private const int Members = 20;

    /// <summary>The peer's timing; null where it is not installed.</summary>
    public static LsodaPeer? Run(PeerProblem problem)
    {
        var input = JsonSerializer.Serialize(new
        {
            minutes = PeerProblem.Times.Select(time => time.TotalMinutes),
            scale = problem.Scale(),
            target = PeerProblem.Target,
            floors = PeerProblem.Floors(),
            cases = Enumerable.Range(0, Members).Select(i => new
            {
                coefficients = problem.Coefficients(i),
                start = problem.Start(i),
                reference = Concentrations(problem, i),
            }),
        });
        try
        {
            using var python = Process.Start(new ProcessStartInfo("/usr/bin/python3", [Path.Combine(AppContext.BaseDirectory, "Peers", "lsoda_dwell.py")])
            {
                RedirectStandardInput = true,
                RedirectStandardOutput = true,
            })!;
            python.StandardInput.Write(input);
            python.StandardInput.Close();
            var output = python.StandardOutput.ReadToEnd();
            python.WaitForExit();
            return python.ExitCode == 0
                ? JsonSerializer.Deserialize<LsodaPeer>(output, JsonSerializerOptions.Web)
                : null;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return null;
        }
    }

    // The program compares concentrations, the problem's references are over plasma.
    private static double[] Concentrations(PeerProblem problem, int member)
    {
        var reference = (double[])problem.References[member].Clone();
        var ones = problem.Observed([.. reference.Select(_ => 1.0)]);
        return [.. reference.Zip(ones, (ratio, perPlasma) => ratio / perPlasma)];
    }
}
