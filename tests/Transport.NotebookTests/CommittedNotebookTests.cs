using System.Text.RegularExpressions;
using Transport.Tests;

namespace Transport.NotebookTests;

/// <summary>Every notebook of the library as it is committed: it runs, says what its committed outputs say, and can be read without a script.</summary>
public sealed partial class CommittedNotebookTests : IDisposable
{
    // A viewer of sources loads it in a blink; a choice.
    private const int LargestBytes = 300_000;

    private readonly Workbench _bench = new();

    public static TheoryData<string> Notebooks() =>
        [.. Directory.EnumerateFiles(Path.Combine(Repository.Root, "notebooks"), "*.ipynb").Select(path => Path.GetFileName(path)!).Order(StringComparer.Ordinal)];

    public void Dispose() => _bench.Dispose();

    [Theory]
    [MemberData(nameof(Notebooks))]
    public async Task It_runs_and_says_what_is_committed(string name)
    {
        var committed = Path.Combine(Repository.Root, "notebooks", name);
        var page = await File.ReadAllTextAsync(await NotebookRun.RunAsync(committed, new NotebookRunOptions { OutputDirectory = _bench.PathOf("out") }));

        // To the digits shown. After a wanted change: dotnet run --project src/Transport.Notebooks -- run notebooks --out notebooks
        Assert.Empty(NotebookComparison.Differences(NotebookDocument.Read(committed), NotebookDocument.Read(_bench.PathOf($"out/{name}"))));
        var visible = Unseen().Replace(page, "");
        Assert.Contains("Decision support for licensed prescribers", visible, StringComparison.Ordinal);
        Assert.DoesNotMatch(@"\b(NaN|Infinity)\b", visible);
        Assert.DoesNotMatch(@"(?<![\w.\-/;,])\d+\.\d{7,}", visible);
    }

    [Theory]
    [MemberData(nameof(Notebooks))]
    public void It_is_small_holds_no_script_and_names_its_parameters(string name)
    {
        var path = Path.Combine(Repository.Root, "notebooks", name);
        Assert.InRange(new FileInfo(path).Length, 1, LargestBytes);
        Assert.DoesNotContain("<script", File.ReadAllText(path), StringComparison.OrdinalIgnoreCase);
        var cells = NotebookDocument.Read(path).Cells;
        Assert.EndsWith("?", cells[0].Source.Split('\n')[0], StringComparison.Ordinal); // its title is its question
        Assert.Contains("Caution.Block()", cells[^1].Source, StringComparison.Ordinal);
        Assert.Matches(@"^## (Next|Try)\n\n1\. ", cells.Last(cell => !cell.IsCode).Source[cells.Last(cell => !cell.IsCode).Source.LastIndexOf("## ", StringComparison.Ordinal)..]); // exercises or next steps end it
        Assert.Contains("parameters", cells.First(cell => cell.IsCode).Tags);
        Assert.All(cells.Where(cell => cell.IsCode), cell => Assert.NotNull(cell.File["execution_count"]));
    }

    [GeneratedRegex("<(script|style)[\\s\\S]*?</\\1>|<pre><code>[\\s\\S]*?</code></pre>|data:image[^\"]*")]
    private static partial Regex Unseen();
}
