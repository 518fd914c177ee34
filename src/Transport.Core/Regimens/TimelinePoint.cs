namespace Transport;

/// <summary>The cavity at one moment.</summary>
/// <param name="Time">From the start of the night.</param>
/// <param name="Phase">What goes on.</param>
/// <param name="Volume">Volume in the cavity.</param>
/// <param name="Glucose">Its glucose.</param>
/// <param name="Sodium">Its sodium.</param>
public readonly record struct TimelinePoint(TimeSpan Time, RegimenPhase Phase, Volume Volume, Concentration Glucose, Concentration Sodium);
