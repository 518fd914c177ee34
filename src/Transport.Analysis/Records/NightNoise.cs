namespace Transport.Analysis;

/// <summary>How nights of one person differ though nothing has changed: what a review starts with, before the person's own nights have spoken.</summary>
/// <remarks>No night-to-night figure within a person is in print; see <see cref="NightVariation"/>. All are choices unless said otherwise.</remarks>
public sealed record NightNoise
{
    /// <summary>
    /// Standard deviation of the volume left in the cavity after a drain, mL. 21 % of 200 to 250 mL (night-to-night variation 21 ± 15 % in children;
    /// Schmitt et al., Adv Perit Dial 1999, read; the volume memory).
    /// </summary>
    public double ResidualMilliliters { get; init; } = 50;

    /// <summary>Share of the variance of a night's ultrafiltration that wanders slowly: drink, salt, weight.</summary>
    public double WanderShare { get; init; } = 0.10;

    /// <summary>Correlation of that wander from one night to the next.</summary>
    public double WanderCorrelation { get; init; } = 0.85;

    /// <summary>Standard deviation of what a wet day returns, mL.</summary>
    public double WetDayMilliliters { get; init; } = 80;

    /// <summary>The same of a dry day.</summary>
    public double DryDayMilliliters { get; init; } = 25;

    /// <summary>Standard deviation of the first cycle's difference beyond what is left after drains, mL.</summary>
    public double FirstCycleMilliliters { get; init; } = 60;

    /// <summary>How far people's first cycles differ from each other, mL (mean −230 mL in 39 people, read).</summary>
    public double FirstCycleOffsetMilliliters { get; init; } = 250;

    /// <summary>Standard deviation of the mean drain time, min.</summary>
    public double DrainTimeMinutes { get; init; } = 2;

    /// <summary>How far a person's nights differ from the model for reasons that the fit does not know (lying, another machine), mL.</summary>
    public double OffsetMilliliters { get; init; } = 120;

    /// <summary>For how many nights the starting values count beside the person's own.</summary>
    public double StartingNights { get; init; } = 14;

    /// <summary>The defaults.</summary>
    public static NightNoise Default { get; } = new();
}
