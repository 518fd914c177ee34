using System.Text.Json.Nodes;

namespace Transport.NotebookTests;

/// <summary>From a notebook file to the executed notebook and its page, in this process.</summary>
public sealed class RunTests : IDisposable
{
    private readonly Workbench _bench = new();

    public void Dispose() => _bench.Dispose();

    [Fact]
    public async Task Two_cells_leave_their_outputs_in_the_executed_notebook()
    {
        await _bench.RunAsync("two-cells.ipynb");

        var cells = _bench.ReadNotebook("two-cells.ipynb")["cells"]!.AsArray();
        Assert.Equal([null, 1, 2], cells.Select(cell => (int?)cell!["execution_count"]));
        Assert.Equal(["intro", "knobs", "sum"], cells.Select(cell => (string?)cell!["id"]));
        var outputs = cells[2]!["outputs"]!.AsArray();
        Assert.Equal("invented 20 2.5 False\n", (string?)outputs[0]!["text"]![0]);
        Assert.Equal("42", (string?)outputs[1]!["data"]!["text/plain"]![0]); // 20 + 22
        Assert.Equal("execute_result", (string?)outputs[1]!["output_type"]);
    }

    [Fact]
    public async Task The_executed_notebook_says_which_kernel_reads_it()
    {
        await _bench.RunAsync("outputs.ipynb");

        var notebook = _bench.ReadNotebook("outputs.ipynb");
        Assert.Equal("transport", (string?)notebook["metadata"]!["kernelspec"]!["name"]);
        Assert.Equal("C#", (string?)notebook["metadata"]!["language_info"]!["name"]);
        Assert.Equal((4, 5), ((int)notebook["nbformat"]!, (int)notebook["nbformat_minor"]!));
        // The fixture is of format 4.4 and has no ids: they are made from the places of the cells.
        Assert.Equal("cell-1", (string?)notebook["cells"]![0]!["id"]);
    }

