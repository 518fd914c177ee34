using System.Text.Json.Nodes;
using Transport.Tests;

namespace Transport.NotebookTests;

/// <summary>Debian's nbclient runs every notebook through the installed kernel: what a user of Jupyter does by "run all".</summary>
public sealed class EveryNotebookInJupyterTests
{
    [SkippableFact]
    public async Task Every_notebook_runs_through_the_installed_kernel()
    {
        var missing = await JupyterBench.MissingAsync("nbclient");
        Skip.If(missing is not null, missing);
        using var bench = new JupyterBench();
        await bench.InstallAsync();
        var (said, _) = await bench.PythonAsync("every_notebook.py", Path.Combine(Repository.Root, "notebooks"));

        var notebooks = JsonNode.Parse(said)!.AsObject();
        Assert.Equal(Directory.GetFiles(Path.Combine(Repository.Root, "notebooks"), "*.ipynb").Length, notebooks.Count);
        Assert.All(notebooks, notebook => Assert.True(notebook.Value!.AsValue().TryGetValue(out int outputs) && outputs >= 4, $"{notebook.Key}: {notebook.Value}"));
    }
}
