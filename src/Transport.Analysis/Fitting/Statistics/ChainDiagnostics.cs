using MathNet.Numerics.Distributions;
using MathNet.Numerics.Statistics;

namespace Transport.Analysis;

/// <summary>Whether several chains of one quantity tell one story, and how many independent draws they are worth.</summary>
/// <remarks>
/// Vehtari, Gelman, Simpson, Carpenter and Bürkner, Bayesian Analysis 2021;16:667 (memory of the definitions; the numbers are compared with those authors' own
/// program). Every chain is split in half, so that a drift shows; ranks are turned into normal scores, so that heavy tails do no harm.
/// </remarks>
/// <param name="RHat">Ratio of the spread of all draws to that within the halves: the larger of the one of location and the one of scale; infinite for draws that never move.</param>
/// <param name="BulkEffectiveDraws">Independent draws that the middle is worth; 0 for draws that never move.</param>
/// <param name="TailEffectiveDraws">The same of the 5 % and the 95 % quantile, the smaller.</param>
/// <param name="Mean">Mean of all draws.</param>
/// <param name="MeanError">Monte Carlo standard error of the mean; infinite for draws that never move.</param>
internal sealed record ChainDiagnostics(double RHat, double BulkEffectiveDraws, double TailEffectiveDraws, double Mean, double MeanError)
{
    /// <summary>The authors' limits: R-hat under 1.01, and a hundred effective draws from each of four chains.</summary>
    public bool IsConverged => RHat < 1.01 && BulkEffectiveDraws >= 400 && TailEffectiveDraws >= 400;

    /// <summary>Judges chains of equal length.</summary>
    /// <exception cref="ArgumentException">Fewer than 8 draws in a chain, chains of different lengths, or a draw that is not finite.</exception>
    public static ChainDiagnostics Of(IReadOnlyList<double[]> chains)
    {
        if (chains.Count == 0 || chains[0].Length < 8 || chains.Any(chain => chain.Length != chains[0].Length || !chain.All(double.IsFinite)))
        {
            throw new ArgumentException("Expected at least one chain, of equal lengths of at least 8 finite draws.", nameof(chains));
        }

        var all = chains.SelectMany(chain => chain).ToArray();
        var halves = Halves(chains);
        var median = all.Median();
        var mean = all.Mean();
        var (low, high) = (all.QuantileCustom(0.05, QuantileDefinition.R7), all.QuantileCustom(0.95, QuantileDefinition.R7));
        var forMean = EffectiveDraws(halves);
        return new(
            Math.Max(SpreadRatio(NormalScores(halves)), SpreadRatio(NormalScores(Halves(Each(chains, draw => Math.Abs(draw - median)))))),
            EffectiveDraws(NormalScores(halves)),
            Math.Min(EffectiveDrawsBelow(chains, low), EffectiveDrawsBelow(chains, high)),
            mean,
            forMean > 0 ? all.StandardDeviation() / Math.Sqrt(forMean) : double.PositiveInfinity);
    }

    /// <summary>Independent draws that the share of draws at or below a limit is worth.</summary>
    public static double EffectiveDrawsBelow(IReadOnlyList<double[]> chains, double limit) =>
        EffectiveDraws(Halves(Each(chains, draw => draw <= limit ? 1.0 : 0)));

    private static double[][] Each(IReadOnlyList<double[]> chains, Func<double, double> map) => [.. chains.Select(chain => Array.ConvertAll(chain, draw => map(draw)))];

    // The middle draw of an odd chain belongs to neither half.
    private static double[][] Halves(IReadOnlyList<double[]> chains)
    {
        var half = chains[0].Length / 2;
        return [.. chains.SelectMany(chain => new[] { chain[..half], chain[^half..] })];
    }

    private static double[][] NormalScores(double[][] chains)
    {
        var ranks = chains.SelectMany(chain => chain).ToArray().Ranks(RankDefinition.Average);
        var scores = Array.ConvertAll(ranks, rank => Normal.InvCDF(0, 1, (rank - 0.375) / (ranks.Length + 0.25)));
        return [.. scores.Chunk(chains[0].Length)];
    }

    private static double SpreadRatio(double[][] chains)
    {
        var within = chains.Average(chain => chain.Variance());
        var total = TotalVariance(chains, within);
        return total > 0 && within > 0 ? Math.Sqrt(total / within) : double.PositiveInfinity;
    }

    // (n − 1)/n of the variance within chains, and that of their means.
    private static double TotalVariance(double[][] chains, double within)
    {
        var draws = chains[0].Length;
        return within * (draws - 1) / draws + (chains.Length > 1 ? chains.Select(chain => chain.Mean()).Variance() : 0);
    }

    /// <summary>Draws over the integrated autocorrelation, which is cut where sums of neighboring pairs turn negative and made monotone (Geyer).</summary>
    private static double EffectiveDraws(double[][] chains)
    {
        var draws = chains[0].Length;
        var means = Array.ConvertAll(chains, chain => chain.Mean());
        var within = chains.Average(chain => chain.Variance());
        var total = TotalVariance(chains, within);
        if (!(total > 0))
        {
            return 0;
        }

        var (sum, pair, even) = (0.0, 1 + Autocorrelation(1), 1.0);
        for (var lag = 0; pair > 0 && lag < draws - 5;)
        {
            sum += pair;
            lag += 2;
            even = Autocorrelation(lag);
            pair = Math.Min(pair, even + Autocorrelation(lag + 1));
        }

        // Of the last pair the first still counts, if it is positive: it lowers the estimate's variance for antithetic chains.
        var time = 2 * sum - 1 + Math.Max(0, even);
        var count = (double)chains.Length * draws;
        return count / Math.Max(time, 1 / Math.Log10(count));

        double Autocorrelation(int lag)
        {
            var covariance = 0.0;
            for (var c = 0; c < chains.Length; c++)
            {
                var (chain, mean) = (chains[c], means[c]);
                for (var i = lag; i < draws; i++)
                {
                    covariance += (chain[i] - mean) * (chain[i - lag] - mean);
                }
            }

            return 1 - (within - covariance / ((double)chains.Length * draws)) / total;
        }
    }
}
