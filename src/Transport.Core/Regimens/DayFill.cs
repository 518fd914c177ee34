namespace Transport;

/// <summary>What is left in the cavity for the day after the last drain of the night.</summary>
public sealed record DayFill
{
    /// <summary>A day fill. A dry day has none: null, not zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The volume is zero or negative.</exception>
    public DayFill(DialysisSolution solution, Volume volume)
    {
        ArgumentNullException.ThrowIfNull(solution);
        Require.Positive(volume.Milliliters, "mL", nameof(volume));
        Solution = solution;
        Volume = volume;
    }

    /// <summary>The fresh solution.</summary>
    public DialysisSolution Solution { get; }

    /// <summary>Volume instilled.</summary>
    public Volume Volume { get; }
}
