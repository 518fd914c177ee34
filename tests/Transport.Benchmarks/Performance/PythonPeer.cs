using System.Diagnostics;
using System.Text.Json;

namespace Transport.Benchmarks;

/// <summary>A peer written in Python: it reads a problem, times itself in a process of its own, and writes what it found.</summary>
internal static class PythonPeer
{
    /// <summary>What the program writes; null where Python, or a package that it needs, is not installed.</summary>
    public static T? Run<T>(string program, object problem)
        where T : class
    {
        try
        {
            using var python = Process.Start(new ProcessStartInfo("/usr/bin/python3", [Path.Combine(AppContext.BaseDirectory, "Peers", program)])
            {
                RedirectStandardInput = true,
                RedirectStandardOutput = true,
            })!;
            python.StandardInput.Write(JsonSerializer.Serialize(problem));
            python.StandardInput.Close();
            var output = python.StandardOutput.ReadToEnd();
            python.WaitForExit();
            return python.ExitCode == 0 ? JsonSerializer.Deserialize<T>(output, JsonSerializerOptions.Web) : null;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return null;
        }
    }
}
