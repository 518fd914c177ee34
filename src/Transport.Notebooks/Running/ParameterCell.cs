using System.Globalization;
using System.Text;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace Transport.Notebooks;

/// <summary>
/// The open convention for notebook parameters: the code cell tagged <c>parameters</c> holds simple declarations
/// (<c>var sheet = "…";</c>), and a run that sets some of them gets a cell tagged <c>injected-parameters</c> right after it
/// that assigns the new values. Both stay readable in the executed notebook.
/// </summary>
internal static class ParameterCell
{
    private const string Tag = "parameters";
    private const string InjectedTag = "injected-parameters";

    /// <summary>Sets parameters.</summary>
    /// <param name="cells">The notebook's cells.</param>
    /// <param name="settings">Each <c>name=value</c>; numbers with a decimal point.</param>
    /// <param name="callerDirectory">
    /// Where a path in a string value starts. If a file is found there, the value is rewritten to start from
    /// <paramref name="notebookDirectory"/>, where the cells run; it stays relative, so that no machine's directories
    /// enter an executed notebook. Any other string is taken as it is.
    /// </param>
    /// <param name="notebookDirectory">The notebook's own directory.</param>
    /// <exception cref="NotebookRunException">Names every setting that does not fit, not only the first.</exception>
    public static IReadOnlyList<NotebookCell> Set(
        IReadOnlyList<NotebookCell> cells, IReadOnlyList<string> settings, string callerDirectory, string notebookDirectory)
    {
        if (settings.Count == 0)
            return cells;

        var cell = cells.FirstOrDefault(c => c.IsCode && c.Tags.Contains(Tag)) ?? throw new NotebookRunException(
            NotebookRunException.BadRequest,
            $"The notebook has no code cell tagged `parameters`: {string.Join(", ", settings.Select(setting => $"`{setting.Split('=')[0].Trim()}`"))} cannot be set in it.");

        var declared = DeclaredIn(cell.Source);
        var assignments = new StringBuilder();
        var problems = new List<string>();
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var setting in settings)
        {
            var equals = setting.IndexOf('=', StringComparison.Ordinal);
            var (name, value) = equals > 0 ? (setting[..equals].Trim(), setting[(equals + 1)..]) : (setting, "");
            if (equals <= 0)
                problems.Add($"`{setting}`: name=value is expected.");
            else if (!declared.TryGetValue(name, out var type))
                problems.Add($"`{name}`: no such parameter. The notebook has {ListOf(declared)}.");
            else if (!seen.Add(name))
                problems.Add($"`{name}`: set twice.");
            else if (LiteralOf(type, value, callerDirectory, notebookDirectory) is { } literal)
                assignments.Append(name).Append(" = ").Append(literal).Append(";\n");
            else
                problems.Add($"`{name}`: found `{value}`, expected {ExpectationOf(type)}.");
        }

        if (problems.Count > 0)
            throw new NotebookRunException(NotebookRunException.BadRequest, string.Join('\n', problems));

        var injected = new NotebookCell(InjectedTag, "code", assignments.ToString().TrimEnd('\n')) { Tags = [InjectedTag] };
        return [.. cells.Where(c => !c.Tags.Contains(InjectedTag)).SelectMany(c => c == cell ? [c, injected] : new[] { c })];
    }

    // Name to type, in the order of declaration; a type that no text converts to is kept as it is written.
    private static Dictionary<string, string> DeclaredIn(string source)
    {
        var root = CSharpSyntaxTree.ParseText(source, CSharpParseOptions.Default.WithKind(SourceCodeKind.Script)).GetRoot();
        var declared = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var field in root.ChildNodes().OfType<FieldDeclarationSyntax>())
        {
            var isConstant = field.Modifiers.Any(SyntaxKind.ConstKeyword);
            foreach (var variable in field.Declaration.Variables)
            {
                var type = field.Declaration.Type;
                var initial = variable.Initializer?.Value;
                declared[variable.Identifier.ValueText] =
                    isConstant ? "const" : type.IsVar ? TypeOf(initial) : type.ToString().TrimEnd('?');
            }
        }

        return declared;
    }

    private static string TypeOf(ExpressionSyntax? initial) => initial switch
    {
        PrefixUnaryExpressionSyntax signed => TypeOf(signed.Operand),
        InterpolatedStringExpressionSyntax => "string",
        LiteralExpressionSyntax { Token.Value: string } => "string",
        LiteralExpressionSyntax { Token.Value: int } => "int",
        LiteralExpressionSyntax { Token.Value: double } => "double",
        LiteralExpressionSyntax { Token.Value: bool } => "bool",
        _ => initial?.ToString() ?? "?",
    };

    private static string? LiteralOf(string type, string value, string callerDirectory, string notebookDirectory)
    {
        switch (type)
        {
            case "string":
                return SymbolDisplay.FormatLiteral(PathFrom(value, callerDirectory, notebookDirectory), quote: true);
            case "int" when int.TryParse(value, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var whole):
                return whole.ToString(CultureInfo.InvariantCulture);
            case "double" when double.TryParse(value, NumberStyles.Float, CultureInfo.InvariantCulture, out var number)
                    && double.IsFinite(number):
                return number.ToString("R", CultureInfo.InvariantCulture);
            case "bool" when bool.TryParse(value, out var truth):
                return truth ? "true" : "false";
            default:
                return null;
        }
    }

    private static string PathFrom(string value, string callerDirectory, string notebookDirectory)
    {
        if (value.Length == 0 || Path.IsPathRooted(value) || value.AsSpan().ContainsAny(Path.GetInvalidPathChars()))
            return value;
        var path = Path.GetFullPath(value, callerDirectory);
        return File.Exists(path) ? Path.GetRelativePath(notebookDirectory, path).Replace('\\', '/') : value;
    }

    private static string ExpectationOf(string type) => type switch
    {
        "int" => "a whole number",
        "double" => "a number with a decimal point",
        "bool" => "true or false",
        "const" => "nothing: it is a constant of the notebook",
        _ => $"nothing: only text, numbers and true/false can be set, and it is declared as `{type}`",
    };

    private static string ListOf(Dictionary<string, string> declared) =>
        declared.Count == 0 ? "none" : string.Join(", ", declared.Keys.Select(name => $"`{name}`"));
}
