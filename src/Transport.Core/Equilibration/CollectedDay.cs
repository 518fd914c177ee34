namespace Transport;

/// <summary>All drains of a day, its urine, and blood: what the dose and the balances are measured from.</summary>
public sealed record CollectedDay
{
    /// <summary>Whose collection it is.</summary>
    public required Patient Patient { get; init; }

    /// <summary>Date on which it ended; null where not written down.</summary>
    public DateOnly? Date { get; init; }

    /// <summary>How long was collected; results are scaled to 24 h.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not between 0 and 72 h.</exception>
    public required TimeSpan Duration
    {
        get;
        init => field = value > TimeSpan.Zero && value <= TimeSpan.FromHours(72)
            ? value : throw new ArgumentOutOfRangeException(nameof(Duration), value, "Expected more than 0 and at most 72 h.");
    }

    /// <summary>How creatinine was measured.</summary>
    public required CreatinineAssay CreatinineAssay { get; init; }

    /// <summary>Every bag, or the pool of all.</summary>
    public required IReadOnlyList<CollectedDrain> Drains { get; init; }

    /// <summary>Urine; null where nothing is said about it, a volume of zero where there is none.</summary>
    public CollectedUrine? Urine { get; init; }

    /// <summary>Blood.</summary>
    public required IReadOnlyList<PlasmaSample> Plasma { get; init; }

    /// <summary>Clock time of the blood; null where not written down. On a cycler, plasma before and after the night differ.</summary>
    public TimeOnly? PlasmaClock { get; init; }
}
