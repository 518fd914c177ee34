namespace Transport.NotebookTests;

/// <summary>Files that are no notebooks are refused in one sentence; what is kept of a good one.</summary>
public sealed class DocumentTests : IDisposable
{
    private readonly Workbench _bench = new();

    public void Dispose() => _bench.Dispose();

    [Theory]
    [InlineData("a.ipynb", null, "does not exist")]
    [InlineData("a.csv", "{}", "a name that ends in .ipynb is expected")]
    [InlineData("a.ipynb", "{\n  \"nbformat\": 4,\n  cells\n}", "is not JSON (line 3)")]
    [InlineData("a.ipynb", "[]", "a JSON object is expected")]
    [InlineData("a.ipynb", "{}", "nbformat: missing")]
    [InlineData("a.ipynb", """{"nbformat":3,"worksheets":[]}""", "nbformat: 3")]
    [InlineData("a.ipynb", """{"nbformat":4,"cells":[]}""", "has no code cells")]
    [InlineData("a.ipynb", """{"nbformat":4,"cells":[{"cell_type":"markdown","source":"text only"}]}""", "has no code cells")]
    [InlineData("a.ipynb", """{"nbformat":4,"cells":[{"cell_type":"code","source":12}]}""", "not a notebook")]
    [InlineData("a.ipynb", """{"nbformat":4,"cells":["code"]}""", "not a notebook")]
    [InlineData("a.ipynb", """{"nbformat":4,"cells":[{"source":"1"}]}""", "not a notebook")]
    [InlineData("a.ipynb", """{"nbformat":"four","cells":[]}""", "not a notebook")]
    public void A_bad_file_is_refused_in_one_sentence(string name, string? text, string expected)
    {
        var path = text is null ? _bench.PathOf(name) : _bench.Write(name, text);

        var problem = Assert.Throws<NotebookRunException>(() => NotebookDocument.Read(path));

        Assert.Equal(2, problem.ExitCode);
        Assert.Contains(expected, problem.Message, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', problem.Message);
    }

    [Fact]
    public void Metadata_of_others_is_kept_and_a_stopwatch_is_not()
    {
        var path = _bench.Write("a.ipynb", """
            {"nbformat":4,"metadata":{"authors":[{"name":"somebody"}]},"cells":[
              {"cell_type":"code","source":["1 +\r\n","1"],"metadata":{"execution":{"iopub.execute_input":"2024-01-01T00:00:00Z"},"slideshow":{}},
               "outputs":[{"output_type":"stream","name":"stdout","text":"old"}],"execution_count":9},
              {"cell_type":"markdown","id":"cell-1","source":"é – ∫ <b>","attachments":{"a.png":{}}}]}
            """);

        var json = NotebookDocument.Read(path).ToJson();

        Assert.Contains("\"name\": \"somebody\"", json, StringComparison.Ordinal);
        Assert.Contains("\"slideshow\": {}", json, StringComparison.Ordinal);
        Assert.Contains("\"attachments\"", json, StringComparison.Ordinal);
        Assert.Contains("é – ∫ <b>", json, StringComparison.Ordinal);
        Assert.Contains("\"1 +\\n\"", json, StringComparison.Ordinal);
        Assert.Contains("\"id\": \"cell-1-\"", json, StringComparison.Ordinal); // the first cell: "cell-1" is taken by the second
        Assert.DoesNotContain("iopub", json, StringComparison.Ordinal);
        Assert.DoesNotContain("old", json, StringComparison.Ordinal);
    }
}
