using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace Transport.Notebooks;

/// <summary>
/// Messages as frames of the Jupyter protocol: route, delimiter, signature, header, parent header, metadata, content. The signature is
/// HMAC-SHA256 over the last four, in hexadecimal.
/// </summary>
internal sealed class WireFormat(string key)
{
    public const string ProtocolVersion = "5.3";

    private static readonly byte[] Delimiter = "<IDS|MSG>"u8.ToArray();
    private static readonly byte[] Empty = "{}"u8.ToArray();
    private static readonly JsonSerializerOptions Plain = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    private readonly byte[] _key = Encoding.UTF8.GetBytes(key);
    private readonly string _session = Guid.NewGuid().ToString("N");

    /// <summary>The message in these frames; null when it is not one or not signed with the key.</summary>
    public JupyterMessage? TryRead(IReadOnlyList<byte[]> frames)
    {
        var delimiter = frames.TakeWhile(frame => !frame.AsSpan().SequenceEqual(Delimiter)).Count();
        if (frames.Count < delimiter + 6)
            return null;

        var parts = frames.Skip(delimiter + 2).Take(4).ToList();
        if (!CryptographicOperations.FixedTimeEquals(Encoding.ASCII.GetBytes(SignatureOf(parts)), frames[delimiter + 1]))
            return null;

        try
        {
            return JsonNode.Parse(parts[0])?["msg_type"]?.GetValue<string>() is { } type && JsonNode.Parse(parts[3]) is JsonObject content
                ? new JupyterMessage([.. frames.Take(delimiter)], parts[0], type, content)
                : null;
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException)
        {
            return null;
        }
    }

    /// <summary>A message of the kernel as signed frames.</summary>
    /// <param name="route">Before the delimiter: the way back to a client, or a topic.</param>
    /// <param name="type">The message's type.</param>
    /// <param name="content">Its content.</param>
    /// <param name="parent">The header of the request that caused it; null where none did.</param>
    public IReadOnlyList<byte[]> Write(IEnumerable<byte[]> route, string type, JsonObject content, byte[]? parent)
    {
        var header = new JsonObject
        {
            ["msg_id"] = Guid.NewGuid().ToString("N"),
            ["session"] = _session,
            ["username"] = "kernel",
            ["date"] = DateTime.UtcNow.ToString("O", CultureInfo.InvariantCulture),
            ["msg_type"] = type,
            ["version"] = ProtocolVersion,
        };
        byte[][] parts = [BytesOf(header), parent ?? Empty, Empty, BytesOf(content)];
        return [.. route, Delimiter, Encoding.ASCII.GetBytes(SignatureOf(parts)), .. parts];
    }

    private static byte[] BytesOf(JsonObject json) => JsonSerializer.SerializeToUtf8Bytes(json, Plain);

    private string SignatureOf(IEnumerable<byte[]> parts)
    {
        using var hash = IncrementalHash.CreateHMAC(HashAlgorithmName.SHA256, _key);
        foreach (var part in parts)
            hash.AppendData(part);
        return Convert.ToHexStringLower(hash.GetHashAndReset());
    }
}
