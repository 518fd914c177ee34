namespace Transport.Analysis;

/// <summary>What is attainable with nights of any cycles, and how far the best of it may be from the best there is.</summary>
/// <param name="Front">The options, each simulated, as of a search over a grid.</param>
/// <param name="Kinds">How many kinds of cycle the programme chose among.</param>
/// <param name="SpaceSize">How many regimens the space holds.</param>
/// <param name="RelaxedGlucose">Glucose of the programme with parts of cycles: with cycles that do not act on each other nothing absorbs less; null where even that meets no goal.</param>
/// <param name="Gap">How much more the option with the least glucose absorbs at the ensemble's center, as a share of the bound; null where there is neither.</param>
public sealed record CycleMixFront(RegimenFront Front, int Kinds, double SpaceSize, Mass? RelaxedGlucose, double? Gap);
