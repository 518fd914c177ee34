using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.CodeAnalysis.Scripting;
using Microsoft.DotNet.Interactive;
using Microsoft.DotNet.Interactive.Events;

namespace Transport.Notebooks;

/// <summary>Why a cell stopped.</summary>
/// <param name="Name">The exception's type, or <c>CompilationError</c>.</param>
/// <param name="Message">What a reader needs to know; one sentence when the library raised it.</param>
/// <param name="StackTrace">
/// Where, innermost first: the lines of cells, and the calls between them unless the library itself refused. Empty when the cell did not compile.
/// </param>
/// <param name="NeedsName">True when the message alone does not say enough.</param>
internal sealed partial record CellFailure(string Name, string Message, IReadOnlyList<string> StackTrace, bool NeedsName)
{
    public static CellFailure From(CommandFailed failed, IReadOnlyCollection<Diagnostic> diagnostics, int cell, string code)
    {
        var source = code.Split('\n');
        string At(int line) => line >= 1 && line <= source.Length ? $"line {line}: {source[line - 1].Trim()}" : $"line {line}";
        var exception = failed.Exception;
        while (exception is System.Reflection.TargetInvocationException or AggregateException { InnerExceptions.Count: 1 })
            exception = exception.InnerException;

        var errors = diagnostics.Where(d => d.Severity == Microsoft.CodeAnalysis.DiagnosticSeverity.Error).ToList();
        if (exception is null or CompilationErrorException || errors.Count > 0)
        {
            var lines = errors.Select(d => $"line {d.LinePositionSpan.Start.Line + 1}: {d.Message} [{d.Code}]");
            return new CellFailure("CompilationError", errors.Count > 0 ? string.Join('\n', lines) : failed.Message, [], NeedsName: false);
        }

        var isOurs = IsOurs(exception);
        var frames = FramesOf(exception).Where(frame => frame.Groups["line"].Success || !isOurs).Select(frame =>
        {
            var what = frame.Groups["what"].Value;
            var call = what.StartsWith('<') ? "" : $" in {what}";
            if (!frame.Groups["line"].Success)
                return $"at {what}";
            var line = int.Parse(frame.Groups["line"].Value, CultureInfo.InvariantCulture);
            return frame.Groups["cell"].Value == cell.ToString(CultureInfo.InvariantCulture)
                ? $"at {At(line)}{call}"
                : $"at cell {frame.Groups["cell"].Value}, line {line}{call}";
        });
        return new CellFailure(exception.GetType().Name, isOurs ? Said(exception) : exception.Message, [.. frames], !isOurs);
    }

    // The platform adds the parameter and the value in lines of its own: "cycles: Expected 1 or more. Found: 0."
    private static string Said(Exception exception)
    {
        if (exception is not ArgumentException argument)
            return exception.Message;
        var said = argument.Message.Split(" (Parameter '")[0];
        return (argument.ParamName is null or "value" ? said : $"{argument.ParamName}: {said}")
            + (argument is ArgumentOutOfRangeException { ActualValue: { } actual } ? string.Create(CultureInfo.InvariantCulture, $" Found: {actual}.") : "");
    }

    /// <summary>All of it as lines of text.</summary>
    public IEnumerable<string> Describe() => [.. (NeedsName ? $"{Name}: {Message}" : Message).Split('\n'), .. StackTrace];

    private static bool IsOurs(Exception exception) =>
        IsOurs(exception.GetType().Namespace) || IsOurs(exception.TargetSite?.DeclaringType?.Namespace) || (exception is ArgumentException && IsOurs(Asker(exception)));

    // An argument that the platform refused for the library, by ThrowIfNull and its like: whoever asked it to.
    private static string? Asker(Exception exception) => (exception.StackTrace ?? "").Split('\n')
        .Select(frame => frame.Trim()).FirstOrDefault(frame => !frame.StartsWith("at System.", StringComparison.Ordinal))?.Split(' ', 2)[^1];

    private static bool IsOurs(string? space) =>
        space == nameof(Transport) || space?.StartsWith(nameof(Transport) + ".", StringComparison.Ordinal) == true;

    // The frames below the cell belong to the script host and help nobody.
    private static IEnumerable<Match> FramesOf(Exception exception) =>
        (exception.StackTrace ?? "").Split('\n')
            .Select(frame => frame.Trim())
            .TakeWhile(frame => !frame.Contains("Microsoft.CodeAnalysis.Scripting", StringComparison.Ordinal)
                && !frame.StartsWith("---", StringComparison.Ordinal))
            .Select(frame => Frame().Match(frame))
            .Where(frame => frame.Success);

    // "at Submission#3.F(Int32 a) in SOMEWHERE/cell 3:line 2": no path is repeated.
    [GeneratedRegex(@"^at (Submission#\d+\.)?(?<what>.+?)( in (.*[/\\])?(cell (?<cell>\d+):line (?<line>\d+)|.*))?$")]
    private static partial Regex Frame();
}
