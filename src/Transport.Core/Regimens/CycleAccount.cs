namespace Transport;

/// <summary>One cycle of a night as it is accounted for: what ran in and out, and when.</summary>
/// <remarks>
/// Only a simulation knows what was in the cavity before and after. A record book has the two volumes, perhaps times: what it calls ultrafiltration
/// holds the carry-over (D − F = crossed the membrane + carried in − left behind).
/// </remarks>
public sealed record CycleAccount
{
    /// <summary>A cycle.</summary>
    /// <param name="filled">Volume instilled.</param>
    /// <param name="drained">Volume drained; zero where nothing came.</param>
    /// <exception cref="ArgumentOutOfRangeException">Nothing was filled, or the drain is negative.</exception>
    public CycleAccount(Volume filled, Volume drained)
    {
        Filled = filled;
        Drained = drained;
    }

    /// <summary>Volume instilled.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero or negative.</exception>
    public Volume Filled
    {
        get;
        init => field = Require.MoreThanZero(value, nameof(Filled));
    }

    /// <summary>Volume drained.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public Volume Drained
    {
        get;
        init => field = Require.ZeroOrMore(value, nameof(Drained));
    }

    /// <summary>From the end of the fill to the start of the drain; null: not written down.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public TimeSpan? DwellTime
    {
        get;
        init => field = value is { } time ? Require.ZeroOrMore(time, nameof(DwellTime)) : null;
    }

    /// <summary>The dwell time that was planned; null: not known.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public TimeSpan? PlannedDwellTime
    {
        get;
        init => field = value is { } time ? Require.ZeroOrMore(time, nameof(PlannedDwellTime)) : null;
    }

    /// <summary>How long the drain took; null: not written down.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public TimeSpan? DrainTime
    {
        get;
        init => field = value is { } time ? Require.ZeroOrMore(time, nameof(DrainTime)) : null;
    }

    /// <summary>Volume in the cavity before the fill; null: not known, as in any record.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public Volume? CarriedIn
    {
        get;
        init => field = value is { } volume ? Require.ZeroOrMore(volume, nameof(CarriedIn)) : null;
    }

    /// <summary>Volume in the cavity after the drain; null: not known, as in any record.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public Volume? LeftBehind
    {
        get;
        init => field = value is { } volume ? Require.ZeroOrMore(volume, nameof(LeftBehind)) : null;
    }

    /// <summary>Drained minus filled: what is written down as the cycle's ultrafiltration, carry-over included.</summary>
    public Volume Ultrafiltration => Drained - Filled;

    /// <summary>The part of <see cref="Ultrafiltration"/> that only moved from one cycle to another: carried in less left behind.</summary>
    public Volume? CarryOver => CarriedIn - LeftBehind;

    /// <summary>What crossed the membrane: <see cref="Ultrafiltration"/> without the carry-over.</summary>
    public Volume? CrossedMembrane => Ultrafiltration - CarryOver;

    /// <summary>Actual less planned dwell time: negative where time was lost.</summary>
    public TimeSpan? DwellDeviation => DwellTime - PlannedDwellTime;

    internal static CycleAccount Of(CycleOutcome cycle) => new(cycle.Filled, cycle.Drained)
    {
        DwellTime = cycle.DwellTime,
        PlannedDwellTime = cycle.PlannedDwellTime,
        DrainTime = cycle.DrainTime,
        CarriedIn = cycle.Carried.Volume,
        LeftBehind = cycle.LeftBehind,
    };
}
