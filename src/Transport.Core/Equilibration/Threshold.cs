namespace Transport;

/// <summary>One limit that a finding compares with, and how it is known.</summary>
/// <param name="Value">The limit.</param>
/// <param name="Unit">Its unit; empty where it is a ratio.</param>
/// <param name="Evidence">How it is known.</param>
/// <param name="Source">Where it comes from.</param>
public sealed record Threshold(double Value, string Unit, Evidence Evidence, string Source)
{
    /// <summary>"400 mL (Morelle et al. 2021; memory)", invariant culture.</summary>
    public override string ToString() =>
        FormattableString.Invariant($"{Value:0.###}{(Unit.Length == 0 ? "" : " ")}{Unit} ({Source}; {Evidence.ToString().ToLowerInvariant()})");
}
