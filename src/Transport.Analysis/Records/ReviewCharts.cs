namespace Transport.Analysis;

/// <summary>The charts of a review. Together they are to signal at most once in two years of a person in whom nothing changes.</summary>
/// <remarks>
/// Each limit is that of <see cref="CusumChart.Of"/> or <see cref="EwmaChart.Of"/> at the stated run length; rounded, and a test makes them again. What they
/// do in a world with wander, tails and a wrong fit is measured: docs/studies/record-review.md.
/// </remarks>
public sealed record ReviewCharts
{
    /// <summary>For slow change of ultrafiltration: λ = 0.05, in-control run length 2,500 nights.</summary>
    public EwmaChart SlowUltrafiltration { get; init; } = new(0.05, 3.203);

    /// <summary>For sudden change of ultrafiltration: k = 0.75, 4,000 nights.</summary>
    public CusumChart SuddenUltrafiltration { get; init; } = new(0.75, 4.921);

    /// <summary>For initial drain, first cycle and drain time: k = 0.75, 8,000 nights each.</summary>
    public CusumChart Drains { get; init; } = new(0.75, 5.383);

    /// <summary>The defaults.</summary>
    public static ReviewCharts Default { get; } = new();
}
