namespace Transport;

/// <summary>How a long run is watched and stopped. Every Run that can take longer than 100 ms accepts one.</summary>
public sealed record RunControl
{
    /// <summary>Stops the run at its next poll, at most 20 ms of work away.</summary>
    public CancellationToken Cancellation { get; init; }

    /// <summary>Told the finished share, 0 to 1; null where nobody watches.</summary>
    public IProgress<double>? Progress { get; init; }

    /// <summary>Neither watched nor stopped.</summary>
    public static RunControl None { get; } = new();
}
