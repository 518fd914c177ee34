namespace Transport.NotebookTests;

/// <summary>The text between the cells.</summary>
public sealed class MarkdownTests : IDisposable
{
    private readonly Workbench _bench = new();

    public void Dispose() => _bench.Dispose();

    [Theory]
    [InlineData("[a *paper*](https://doi.example/1)", "<p>a <em>paper</em> (https://doi.example/1)</p>\n")]
    [InlineData("<https://doi.example/1>", "<p>https://doi.example/1</p>\n")]
    [InlineData("see https://doi.example/1", "<p>see https://doi.example/1</p>\n")]
    [InlineData("![a bag](https://pictures.example/1.png)", "<p>a bag</p>\n")]
    [InlineData("![a bag](missing.png)", "<p>a bag</p>\n")]
    [InlineData("<img src=\"https://pictures.example/1.png\">", "<p>&lt;img src=&quot;https://pictures.example/1.png&quot;&gt;</p>\n")]
    [InlineData("[above](#top)", "<p><a href=\"#top\">above</a></p>\n")]
    public void Nothing_in_it_reaches_for_a_network(string markdown, string html) =>
        Assert.Equal(html, MarkdownText.ToHtml(markdown, _bench.Directory));

    [Fact]
    public void A_picture_beside_the_notebook_travels_in_the_page()
    {
        _bench.Write("bag.svg", "<svg/>");

        // "<svg/>" in base64, worked out by hand with the base64 tool.
        Assert.Equal(
            "<p><img src=\"data:image/svg+xml;base64,PHN2Zy8+\" alt=\"a bag\" /></p>\n",
            MarkdownText.ToHtml("![a bag](bag.svg)", _bench.Directory));
    }

    [Theory]
    [InlineData("text\n\n# What does `D/P` *say*?\n\n# Second", "What does D/P say?")]
    [InlineData("no heading", null)]
    public void The_first_heading_names_the_page(string markdown, string? title) =>
        Assert.Equal(title, MarkdownText.FirstHeading(markdown));
}
