using Markdig;
using Markdig.Renderers;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;

namespace Transport.Notebooks;

/// <summary>
/// A notebook's Markdown as HTML that asks nothing of a network: raw HTML is shown as text, a picture beside the notebook is
/// carried inside the page, and a web address is spelled out after its text instead of being a link.
/// </summary>
internal static class MarkdownText
{
    private static readonly MarkdownPipeline Pipeline =
        new MarkdownPipelineBuilder().UsePipeTables().UseEmphasisExtras().UseAutoLinks().DisableHtml().Build();

    /// <summary>The text of the first heading, or null.</summary>
    public static string? FirstHeading(string markdown) =>
        Markdown.Parse(markdown, Pipeline).Descendants<HeadingBlock>().FirstOrDefault()?.Inline is { } inline
            ? string.Concat(inline.Descendants<LeafInline>().Select(leaf => leaf is CodeInline code ? code.Content : leaf.ToString()))
            : null;

    /// <summary>Renders one Markdown cell.</summary>
    /// <param name="markdown">The cell's text.</param>
    /// <param name="directory">Where the notebook lies and its pictures are looked for.</param>
    public static string ToHtml(string markdown, string directory)
    {
        var document = Markdown.Parse(markdown, Pipeline);
        foreach (var link in document.Descendants<LinkInline>().ToList())
        {
            if (link.IsImage)
                Embed(link, directory);
            else if (IsWeb(link.Url))
                SpellOut(link);
        }

        foreach (var link in document.Descendants<AutolinkInline>().ToList())
            link.ReplaceBy(new LiteralInline(link.Url));

        var html = new StringWriter { NewLine = "\n" };
        var renderer = new HtmlRenderer(html);
        Pipeline.Setup(renderer);
        renderer.Render(document);
        return html.ToString();
    }

    private static bool IsWeb(string? url) =>
        url is not null && (url.Contains("://", StringComparison.Ordinal) || url.StartsWith("//", StringComparison.Ordinal));

    private static void SpellOut(LinkInline link)
    {
        var text = string.Concat(link.Descendants<LiteralInline>().Select(literal => literal.Content.ToString()));
        if (text != link.Url)
            link.InsertAfter(new LiteralInline($" ({link.Url})"));
        link.ReplaceBy(new ContainerInline(), copyChildren: true);
    }

    private static void Embed(LinkInline image, string directory)
    {
        var type = Path.GetExtension(image.Url)?.ToUpperInvariant() switch
        {
            ".PNG" => "image/png",
            ".JPG" or ".JPEG" => "image/jpeg",
            ".SVG" => MediaType.Svg,
            _ => null,
        };
        var path = image.Url is null || IsWeb(image.Url) ? null : Path.Combine(directory, Uri.UnescapeDataString(image.Url));
        if (type is not null && File.Exists(path))
            image.Url = $"data:{type};base64,{Convert.ToBase64String(File.ReadAllBytes(path))}";
        else
            image.ReplaceBy(new ContainerInline(), copyChildren: true); // its alternative text
    }
}
