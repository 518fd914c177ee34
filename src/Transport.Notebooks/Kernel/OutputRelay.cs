using System.Text;
using System.Text.Json.Nodes;

namespace Transport.Notebooks;

/// <summary>
/// Sends the outputs of one cell to its clients. What a stream writes within a tenth of a second goes out as one message: a server
/// counts messages, and a cell can write ten thousand lines in that time.
/// </summary>
internal sealed class OutputRelay : IDisposable
{
    private const int LargestPiece = 1 << 20;
    private static readonly TimeSpan Gathering = TimeSpan.FromMilliseconds(100);

    private readonly Lock _gate = new();
    private readonly StringBuilder _text = new();
    private readonly Timer _timer;
    private readonly Action<string, JsonObject> _publish;
    private readonly int _cell;
    private string _stream = "";
    private bool _isTimed;

    /// <param name="publish">Takes a message's type and content.</param>
    /// <param name="cell">The cell's number.</param>
    public OutputRelay(Action<string, JsonObject> publish, int cell)
    {
        _publish = publish;
        _cell = cell;
        _timer = new Timer(_ => Flush());
    }

    public void Emit(CellOutput output)
    {
        lock (_gate)
        {
            if (output is CellOutput.Stream stream)
                Gather(stream);
            else
                Show((CellOutput.Display)output);
        }
    }

    /// <summary>Sends what is still being gathered.</summary>
    public void Flush()
    {
        lock (_gate)
        {
            _isTimed = false;
            if (_text.Length == 0)
                return;
            _publish("stream", new JsonObject { ["name"] = _stream, ["text"] = _text.ToString() });
            _text.Clear();
        }
    }

    /// <inheritdoc />
    public void Dispose()
    {
        _timer.Dispose();
        Flush();
    }

    private void Gather(CellOutput.Stream stream)
    {
        if (stream.Name != _stream || _text.Length > LargestPiece)
            Flush();
        _stream = stream.Name;
        _text.Append(stream.Text);
        if (!_isTimed)
            _timer.Change(Gathering, Timeout.InfiniteTimeSpan);
        _isTimed = true;
    }

    private void Show(CellOutput.Display display)
    {
        Flush();
        var data = new JsonObject();
        foreach (var (mediaType, text) in display.Forms)
            data[mediaType] = MediaType.IsJson(mediaType) ? JsonNode.Parse(text) : JsonValue.Create(text);
        var content = new JsonObject { ["data"] = data, ["metadata"] = new JsonObject() };
        if (display.IsResult)
            content["execution_count"] = _cell;
        else
            content["transient"] = new JsonObject { ["display_id"] = display.Id };
        _publish(display switch { { IsResult: true } => "execute_result", { IsUpdate: true } => "update_display_data", _ => "display_data" }, content);
    }
}
