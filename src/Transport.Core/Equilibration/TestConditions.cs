namespace Transport;

/// <summary>What went before a test and how it was carried out. What nobody wrote down is null.</summary>
public sealed record TestConditions
{
    /// <summary>Nothing was written down.</summary>
    public static TestConditions NotStated { get; } = new();

    /// <summary>First day of peritoneal dialysis.</summary>
    public DateOnly? DialysisStart { get; init; }

    /// <summary>Day on which the last peritonitis had resolved.</summary>
    public DateOnly? LastPeritonitis { get; init; }

    /// <summary>Length of the dwell before the test.</summary>
    public TimeSpan? PrecedingDwell { get; init; }

    /// <summary>Osmotic agent of the dwell before the test.</summary>
    public OsmoticAgent? PrecedingAgent { get; init; }

    /// <summary>How long instillation took.</summary>
    public TimeSpan? Instillation { get; init; }

    /// <summary>Years on peritoneal dialysis at a date; null where the start is not known or later.</summary>
    public double? DialysisYears(DateOnly? at) =>
        at is { } day && DialysisStart is { } start && day >= start ? (day.DayNumber - start.DayNumber) / 365.25 : null;
}
