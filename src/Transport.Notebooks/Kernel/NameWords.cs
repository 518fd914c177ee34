using System.Text.RegularExpressions;
using System.Xml.Linq;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.FindSymbols;
using Microsoft.CodeAnalysis.QuickInfo;

namespace Transport.Notebooks;

/// <summary>What is known of a name in a cell: its signature, and its doc comment with units, parameters, source and exceptions.</summary>
/// <param name="Signature">As C# would declare it.</param>
/// <param name="Notes">Paragraphs of the doc comment, in the order in which they are read.</param>
internal sealed partial record NameWords(string Signature, IReadOnlyList<string> Notes)
{
    /// <summary>Null where there is no name at that place.</summary>
    public static async Task<NameWords?> OfAsync(Document document, int position)
    {
        if (await QuickInfoService.GetService(document)!.GetQuickInfoAsync(document, position) is not { } info)
            return null;
        string Section(string kind) => info.Sections.FirstOrDefault(section => section.Kind == kind)?.Text.ReplaceLineEndings("\n").Trim() ?? "";
        var comment = (await SymbolFinder.FindSymbolAtPositionAsync(document, position))?.GetDocumentationCommentXml();
        string[] notes =
        [
            Section(QuickInfoSectionKinds.DocumentationComments), Section(QuickInfoSectionKinds.RemarksDocumentationComments),
            .. Named(comment, "param", "name"), Section(QuickInfoSectionKinds.ReturnsDocumentationComments), .. Named(comment, "exception", "cref"),
        ];
        return new NameWords(Section(QuickInfoSectionKinds.Description), [.. notes.Where(note => note.Length > 0)]);
    }

    // The package leaves the parameters out, and of the exceptions it tells only the names.
    private static IEnumerable<string> Named(string? comment, string element, string name) =>
        string.IsNullOrEmpty(comment) ? [] : XElement.Parse(comment).Elements(element).Select(named => $"{LastName(named.Attribute(name))}: {Plain(named)}");

    private static string Plain(XElement comment) =>
        Blank().Replace(string.Concat(comment.DescendantNodes().Select(node => node switch
        {
            XText text => text.Value,
            XElement { IsEmpty: true } named => LastName(named.FirstAttribute),
            _ => "",
        })), " ").Trim();

    // "M:Transport.Volume.FromLiters(System.Double)" is FromLiters.
    private static string LastName(XAttribute? reference) => (reference?.Value ?? "").Split('(')[0].Split('.', ':')[^1];

    [GeneratedRegex(@"\s+")]
    private static partial Regex Blank();
}
