namespace Transport.Analysis;

/// <summary>Importance weights whose largest are replaced by quantiles of a generalized Pareto distribution fitted to them, and how heavy its tail is.</summary>
/// <remarks>
/// Vehtari, Gelman and Gabry, Stat Comput 2017;27:1413, and Vehtari et al., J Mach Learn Res 2024;25:72 (definitions: memory; the limit of the shape, read in the
/// documentation of the R package loo). The fit: Zhang and Stephens, Technometrics 2009;51:316 (memory).
/// </remarks>
/// <param name="LogWeights">Logarithms of the weights, whose sum is 1.</param>
/// <param name="Shape">k: above <see cref="LargestShape"/> the weights do not tell; negative infinity where all weights of the tail are one.</param>
internal sealed record ParetoSmoothing(double[] LogWeights, double Shape)
{
    /// <summary>Up to which shape so many draws may be reweighted.</summary>
    public static double LargestShape(int draws) => Math.Min(0.7, 1 - 1 / Math.Log10(draws));

    /// <summary>Smooths weights.</summary>
    /// <param name="logWeights">Their logarithms, up to a constant; at least 25.</param>
    public static ParetoSmoothing Of(IReadOnlyList<double> logWeights)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(logWeights.Count, 25);
        var largest = logWeights.Max();
        double[] smoothed = [.. logWeights.Select(weight => weight - largest)];
        var order = Enumerable.Range(0, smoothed.Length).OrderBy(draw => smoothed[draw]).ToArray();
        var count = (int)Math.Ceiling(Math.Min(0.2 * smoothed.Length, 3 * Math.Sqrt(smoothed.Length)));
        var cut = Math.Exp(smoothed[order[^(count + 1)]]);
        double[] excess = [.. order[^count..].Select(draw => Math.Exp(smoothed[draw]) - cut)];
        var shape = double.NegativeInfinity;
        if (excess[0] > 0)
        {
            (shape, var scale) = Fit(excess);
            for (var i = 0; i < count; i++)
            {
                // Never above the largest weight that was seen.
                var quantile = -Math.Log(1 - (i + 0.5) / count);
                smoothed[order[^(count - i)]] = Math.Min(0, Math.Log(cut + scale * (Math.Abs(shape) < 1e-12 ? quantile : (Math.Exp(shape * quantile) - 1) / shape)));
            }
        }

        var sum = LogSum(smoothed);
        return new([.. smoothed.Select(weight => weight - sum)], shape);
    }

    /// <summary>ln Σ exp.</summary>
    public static double LogSum(IReadOnlyList<double> logarithms)
    {
        var largest = logarithms.Max();
        return largest + Math.Log(logarithms.Sum(one => Math.Exp(one - largest)));
    }

    /// <summary>ln of the mean of exp.</summary>
    public static double LogMean(IReadOnlyList<double> logarithms) => LogSum(logarithms) - Math.Log(logarithms.Count);

    /// <summary>Shape and scale of a generalized Pareto distribution, from an ordered sample of positive numbers.</summary>
    /// <remarks>The posterior mean over a grid of k/scale; then the shape is drawn a little to 0.5, as ten more observations would.</remarks>
    public static (double Shape, double Scale) Fit(IReadOnlyList<double> ordered)
    {
        const double prior = 3;
        var n = ordered.Count;
        var points = 30 + (int)Math.Sqrt(n);
        var quartile = ordered[(int)(n / 4.0 + 0.5) - 1];
        double[] ratios = [.. Enumerable.Range(1, points).Select(j => 1 / ordered[^1] + (1 - Math.Sqrt(points / (j - 0.5))) / (prior * quartile))];
        double[] likelihoods = [.. ratios.Select(ratio =>
        {
            var k = ShapeAt(ratio);
            return n * (Math.Log(-ratio / k) - k - 1);
        })];
        var sum = LogSum(likelihoods);
        var mean = ratios.Zip(likelihoods, (ratio, likelihood) => ratio * Math.Exp(likelihood - sum)).Sum();
        var shape = ShapeAt(mean);
        return ((shape * n + 5) / (n + 10), -shape / mean);

        double ShapeAt(double ratio) => ordered.Average(x => Math.Log(1 - ratio * x));
    }
}
