namespace Transport.Analysis;

/// <summary>An exchange that could be carried out and sampled.</summary>
/// <param name="Name">What advice calls it.</param>
/// <param name="Dwell">Solution, fill, duration and residual fluid.</param>
public sealed record PlannedExchange(string Name, Dwell Dwell)
{
    /// <summary>Doubt about the residual volume, as the standard deviation of its logarithm.</summary>
    /// <value>The default is 0.3, of a volume that nobody measured (choice).</value>
    /// <exception cref="ArgumentOutOfRangeException">Zero, negative or not finite.</exception>
    public double ResidualLogDeviation
    {
        get;
        init => field = Require.Positive(value, "", nameof(ResidualLogDeviation));
    }
    = 0.3;
}
