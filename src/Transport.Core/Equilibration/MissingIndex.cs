namespace Transport;

/// <summary>An index that could not be computed, and why.</summary>
/// <param name="Name">What it would have been.</param>
/// <param name="Reason">What was not measured, or what forbids it.</param>
public sealed record MissingIndex(string Name, string Reason)
{
    /// <summary>"sodium dip: dialysate sodium at 60 min not measured".</summary>
    public override string ToString() => $"{Name}: {Reason}";
}
