using System.Diagnostics;

namespace Transport.NotebookTests;

/// <summary>The page in a real browser that cannot reach any network: text in a file is no proof of a picture.</summary>
public sealed class BrowserTests : IDisposable
{
    private static readonly string[] Names = ["chromium", "chromium-browser", "google-chrome"];

    private readonly Workbench _bench = new();

    public void Dispose() => _bench.Dispose();

    internal static string? Browser() =>
        (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator)
            .SelectMany(directory => Names.Select(name => Path.Combine(directory, name)))
            .FirstOrDefault(File.Exists);

    private async Task<string> DomOfAsync(string page)
    {
        var browser = Browser();
        Skip.If(browser is null && Environment.GetEnvironmentVariable("CI") != "true", "No Chromium on this machine.");
        Assert.True(browser is not null, "CI installs Chromium; it is not on the path.");

        using var process = Process.Start(new ProcessStartInfo(browser,
        [
            "--headless", "--no-sandbox", "--disable-gpu", "--host-resolver-rules=MAP * ~NOTFOUND", $"--user-data-dir={_bench.PathOf("profile")}",
            "--virtual-time-budget=10000", "--dump-dom", new Uri(Path.GetFullPath(page)).AbsoluteUri,
        ])
        { RedirectStandardOutput = true, RedirectStandardError = true })!;
        var errors = process.StandardError.ReadToEndAsync();
        var dom = await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();
        await errors;
        return dom;
    }

    [SkippableFact]
    public async Task A_chart_is_drawn_without_a_network()
    {
        var dom = await DomOfAsync(await _bench.RunAsync("outputs.ipynb"));

        Assert.Contains("class=\"output chart is-drawn\"", dom, StringComparison.Ordinal);
        Assert.Contains("class=\"main-svg\"", dom, StringComparison.Ordinal);
        Assert.Contains("class=\"scatterlayer", dom, StringComparison.Ordinal); // the line itself, not only an empty frame
    }
}
