using System.Collections.Immutable;
using System.Globalization;
using System.Reflection;
using System.Runtime.CompilerServices;
using System.Text;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.Scripting;
using Microsoft.DotNet.Interactive.CSharp;

namespace Transport.Notebooks;

/// <summary>
/// What the package's kernel keeps from cell to cell: the compilations behind its variables, and a workspace that answers what an editor asks.
/// </summary>
/// <remarks>
/// The package gives every cell all references again, and a compilation inherits those of the cells before it: a cell then costs ever more memory
/// and time (383 kB each at the second hundred, 1.3 MB at the ninth). And it keeps every cell, whether or not a later one can name anything of it.
/// Both are mended here, behind the package's back, since it has no setting for either; its version is pinned.
/// </remarks>
internal sealed class SubmissionChain
{
    private const BindingFlags Hidden = BindingFlags.Instance | BindingFlags.NonPublic;

    // What the workspace knows of its last cell, and the references that it gives to every one.
    private static readonly string[] Ends = ["_previousSubmissionProjectId", "_workingProjectId", "_workingDocumentId", "_currentCompilation"];
    private static readonly string[] References = ["_referenceAssemblies", "_packageManagerReferences"];

    private readonly CSharpKernel _kernel;
    private readonly Workspace _workspace;
    private readonly FieldInfo[] _ends;
    private readonly MethodInfo _replaceSolution;
    private readonly Func<string, Document> _fork;
    private ScriptState? _state;
    private Solution _solution;
    private object?[] _atEnds = [];

    public SubmissionChain(CSharpKernel kernel)
    {
        _kernel = kernel;
        _workspace = (Workspace)typeof(CSharpKernel).GetField("_workspace", Hidden)!.GetValue(kernel)!;
        var type = _workspace.GetType();
        _ends = [.. Ends.Select(name => type.GetField(name, Hidden)!)];
        _replaceSolution = typeof(Workspace).GetMethod("SetCurrentSolution", Hidden, [typeof(Solution)])!;
        _fork = type.GetMethod("ForkDocumentForLanguageServices")!.CreateDelegate<Func<string, Document>>(_workspace);
        _solution = _workspace.CurrentSolution;
    }

    /// <summary>The code of a cell that does not run yet, as a document behind all cells that ran.</summary>
    public Document DocumentOf(string code) => _fork(code);

    /// <summary>To be called before a cell: names it in stack traces, which gives an exception its line.</summary>
    public void Begin(int cell)
    {
        ref var options = ref OptionsOf(_kernel);
        options = options.WithEmitDebugInformation(true).WithFileEncoding(Encoding.UTF8)
            .WithFilePath(string.Create(CultureInfo.InvariantCulture, $"cell {cell}"));
        _state = _kernel.ScriptState;
        _solution = _workspace.CurrentSolution;
        _atEnds = [.. _ends.Select(end => end.GetValue(_workspace))];
    }

    /// <summary>To be called once the first cell has run: those behind it inherit its references and need not get them again.</summary>
    public void KeepReferencesOnce()
    {
        ref var options = ref OptionsOf(_kernel);
        options = options.WithReferences(ImmutableArray<MetadataReference>.Empty);
        foreach (var list in References)
            ((List<MetadataReference>)_workspace.GetType().GetField(list, Hidden)!.GetValue(_workspace)!).Clear();
    }

    /// <summary>To be called when a cell has ended: one that declares nothing leaves the chain as it was.</summary>
    public void End()
    {
        if (_state is null || _kernel.ScriptState == _state || Declares(_kernel.ScriptState.Script.GetCompilation()))
            return;
        SetState(_kernel, _state);
        _replaceSolution.Invoke(_workspace, [_solution]);
        foreach (var (end, value) in _ends.Zip(_atEnds))
            end.SetValue(_workspace, value);
    }

    // True if a later cell can name, or is compiled otherwise for, something of this one.
    private static bool Declares(Compilation submission) =>
        submission.ScriptClass is not { } members || members.GetMembers().Any(member => !member.IsImplicitlyDeclared)
        || submission.SyntaxTrees.ToList() is not [var tree] || tree.GetRoot() is not CompilationUnitSyntax { Usings: [], Externs: [] } unit
        || unit.GetReferenceDirectives().Count > 0 || unit.GetLoadDirectives().Count > 0;

    [UnsafeAccessor(UnsafeAccessorKind.Field, Name = "_scriptOptions")]
    private static extern ref ScriptOptions OptionsOf(CSharpKernel kernel);

    [UnsafeAccessor(UnsafeAccessorKind.Method, Name = "set_ScriptState")]
    private static extern void SetState(CSharpKernel kernel, ScriptState state);
}
