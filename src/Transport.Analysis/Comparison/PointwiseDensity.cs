using MathNet.Numerics.Statistics;

namespace Transport.Analysis;

/// <summary>What draws from a posterior say of the density of one datum.</summary>
/// <param name="AtDraws">ln of the mean density over the draws, which the datum has helped to make.</param>
/// <param name="WidelyApplicable">That less the variance of the logarithm: the datum's share of WAIC.</param>
/// <param name="Weights">The weights that leave the datum out.</param>
internal sealed record PointwiseDensity(double AtDraws, double WidelyApplicable, ParetoSmoothing Weights)
{
    /// <summary>Whether the weights serve.</summary>
    public bool IsReliable => Weights.Shape <= ParetoSmoothing.LargestShape(Weights.LogWeights.Length);

    /// <param name="logDensities">ln p of the datum at each draw.</param>
    /// <param name="logWeights">Logarithms of the weights that leave it out, up to a constant: as a rule those of 1/p.</param>
    public static PointwiseDensity Of(double[] logDensities, double[] logWeights)
    {
        var average = ParetoSmoothing.LogMean(logDensities);
        return new(average, average - logDensities.Variance(), ParetoSmoothing.Of(logWeights));
    }
}
