using System.Text.Json.Nodes;

namespace Transport.NotebookTests;

/// <summary>The installed kernel and Debian's Jupyter client: one conversation, of which each test reads its part.</summary>
public sealed class KernelTests(KernelConversation kernel) : IClassFixture<KernelConversation>
{
    private JsonNode Seen(string name)
    {
        Skip.If(kernel.Missing is not null, kernel.Missing);
        return kernel.Seen![name] ?? throw new InvalidOperationException($"The conversation ended before `{name}`: {kernel.Errors}");
    }

    [SkippableFact]
    public void A_cell_answers_through_the_installed_kernel()
    {
        Assert.Equal("2000", (string?)Seen("result")["data"]!["text/plain"]); // 2 L in mL
        Assert.Equal("5.3", (string?)Seen("info")["protocol_version"]);
        Assert.Equal("message", (string?)Seen("spec")["interrupt_mode"]);
    }

    [SkippableFact]
    public void A_display_is_updated_where_it_stands()
    {
        var id = (string?)Seen("display")["transient"]!["display_id"];
        Assert.Equal(id, (string?)Seen("update")["transient"]!["display_id"]);
        Assert.Equal("second", (string?)Seen("update")["data"]!["text/plain"]);
    }

    [SkippableFact]
    public void A_failing_cell_names_its_line_and_the_cells_queued_behind_it_are_dropped()
    {
        Assert.Equal("DivideByZeroException", (string?)Seen("failure")["ename"]);
        Assert.Contains("at line 3: q / zero", Seen("failure")["traceback"]!.AsArray().Select(line => (string?)line));
        Assert.Equal("aborted", (string?)Seen("queued")["status"]);
        Assert.Contains("at cell 6, line 2 in F(Int32 a)", Seen("called")["traceback"]!.AsArray().Select(line => (string?)line));
    }

    [SkippableFact]
    public void The_library_refuses_in_its_own_words_and_the_line_is_told()
    {
        var told = string.Join('\n', Seen("refusal")["traceback"]!.AsArray().Select(line => (string?)line));
        Assert.Contains("Expected a finite number", told, StringComparison.Ordinal);
        Assert.EndsWith("at line 1: Volume.FromLiters(double.NaN)", told, StringComparison.Ordinal);
    }

    [SkippableFact]
    public void Names_are_completed_and_explained()
    {
        Assert.Equal(["FromLiters", "FromMilliliters"], Seen("completion")["matches"]!.AsArray().Select(match => (string?)match));
        // Behind a character outside the basic plane the protocol counts one, .NET two.
        Assert.Equal((19, 23), ((int)Seen("completion")["cursor_start"]!, (int)Seen("completion")["cursor_end"]!));
        Assert.Contains("From a value in L.", (string?)Seen("inspection")["data"]!["text/plain"], StringComparison.Ordinal); // its doc comment
    }

    // Units and sources stand in the doc comments: a completion carries them, and so does an inspection, with parameters and refusals.
    [SkippableFact]
    public void Completion_and_inspection_tell_units_and_sources()
    {
        var completed = Seen("completion")["metadata"]!["_jupyter_types_experimental"]![0]!;
        Assert.Equal(("FromLiters", "Method", "From a value in L."), ((string?)completed["text"], (string?)completed["type"], ((string)completed["documentation"]!).Split('\n')[0]));
        Assert.Equal("Volume Volume.FromLiters(double value)", (string?)completed["signature"]);
        var creatinine = Seen("initializer")["metadata"]!["_jupyter_types_experimental"]![0]!;
        Assert.StartsWith("Concentration", (string?)creatinine["signature"], StringComparison.Ordinal);

        var words = (string)Seen("inspection")["data"]!["text/plain"]!;
        Assert.Contains("The value is NaN or infinite.", words, StringComparison.Ordinal);
        Assert.Contains("FlowRate ThreePoreMembrane.LymphaticRemoval", (string?)Seen("property inspection")["data"]!["text/plain"], StringComparison.Ordinal);
        Assert.Contains("Kidney Int 1989;35:1234", (string?)Seen("source inspection")["data"]!["text/plain"], StringComparison.Ordinal);
        Assert.StartsWith("```csharp", (string?)Seen("source inspection")["data"]!["text/markdown"], StringComparison.Ordinal);
    }

    // Resident memory of the process, read by its client after a full collection. A cell that declares nothing leaves its loaded code behind and
    // nothing else; one that declares a variable also keeps the compilation in which later cells look it up. The second is over 100 kB: a stated miss.
    [SkippableFact]
    public void A_trivial_cell_costs_at_most_100_kB()
    {
        Assert.InRange((double)Seen("kilobytes of a trivial cell")!, 0, 100);
        Assert.InRange((double)Seen("kilobytes of a cell with a variable")!, 100, 250);
    }

