using System.Text.Json.Nodes;

namespace Transport.NotebookTests;

/// <summary>Installs the kernel into a directory of its own and lets <c>kernel_client.py</c> talk with it, once for all tests.</summary>
public sealed class KernelConversation : IAsyncLifetime
{
    /// <summary>Why there was no conversation; null when there was one.</summary>
    public string? Missing { get; private set; }

    /// <summary>What the client saw.</summary>
    public JsonObject? Seen { get; private set; }

    /// <summary>What it said when it failed.</summary>
    public string Errors { get; private set; } = "";

    public async Task InitializeAsync()
    {
        Missing = await JupyterBench.MissingAsync("nbclient");
        if (Missing is not null)
            return;
        using var bench = new JupyterBench();
        await bench.InstallAsync();
        (var said, Errors) = await bench.PythonAsync("kernel_client.py");
        Seen = (JsonObject)JsonNode.Parse(said)!;
    }

    public Task DisposeAsync() => Task.CompletedTask;
}
