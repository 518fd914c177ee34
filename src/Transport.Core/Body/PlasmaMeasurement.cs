namespace Transport;

/// <summary>A plasma level with the clock time of its sample.</summary>
/// <remarks>
/// On automated treatment the time matters: blood drawn in the morning is below the mean of the day and blood drawn in the evening above it,
/// which moves a Kt/V by about 6 % either way (computed).
/// </remarks>
/// <param name="Level">What the laboratory gave.</param>
/// <param name="Time">When the blood was drawn.</param>
public sealed record PlasmaMeasurement(Concentration Level, TimeOnly Time)
{
    /// <summary>What the laboratory gave.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero or negative.</exception>
    public Concentration Level
    {
        get;
        init => field = Require.MoreThanZero(value, nameof(Level));
    }
    = Require.MoreThanZero(Level, nameof(Level));

    /// <summary>On which day of the rhythm, from 0; a day begins with its night. Zero where every day is the same.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public int Day
    {
        get;
        init => field = value >= 0 ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "Expected zero or more.");
    }
}
