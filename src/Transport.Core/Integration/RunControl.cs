namespace Transport;

/// <summary>How a long run is watched and stopped. Every Run that can take longer than 100 ms accepts one.</summary>
/// <param name="Cancellation">Stops the run at its next poll, at most 20 ms of work away.</param>
/// <param name="Progress">Told the finished share, 0 to 1.</param>
public sealed record RunControl(CancellationToken Cancellation = default, IProgress<double>? Progress = null)
{
    /// <summary>Neither watched nor stopped.</summary>
    public static RunControl None { get; } = new();
}
