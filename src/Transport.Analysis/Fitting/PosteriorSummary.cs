using MathNet.Numerics.Statistics;

namespace Transport.Analysis;

/// <summary>Draws of one coordinate in the words of its parameter.</summary>
internal static class PosteriorSummary
{
    private const double Coverage = 0.90;

    // The 95 % quantile of a unit Gaussian.
    private const double Quantile95 = 1.6448536269514722;

    public static PosteriorParameter Of(FittedParameter parameter, Coordinate coordinate, IReadOnlyList<double[]> chains, ChainDiagnostics diagnostics)
    {
        var perUnit = PerUnit(parameter, coordinate);
        var draws = chains.SelectMany(chain => chain).ToArray();
        Array.Sort(draws);
        return new()
        {
            Parameter = parameter.Parameter,
            Name = parameter.Name,
            Unit = parameter.Unit,
            Posterior = Band(
                SortedArrayStatistics.Quantile(draws, 0.5), SortedArrayStatistics.Quantile(draws, 0.05), SortedArrayStatistics.Quantile(draws, 0.95)),
            Prior = Band(0, -Quantile95, Quantile95),
            SpreadLeft = ArrayStatistics.StandardDeviation(draws),
            RHat = diagnostics.RHat,
            BulkEffectiveDraws = diagnostics.BulkEffectiveDraws,
            TailEffectiveDraws = diagnostics.TailEffectiveDraws,
        };

        Band<double> Band(double median, double low, double high) => new(At(median), At(low), At(high), Coverage, Doubt.Parameters);

        double At(double u) => perUnit * coordinate.Value(u);
    }

    /// <summary>From the unit of the kinetics to the printed one.</summary>
    public static double PerUnit(FittedParameter parameter, Coordinate coordinate) => parameter.PriorMedian / coordinate.Value(0.0);
}
