namespace Transport;

/// <summary>The four classes and their names.</summary>
public static class TransportCategories
{
    /// <summary>The four, slowest first.</summary>
    public static IReadOnlyList<TransportCategory> All { get; } =
        [TransportCategory.Slow, TransportCategory.SlowAverage, TransportCategory.FastAverage, TransportCategory.Fast];

    /// <summary>Today's word, with the class name of 1987 in brackets.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not one of the four.</exception>
    public static string Name(this TransportCategory category) => category switch
    {
        TransportCategory.Slow => "slow (Low)",
        TransportCategory.SlowAverage => "slow-average (Low-average)",
        TransportCategory.FastAverage => "fast-average (High-average)",
        TransportCategory.Fast => "fast transfer (High)",
        _ => throw new ArgumentOutOfRangeException(nameof(category), category, "Not a transport category."),
    };
}
