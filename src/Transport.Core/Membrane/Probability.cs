using System.Globalization;

namespace Transport;

/// <summary>How probable something is over an ensemble, and which doubt that holds.</summary>
/// <param name="Value">0 to 1.</param>
/// <param name="Doubt">Which layers of doubt it holds.</param>
public readonly record struct Probability(double Value, Doubt Doubt)
{
    /// <summary>"0.93".</summary>
    public override string ToString() => Value.ToString("0.00", CultureInfo.InvariantCulture);
}
