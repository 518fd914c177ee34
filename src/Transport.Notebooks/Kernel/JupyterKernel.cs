using System.Text.Json.Nodes;

namespace Transport.Notebooks;

/// <summary>
/// The kernel as its clients see it: requests in, replies and outputs out, in the Jupyter messaging protocol. Cells run one after
/// another; interruption and shutdown come on a channel of their own and are answered while a cell runs.
/// </summary>
internal sealed class JupyterKernel : IDisposable
{
    private readonly KernelSockets _sockets;
    private readonly TextWriter _log;
    private readonly Task<NotebookSession> _session;
    private readonly CellExecution _execution;
    private readonly TaskCompletionSource _shutdown = new(TaskCreationOptions.RunContinuationsAsynchronously);

    private JupyterKernel(ConnectionFile connection, TextWriter log)
    {
        _log = log;
        _sockets = new KernelSockets(connection, log);
        _session = Task.Run(() => NotebookSession.StartAsync(live: true)); // meanwhile clients connect and are answered
        _execution = new CellExecution(_sockets, _session);
    }

    /// <summary>Serves until a client asks for shutdown, the starter of this process is gone, or <paramref name="cancellation"/>.</summary>
    /// <exception cref="InvalidDataException">The connection file is no good.</exception>
    public static async Task RunAsync(string connectionPath, TextWriter log, CancellationToken cancellation)
    {
        Console.SetIn(TextReader.Null); // a cell that reads finds the end, not the terminal of the server
        using var kernel = new JupyterKernel(ConnectionFile.Read(connectionPath), log);
        kernel._sockets.Publish(null, "status", new JsonObject { ["execution_state"] = "starting" });
        _ = Task.Run(() => kernel.ServeAsync(isControl: false), CancellationToken.None);
        _ = Task.Run(() => kernel.ServeAsync(isControl: true), CancellationToken.None);
        await Task.WhenAny(kernel._shutdown.Task, ParentProcess.GoneAsync(), Task.Delay(Timeout.Infinite, cancellation));
    }

    /// <inheritdoc />
    public void Dispose() => _sockets.Dispose();

    private async Task ServeAsync(bool isControl)
    {
        await foreach (var request in (isControl ? _sockets.ControlRequests : _sockets.ShellRequests).ReadAllAsync())
        {
            _sockets.Publish(request, "status", new JsonObject { ["execution_state"] = "busy" });
            try
            {
                if (await AnswerAsync(request) is { } reply)
                {
                    var type = request.Type.Replace("_request", "_reply", StringComparison.Ordinal);
                    if (isControl)
                        _sockets.ReplyOnControl(request, type, reply);
                    else
                        _sockets.ReplyOnShell(request, type, reply);
                }
            }
            catch (Exception e) when (e is not OutOfMemoryException)
            {
                // One bad request must not end the kernel, and what was not foreseen is worth a line in the server's log.
                _log.WriteLine($"{request.Type}: {e}");
            }

            _sockets.Publish(request, "status", new JsonObject { ["execution_state"] = "idle" });
            if (request.Type == "shutdown_request")
                _shutdown.TrySetResult();
        }
    }

    private async Task<JsonObject?> AnswerAsync(JupyterMessage request)
    {
        switch (request.Type)
        {
            case "execute_request":
                return await _execution.RunAsync(request);
            case "interrupt_request":
                _execution.Interrupt();
                return Ok();
            case "complete_request":
                return await CodeQuestions.CompleteAsync(await _session, request.Text("code"), request.Number("cursor_pos"));
            case "inspect_request":
                return await CodeQuestions.InspectAsync(await _session, request.Text("code"), request.Number("cursor_pos"));
            case "is_complete_request":
                return CodeQuestions.IsComplete(request.Text("code"));
            case "history_request":
                return _execution.History.Answer(request);
            case "kernel_info_request":
                return KernelInfo();
            case "comm_info_request":
                return Ok("comms", new JsonObject());
            case "comm_open":
                _sockets.Publish(request, "comm_close", new JsonObject { ["comm_id"] = request.Text("comm_id"), ["data"] = new JsonObject() });
                return null;
            case "shutdown_request":
                var reply = Ok("restart", request.Flag("restart", false));
                _sockets.Publish(request, "shutdown_reply", (JsonObject)reply.DeepClone());
                return reply;
            default:
                return null;
        }
    }

    private static JsonObject Ok() => new() { ["status"] = "ok" };

    private static JsonObject Ok(string name, JsonNode value) => new() { ["status"] = "ok", [name] = value };

    private static JsonObject KernelInfo()
    {
        var version = typeof(JupyterKernel).Assembly.GetName().Version!.ToString(3);
        return new JsonObject
        {
            ["status"] = "ok",
            ["protocol_version"] = WireFormat.ProtocolVersion,
            ["implementation"] = KernelSpec.Name,
            ["implementation_version"] = version,
            ["language_info"] = new JsonObject
            {
                ["name"] = "C#",
                ["version"] = "14.0",
                ["mimetype"] = "text/x-csharp",
                ["file_extension"] = ".cs",
                ["pygments_lexer"] = "csharp",
                ["codemirror_mode"] = "text/x-csharp",
            },
            ["banner"] = $"Transport {version}: C# with the library loaded. Decision support for licensed prescribers; local protocol rules.",
            ["help_links"] = new JsonArray(),
            ["debugger"] = false,
        };
    }
}
