using MathNet.Numerics.Statistics;

namespace Transport.Analysis;

/// <summary>Draws of one coordinate in the words of its parameter.</summary>
internal static class PosteriorSummary
{
    private const double Coverage = 0.90;

    public static PosteriorParameter Of(
        MembraneParameter parameter, double perUnit, Coordinate coordinate, IReadOnlyList<double[]> chains, ChainDiagnostics diagnostics)
    {
        var draws = chains.SelectMany(chain => chain).ToArray();
        Array.Sort(draws);
        return new()
        {
            Parameter = parameter,
            Posterior = Band(
                SortedArrayStatistics.Quantile(draws, 0.5), SortedArrayStatistics.Quantile(draws, 0.05), SortedArrayStatistics.Quantile(draws, 0.95)),
            Prior = Band(0, -NormalDistribution.Quantile95, NormalDistribution.Quantile95),
            SpreadLeft = ArrayStatistics.StandardDeviation(draws),
            RHat = diagnostics.RHat,
            BulkEffectiveDraws = diagnostics.BulkEffectiveDraws,
            TailEffectiveDraws = diagnostics.TailEffectiveDraws,
        };

        Band<double> Band(double median, double low, double high) => new(At(median), At(low), At(high), Coverage, Doubt.Parameters);

        double At(double u) => perUnit * coordinate.Value(u);
    }
}
