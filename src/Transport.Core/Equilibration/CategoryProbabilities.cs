namespace Transport;

/// <summary>How probable each class is, given the value and its standard deviation. The four sum to one.</summary>
/// <param name="Slow">Probability of slow (Low).</param>
/// <param name="SlowAverage">Probability of slow-average (Low-average).</param>
/// <param name="FastAverage">Probability of fast-average (High-average).</param>
/// <param name="Fast">Probability of fast transfer (High).</param>
public sealed record CategoryProbabilities(double Slow, double SlowAverage, double FastAverage, double Fast)
{
    /// <summary>Probability of one class.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not one of the four.</exception>
    public double this[TransportCategory category] => category switch
    {
        TransportCategory.Slow => Slow,
        TransportCategory.SlowAverage => SlowAverage,
        TransportCategory.FastAverage => FastAverage,
        TransportCategory.Fast => Fast,
        _ => throw new ArgumentOutOfRangeException(nameof(category), category, "Not a transport category."),
    };
}
