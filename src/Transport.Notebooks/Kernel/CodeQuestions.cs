using System.Text.Json.Nodes;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.Completion;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.Text;

namespace Transport.Notebooks;

/// <summary>What a front end asks about code that does not run yet: completion, inspection, whether it is complete.</summary>
/// <remarks>The protocol counts positions in Unicode characters, .NET in UTF-16 units.</remarks>
internal static class CodeQuestions
{
    // A list this long is typed on, not read.
    private const int MostExplained = 25;

    public static async Task<JsonObject> CompleteAsync(NotebookSession session, string code, int cursor)
    {
        var at = Utf16From(code, cursor);
        var start = at;
        while (start > 0 && (char.IsLetterOrDigit(code[start - 1]) || code[start - 1] == '_'))
            start--;

        var typed = code[start..at];
        var document = session.DocumentOf(code);
        var answer = await CompletionService.GetService(document)!.GetCompletionsAsync(document, at);
        var fitting = answer.ItemsList
            .Where(item => item.DisplayText.StartsWith(typed, StringComparison.OrdinalIgnoreCase))
            .DistinctBy(item => item.DisplayText)
            .OrderBy(item => !item.DisplayText.StartsWith(typed, StringComparison.Ordinal))
            .ThenBy(item => item.DisplayText, StringComparer.Ordinal).ToList();
        var (from, to) = (CharactersIn(code, start), CharactersIn(code, at));
        var kinds = new JsonArray();
        foreach (var item in fitting)
        {
            var kind = new JsonObject { ["start"] = from, ["end"] = to, ["text"] = item.DisplayText, ["type"] = KindOf(item) };
            kinds.Add(kind);
            if (fitting.Count <= MostExplained && await WordsOf(item) is { } words)
                (kind["signature"], kind["documentation"]) = (words.Signature, string.Join('\n', words.Notes));
        }

        // A name in an initializer means nothing before its equals sign.
        async Task<NameWords?> WordsOf(CompletionItem item) =>
            await NameWords.OfAsync(With(item.DisplayText), start) ?? await NameWords.OfAsync(With(item.DisplayText + " = "), start);

        Document With(string text) => document.WithText(SourceText.From(code[..start] + text + code[at..]));

        return new JsonObject
        {
            ["status"] = "ok",
            ["matches"] = new JsonArray([.. fitting.Select(item => JsonValue.Create(item.DisplayText))]),
            ["cursor_start"] = from,
            ["cursor_end"] = to,
            ["metadata"] = new JsonObject { ["_jupyter_types_experimental"] = kinds },
        };
    }

    public static async Task<JsonObject> InspectAsync(NotebookSession session, string code, int cursor)
    {
        // A cursor right behind a name, or behind its opening parenthesis, still means the name.
        var at = Utf16From(code, cursor);
        while (at > 0 && (at == code.Length || code[at] is '(' or ')' or ' ' or ';' or '\n'))
            at--;
        var data = new JsonObject();
        if (code.Length > 0 && await NameWords.OfAsync(session.DocumentOf(code), at) is { } words)
        {
            data["text/markdown"] = string.Join("\n\n", words.Notes.Prepend($"```csharp\n{words.Signature}\n```"));
            data[MediaType.PlainText] = string.Join('\n', words.Notes.Prepend(words.Signature));
        }

        return new JsonObject { ["status"] = "ok", ["found"] = data.Count > 0, ["data"] = data, ["metadata"] = new JsonObject() };
    }

    public static JsonObject IsComplete(string code)
    {
        var tree = CSharpSyntaxTree.ParseText(code, CSharpParseOptions.Default.WithKind(SourceCodeKind.Script));
        if (!SyntaxFactory.IsCompleteSubmission(tree))
        {
            var tokens = tree.GetRoot().DescendantTokens().Where(token => !token.IsMissing).ToList();
            var open = tokens.Count(token => token.IsKind(SyntaxKind.OpenBraceToken)) - tokens.Count(token => token.IsKind(SyntaxKind.CloseBraceToken));
            return new JsonObject { ["status"] = "incomplete", ["indent"] = new string(' ', 4 * Math.Max(0, open)) };
        }

        var isWrong = tree.GetDiagnostics().Any(problem => problem.Severity == DiagnosticSeverity.Error);
        return new JsonObject { ["status"] = isWrong ? "invalid" : "complete" };
    }

    private static string? KindOf(CompletionItem item) =>
        item.Tags.FirstOrDefault(tag => tag is not ("Public" or "Protected" or "Internal" or "Private"));

    private static int Utf16From(string code, int characters)
    {
        var at = 0;
        for (; characters > 0 && at < code.Length; characters--)
            at += char.IsSurrogatePair(code, at) ? 2 : 1;
        return at;
    }

    private static int CharactersIn(string code, int end)
    {
        var count = 0;
        for (var at = 0; at < end; count++)
            at += char.IsSurrogatePair(code, at) ? 2 : 1;
        return count;
    }
}
