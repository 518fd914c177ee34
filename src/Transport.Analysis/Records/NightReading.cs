namespace Transport.Analysis;

/// <summary>One number of a night beside what was expected of it.</summary>
/// <param name="Channel">Which.</param>
/// <param name="Observed">What was written, mL or min.</param>
/// <param name="Expected">Mean of what was to be expected before this number was seen.</param>
/// <param name="Deviation">Its standard deviation, night-to-night variation included.</param>
/// <param name="Score">Standardised: normal with SD 1 where nothing has changed.</param>
public sealed record NightReading(NightChannel Channel, double Observed, double Expected, double Deviation, double Score);
