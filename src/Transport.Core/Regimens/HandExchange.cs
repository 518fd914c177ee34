namespace Transport;

/// <summary>An exchange by hand at a clock time: what is in runs out, and this runs in.</summary>
/// <param name="Time">When it begins, that is when the drain of what was in before begins.</param>
/// <param name="Solution">The fresh solution.</param>
/// <param name="Fill">Volume instilled.</param>
public sealed record HandExchange(TimeOnly Time, DialysisSolution Solution, Volume Fill);
