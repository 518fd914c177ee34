namespace Transport;

/// <summary>A complete drain during the dwell, weighed and given back, so that the volume at that time is known.</summary>
/// <param name="Time">Dwell time of the drain.</param>
/// <param name="Volume">Volume drained; more than zero.</param>
public sealed record TemporaryDrain(TimeSpan Time, Volume Volume)
{
    /// <summary>Volume drained.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero or negative.</exception>
    public Volume Volume
    {
        get;
        init => field = Require.MoreThanZero(value, nameof(Volume));
    }
    = Require.MoreThanZero(Volume, nameof(Volume));
}
