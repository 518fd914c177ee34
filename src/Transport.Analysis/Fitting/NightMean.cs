namespace Transport.Analysis;

/// <summary>One number of many nights with one regimen: their mean, as an observation of a fit.</summary>
/// <param name="Regimen">What was run.</param>
/// <param name="Nights">How many nights the mean is of.</param>
/// <param name="Observation">
/// The mean. Its own deviation is that of a mean of so many nights; the shared one is how far this person may be from the model for other reasons, which no number of
/// nights makes smaller.
/// </param>
public sealed record NightMean(Regimen Regimen, int Nights, Observation Observation);
