namespace Transport.Analysis;

/// <summary>The charts of a review. Together they are to signal at most once in two years of a person in whom nothing changes.</summary>
/// <remarks>
/// But for the first each limit is that of <see cref="CusumChart.Of"/> or <see cref="EwmaChart.Of"/> at the stated run length; rounded, and a test makes them again. What they
/// do in a world with wander, tails and a wrong fit is measured: docs/studies/record-review.md.
/// </remarks>
public sealed record ReviewCharts
{
    // Standard deviations of nights between which the limit of a slow loss goes from one to the other, mL.
    private const double Quiet = 80;
    private const double Usual = 150;

    /// <summary>
    /// For ultrafiltration that is lost slowly, by all numbers of a night together: the logarithm of the likelihood of a loss of a fifth in 60 nights over that of none, summed
    /// over when it began. Of nights that differ by 150 mL or more (SD). A choice, as is <see cref="QuietSlowLossLogRatio"/>: with them all charts together stay below half a
    /// signal a patient-year in the study at each SD.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 1 to 50.</exception>
    public double SlowLossLogRatio
    {
        get;
        init => field = Require.InRange(value, 1, 50, "", nameof(SlowLossLogRatio));
    }
    = 5.2;

    /// <summary>
    /// The same of quiet nights, SD of 80 mL or less; in between in proportion. What wanders and what drains leave behind is less there than a review allows for, so the
    /// same ratio would signal a third as often.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 1 to 50.</exception>
    public double QuietSlowLossLogRatio
    {
        get;
        init => field = Require.InRange(value, 1, 50, "", nameof(QuietSlowLossLogRatio));
    }
    = 3.5;

    /// <summary>
    /// For drains that leave fluid behind after a wet day, where the book has the initial drain and neither cycles nor drain times: the logarithm of the likelihood that a tenth
    /// stays over that of none, by initial drain and ultrafiltration together, summed over the last two weeks of nights on which it may have begun. A choice: with it all charts
    /// of such a book together stay below half a signal a patient-year in the study at each SD.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 1 to 50.</exception>
    public double DrainFaultLogRatio
    {
        get;
        init => field = Require.InRange(value, 1, 50, "", nameof(DrainFaultLogRatio));
    }
    = 7;

    /// <summary>For ultrafiltration that rises slowly, which matters less: λ = 0.05, 8,000 nights, likewise.</summary>
    public EwmaChart SlowRise { get; init; } = new(0.05, 3.563);

    /// <summary>For sudden change of ultrafiltration: k = 0.75, 10,000 nights.</summary>
    public CusumChart SuddenUltrafiltration { get; init; } = new(0.75, 5.532);

    /// <summary>For initial drain, first cycle and drain time: k = 1, 60,000 nights each, since what drains leave behind is skewed and a fault is large.</summary>
    public CusumChart Drains { get; init; } = new(1, 5.056);

    internal double SlowLossLimit(double nightMilliliters) =>
        QuietSlowLossLogRatio + (SlowLossLogRatio - QuietSlowLossLogRatio) * Math.Clamp((nightMilliliters - Quiet) / (Usual - Quiet), 0, 1);

    /// <summary>The defaults.</summary>
    public static ReviewCharts Default { get; } = new();
}
