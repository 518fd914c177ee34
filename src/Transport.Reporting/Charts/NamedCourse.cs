namespace Transport.Reporting;

/// <summary>A simulated dwell and what its line is called.</summary>
/// <param name="Name">As printed in the key; what tells it from the others.</param>
/// <param name="Course">The dwell.</param>
public sealed record NamedCourse(string Name, DwellCourse Course);
