namespace Transport;

/// <summary>Mean and standard deviation of an index in a population, taken as normal.</summary>
public sealed record ReferenceDistribution
{
    /// <summary>A distribution.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The mean is not finite, or the standard deviation not positive.</exception>
    public ReferenceDistribution(double mean, double standardDeviation)
    {
        Mean = Require.Finite(mean, "");
        StandardDeviation = Require.Positive(standardDeviation, "");
    }

    /// <summary>Mean, in the unit of the index.</summary>
    public double Mean { get; }

    /// <summary>Standard deviation, in the unit of the index.</summary>
    public double StandardDeviation { get; }

    /// <summary>(value − mean) / standard deviation.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public double ZScore(double value) => (Require.Finite(value, "") - Mean) / StandardDeviation;

    /// <summary>Percentage of the population below a value, 0 to 100.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public double Percentile(double value) => 100.0 * NormalDistribution.Cumulative(ZScore(value));
}
