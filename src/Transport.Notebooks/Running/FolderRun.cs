using System.Diagnostics;
using System.Globalization;

namespace Transport.Notebooks;

/// <summary>Runs all notebooks of a directory, as many at once as there are cores, each in a process of its own: a session owns its process.</summary>
internal static class FolderRun
{
    /// <summary>Runs them all, also when one fails, and says what each said when it is done.</summary>
    /// <returns>0 when all ran, else the largest exit code.</returns>
    /// <exception cref="NotebookRunException">There is no notebook, or parameters are set, which differ between notebooks.</exception>
    /// <exception cref="OperationCanceledException">Cancelled; every process was ended.</exception>
    public static async Task<int> RunAsync(
        string directory, IReadOnlyList<string> settings, string output, TextWriter terminal, TextWriter log, CancellationToken cancellation)
    {
        if (settings.Count > 0)
            throw new NotebookRunException(NotebookRunException.BadRequest, "Parameters are set for one notebook, not for a directory of them.");
        var notebooks = Directory.EnumerateFiles(directory, "*.ipynb").Order(StringComparer.Ordinal).ToList();
        if (notebooks.Count == 0)
            throw new NotebookRunException(NotebookRunException.BadRequest, $"{directory} holds no notebook (.ipynb).");

        var worst = 0;
        var gate = new Lock();
        var parallel = new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount, CancellationToken = cancellation };
        await Parallel.ForEachAsync(notebooks, parallel, async (notebook, token) =>
        {
            var watch = Stopwatch.StartNew();
            var (exitCode, said, problems) = await RunOneAsync(notebook, output, token);
            lock (gate)
            {
                worst = Math.Max(worst, exitCode);
                log.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{notebook}: {(exitCode == 0 ? "ran" : "failed")}, {watch.Elapsed.TotalSeconds:0.0} s"));
                log.Write(problems);
                terminal.Write(said);
            }
        });
        return worst;
    }

    private static async Task<(int ExitCode, string Said, string Problems)> RunOneAsync(string notebook, string output, CancellationToken cancellation)
    {
        using var process = Process.Start(new ProcessStartInfo(KernelSpec.DotnetHost(),
            [typeof(FolderRun).Assembly.Location, "run", notebook, "--out", output])
        { RedirectStandardOutput = true, RedirectStandardError = true })!;
        try
        {
            var problems = process.StandardError.ReadToEndAsync(cancellation);
            var said = await process.StandardOutput.ReadToEndAsync(cancellation);
            await process.WaitForExitAsync(cancellation);
            return (process.ExitCode, said, await problems);
        }
        finally
        {
            if (!process.HasExited)
                process.Kill(entireProcessTree: true);
        }
    }
}
