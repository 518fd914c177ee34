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

    /// <summary>The day fill runs in.</summary>
    DayFill,

    /// <summary>The day, with or without a day fill.</summary>
    Day,

    /// <summary>The drain before the first fill of the next night.</summary>
    EveningDrain,
}
