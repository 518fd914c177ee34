namespace Transport.Analysis;

/// <summary>What one cycle of a kind takes and gives, where cycles do not act on each other: a start for a search, not a simulation.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="Minutes">How long it takes.</param>
/// <param name="Ultrafiltration">mL.</param>
/// <param name="Clearance">Its share of the clearance that is asked for.</param>
/// <param name="Glucose">Absorbed, g.</param>
public sealed record CycleType(string Name, double Minutes, double Ultrafiltration, double Clearance, double Glucose);
