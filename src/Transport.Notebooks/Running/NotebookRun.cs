using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;

namespace Transport.Notebooks;

/// <summary>Runs a notebook from its first cell to its last, without a front end.</summary>
internal static class NotebookRun
{
    /// <summary>
    /// Runs every code cell in the notebook's own directory and writes the executed notebook and one self-contained page,
    /// both or neither. The same notebook and parameters give the same bytes, whenever and wherever it runs.
    /// </summary>
    /// <remarks>Changes the process's current directory while it runs: one run at a time.</remarks>
    /// <returns>The page's path, under <see cref="NotebookRunOptions.OutputDirectory"/>.</returns>
    /// <exception cref="NotebookRunException">The notebook or a parameter is no good, or a cell failed.</exception>
    /// <exception cref="OperationCanceledException">Cancelled; nothing was written.</exception>
    public static async Task<string> RunAsync(string path, NotebookRunOptions options, CancellationToken cancellation = default)
    {
        var document = NotebookDocument.Read(path);
        var caller = Environment.CurrentDirectory;
        var source = Path.GetFullPath(path);
        var directory = Path.GetDirectoryName(source)!;
        var output = Path.GetFullPath(options.OutputDirectory);
        var name = Path.GetFileName(path);
        if (options.Settings.Count > 0 && output == directory)
        {
            throw new NotebookRunException(NotebookRunException.BadRequest,
                "With parameters set, the executed notebook would replace its own source: choose another directory for the output.");
        }

        document = document with { Cells = ParameterCell.Set(document.Cells, options.Settings, caller, directory) };

        try
        {
            Environment.CurrentDirectory = directory;
            document = document with { Cells = await ExecuteAsync(document.Cells, options, cancellation) };
        }
        finally
        {
            Environment.CurrentDirectory = caller;
        }

        var pageName = Path.ChangeExtension(name, ".html");
        var page = PageWriter.ToHtml(document, name, directory);
        cancellation.ThrowIfCancellationRequested();
        StagedFiles.Write(output, [(name, document.ToJson()), (pageName, page)]);
        return Path.Combine(options.OutputDirectory, pageName);
    }

    private static async Task<List<NotebookCell>> ExecuteAsync(
        IReadOnlyList<NotebookCell> cells, NotebookRunOptions options, CancellationToken cancellation)
    {
        var progress = options.Progress;
        var total = cells.Count(cell => cell.IsCode);
        var executed = new List<NotebookCell>();
        var shown = new List<List<CellOutput>>();
        var count = 0;

        var session = await NotebookSession.StartAsync(cancellation: cancellation);
        foreach (var cell in cells)
        {
            if (!cell.IsCode)
            {
                executed.Add(cell);
                continue;
            }

            progress.Write(string.Create(CultureInfo.InvariantCulture, $"cell {++count}/{total} … "));
            var watch = Stopwatch.StartNew();
            var outputs = new List<CellOutput>();
            var failure = await session.ExecuteAsync(
                cell.Source, output => CellOutput.Append(outputs, shown, output), cancellation: cancellation);
            progress.WriteLine(failure is null
                ? string.Create(CultureInfo.InvariantCulture, $"{watch.Elapsed.TotalSeconds:0.0} s")
                : "failed");
            if (failure is not null)
                throw new NotebookRunException(NotebookRunException.CellFailed, Describe(count, total, cell, failure, options.Settings));
            shown.Add(outputs); // a later cell may still update one of them
            executed.Add(cell with { ExecutionCount = count, Outputs = outputs });
        }

        session.Dispose(); // only here: a cancelled cell that never yields would hold the disposal, too
        return executed;
    }

    private static string Describe(int count, int total, NotebookCell cell, CellFailure failure, IReadOnlyList<string> settings)
    {
        // What was set is the likelier cause than the notebook: what this cell uses of it is named, or else all of it.
        string[] used = [.. settings.Where(setting => Regex.IsMatch(cell.Source, $@"\b{Regex.Escape(setting.Split('=')[0].Trim())}\b"))];
        var set = settings.Count == 0 ? [] : new[] { $"set for this run{(used.Length > 0 ? " and used in this cell" : "")}: {string.Join(", ", used.Length > 0 ? used : settings)}" };
        var firstLine = cell.Source.Split('\n').FirstOrDefault(line => !string.IsNullOrWhiteSpace(line))?.Trim();
        IEnumerable<string> lines = [$"cell {count} of {total} failed, nothing was written", $"> {firstLine}", .. failure.Describe(), .. set];
        return string.Join("\n  ", lines);
    }
}
