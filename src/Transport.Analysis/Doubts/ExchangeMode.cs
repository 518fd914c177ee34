namespace Transport.Analysis;

/// <summary>How an exchange is made, as far as the model's misses depend on it.</summary>
public enum ExchangeMode
{
    /// <summary>A dwell of hours that stands alone, as in a test: by hand, by day, or a night of one exchange.</summary>
    Alone,

    /// <summary>One of several cycles of a night.</summary>
    Cycle,
}
