namespace Transport.Analysis;

/// <summary>What a value of one kind can be; outside, it is a slip of the pen or of the unit.</summary>
/// <param name="Low">Lowest possible value.</param>
/// <param name="High">Highest possible value.</param>
/// <param name="Unit">Unit of both.</param>
/// <param name="Basis">Why these.</param>
public sealed record PlausibleRange(double Low, double High, string Unit, string Basis)
{
    /// <summary>Whether a value, in the range's unit, is possible. NaN is not.</summary>
    public bool Contains(double value) => value >= Low && value <= High;
}
