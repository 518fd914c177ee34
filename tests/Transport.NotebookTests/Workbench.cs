using System.Diagnostics;
using System.Text.Json.Nodes;

namespace Transport.NotebookTests;

/// <summary>A directory that vanishes with the test, the fixtures, and a short way to run one.</summary>
internal sealed class Workbench : IDisposable
{
    public Workbench() => System.IO.Directory.CreateDirectory(Directory);

    public string Directory { get; } =
        Path.Combine(Path.GetTempPath(), "transport-" + Guid.NewGuid().ToString("N")[..12]);

    public static string Fixture(string name) => Path.Combine(AppContext.BaseDirectory, "Fixtures", name);

    public string PathOf(string name) => Path.Combine(Directory, name);

    public string Write(string name, string text)
    {
        File.WriteAllText(PathOf(name), text);
        return PathOf(name);
    }

    /// <summary>Runs a fixture in this process; the outputs lie in <see cref="Directory"/> under <paramref name="into"/>.</summary>
    public Task<string> RunAsync(string fixture, string into = "out", params string[] settings) =>
        NotebookRun.RunAsync(Fixture(fixture), new NotebookRunOptions { Settings = settings, OutputDirectory = PathOf(into) });

    /// <summary>Runs the command line in a process of its own, in <see cref="Directory"/>.</summary>
    public async Task<(int ExitCode, string Output, string Errors)> CommandAsync(params string[] arguments)
    {
        var start = new ProcessStartInfo("dotnet") { WorkingDirectory = Directory, RedirectStandardOutput = true, RedirectStandardError = true };
        foreach (var argument in arguments.Prepend(Path.Combine(AppContext.BaseDirectory, "Transport.Notebooks.dll")))
            start.ArgumentList.Add(argument);
        using var process = Process.Start(start)!;
        var errors = process.StandardError.ReadToEndAsync();
        var output = await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();
        return (process.ExitCode, output.ReplaceLineEndings("\n").Trim(), await errors);
    }

    public JsonNode ReadNotebook(string name) => JsonNode.Parse(File.ReadAllText(PathOf(Path.Combine("out", name))))!;

    public void Dispose() => System.IO.Directory.Delete(Directory, recursive: true);
}
