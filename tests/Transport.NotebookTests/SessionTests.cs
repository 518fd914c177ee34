namespace Transport.NotebookTests;

/// <summary>The kernel with the library in it, cell by cell, as any front end would use it.</summary>
public sealed class SessionTests
{
    private readonly List<CellOutput> _outputs = [];

    private string LastText => ((CellOutput.Display)_outputs[^1]).Forms["text/plain"];

    [Fact]
    public async Task A_session_knows_the_library_and_outlives_a_failing_cell()
    {
        using var session = await NotebookSession.StartAsync();

        // No #r and no using: 2 L are 2000 mL.
        Assert.Null(await session.ExecuteAsync("var fill = Volume.FromLiters(2);\nfill.Milliliters", _outputs.Add));
        Assert.Equal("2000", LastText);

        var failure = await session.ExecuteAsync("Console.WriteLine(\"before\");\nthrow new InvalidOperationException(\"on purpose\");", _outputs.Add);
        Assert.Equal(("InvalidOperationException", "on purpose"), (failure!.Name, failure.Message));
        Assert.Equal("before\n", string.Concat(_outputs.OfType<CellOutput.Stream>().Select(stream => stream.Text)));

        Assert.Null(await session.ExecuteAsync("fill.Liters + 1", _outputs.Add));
        Assert.Equal("3", LastText);
    }

    [Fact]
    public async Task Markup_made_by_the_kernels_own_function_stays_markup()
    {
        using var session = await NotebookSession.StartAsync();

        Assert.Null(await session.ExecuteAsync("HTML(\"<b>bold</b>\")", _outputs.Add));

        Assert.Equal("<b>bold</b>", ((CellOutput.Display)_outputs[^1]).Forms["text/html"]);
    }

    [Fact]
    public async Task A_cell_is_cancelled_between_two_moments_of_its_work()
    {
        using var session = await NotebookSession.StartAsync();
        using var cancellation = new CancellationTokenSource(TimeSpan.FromMilliseconds(300));

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() =>
            session.ExecuteAsync("await System.Threading.Tasks.Task.Delay(TimeSpan.FromMinutes(1));", _outputs.Add, cancellation: cancellation.Token));
    }
}
