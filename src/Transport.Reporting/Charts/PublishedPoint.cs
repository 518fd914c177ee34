namespace Transport.Reporting;

/// <summary>A printed mean at a time of a dwell, to be drawn beside a simulated course.</summary>
/// <param name="Name">Its series, as printed in the key.</param>
/// <param name="Time">From the end of instillation.</param>
/// <param name="Value">In the unit of the quantity it is drawn with.</param>
/// <param name="StandardDeviation">Between people, in the same unit; null where none is printed.</param>
public sealed record PublishedPoint(string Name, TimeSpan Time, double Value, double? StandardDeviation);
