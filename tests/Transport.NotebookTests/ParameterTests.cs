namespace Transport.NotebookTests;

/// <summary>Setting parameters from outside.</summary>
public sealed class ParameterTests : IDisposable
{
    private readonly Workbench _bench = new();

    public void Dispose() => _bench.Dispose();

    private static IReadOnlyList<NotebookCell> Set(params string[] settings) => ParameterCell.Set(
        NotebookDocument.Read(Workbench.Fixture("parameters.ipynb")).Cells, settings,
        callerDirectory: AppContext.BaseDirectory, notebookDirectory: Path.GetDirectoryName(Workbench.Fixture("x"))!);

    private static string ProblemWith(params string[] settings)
    {
        var problem = Assert.Throws<NotebookRunException>(() => Set(settings));
        Assert.Equal(2, problem.ExitCode);
        return problem.Message;
    }

    [Fact]
    public async Task A_set_parameter_replaces_the_value_in_the_notebook()
    {
        await _bench.RunAsync("parameters.ipynb", "out", "sheet=none \"here\"\\.csv", "dwells=-5", "hours=2", "isFasting=False");

        var cells = _bench.ReadNotebook("parameters.ipynb")["cells"]!;
        Assert.Equal("injected-parameters", (string?)cells[1]!["metadata"]!["tags"]![0]);
        Assert.Equal("none \"here\"\\.csv -5 2 False False", (string?)cells[2]!["outputs"]![0]!["data"]!["text/plain"]![0]);
    }

    [Fact]
    public void Nothing_set_changes_nothing() => Assert.Equal(2, Set().Count);

    [Fact]
    public void All_problems_are_told_at_once()
    {
        var lines = ProblemWith(
            "shet=a.csv", "dwells=4.5", "hours=1,5", "isFasting=maybe", "Fixed=2", "span=04:00", "hours", "sheet=a", "sheet=b").Split('\n');

        Assert.Equal(
            [
                "`shet`: no such parameter. The notebook has `sheet`, `dwells`, `hours`, `isFasting`, `Fixed`, `span`.",
                "`dwells`: found `4.5`, expected a whole number.",
                "`hours`: found `1,5`, expected a number with a decimal point.",
                "`isFasting`: found `maybe`, expected true or false.",
                "`Fixed`: found `2`, expected nothing: it is a constant of the notebook.",
                "`span`: found `04:00`, expected nothing: only text, numbers and true/false can be set, and it is declared as `TimeSpan.FromHours(4)`.",
                "`hours`: name=value is expected.",
                "`sheet`: set twice.",
            ],
            lines);
    }

    [Theory]
    [InlineData("hours=NaN")]
    [InlineData("hours=1e999")]
    [InlineData("dwells=3000000000")]
    public void A_number_that_is_none_is_refused(string setting) =>
        Assert.Contains("expected", ProblemWith(setting), StringComparison.Ordinal);

    [Fact]
    public void A_notebook_without_a_parameters_cell_says_so()
    {
        var cells = NotebookDocument.Read(Workbench.Fixture("failing.ipynb")).Cells;

        var problem = Assert.Throws<NotebookRunException>(() => ParameterCell.Set(cells, ["a=1"], ".", "."));

        Assert.Contains("no code cell tagged `parameters`", problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_named_from_the_callers_directory_is_found_from_the_notebooks_and_no_machine_path_is_written()
    {
        // "Fixtures/failing.ipynb" exists seen from the caller, who stands one directory above the notebook.
        Assert.Equal("sheet = \"failing.ipynb\";", Set("sheet=Fixtures/failing.ipynb")[1].Source);
        // No such file: taken as it is.
        Assert.Equal("sheet = \"Fixtures/none.csv\";", Set("sheet=Fixtures/none.csv")[1].Source);
    }

    [Fact]
    public async Task Setting_again_replaces_what_was_set_before()
    {
        await _bench.RunAsync("parameters.ipynb", "out", "dwells=5");
        var executed = NotebookDocument.Read(_bench.PathOf("out/parameters.ipynb")).Cells;

        var again = ParameterCell.Set(executed, ["dwells=6"], ".", ".");

        Assert.Equal(executed.Count, again.Count);
        Assert.Equal("dwells = 6;", again[1].Source);
    }

    [Fact]
    public async Task A_run_with_parameters_does_not_overwrite_its_own_notebook()
    {
        var path = _bench.Write("a.ipynb", await File.ReadAllTextAsync(Workbench.Fixture("parameters.ipynb")));

        var problem = await Assert.ThrowsAsync<NotebookRunException>(() => NotebookRun.RunAsync(
            path, new NotebookRunOptions { Settings = ["dwells=5"], OutputDirectory = _bench.Directory }));

        Assert.Contains("choose another directory", problem.Message, StringComparison.Ordinal);
    }
}
