namespace Transport.Analysis;

/// <summary>One line of a table of what a model misses.</summary>
/// <param name="Tested">The strength that was tested; null: there was no test.</param>
/// <param name="Predicted">The strength that is predicted.</param>
/// <param name="Discrepancy">What is missed in a dwell that stands alone.</param>
public sealed record DiscrepancyRow(GlucoseStrength? Tested, GlucoseStrength Predicted, ModelDiscrepancy Discrepancy);
