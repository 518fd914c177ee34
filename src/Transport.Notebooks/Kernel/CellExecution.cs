using System.Text.Json.Nodes;

namespace Transport.Notebooks;

/// <summary>Runs the cells that are asked for and stops the one that is to be interrupted.</summary>
internal sealed class CellExecution(KernelSockets sockets, Task<NotebookSession> starting)
{
    private static readonly CellFailure Interrupted = new("Interrupted", "The cell was interrupted.", [], NeedsName: false);

    private static readonly CellFailure Stuck = new(
        "NotInterruptible",
        "The cell does not yield and cannot be interrupted. Restart the kernel; variables are lost. "
            + "A run that takes `control: Cell.Control` can be interrupted, and so can a loop that looks at it.",
        [], NeedsName: false);

    private volatile CancellationTokenSource? _running;
    private long _abortedThrough;

    public KernelHistory History { get; } = new();

    /// <summary>Asks the running cell to stop; nothing where none runs.</summary>
    public void Interrupt()
    {
        try
        {
            _running?.Cancel();
        }
        catch (ObjectDisposedException)
        {
            // It has just ended by itself.
        }
    }

    /// <summary>Runs one cell, publishes its outputs, and answers.</summary>
    public async Task<JsonObject> RunAsync(JupyterMessage request)
    {
        // A failed cell takes with it what was sent before its failure was known.
        if (request.Arrival <= _abortedThrough)
            return new JsonObject { ["status"] = "aborted" };

        using var cancellation = new CancellationTokenSource();
        _running = cancellation;
        var session = await starting;
        var code = request.Text("code");
        var isSilent = request.Flag("silent", false);
        var isCounted = !isSilent && request.Flag("store_history", true);
        var cell = session.CellCount + (isCounted ? 1 : 0);
        if (!isSilent)
            sockets.Publish(request, "execute_input", new JsonObject { ["code"] = code, ["execution_count"] = cell });
        if (isCounted)
            History.Add(cell, code);

        CellFailure? failure;
        using (var relay = new OutputRelay((type, content) => sockets.Publish(request, type, content), cell))
        using (var progress = isSilent ? null : new CellProgress(relay.Emit, cell))
        {
            Cell.Watcher = progress;
            try
            {
                failure = session.IsStuck
                    ? Stuck
                    : await session.ExecuteAsync(code, isSilent ? Ignore : relay.Emit, isCounted, cancellation.Token);
            }
            catch (OperationCanceledException)
            {
                failure = session.IsStuck ? Stuck : Interrupted;
            }
            finally
            {
                _running = null;
                Cell.Watcher = null;
            }
        }

        if (failure is null)
        {
            return new JsonObject
            {
                ["status"] = "ok",
                ["execution_count"] = cell,
                ["payload"] = new JsonArray(),
                ["user_expressions"] = new JsonObject(),
            };
        }

        if (request.Flag("stop_on_error", true))
            _abortedThrough = sockets.LastArrival;
        if (!isSilent)
            sockets.Publish(request, "error", ErrorOf(failure));
        var reply = ErrorOf(failure);
        reply["status"] = "error";
        reply["execution_count"] = cell;
        return reply;
    }

    private static void Ignore(CellOutput output)
    {
    }

    private static JsonObject ErrorOf(CellFailure failure) => new()
    {
        ["ename"] = failure.Name,
        ["evalue"] = failure.Message,
        ["traceback"] = new JsonArray([.. failure.Describe().Select(line => JsonValue.Create(line))]),
    };
}
