using Transport.Tests;

namespace Transport.NotebookTests;

/// <summary>Notebook 02: the calibration of icodextrin, with what it fits, predicts and misses.</summary>
public sealed class CalibrationNotebookTests : IDisposable
{
    private readonly Workbench _bench = new();

    public void Dispose() => _bench.Dispose();

    [Fact]
    public async Task It_fits_two_figures_predicts_the_others_and_shows_its_misses()
    {
        // The values themselves are recomputed by the library's own tests; here it counts that a reader sees them.
        var page = await PageOf();
        Assert.Contains("0.5435", page, StringComparison.Ordinal);
        Assert.Contains("0.9422", page, StringComparison.Ordinal);
        Assert.Contains("fitted", page, StringComparison.Ordinal);
        Assert.Contains("missed", page, StringComparison.Ordinal);
        Assert.Contains("some glucose meters read falsely high", page, StringComparison.Ordinal);
        Assert.Contains("Decision support for licensed prescribers", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Another_distribution_gets_other_numbers()
    {
        // The ends of the label's ranges: 0.50 and 0.90 mL/min (computed).
        var page = await PageOf("numberMean=5000", "weightMean=13000");
        Assert.Contains("0.5031", page, StringComparison.Ordinal);
        Assert.Contains("0.9028", page, StringComparison.Ordinal);
        Assert.DoesNotContain("0.5435", page, StringComparison.Ordinal);
    }

    private async Task<string> PageOf(params string[] settings)
    {
        await NotebookRun.RunAsync(
            Path.Combine(Repository.Root, "notebooks", "02-calibrating-icodextrin.ipynb"), new NotebookRunOptions { Settings = settings, OutputDirectory = _bench.PathOf("out") });
        return await File.ReadAllTextAsync(_bench.PathOf("out/02-calibrating-icodextrin.html"));
    }
}
