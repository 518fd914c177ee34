namespace Transport;

/// <summary>One index beside the mean and SD of a series.</summary>
/// <param name="Index">The index.</param>
/// <param name="Reference">Its distribution in the series.</param>
public sealed record ComparedIndex(IndexValue Index, ReferenceDistribution Reference)
{
    /// <summary>(value − mean) / SD.</summary>
    public double ZScore => Reference.ZScore(Index.Value);

    /// <summary>Percentage of the series below the value, 0 to 100.</summary>
    public double Percentile => Reference.Percentile(Index.Value);
}
