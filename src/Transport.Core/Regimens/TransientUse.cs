namespace Transport;

/// <summary>Which fills start the initial transient, by which diffusion is faster early in a dwell.</summary>
public enum TransientUse
{
    /// <summary>None.</summary>
    None,

    /// <summary>
    /// The first fill of the night. Restarted with every fill, six cycles of 2 L clear 40 to 43 L of creatinine a week where 35 are published
    /// (Perit Dial Int 2021, doi 10.1177/08968608211010055, read).
    /// </summary>
    FirstFill,

    /// <summary>Every fill, the day fill too.</summary>
    EveryFill,
}
