using System.Globalization;
using System.Reflection;
using Microsoft.DotNet.Interactive;
using Microsoft.DotNet.Interactive.Commands;
using Microsoft.DotNet.Interactive.CSharp;
using Microsoft.DotNet.Interactive.Events;
using Microsoft.DotNet.Interactive.Formatting;

namespace Transport.Notebooks;

/// <summary>
/// A C# kernel inside this process with the library already loaded, so that a notebook needs no <c>#r</c> and no setup cell.
/// Cells run one after another and share their variables.
/// </summary>
/// <remarks>
/// The kernel takes over the process's console while a cell runs and may keep it after a cancellation: whoever wants to
/// speak to the terminal opens a stream of its own before starting a session. Formatters and the console are
/// process-wide, so one session at a time.
/// </remarks>
internal sealed class NotebookSession : IDisposable
{
    // What a notebook may use without asking. A namespace is imported only once it holds a public type.
    private static readonly string[] LibraryAssemblies =
        ["Transport.Core", "Transport.Analysis", "Transport.Reporting", "Transport.Notebooks", "Plotly.NET", "MathNet.Numerics"];

    private static readonly string[] Namespaces =
        ["Transport", "Transport.Analysis", "Transport.Reporting", "Transport.Notebooks"];

    /// <summary>How long an interrupted cell may take to end before it counts as stuck.</summary>
    internal static readonly TimeSpan Patience = TimeSpan.FromSeconds(4);

    private readonly SubmissionChain _chain;
    private readonly CompositeKernel _kernel;
    private readonly Dictionary<string, string> _displays = new(StringComparer.Ordinal);
    private Task _emptyCell = Task.CompletedTask;

    private NotebookSession(CSharpKernel csharp)
    {
        _chain = new SubmissionChain(csharp);
        _kernel = [csharp];
        _kernel.DefaultKernelName = csharp.Name;
    }

    /// <summary>The number of the last cell that was counted; 0 before the first.</summary>
    public int CellCount { get; private set; }

    /// <summary>True while an interrupted cell goes on all the same: nothing else can run.</summary>
    public bool IsStuck => !_emptyCell.IsCompleted;

    /// <summary>Starts a kernel, loads the library into it and registers its views.</summary>
    /// <param name="live">For a front end that draws charts by <see cref="LiveChart"/>; not for files.</param>
    /// <param name="cancellation">Gives up.</param>
    public static async Task<NotebookSession> StartAsync(bool live = false, CancellationToken cancellation = default)
    {
        var assemblies = LibraryAssemblies.Select(Assembly.Load).ToList();
        var present = assemblies.SelectMany(a => a.GetExportedTypes()).Select(t => t.Namespace).ToHashSet();

        var csharp = new CSharpKernel();
        csharp.AddAssemblyReferences(assemblies.Select(a => a.Location));
        var session = new NotebookSession(csharp);
        NotebookViews.Register(live);

        string[] imports =
        [
            "static Transport.Notebooks.Cell", "System", "System.Linq", "System.Collections.Generic",
            .. Namespaces.Where(present.Contains),
        ];
        var failure = await session.ExecuteAsync(
            string.Concat(imports.Select(name => $"using {name};\n")), _ => { }, isCounted: false, cancellation);
        if (failure is not null)
            throw new InvalidOperationException(failure.Message);
        session._chain.KeepReferencesOnce();
        return session;
    }

