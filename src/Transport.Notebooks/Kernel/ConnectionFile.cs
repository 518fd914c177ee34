using System.Globalization;
using System.Net;
using System.Text.Json;

namespace Transport.Notebooks;

/// <summary>Where a client waits for the kernel and with which key both sign: the connection file of the Jupyter protocol.</summary>
internal sealed record ConnectionFile
{
    private static readonly JsonSerializerOptions Names = new() { PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower };

    public string Transport { get; init; } = "tcp";

    public string Ip { get; init; } = "127.0.0.1";

    public string Key { get; init; } = "";

    public string SignatureScheme { get; init; } = "hmac-sha256";

    public int ShellPort { get; init; }

    public int IopubPort { get; init; }

    public int StdinPort { get; init; }

    public int ControlPort { get; init; }

    /// <summary>The heartbeat's.</summary>
    public int HbPort { get; init; }

    /// <summary>Reads a connection file.</summary>
    /// <exception cref="InvalidDataException">It cannot be read, is not for this computer alone, or has no key to sign with.</exception>
    public static ConnectionFile Read(string path)
    {
        ConnectionFile? file;
        try
        {
            file = JsonSerializer.Deserialize<ConnectionFile>(File.ReadAllText(path), Names);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or JsonException)
        {
            throw new InvalidDataException($"The connection file cannot be read: {e.Message}", e);
        }

        // Whoever reaches the sockets can run code here: nobody but this computer shall, and only with the key.
        if (file is not { Transport: "tcp" })
            throw new InvalidDataException("The connection file asks for another transport than tcp.");
        if (!IPAddress.TryParse(file.Ip, out var address) || !IPAddress.IsLoopback(address))
            throw new InvalidDataException($"The connection file asks for the address {file.Ip}; the kernel listens on this computer's own (127.0.0.1) only.");
        if (file.SignatureScheme != "hmac-sha256")
            throw new InvalidDataException($"The connection file asks for the signature scheme {file.SignatureScheme}; hmac-sha256 is known.");
        return file.Key.Length > 0 ? file : throw new InvalidDataException("The connection file has no key; unsigned messages are refused.");
    }

    public string AddressOf(int port) => string.Create(CultureInfo.InvariantCulture, $"tcp://{Ip}:{port}");
}
