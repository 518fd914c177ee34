namespace Transport.Analysis;

/// <summary>One explanation of a change, and how compatible the nights are with it beside the others.</summary>
/// <param name="Cause">What it would be.</param>
/// <param name="Weight">Its share of all explanations' likelihood, 0 to 1; every one had the same share before. Not the probability of a diagnosis.</param>
public sealed record Explanation(ChangeCause Cause, double Weight)
{
    /// <summary>"lower osmotic conductance (0.62)", invariant culture.</summary>
    public override string ToString() => FormattableString.Invariant($"{ChangeWords.Name(Cause)} ({Weight:0.00})");
}
