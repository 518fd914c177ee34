namespace Transport.Analysis;

/// <summary>One published or computed figure of a reference table, as it stands there.</summary>
/// <param name="Item">What was measured.</param>
/// <param name="Condition">Under which condition, such as a strength; may be empty.</param>
/// <param name="Unit">Its unit; empty for a ratio.</param>
/// <param name="Value">The figure; null where only a range is printed.</param>
/// <param name="StandardDeviation">As printed; null where it is not.</param>
/// <param name="Low">Lower end of a printed range; null where there is none.</param>
/// <param name="High">Upper end.</param>
/// <param name="Count">People or tests; null where it is not printed.</param>
/// <param name="Evidence">How it is known.</param>
public sealed record ReferenceFigure(
    string Item, string Condition, string Unit, double? Value, double? StandardDeviation, double? Low, double? High, int? Count, Evidence Evidence);
