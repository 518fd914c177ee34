using System.Text.Json.Nodes;

namespace Transport.NotebookTests;

/// <summary>The page of a real notebook server in a real browser that reaches no network but this computer.</summary>
public sealed class NotebookPageTests : IDisposable
{
    private readonly JupyterBench _bench = new();

    public void Dispose() => _bench.Dispose();

    [SkippableFact]
    public async Task Cells_run_by_keyboard_and_the_charts_are_drawn()
    {
        var missing = await JupyterBench.MissingAsync("notebook", "selenium");
        Skip.If(missing is not null, missing);
        Skip.If(!File.Exists("/usr/bin/chromedriver"), "No chromedriver on this machine.");
        await _bench.InstallAsync();

        var (said, _) = await _bench.PythonAsync("notebook_page.py");

        var seen = JsonNode.Parse(said)!;
        Assert.Equal("42", (string?)seen["first output"]);
        Assert.Equal(2, (int?)seen["charts drawn"]);
        Assert.True((int?)seen["lines drawn"] > 2, said); // the curves themselves, not only empty frames
        Assert.Equal(1, (int?)seen["scripts fetched"]); // once for both charts
    }
}
