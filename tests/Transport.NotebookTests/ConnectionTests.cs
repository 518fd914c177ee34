using System.Security.Cryptography;
using System.Text;
using System.Text.Json.Nodes;

namespace Transport.NotebookTests;

/// <summary>Who may speak with the kernel.</summary>
public sealed class ConnectionTests : IDisposable
{
    private readonly Workbench _bench = new();

    public void Dispose() => _bench.Dispose();

    private ConnectionFile Read(string ip = "127.0.0.1", string key = "k", string scheme = "hmac-sha256", string transport = "tcp") =>
        ConnectionFile.Read(_bench.Write("connection.json",
            $$"""{"ip":"{{ip}}","key":"{{key}}","signature_scheme":"{{scheme}}","transport":"{{transport}}","shell_port":5001,"iopub_port":5002,"stdin_port":5003,"control_port":5004,"hb_port":5005}"""));

    [Fact]
    public void A_connection_file_is_read()
    {
        var connection = Read();

        Assert.Equal((5001, 5002, 5003, 5004, 5005),
            (connection.ShellPort, connection.IopubPort, connection.StdinPort, connection.ControlPort, connection.HbPort));
        Assert.Equal("tcp://127.0.0.1:5005", connection.AddressOf(connection.HbPort));
    }

    [Theory]
    [InlineData("0.0.0.0")]
    [InlineData("*")]
    [InlineData("192.0.2.7")] // an address set aside for documentation
    [InlineData("example.org")]
    public void Only_this_computers_own_address_is_accepted(string ip) =>
        Assert.Contains(ip, Assert.Throws<InvalidDataException>(() => Read(ip)).Message, StringComparison.Ordinal);

    [Fact]
    public void Without_a_key_a_known_scheme_or_tcp_nothing_is_served()
    {
        Assert.Throws<InvalidDataException>(() => Read(key: ""));
        Assert.Throws<InvalidDataException>(() => Read(scheme: "hmac-md5"));
        Assert.Throws<InvalidDataException>(() => Read(transport: "ipc"));
        Assert.Throws<InvalidDataException>(() => ConnectionFile.Read(_bench.PathOf("none.json")));
        Assert.Throws<InvalidDataException>(() => ConnectionFile.Read(_bench.Write("connection.json", "{")));
    }

    [Fact]
    public void A_signature_is_the_keyed_hash_of_four_frames_and_any_change_is_refused()
    {
        var frames = new WireFormat("secret").Write([[7]], "execute_request", new JsonObject { ["code"] = "1" }, parent: null);

        // By the platform's one-call HMAC over the joined frames, where the code adds them one by one.
        var joined = frames.Skip(3).SelectMany(frame => frame).ToArray();
        Assert.Equal(Convert.ToHexString(HMACSHA256.HashData("secret"u8.ToArray(), joined)), Encoding.ASCII.GetString(frames[2]), ignoreCase: true);

        var read = new WireFormat("secret").TryRead(frames)!;
        Assert.Equal(("execute_request", "1", 7), (read.Type, read.Text("code"), read.Route[0][0]));
        Assert.Null(new WireFormat("other").TryRead(frames));
        Assert.Null(new WireFormat("secret").TryRead([.. frames.Take(2), [], .. frames.Skip(3)]));
        Assert.Null(new WireFormat("secret").TryRead([.. frames.Take(6), "{\"code\":\"2\"}"u8.ToArray()]));
        Assert.Null(new WireFormat("secret").TryRead([.. frames.Take(4)]));
    }
}
