namespace Transport;

/// <summary>The fullest moment of the 24 h.</summary>
/// <param name="Volume">Volume in the cavity.</param>
/// <param name="Time">When, from the start of the night.</param>
/// <param name="Phase">In which phase.</param>
public readonly record struct PeakVolume(Volume Volume, TimeSpan Time, RegimenPhase Phase);
