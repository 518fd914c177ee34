namespace Transport.NotebookTests;

/// <summary>Two executed notebooks are the same when they say the same to the digits that are shown.</summary>
public sealed class ComparisonTests : IDisposable
{
    private readonly Workbench _bench = new();

    public void Dispose() => _bench.Dispose();

    [Theory]
    [InlineData("D/P 0.67", "D/P 0.67", true)]
    [InlineData("D/P 0.67", "D/P 0.68", true)] // one in the last digit: rounding on another processor
    [InlineData("D/P 0.67", "D/P 0.69", false)]
    [InlineData("276 mL", "277 mL", true)]
    [InlineData("276 mL", "278 mL", false)]
    [InlineData("1.5e-9", "1.6e-9", true)]
    [InlineData("1.5e-9", "1.5e-8", false)]
    [InlineData("M 10.2,-3.4", "M 10.2,3.4", false)]
    [InlineData("fast", "slow", false)]
    [InlineData("#a1b2c3", "#a1b2c4", false)] // a color is a word
    [InlineData("1 2", "1 2 3", false)]
    public void Numbers_are_compared_to_their_last_digit_and_words_exactly(string expected, string found, bool areSame) =>
        Assert.Equal(areSame, NotebookComparison.FirstDifference(expected, found) is null);

    [Fact]
    public async Task A_notebook_compares_with_itself_and_a_changed_output_is_named()
    {
        await _bench.RunAsync("two-cells.ipynb");
        var path = _bench.PathOf("out/two-cells.ipynb");
        var text = await File.ReadAllTextAsync(path);
        var changed = _bench.Write("changed.ipynb", text.Replace("\"42\"", "\"52\"", StringComparison.Ordinal));

        Assert.Empty(NotebookComparison.Differences(NotebookDocument.Read(path), NotebookDocument.Read(path)));
        var difference = Assert.Single(NotebookComparison.Differences(NotebookDocument.Read(path), NotebookDocument.Read(changed)));
        Assert.Equal("sum, output 2: 42 expected, 52 found", difference);
    }
}
