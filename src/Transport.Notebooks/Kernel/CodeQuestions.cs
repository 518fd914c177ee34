using System.Text.Json.Nodes;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.DotNet.Interactive;
using Microsoft.DotNet.Interactive.Commands;
using Microsoft.DotNet.Interactive.Events;

namespace Transport.Notebooks;

/// <summary>What a front end asks about code that does not run yet: completion, inspection, whether it is complete.</summary>
/// <remarks>The protocol counts positions in Unicode characters, .NET in UTF-16 units, the package in lines and columns.</remarks>
internal static class CodeQuestions
{
    public static async Task<JsonObject> CompleteAsync(NotebookSession session, string code, int cursor)
    {
        var at = Utf16From(code, cursor);
        var start = at;
        while (start > 0 && (char.IsLetterOrDigit(code[start - 1]) || code[start - 1] == '_'))
            start--;

        var typed = code[start..at];
        var answer = await session.AskAsync<CompletionsProduced>(new RequestCompletions(code, PositionOf(code, at)));
        var fitting = (answer?.Completions ?? [])
            .Where(item => item.DisplayText.StartsWith(typed, StringComparison.OrdinalIgnoreCase))
            .OrderBy(item => !item.DisplayText.StartsWith(typed, StringComparison.Ordinal))
            .ThenBy(item => item.DisplayText, StringComparer.Ordinal)
            .Select(item => (Text: item.DisplayText.TrimEnd('<', '>'), item.Kind))
            .Distinct().ToList();
        var (from, to) = (CharactersIn(code, start), CharactersIn(code, at));
        return new JsonObject
        {
            ["status"] = "ok",
            ["matches"] = new JsonArray([.. fitting.Select(item => JsonValue.Create(item.Text))]),
            ["cursor_start"] = from,
            ["cursor_end"] = to,
            ["metadata"] = new JsonObject
            {
                ["_jupyter_types_experimental"] = new JsonArray([.. fitting.Select(item =>
                    new JsonObject { ["start"] = from, ["end"] = to, ["text"] = item.Text, ["type"] = item.Kind })]),
            },
        };
    }

    public static async Task<JsonObject> InspectAsync(NotebookSession session, string code, int cursor)
    {
        // A cursor right behind a name, or behind its opening parenthesis, still means the name.
        var at = Utf16From(code, cursor);
        while (at > 0 && (at == code.Length || code[at] is '(' or ')' or ' ' or ';' or '\n'))
            at--;
        var answer = code.Length == 0 ? null : await session.AskAsync<HoverTextProduced>(new RequestHoverText(code, PositionOf(code, at)));
        var data = new JsonObject();
        if (answer?.Content.FirstOrDefault() is { } hover)
        {
            var text = hover.Value.ReplaceLineEndings("\n");
            data["text/markdown"] = text;
            data[MediaType.PlainText] = string.Join('\n', text.Split('\n').Select(line => line.StartsWith("> ", StringComparison.Ordinal) ? line[2..] : line));
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

    private static LinePosition PositionOf(string code, int at)
    {
        var before = code.AsSpan(0, at);
        return new LinePosition(before.Count('\n'), at - (before.LastIndexOf('\n') + 1));
    }

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