    [Fact]
    public async Task The_page_holds_the_text_and_the_outputs_and_its_title_is_the_first_heading()
    {
        var page = await File.ReadAllTextAsync(await _bench.RunAsync("two-cells.ipynb"));

        Assert.Contains("<title>Does the small machine add?</title>", page, StringComparison.Ordinal);
        Assert.Contains("invented 20 2.5 False", page, StringComparison.Ordinal);
        Assert.Contains("<pre class=\"output\" id=\"cell-2-output-2\">42</pre>", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<script", page, StringComparison.Ordinal); // no chart, no chart script; raw HTML is shown as text
    }

    [Theory]
    [InlineData("two-cells.ipynb")]
    [InlineData("outputs.ipynb")]
    public async Task A_page_refers_to_nothing_outside_itself(string fixture)
    {
        var page = await File.ReadAllTextAsync(await _bench.RunAsync(fixture));

        Assert.DoesNotMatch("(?i)(src|href)\\s*=\\s*[\"']?\\s*(https?:)?//", page);
        Assert.DoesNotMatch("(?i)url\\(\\s*[\"']?\\s*(https?:)?//", page);
        Assert.DoesNotContain("@import", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<link", page, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task Running_twice_gives_the_same_bytes()
    {
        await _bench.RunAsync("outputs.ipynb", "first");
        await _bench.RunAsync("outputs.ipynb", "second");

        foreach (var name in new[] { "outputs.ipynb", "outputs.html" })
        {
            Assert.Equal(
                await File.ReadAllBytesAsync(_bench.PathOf($"first/{name}")),
                await File.ReadAllBytesAsync(_bench.PathOf($"second/{name}")));
        }
    }

    [Fact]
    public async Task An_executed_notebook_runs_again_to_the_same_bytes()
    {
        await _bench.RunAsync("parameters.ipynb", "first", "dwells=5");
        await NotebookRun.RunAsync(_bench.PathOf("first/parameters.ipynb"), new NotebookRunOptions { OutputDirectory = _bench.PathOf("second") });

        Assert.Equal(
            await File.ReadAllTextAsync(_bench.PathOf("first/parameters.ipynb")),
            await File.ReadAllTextAsync(_bench.PathOf("second/parameters.ipynb")));
    }

    [Fact]
    public async Task A_chart_keeps_its_interactive_form_its_picture_and_its_words()
    {
        await _bench.RunAsync("outputs.ipynb");

        var data = _bench.ReadNotebook("outputs.ipynb")["cells"]![2]!["outputs"]![0]!["data"]!;
        Assert.Equal([0, 1, 4], data["application/vnd.plotly.v1+json"]!["data"]![0]!["y"]!.AsArray().Select(y => (int)y!));
        Assert.StartsWith("<svg", (string?)data["image/svg+xml"]![0], StringComparison.Ordinal);
        Assert.Equal("A line that rises \"faster & faster\".", (string?)data["text/plain"]![0]);
    }

    [Fact]
    public async Task Text_in_a_chart_cannot_end_the_script_that_carries_it()
    {
        var page = await File.ReadAllTextAsync(await _bench.RunAsync("outputs.ipynb"));

        // The fixture's series is named </script><b>"name"</b>.
        Assert.DoesNotContain("</script><b>", page, StringComparison.Ordinal);
        const string opening = "<script type=\"application/json\">";
        var start = page.IndexOf(opening, StringComparison.Ordinal) + opening.Length;
        var spec = JsonNode.Parse(page[start..page.IndexOf("</script>", start, StringComparison.Ordinal)])!;
        Assert.Equal("</script><b>\"name\"</b>", (string?)spec["data"]![0]!["name"]);
    }

    [Fact]
    public async Task Everything_a_cell_says_is_kept_in_order_and_an_update_replaces()
    {
        await _bench.RunAsync("outputs.ipynb");

        var outputs = _bench.ReadNotebook("outputs.ipynb")["cells"]![4]!["outputs"]!.AsArray();
        Assert.Equal(
            ["shown", "raw view", "one two\n", "careful\n", "second", "[ 1, 2, 3 ]"],
            outputs.Select(output => (string?)(output!["text"] ?? output["data"]!["text/plain"])![0]));
        Assert.Equal(["stdout", "stderr"], outputs.Select(output => (string?)output!["name"]).OfType<string>());
        Assert.Equal("<p><em>raw</em> view</p>", (string?)outputs[1]!["data"]!["text/html"]![0]);
    }

    [Fact]
    public async Task Cells_run_in_the_directory_of_their_notebook_and_the_caller_stays_where_it_was()
    {
        var before = Environment.CurrentDirectory;

        await _bench.RunAsync("outputs.ipynb");

        Assert.Equal(before, Environment.CurrentDirectory);
        Assert.NotEqual(before, Path.GetDirectoryName(Workbench.Fixture("outputs.ipynb")));
        Assert.Equal("True", (string?)_bench.ReadNotebook("outputs.ipynb")["cells"]![6]!["outputs"]![0]!["data"]!["text/plain"]![0]);
    }

    [Fact]
    public async Task A_display_is_updated_where_it_stands_also_by_a_later_cell()
    {
        var path = _bench.Write("updates.ipynb", """
            {"nbformat": 4, "nbformat_minor": 5, "metadata": {}, "cells": [
              {"cell_type": "code", "id": "a", "metadata": {}, "source": "var d = display(\"one\"); display(\"beside\"); d.Update(\"two\");"},
              {"cell_type": "code", "id": "b", "metadata": {}, "source": "d.Update(\"three\");"}]}
            """);

        await NotebookRun.RunAsync(path, new NotebookRunOptions { OutputDirectory = _bench.PathOf("out") });

        var cells = _bench.ReadNotebook("updates.ipynb")["cells"]!.AsArray();
        Assert.Equal(["three", "beside"], cells[0]!["outputs"]!.AsArray().Select(output => (string?)output!["data"]!["text/plain"]![0]));
        Assert.Empty(cells[1]!["outputs"]!.AsArray());
    }

    [Fact]
    public async Task A_failing_cell_is_named_and_nothing_is_written()
    {
        var problem = await Assert.ThrowsAsync<NotebookRunException>(() => _bench.RunAsync("failing.ipynb"));

        Assert.Equal(1, problem.ExitCode);
        Assert.Contains("cell 2 of 3", problem.Message, StringComparison.Ordinal);
        Assert.Contains("> var zero = 0;", problem.Message, StringComparison.Ordinal);
        Assert.Contains("DivideByZeroException", problem.Message, StringComparison.Ordinal);
        Assert.Matches(@"at line \d+: ", problem.Message); // where in the cell
        Assert.False(Directory.Exists(_bench.PathOf("out")));
    }

    [Fact]
    public async Task A_cell_that_does_not_compile_is_told_by_line()
    {
        var problem = await Assert.ThrowsAsync<NotebookRunException>(() => _bench.RunAsync("not-compiling.ipynb"));

        Assert.Contains("line 2: The name 'c' does not exist", problem.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_cannot_be_written_leaves_no_half_result()
    {
        _bench.Write("out", "a file where the directory should be");

        var problem = await Assert.ThrowsAsync<NotebookRunException>(() => _bench.RunAsync("two-cells.ipynb"));

        Assert.Equal(2, problem.ExitCode);
        Assert.Equal([_bench.PathOf("out")], Directory.GetFileSystemEntries(_bench.Directory));
    }

    [Fact]
    public async Task A_cancelled_run_writes_nothing()
    {
        using var cancellation = new CancellationTokenSource();
        await cancellation.CancelAsync();

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => NotebookRun.RunAsync(
            Workbench.Fixture("two-cells.ipynb"), new NotebookRunOptions { OutputDirectory = _bench.PathOf("out") }, cancellation.Token));

        Assert.False(Directory.Exists(_bench.PathOf("out")));
    }
}
