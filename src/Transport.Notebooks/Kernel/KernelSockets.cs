using System.Text;
using System.Text.Json.Nodes;
using System.Threading.Channels;
using NetMQ;
using NetMQ.Sockets;

namespace Transport.Notebooks;

/// <summary>
/// The five sockets of a kernel. One thread owns them all; requests leave it through channels and answers come back through a queue, so
/// that replies and outputs keep the order in which they were sent.
/// </summary>
internal sealed class KernelSockets : IDisposable
{
    private readonly WireFormat _format;
    private readonly TextWriter _log;
    private readonly RouterSocket _shell = new();
    private readonly RouterSocket _control = new();
    private readonly RouterSocket _stdin = new();
    private readonly PublisherSocket _iopub = new();
    private readonly ResponseSocket _heartbeat = new();
    private readonly NetMQQueue<(IOutgoingSocket Socket, IReadOnlyList<byte[]> Frames)> _outgoing = new();
    private readonly NetMQPoller _poller;
    private readonly Channel<JupyterMessage> _shellRequests = Channel.CreateUnbounded<JupyterMessage>();
    private readonly Channel<JupyterMessage> _controlRequests = Channel.CreateUnbounded<JupyterMessage>();
    private long _arrivals;

    /// <summary>Binds the sockets and begins to listen.</summary>
    /// <exception cref="NetMQException">A port is taken.</exception>
    public KernelSockets(ConnectionFile connection, TextWriter log)
    {
        _format = new WireFormat(connection.Key);
        _log = log;
        foreach (var socket in new NetMQSocket[] { _shell, _control, _stdin, _iopub, _heartbeat })
        {
            socket.Options.SendHighWatermark = 0; // outputs wait for a slow reader, none is dropped
            socket.Options.ReceiveHighWatermark = 0;
            socket.Options.Linger = TimeSpan.FromSeconds(1);
        }

        _shell.Bind(connection.AddressOf(connection.ShellPort));
        _control.Bind(connection.AddressOf(connection.ControlPort));
        _stdin.Bind(connection.AddressOf(connection.StdinPort));
        _iopub.Bind(connection.AddressOf(connection.IopubPort));
        _heartbeat.Bind(connection.AddressOf(connection.HbPort));

        _shell.ReceiveReady += (_, _) => Receive(_shell, _shellRequests.Writer);
        _control.ReceiveReady += (_, _) => Receive(_control, _controlRequests.Writer);
        _stdin.ReceiveReady += (_, _) => _stdin.ReceiveMultipartBytes(); // nothing is ever asked, so no answer is expected
        _heartbeat.ReceiveReady += (_, _) => _heartbeat.SendMultipartBytes(_heartbeat.ReceiveMultipartBytes());
        _outgoing.ReceiveReady += (_, _) => SendWaiting();
        _poller = [_shell, _control, _stdin, _heartbeat, _outgoing];
        _poller.RunAsync("kernel sockets", isBackgroundThread: true);
    }

    public ChannelReader<JupyterMessage> ShellRequests => _shellRequests.Reader;

    public ChannelReader<JupyterMessage> ControlRequests => _controlRequests.Reader;

    /// <summary>The number of the latest request.</summary>
    public long LastArrival => Interlocked.Read(ref _arrivals);

    public void ReplyOnShell(JupyterMessage request, string type, JsonObject content) => Reply(_shell, request, type, content);

    public void ReplyOnControl(JupyterMessage request, string type, JsonObject content) => Reply(_control, request, type, content);

    /// <summary>Tells every client.</summary>
    public void Publish(JupyterMessage? cause, string type, JsonObject content) =>
        _outgoing.Enqueue((_iopub, _format.Write([Encoding.ASCII.GetBytes($"kernel.{type}")], type, content, cause?.Header)));

    /// <inheritdoc />
    public void Dispose()
    {
        _shellRequests.Writer.TryComplete();
        _controlRequests.Writer.TryComplete();
        _poller.Stop();
        SendWaiting();
        _poller.Dispose();
        foreach (var socket in new NetMQSocket[] { _shell, _control, _stdin, _iopub, _heartbeat })
            socket.Dispose();
        _outgoing.Dispose();
        NetMQConfig.Cleanup(block: true); // waits for what lingers
    }

    private void Reply(RouterSocket socket, JupyterMessage request, string type, JsonObject content) =>
        _outgoing.Enqueue((socket, _format.Write(request.Route, type, content, request.Header)));

    private void Receive(RouterSocket socket, ChannelWriter<JupyterMessage> requests)
    {
        if (_format.TryRead(socket.ReceiveMultipartBytes()) is { } message)
            requests.TryWrite(message with { Arrival = Interlocked.Increment(ref _arrivals) });
        else
            _log.WriteLine("A message that is not signed with the key was refused.");
    }

    private void SendWaiting()
    {
        while (_outgoing.TryDequeue(out var next, TimeSpan.Zero))
            next.Socket.SendMultipartBytes(next.Frames);
    }
}
