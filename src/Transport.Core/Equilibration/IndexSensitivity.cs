namespace Transport;

/// <summary>How far an index moves when one of its inputs does.</summary>
/// <param name="Index">Name of the index.</param>
/// <param name="Change">What changes, in words with its size.</param>
/// <param name="Value">By how much the index then changes.</param>
/// <param name="Unit">Unit of <paramref name="Value"/>.</param>
public sealed record IndexSensitivity(string Index, string Change, double Value, string Unit)
{
    /// <summary>"1 mmol/L more in plasma sodium: 2.4 mL", invariant culture.</summary>
    public override string ToString() => FormattableString.Invariant($"{Change}: {Value:+0.0;−0.0;0.0} {Unit}");
}
