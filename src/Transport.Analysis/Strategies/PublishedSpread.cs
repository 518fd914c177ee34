namespace Transport.Analysis;

/// <summary>How a paper states a population: arithmetic mean and standard deviation.</summary>
/// <param name="Mean">Mean, in the unit that the place says.</param>
/// <param name="StandardDeviation">Standard deviation between people, in the same unit.</param>
public sealed record PublishedSpread(double Mean, double StandardDeviation)
{
    /// <summary>Mean.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero, negative or not finite.</exception>
    public double Mean { get; init => field = Require.Positive(value, "", nameof(Mean)); } = Require.Positive(Mean, "", nameof(Mean));

    /// <summary>Standard deviation between people.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative or not finite.</exception>
    public double StandardDeviation
    {
        get;
        init => field = Require.NotNegative(value, "", nameof(StandardDeviation));
    }
    = Require.NotNegative(StandardDeviation, "", nameof(StandardDeviation));
}
