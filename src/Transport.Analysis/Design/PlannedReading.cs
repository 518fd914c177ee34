namespace Transport.Analysis;

/// <summary>One number that a planned sample would give.</summary>
/// <param name="Quantity">What it is of.</param>
/// <param name="Time">Dwell time.</param>
public sealed record PlannedReading(ObservedQuantity Quantity, TimeSpan Time);
