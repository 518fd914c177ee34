namespace Transport;

/// <summary>An index on a date.</summary>
/// <param name="Date">Date of the test.</param>
/// <param name="Index">The index, with its own assay error.</param>
public sealed record SerialPoint(DateOnly Date, IndexValue Index);