    // Four seconds of work: a bar after two, the share that the run reports, nothing of it left at the end.
    [SkippableFact]
    public void A_long_cell_shows_how_far_it_is_and_leaves_nothing_of_it()
    {
        var shown = Seen("long").AsArray().Where(output => (string?)output!["type"] != "execute_input").ToList();
        Assert.Equal("display_data", (string?)shown[0]!["type"]);
        Assert.Contains(shown, output => (string?)output!["type"] == "execute_result" && (string?)output["data"]!["text/plain"] == "7");
        Assert.Contains("%, ", (string?)shown[1]!["data"]!["text/plain"], StringComparison.Ordinal);
        Assert.Contains("<progress", (string?)shown[0]!["data"]!["text/html"], StringComparison.Ordinal);
        Assert.Equal("", (string?)shown.Last(output => (string?)output!["type"] == "update_display_data")!["data"]!["text/plain"]);
    }

    [SkippableFact]
    public void A_cell_that_ends_in_a_task_waits_for_it_and_shows_what_it_brings()
    {
        Assert.Equal("2000 mL", (string?)Seen("task").AsArray()[^1]!["data"]!["text/plain"]);
        Assert.Contains("Expected a finite number", (string?)Seen("failing task")["evalue"], StringComparison.Ordinal);
    }

    // What a user did, in one sentence: no name of an exception, and of the calls only the cell's own line.
    [SkippableFact]
    public void Refusals_of_a_regimen_and_a_sheet_are_a_sentence_and_a_line()
    {
        foreach (var refusal in new[] { Seen("refused regimen"), Seen("refused sheet") })
        {
            var told = refusal["traceback"]!.AsArray().Select(line => (string)line!).ToList();
            Assert.StartsWith("at line 1: ", told[^1], StringComparison.Ordinal);
            Assert.Single(told, line => line.StartsWith("at ", StringComparison.Ordinal));
            Assert.DoesNotContain("Exception", string.Join(' ', told), StringComparison.Ordinal);
        }
    }

    [SkippableFact]
    public void Completeness_and_history_are_answered()
    {
        Assert.Equal(["complete", "incomplete", "invalid"], Seen("complete").AsArray().Select(status => (string?)status));
        Assert.Equal("Volume.FromLiters(double.NaN)", (string?)Seen("history").AsArray()[^1]![2]);
        Assert.Empty(Seen("comms").AsObject());
    }

    [SkippableFact]
    public void An_interrupted_run_stops_within_a_second_and_the_kernel_lives()
    {
        foreach (var stopped in new[] { Seen("interrupted run"), Seen("interrupted wait") })
        {
            Assert.Equal("Interrupted", (string?)stopped["ename"]);
            Assert.InRange((double)stopped["seconds after the interrupt"]!, 0, 1);
        }

        Assert.Equal("kept", (string?)Seen("after the interrupt")["data"]!["text/plain"]);
    }

    [SkippableFact]
    public void A_loop_that_never_yields_is_reported_and_a_restart_helps()
    {
        Assert.Equal("NotInterruptible", (string?)Seen("endless")["ename"]);
        Assert.InRange((double)Seen("endless")["seconds after the interrupt"]!, 0, 5);
        Assert.Equal("NotInterruptible", (string?)Seen("behind the endless")["ename"]);
        Assert.Equal("6", (string?)Seen("restarted")["data"]!["text/plain"]);
    }

    [SkippableFact]
    public void Ten_megabytes_arrive_whole_whether_in_one_piece_or_in_lines()
    {
        Assert.Equal(10_000_000, (int)Seen("one piece")["characters"]!);
        Assert.Equal(10_000_000, (int)Seen("lines")["characters"]!);
        Assert.InRange((int)Seen("lines")["messages"]!, 1, 2000); // of 200,000 lines: gathered
    }

    [SkippableFact]
    public void A_message_with_a_wrong_signature_or_none_gets_no_answer()
    {
        Assert.False((bool)Seen("forged answered")!);
        Assert.False((bool)Seen("unsigned answered")!);
        Assert.True((bool)Seen("signed answered")!);
    }

    [SkippableFact]
    public void A_notebook_runs_by_nbclient()
    {
        Assert.Equal("42", (string?)Seen("nbclient")![0]!["data"]!["text/plain"]);
        Assert.Contains("<svg", (string?)Seen("nbclient")![1]!["data"]!["image/svg+xml"], StringComparison.Ordinal);
        Assert.Contains("kernelspecs/transport/charts.js", (string?)Seen("nbclient")![1]!["data"]!["text/html"], StringComparison.Ordinal);
    }

    [SkippableFact]
    public void The_end_is_quick_and_leaves_no_process() => Assert.False((bool)Seen("alive after shutdown")!);
}
