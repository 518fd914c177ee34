using System.Diagnostics;

namespace Transport.NotebookTests;

/// <summary>A Jupyter that sees nothing of this user's: its own data directory, with our kernel in it.</summary>
internal sealed class JupyterBench : IDisposable
{
    private const string Python = "/usr/bin/python3";

    private readonly Workbench _bench = new();

    public string DataDirectory => _bench.PathOf("data");

    /// <summary>The reason to skip; null when the modules are there. In CI nothing may be missing.</summary>
    public static async Task<string?> MissingAsync(params string[] modules)
    {
        var found = File.Exists(Python);
        if (found)
        {
            using var process = Process.Start(new ProcessStartInfo(Python, ["-c", "import " + string.Join(", ", modules)]) { RedirectStandardError = true })!;
            await process.StandardError.ReadToEndAsync();
            await process.WaitForExitAsync();
            found = process.ExitCode == 0;
        }

        Assert.True(found || Environment.GetEnvironmentVariable("CI") != "true", $"CI installs {string.Join(", ", modules)}.");
        return found ? null : $"No {string.Join(", ", modules)} for {Python} on this machine.";
    }

    public async Task InstallAsync() => await StartAsync("dotnet", Path.Combine(AppContext.BaseDirectory, "Transport.Notebooks.dll"), "kernel", "install");

    /// <summary>Runs one of the fixtures' scripts with the data directory of this bench.</summary>
    public Task<(string Said, string Errors)> PythonAsync(string script, params string[] arguments) =>
        StartAsync(Python, [Workbench.Fixture(script), .. arguments]);

    public void Dispose() => _bench.Dispose();

    private async Task<(string Said, string Errors)> StartAsync(string program, params string[] arguments)
    {
        var start = new ProcessStartInfo(program, arguments)
        {
            WorkingDirectory = _bench.Directory,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment["JUPYTER_DATA_DIR"] = DataDirectory;
        start.Environment["JUPYTER_CONFIG_DIR"] = _bench.PathOf("config");
        start.Environment["JUPYTER_RUNTIME_DIR"] = _bench.PathOf("runtime");
        using var process = Process.Start(start)!;
        var errors = process.StandardError.ReadToEndAsync();
        var said = await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();
        Assert.True(process.ExitCode == 0, await errors);
        return (said, await errors);
    }
}
