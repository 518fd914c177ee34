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

    private readonly CompositeKernel _kernel;

    private NotebookSession(CompositeKernel kernel) => _kernel = kernel;

    /// <summary>Starts a kernel, loads the library into it and registers its views.</summary>
    public static async Task<NotebookSession> StartAsync(CancellationToken cancellation = default)
    {
        var assemblies = LibraryAssemblies.Select(Assembly.Load).ToList();
        var present = assemblies.SelectMany(a => a.GetExportedTypes()).Select(t => t.Namespace).ToHashSet();

        var csharp = new CSharpKernel();
        csharp.AddAssemblyReferences(assemblies.Select(a => a.Location));
        var session = new NotebookSession([csharp]);
        session._kernel.DefaultKernelName = csharp.Name;
        NotebookViews.Register();

        string[] imports =
        [
            "static Microsoft.DotNet.Interactive.Kernel", "System", "System.Linq", "System.Collections.Generic",
            .. Namespaces.Where(present.Contains),
        ];
        var failure = await session.ExecuteAsync(
            string.Concat(imports.Select(name => $"using {name};\n")), _ => { }, cancellation);
        return failure is null ? session : throw new InvalidOperationException(failure.Message);
    }

    /// <summary>Runs one cell. Outputs are handed over as they appear, in order.</summary>
    /// <returns>Null when the cell ran to its end.</returns>
    /// <exception cref="OperationCanceledException">
    /// Cancelled. A cell that never yields keeps its thread until the process ends; the session is then of no more use.
    /// </exception>
    public async Task<CellFailure?> ExecuteAsync(string code, Action<CellOutput> emit, CancellationToken cancellation = default)
    {
        var command = new SubmitCode(code);
        var diagnostics = new List<Diagnostic>();
        CommandFailed? failed = null;

        using (_kernel.KernelEvents.Subscribe(OnEvent))
            await _kernel.SendAsync(command, cancellation).WaitAsync(cancellation);

        cancellation.ThrowIfCancellationRequested();
        return failed is null ? null : CellFailure.From(failed, diagnostics);

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
                case ReturnValueProduced { FormattedValues.Count: > 0 } result:
                    emit(new CellOutput.Display(FormsOf(result), IsResult: true));
                    break;

                // An update is one more output: the kernel gives it a new id, so what it replaces cannot be known.
                case DisplayedValueProduced or DisplayedValueUpdated when kernelEvent is DisplayEvent { FormattedValues.Count: > 0 } shown:
                    emit(new CellOutput.Display(FormsOf(shown), IsResult: false));
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
