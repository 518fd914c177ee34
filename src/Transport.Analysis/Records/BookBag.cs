namespace Transport.Analysis;

/// <summary>Bags of one kind.</summary>
/// <param name="Count">How many.</param>
/// <param name="Volume">What each holds.</param>
/// <param name="Solution">What is in them.</param>
public sealed record BookBag(int Count, Volume Volume, DialysisSolution Solution);
