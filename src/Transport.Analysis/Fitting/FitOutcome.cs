namespace Transport.Analysis;

/// <summary>What became of one test of many.</summary>
/// <param name="Index">Which of them, from 0.</param>
/// <param name="Fit">Its fit; null where there is none.</param>
/// <param name="Failure">Why there is none; null where there is one.</param>
public sealed record FitOutcome(int Index, FittedMembrane? Fit, Finding? Failure);
