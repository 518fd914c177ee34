using Microsoft.CodeAnalysis.Scripting;
using Microsoft.DotNet.Interactive;
using Microsoft.DotNet.Interactive.Events;

namespace Transport.Notebooks;

/// <summary>Why a cell stopped.</summary>
/// <param name="Name">The exception's type, or <c>CompilationError</c>.</param>
/// <param name="Message">What a reader needs to know; one sentence when the library raised it.</param>
/// <param name="StackTrace">Where, inside code that is not ours; empty when the library itself refused or the cell did not compile.</param>
internal sealed record CellFailure(string Name, string Message, IReadOnlyList<string> StackTrace)
{
    public static CellFailure From(CommandFailed failed, IReadOnlyCollection<Diagnostic> diagnostics)
    {
        var exception = failed.Exception;
        while (exception is System.Reflection.TargetInvocationException or AggregateException { InnerExceptions.Count: 1 })
            exception = exception.InnerException;

        var errors = diagnostics.Where(d => d.Severity == Microsoft.CodeAnalysis.DiagnosticSeverity.Error).ToList();
        if (exception is null or CompilationErrorException || errors.Count > 0)
        {
            var lines = errors.Select(d => $"line {d.LinePositionSpan.Start.Line + 1}: {d.Message} [{d.Code}]");
            return new CellFailure("CompilationError", errors.Count > 0 ? string.Join('\n', lines) : failed.Message, []);
        }

        return new CellFailure(
            exception.GetType().Name, exception.Message, IsOurs(exception) ? [] : [.. CellFrames(exception)]);
    }

    private static bool IsOurs(Exception exception) =>
        IsOurs(exception.GetType().Namespace) || IsOurs(exception.TargetSite?.DeclaringType?.Namespace);

    private static bool IsOurs(string? space) =>
        space == nameof(Transport) || space?.StartsWith(nameof(Transport) + ".", StringComparison.Ordinal) == true;

    // The frames below the cell belong to the script host and help nobody.
    private static IEnumerable<string> CellFrames(Exception exception) =>
        (exception.StackTrace ?? "").Split('\n')
            .Select(frame => frame.Trim())
            .TakeWhile(frame => !frame.Contains("Microsoft.CodeAnalysis.Scripting", StringComparison.Ordinal)
                && !frame.StartsWith("---", StringComparison.Ordinal))
            .Where(frame => frame.Length > 0);
}
