using System.Diagnostics;
using Transport.Tests;

namespace Transport.NotebookTests;

/// <summary>The program as a user starts it, in a process of its own.</summary>
public sealed class CommandLineTests : IDisposable
{
    private readonly Workbench _bench = new();

    public void Dispose() => _bench.Dispose();

    private Process Start(params string[] arguments)
    {
        var start = new ProcessStartInfo("dotnet") { WorkingDirectory = _bench.Directory, RedirectStandardOutput = true, RedirectStandardError = true };
        foreach (var argument in arguments.Prepend(Path.Combine(AppContext.BaseDirectory, "Transport.Notebooks.dll")))
            start.ArgumentList.Add(argument);
        return Process.Start(start)!;
    }

    private async Task<(int ExitCode, string Output, string Errors)> RunAsync(params string[] arguments)
    {
        using var process = Start(arguments);
        var errors = process.StandardError.ReadToEndAsync();
        var output = await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();
        return (process.ExitCode, output, await errors);
    }

    [Fact]
    public async Task A_notebook_is_run_with_a_file_that_lies_where_the_caller_stands()
    {
        _bench.Write("my sheet.csv", "invented data");

        var (exitCode, output, errors) = await RunAsync("run", Workbench.Fixture("parameters.ipynb"), "--set", "sheet=my sheet.csv", "--set", "dwells=3");

        Assert.Equal((0, Path.Combine("out", "parameters.html")), (exitCode, output.Trim()));
        Assert.Matches(@"cell 1/3 … \d+\.\d s\ncell 2/3 … \d+\.\d s\ncell 3/3 … \d+\.\d s\n", errors.ReplaceLineEndings("\n"));
        var text = (string?)_bench.ReadNotebook("parameters.ipynb")["cells"]![2]!["outputs"]![0]!["data"]!["text/plain"]![0];
        Assert.EndsWith("my sheet.csv 3 1.5 True True", text, StringComparison.Ordinal); // the last: the file was found
    }

    [Fact]
    public async Task A_sheet_with_mistakes_ends_with_every_one_of_them_and_with_nothing_written()
    {
        var (exitCode, output, errors) = await RunAsync(
            "run", Path.Combine(Repository.Root, "notebooks", "01-what-does-this-test-say.ipynb"),
            "--set", "sheet=" + Path.Combine(Repository.Root, "reference-data", "examples", "sheet-with-mistakes.csv"));

        Assert.Equal((1, ""), (exitCode, output.Trim()));
        Assert.True(System.Text.RegularExpressions.Regex.Count(errors, @"row \d+, ") >= 3, errors);
        Assert.DoesNotContain("   at ", errors, StringComparison.Ordinal);
        Assert.False(Directory.Exists(_bench.PathOf("out")) && Directory.EnumerateFileSystemEntries(_bench.PathOf("out")).Any());
    }

    [Fact]
    public async Task A_cell_that_fails_names_what_was_set_for_the_run()
    {
        var (exitCode, _, errors) = await RunAsync(
            "run", Path.Combine(Repository.Root, "notebooks", "14-what-do-fill-posture-and-pressure-change.ipynb"), "--set", "hours=-4", "--set", "glucoseMillimolesPerLiter=126");

        Assert.Equal(1, exitCode);
        Assert.Contains("set for this run and used in this cell: hours=-4", errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_directory_is_run_notebook_by_notebook_and_one_failure_does_not_hide_the_others()
    {
        Directory.CreateDirectory(_bench.PathOf("notebooks"));
        foreach (var name in new[] { "two-cells.ipynb", "failing.ipynb" })
            File.Copy(Workbench.Fixture(name), _bench.PathOf($"notebooks/{name}"));

        var (exitCode, output, errors) = await RunAsync("run", "notebooks");

        Assert.Equal((1, Path.Combine("out", "two-cells.html")), (exitCode, output.Trim()));
        Assert.Contains("failing.ipynb: failed", errors, StringComparison.Ordinal);
        Assert.Contains("two-cells.ipynb: ran", errors, StringComparison.Ordinal);
        Assert.Contains("cell 2 of 3 failed", errors, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_directory_takes_no_parameters_and_must_hold_a_notebook()
    {
        Assert.Equal(2, (await RunAsync("run", _bench.Directory)).ExitCode);
        Assert.Equal(2, (await RunAsync("run", Path.GetDirectoryName(Workbench.Fixture("failing.ipynb"))!, "--set", "a=1")).ExitCode);
    }

    [Fact]
    public async Task Another_process_gives_the_same_bytes()
    {
        // Hash seeds differ between processes: an order that hangs on one would show here.
        await RunAsync("run", Workbench.Fixture("outputs.ipynb"), "--out", "there");
        await _bench.RunAsync("outputs.ipynb", "here");

        foreach (var name in new[] { "outputs.ipynb", "outputs.html" })
            Assert.Equal(await File.ReadAllBytesAsync(_bench.PathOf($"there/{name}")), await File.ReadAllBytesAsync(_bench.PathOf($"here/{name}")));
    }

    [Theory]
    [InlineData(1, "cell 2 of 3 failed", "run", "failing.ipynb")]
    [InlineData(2, "does not exist", "run", "none.ipynb")]
    [InlineData(2, "no such parameter", "run", "parameters.ipynb", "--set", "nothing=1")]
    [InlineData(2, "Required argument missing", "run")]
    [InlineData(2, "--nonsense", "run", "two-cells.ipynb", "--nonsense")]
    public async Task A_failure_has_an_exit_code_and_a_sentence(int expectedCode, string expected, params string[] arguments)
    {
        var (exitCode, _, errors) = await RunAsync(
            [.. arguments.Select(a => a.EndsWith(".ipynb", StringComparison.Ordinal) ? Workbench.Fixture(a) : a)]);

        Assert.Equal(expectedCode, exitCode);
        Assert.Contains(expected, errors, StringComparison.Ordinal);
        Assert.Empty(Directory.GetFileSystemEntries(_bench.Directory));
    }

    [SkippableFact]
    public async Task An_interrupt_ends_even_a_cell_that_never_would()
    {
        Skip.If(OperatingSystem.IsWindows(), "An interrupt is sent with kill.");
        using var process = Start("run", Workbench.Fixture("endless.ipynb"));
        var heard = new char[11];
        await process.StandardError.ReadBlockAsync(heard);
        Assert.Equal("cell 1/1 … ", new string(heard));
        await Task.Delay(500); // well into the endless loop

        using (var kill = Process.Start("kill", ["-INT", $"{process.Id}"]))
            await kill.WaitForExitAsync();
        using var patience = new CancellationTokenSource(TimeSpan.FromMinutes(1));
        await process.WaitForExitAsync(patience.Token);

        Assert.Equal(130, process.ExitCode);
        Assert.Contains("cancelled, nothing was written", await process.StandardError.ReadToEndAsync(patience.Token), StringComparison.Ordinal);
        Assert.Empty(Directory.GetFileSystemEntries(_bench.Directory));
    }
}
