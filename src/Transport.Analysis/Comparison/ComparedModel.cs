namespace Transport.Analysis;

/// <summary>One of several models fitted to the same data, and how well it would have foretold them. Densities in natural logarithms, ratios per unit of the ratio.</summary>
public sealed record ComparedModel
{
    /// <summary>What the comparison calls it.</summary>
    public required string Name { get; init; }

    /// <summary>The fit.</summary>
    public required FittedModel Fit { get; init; }

    /// <summary>Log likelihood of the data at the fit, where the prior too has pulled.</summary>
    public required double LogLikelihood { get; init; }

    /// <summary>
    /// The largest log likelihood that any parameters reach, the prior of the membrane left out. What is known of each residual volume counts as one datum more. Null
    /// where <see cref="CorrectedAkaike"/> is not defined.
    /// </summary>
    public required double? LargestLogLikelihood { get; init; }

    /// <summary>Free parameters, residual volumes included.</summary>
    public required int ParameterCount { get; init; }

    /// <summary>
    /// AICc: −2 ln L + 2k + 2k(k + 1)/(n − k − 1), smaller is better. Null where n − k − 1 is not positive (few data: the usual case), or where the data alone do not
    /// tell the parameters. Hurvich and Tsai, Biometrika 1989;76:297 (memory).
    /// </summary>
    public required double? CorrectedAkaike { get; init; }

    /// <summary>
    /// Expected log predictive density by WAIC: Σ ln mean p(yᵢ) − Σ var ln p(yᵢ), over the draws; larger is better (Watanabe, J Mach Learn Res 2010;11:3571, memory). Not
    /// scaled by −2.
    /// </summary>
    public required double WidelyApplicable { get; init; }

    /// <summary>Expected log predictive density by leaving one out: Σ ln p(yᵢ | all others); larger is better (Vehtari, Gelman and Gabry, Stat Comput 2017;27:1413).</summary>
    public required double LeaveOneOut { get; init; }

    /// <summary>Standard error of that sum, √(n var). With few data it is too small, by a factor of up to two (read: documentation of the R package loo).</summary>
    public required double LeaveOneOutError { get; init; }

    /// <summary>How many parameters the data had to move: what leaving one out costs.</summary>
    public required double EffectiveParameters { get; init; }

    /// <summary>This model's <see cref="LeaveOneOut"/> less the best one's: zero or negative.</summary>
    public required double Difference { get; init; }

    /// <summary>Standard error of the difference, datum by datum; 0 for the best.</summary>
    public required double DifferenceError { get; init; }

    /// <summary>The largest Pareto shape of the weights that leave one out.</summary>
    public required double LargestParetoShape { get; init; }

    /// <summary>Data for which the weights did not serve, so that the posterior without them was drawn from anew.</summary>
    public required int DrawnAnew { get; init; }

    /// <summary>What the data say of it beside the best.</summary>
    /// <remarks>Below 4 two models predict alike (Sivula, Magnusson and Vehtari 2020, read as cited in the documentation of an R package); twice the error: choice.</remarks>
    public required ModelVerdict Verdict { get; init; }

    /// <summary>Each fitted observation, then the fall of sodium in the first hour of each exchange that has it.</summary>
    public required IReadOnlyList<PredictiveCheck> Checks { get; init; }
}
