namespace Transport.Analysis;

/// <summary>One observed number of an exchange.</summary>
/// <param name="Quantity">What it is of.</param>
/// <param name="Time">Dwell time.</param>
/// <param name="Value">The value; a ratio, or mL for the ultrafiltration.</param>
/// <param name="OwnDeviation">Standard deviation of the error that is this observation's own, in the unit of the value.</param>
/// <param name="SharedDeviation">Standard deviation of the error that it shares with the same quantity at other times: that of a common denominator.</param>
/// <param name="IsFitted">Whether a fit uses it; otherwise it is predicted and shown beside the observation, as a check of the model.</param>
public sealed record Observation(
    ObservedQuantity Quantity, TimeSpan Time, double Value, double OwnDeviation, double SharedDeviation, bool IsFitted)
{
    /// <summary>Standard deviation of the whole error.</summary>
    public double Deviation => Math.Sqrt(OwnDeviation * OwnDeviation + SharedDeviation * SharedDeviation);
}