    /// <summary>Runs one cell. Outputs are handed over as they appear, in order.</summary>
    /// <param name="code">The cell.</param>
    /// <param name="emit">Takes the outputs.</param>
    /// <param name="isCounted">False for what no reader sees: it gets no number.</param>
    /// <param name="cancellation">Interrupts it.</param>
    /// <returns>Null when the cell ran to its end.</returns>
    /// <exception cref="OperationCanceledException">
    /// Cancelled. A cell that never yields keeps its thread until the process ends; then <see cref="IsStuck"/> is true.
    /// </exception>
    public async Task<CellFailure?> ExecuteAsync(
        string code, Action<CellOutput> emit, bool isCounted = true, CancellationToken cancellation = default)
    {
        var cell = isCounted ? ++CellCount : CellCount;
        var order = 0;
        var command = new SubmitCode(code);
        var diagnostics = new List<Diagnostic>();
        CommandFailed? failed = null;
        Task? returned = null;

        cancellation.ThrowIfCancellationRequested();
        _chain.Begin(cell);
        using (_kernel.KernelEvents.Subscribe(OnEvent))
        {
            try
            {
                await _kernel.SendAsync(command, cancellation).WaitAsync(cancellation);
                if (returned is not null)
                    await FinishAsync(returned);
            }
            catch (OperationCanceledException) when (cancellation.IsCancellationRequested)
            {
                // The command ends at once, whatever its cell still does. Whether that has left shows when the next one gets its turn.
                _emptyCell = _kernel.SendAsync(new SubmitCode(""), CancellationToken.None);
                await Task.WhenAny(_emptyCell, Task.Delay(Patience, CancellationToken.None));
                throw;
            }
        }

        cancellation.ThrowIfCancellationRequested();
        _chain.End();
        return failed is null ? null : CellFailure.From(failed, diagnostics, cell, code);

        // A cell that ends in a task ends with it, and shows what it brings.
        async Task FinishAsync(Task task)
        {
            try
            {
                await task.WaitAsync(cancellation);
                if (task.GetType().GetProperty(nameof(Task<>.Result)) is { PropertyType.Name: not "VoidTaskResult" } result)
                    OnEvent(new ReturnValueProduced(result.GetValue(task), command, FormattedValue.CreateManyFromObject(result.GetValue(task))));
            }
            catch (Exception problem) when (!cancellation.IsCancellationRequested)
            {
                failed = new CommandFailed(problem, command);
            }
        }

        void OnEvent(KernelEvent kernelEvent)
        {
            switch (kernelEvent)
            {
                case StandardOutputValueProduced output:
                    emit(new CellOutput.Stream("stdout", TextOf(output)));
                    break;
                case StandardErrorValueProduced output:
                    emit(new CellOutput.Stream("stderr", TextOf(output)));
                    break;
                case ReturnValueProduced { Value: Task task }:
                    returned = task;
                    break;
                case ReturnValueProduced { FormattedValues.Count: > 0 } result:
                    emit(new CellOutput.Display(FormsOf(result), IsResult: true));
                    break;
                case DisplayedValueUpdated { FormattedValues.Count: > 0 } update when _displays.TryGetValue(update.ValueId, out var id):
                    emit(new CellOutput.Display(FormsOf(update), IsResult: false) { Id = id, IsUpdate = true });
                    break;
                case DisplayedValueProduced or DisplayedValueUpdated when kernelEvent is DisplayEvent { FormattedValues.Count: > 0 } shown:
                    _displays[shown.ValueId] = string.Create(CultureInfo.InvariantCulture, $"cell-{cell}-display-{++order}");
                    emit(new CellOutput.Display(FormsOf(shown), IsResult: false) { Id = _displays[shown.ValueId] });
                    break;
                case DiagnosticsProduced produced:
                    diagnostics.AddRange(produced.Diagnostics);
                    break;
                case CommandFailed failure:
                    failed ??= failure;
                    break;
            }
        }
    }

    /// <summary>Code that does not run yet, behind all cells that ran: what an editor asks questions about.</summary>
    public Microsoft.CodeAnalysis.Document DocumentOf(string code) => _chain.DocumentOf(code);

    /// <inheritdoc />
    public void Dispose() => _kernel.Dispose();

    private static string TextOf(DisplayEvent output) => string.Concat(output.FormattedValues.Select(v => v.Value));

    // Every value also has a plain form: what a reader without pictures, or a diff, sees.
    private static SortedDictionary<string, string> FormsOf(DisplayEvent shown)
    {
        var forms = new SortedDictionary<string, string>(StringComparer.Ordinal);
        foreach (var form in shown.FormattedValues)
            forms[form.MimeType] = form.Value;
        if (shown.Value is not null && !forms.ContainsKey(MediaType.PlainText))
            forms[MediaType.PlainText] = shown.Value.ToDisplayString(MediaType.PlainText);
        return forms;
    }
}
