namespace Transport.Analysis;

/// <summary>How nights of one person differ though nothing has changed: what a review starts with, before the person's own nights have spoken.</summary>
/// <remarks>No night-to-night figure within a person is in print; see <see cref="NightVariation"/>. All are choices unless said otherwise.</remarks>
public sealed record NightNoise
{
    /// <summary>
    /// Standard deviation of the volume left in the cavity after a drain, mL. 21 % of 200 to 250 mL (night-to-night variation 21 ± 15 % in children;
    /// Schmitt et al., Adv Perit Dial 1999, read; the volume memory).
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 0 to 1000 mL.</exception>
    public double ResidualMilliliters
    {
        get;
        init => field = Require.InRange(value, 0, 1000, "mL", nameof(ResidualMilliliters));
    }
    = 50;

    /// <summary>Share of the variance of a night's ultrafiltration that wanders slowly: drink, salt, weight.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 0 to 0.9.</exception>
    public double WanderShare
    {
        get;
        init => field = Require.InRange(value, 0, 0.9, "", nameof(WanderShare));
    }
    = 0.10;

    /// <summary>Correlation of that wander from one night to the next.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 0 to 0.99.</exception>
    public double WanderCorrelation
    {
        get;
        init => field = Require.InRange(value, 0, 0.99, "", nameof(WanderCorrelation));
    }
    = 0.85;

    /// <summary>Standard deviation of what a wet day returns, mL.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 1 to 2000 mL.</exception>
    public double WetDayMilliliters
    {
        get;
        init => field = Require.InRange(value, 1, 2000, "mL", nameof(WetDayMilliliters));
    }
    = 80;

    /// <summary>The same of a dry day.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 1 to 2000 mL.</exception>
    public double DryDayMilliliters
    {
        get;
        init => field = Require.InRange(value, 1, 2000, "mL", nameof(DryDayMilliliters));
    }
    = 25;

    /// <summary>Standard deviation of the first cycle's difference beyond what is left after drains, mL.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 1 to 2000 mL.</exception>
    public double FirstCycleMilliliters
    {
        get;
        init => field = Require.InRange(value, 1, 2000, "mL", nameof(FirstCycleMilliliters));
    }
    = 60;

    /// <summary>How far people's first cycles differ from each other, mL (mean −230 mL in 39 people, read).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 0 to 2000 mL.</exception>
    public double FirstCycleOffsetMilliliters
    {
        get;
        init => field = Require.InRange(value, 0, 2000, "mL", nameof(FirstCycleOffsetMilliliters));
    }
    = 250;

    /// <summary>Standard deviation of the mean drain time, min.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 0.1 to 60 min.</exception>
    public double DrainTimeMinutes
    {
        get;
        init => field = Require.InRange(value, 0.1, 60, "min", nameof(DrainTimeMinutes));
    }
    = 2;

    /// <summary>Standard deviation of the average dwell beside its plan, less what is written as lost or what drains took longer, min.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 0.1 to 60 min.</exception>
    public double AverageDwellMinutes
    {
        get;
        init => field = Require.InRange(value, 0.1, 60, "min", nameof(AverageDwellMinutes));
    }
    = 3;

    /// <summary>How far a person's nights differ from the model for reasons that the fit does not know (lying, another machine), mL.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 0 to 2000 mL.</exception>
    public double OffsetMilliliters
    {
        get;
        init => field = Require.InRange(value, 0, 2000, "mL", nameof(OffsetMilliliters));
    }
    = 120;

    /// <summary>For how many nights the starting values count beside the person's own.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 1 to 365 nights.</exception>
    public double StartingNights
    {
        get;
        init => field = Require.InRange(value, 1, 365, "nights", nameof(StartingNights));
    }
    = 14;

    /// <summary>The defaults.</summary>
    public static NightNoise Default { get; } = new();
}
