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

    // A cell that declares nothing is let go when it has ended; whatever can be named later has to stay, however it was declared.
    [Fact]
    public async Task What_a_cell_declares_stays_and_what_declares_nothing_disturbs_no_later_cell()
    {
        using var session = await NotebookSession.StartAsync();
        string[] cells =
        [
            "1 + 1", "var a = 1;", "display(a + 1);", "int.TryParse(\"40\", out var parsed)", "a is int matched", "(int left, int right) = (3, 4);", "2 + 2",
            "using System.Globalization;", "record Night(int Cycles);", "int Twice(int x) => 2 * x;", "if (a > 0) { var hidden = 5; Console.WriteLine(hidden); }",
            $"#r \"{typeof(SessionTests).Assembly.Location.Replace("\\", "/", StringComparison.Ordinal)}\"", "a = 7;",
        ];
        foreach (var cell in cells)
            Assert.Null(await session.ExecuteAsync(cell, _ => { }));
        Assert.NotNull(await session.ExecuteAsync("a = 8; throw new Exception();", _ => { }));

        Assert.Null(await session.ExecuteAsync(
            "(a, parsed, matched, left, right, new Night(2).Cycles, Twice(21), CultureInfo.InvariantCulture.Name, typeof(Transport.NotebookTests.SessionTests).Name).ToString()",
            _outputs.Add));
        Assert.Equal("(8, 40, 1, 3, 4, 2, 42, , SessionTests)", LastText);
        Assert.Equal("CompilationError", (await session.ExecuteAsync("hidden", _ => { }))!.Name);

        async Task<string[]> MatchesAsync(string code) =>
            [.. (await CodeQuestions.CompleteAsync(session, code, code.Length))["matches"]!.AsArray().Select(match => (string)match!)];
        Assert.Equal(["parsed"], await MatchesAsync("pars"));
        Assert.Contains("Night", await MatchesAsync("new Nigh"));
        Assert.Equal(["CultureInfo"], await MatchesAsync("CultureInf"));
    }
}
