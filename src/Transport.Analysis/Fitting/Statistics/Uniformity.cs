using System.Collections.Immutable;
using MathNet.Numerics.Distributions;

namespace Transport.Analysis;

/// <summary>Whether ranks are spread evenly: simulation-based calibration of a posterior.</summary>
/// <remarks>
/// A truth drawn from the prior and data simulated from it: the rank of the truth among draws of the posterior is uniform if, and as a rule only if, prior, likelihood and sampler agree (Talts et
/// al. 2018, memory). The band of the empirical distribution holds everywhere at once (after Säilynoja, Bürkner and Vehtari 2022, memory), with its
/// probability computed exactly, bin by bin.
/// </remarks>
internal static class Uniformity
{
    /// <summary>How many draws are smaller than the truth; 0 to their number.</summary>
    public static int RankOf(double truth, IEnumerable<double> draws) => draws.Count(draw => draw < truth);

    /// <summary>Ranks counted in bins of equal width.</summary>
    /// <param name="ranks">Ranks from 0 to the largest.</param>
    /// <param name="largest">The largest possible: the number of draws.</param>
    /// <param name="bins">Bins; they have to divide the number of possible ranks, largest + 1.</param>
    /// <exception cref="ArgumentException">The bins do not divide the ranks evenly, or a rank is out of range.</exception>
    public static ImmutableArray<int> Histogram(IEnumerable<int> ranks, int largest, int bins)
    {
        if (bins < 1 || (largest + 1) % bins != 0)
        {
            throw new ArgumentException("Expected bins that divide the number of possible ranks evenly.", nameof(bins));
        }

        var counts = new int[bins];
        foreach (var rank in ranks)
        {
            if (rank < 0 || rank > largest)
            {
                throw new ArgumentException("Expected ranks from 0 to the largest.", nameof(ranks));
            }

            counts[rank / ((largest + 1) / bins)]++;
        }

        return [.. counts];
    }

    /// <summary>Probability of counts at least this uneven if all bins are equally likely, by Pearson's χ²; asks for some five in each bin.</summary>
    public static double ChiSquareProbability(IReadOnlyList<int> counts)
    {
        var expected = (double)counts.Sum() / counts.Count;
        return 1 - ChiSquared.CDF(counts.Count - 1, counts.Sum(count => (count - expected) * (count - expected) / expected));
    }

    /// <summary>Successes that a stated chance is compatible with: a central interval that holds at least the given probability.</summary>
    public static (int Low, int High) Tolerance(int trials, double chance, double probability)
    {
        var tail = (1 - probability) / 2;
        return (Quantile(trials, chance, tail), Quantile(trials, chance, 1 - tail));
    }

    /// <summary>Bounds of the cumulated counts, bin by bin, that all hold at once with at least the given probability if the bins are equally likely.</summary>
    /// <param name="count">Ranks.</param>
    /// <param name="bins">Bins.</param>
    /// <param name="probability">That every cumulated count is within its bounds.</param>
    public static ImmutableArray<(int Low, int High)> CumulatedBand(int count, int bins, double probability)
    {
        // The chance of one bin's bounds that gives the wanted one for all: between the wanted (one bin) and Bonferroni's.
        var (narrow, wide) = (probability, 1 - (1 - probability) / bins);
        for (var i = 0; i < 30; i++)
        {
            var middle = (narrow + wide) / 2;
            (narrow, wide) = ProbabilityWithin(Bounds(count, bins, middle), count) < probability ? (middle, wide) : (narrow, middle);
        }

        return Bounds(count, bins, wide);
    }

    /// <summary>Whether every cumulated count is within the band.</summary>
    public static bool IsWithin(IReadOnlyList<int> counts, IReadOnlyList<(int Low, int High)> band)
    {
        var sum = 0;
        for (var b = 0; b < counts.Count; b++)
        {
            sum += counts[b];
            if (sum < band[b].Low || sum > band[b].High)
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Probability that evenly spread ranks stay within bounds: the cumulated count is a Markov chain with binomial steps.</summary>
    internal static double ProbabilityWithin(IReadOnlyList<(int Low, int High)> band, int count)
    {
        var at = new double[count + 1];
        at[0] = 1;
        for (var b = 0; b < band.Count; b++)
        {
            var next = new double[count + 1];
            for (var from = 0; from <= count; from++)
            {
                for (var to = Math.Max(from, band[b].Low); at[from] > 0 && to <= band[b].High; to++)
                {
                    next[to] += at[from] * Binomial.PMF(1.0 / (band.Count - b), count - from, to - from);
                }
            }

            at = next;
        }

        return at.Sum();
    }

    private static ImmutableArray<(int Low, int High)> Bounds(int count, int bins, double probability) =>
        [.. Enumerable.Range(1, bins).Select(b => Tolerance(count, (double)b / bins, probability))];

    // The smallest number whose distribution function reaches the level.
    private static int Quantile(int trials, double chance, double level)
    {
        var (sum, k) = (Binomial.PMF(chance, trials, 0), 0);
        while (sum < level && k < trials)
        {
            k++;
            sum += Binomial.PMF(chance, trials, k);
        }

        return k;
    }
}
