using System.Text.Json.Nodes;

namespace Transport.Notebooks;

/// <summary>One request of a client, its signature already checked.</summary>
/// <param name="Route">The frames that lead back to the client.</param>
/// <param name="Header">The header as it came: the parent header of every answer.</param>
/// <param name="Type">What is asked: <c>execute_request</c> and so on.</param>
/// <param name="Content">With which particulars.</param>
internal sealed record JupyterMessage(IReadOnlyList<byte[]> Route, byte[] Header, string Type, JsonObject Content)
{
    /// <summary>Where it stands among the requests of its channel.</summary>
    public long Arrival { get; init; }

    public string Text(string name, string otherwise = "") => Content[name]?.GetValue<string>() ?? otherwise;

    public bool Flag(string name, bool otherwise) => Content[name]?.GetValue<bool>() ?? otherwise;

    public int Number(string name, int otherwise = 0) => Content[name]?.GetValue<int>() ?? otherwise;
}
