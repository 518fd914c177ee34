namespace Transport;

/// <summary>What goes on in the cavity.</summary>
public enum RegimenPhase
{
    /// <summary>A fill of the night.</summary>
    Fill,

    /// <summary>A dwell of the night.</summary>
    Dwell,

    /// <summary>A drain of the night.</summary>
    Drain,

    /// <summary>A fill of the day.</summary>
    DayFill,

    /// <summary>A dwell of the day, or what of it is dry.</summary>
    Day,

    /// <summary>The drain before the first fill of the next night.</summary>
    EveningDrain,

    /// <summary>A drain of the day that is not its last.</summary>
    DayDrain,
}
