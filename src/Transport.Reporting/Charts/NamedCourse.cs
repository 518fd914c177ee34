namespace Transport.Reporting;

/// <summary>A simulated dwell and what its line is called.</summary>
/// <param name="Name">As printed in the key; what tells it from the others.</param>
/// <param name="Course">The dwell.</param>
public sealed record NamedCourse(string Name, DwellCourse Course)
{
    /// <summary>How its line is drawn, where that says something: dashed what was not tested, dotted what is a population's. Null: by its place.</summary>
    public LinePattern? Pattern { get; init; }
}
