namespace Transport.Analysis;

/// <summary>An observation, or a quantity made of several, beside what a fitted model would have measured: data replicated from its posterior, errors included.</summary>
public sealed record PredictiveCheck
{
    /// <summary>Which of the exchanges, from 0; null: a mean of nights.</summary>
    public required int? Exchange { get; init; }

    /// <summary>What it is of: "D/P creatinine at 240 min".</summary>
    public required string Name { get; init; }

    /// <summary>Its unit; empty where it has none.</summary>
    public required string Unit { get; init; }

    /// <summary>What was observed, in the unit.</summary>
    public required double Observed { get; init; }

    /// <summary>Median and 90 % interval of the replicated data, in the unit: what the model, fitted to all data, would measure again.</summary>
    public required Band<double> Replicated { get; init; }

    /// <summary>
    /// Two-sided probability that replicated data lie as far out as the observed: posterior predictive. The observation has helped to make the posterior, so the
    /// number is kind to the model.
    /// </summary>
    public required double TailProbability { get; init; }

    /// <summary>
    /// Median and 90 % interval of the observation predicted from all the others, in the unit; null for a quantity made of several. What
    /// <see cref="LeftOutTailProbability"/> is of, and narrower than <see cref="Replicated"/> where others share its error.
    /// </summary>
    public required Band<double>? LeftOut { get; init; }

    /// <summary>
    /// Two-sided probability that an observation predicted from all the others lies as far out as the observed, which has not helped; null for a quantity made of several.
    /// </summary>
    public required double? LeftOutTailProbability { get; init; }

    /// <summary>The interval to read beside <see cref="JudgedTailProbability"/>: of the observation left out, or replicated where it cannot be.</summary>
    public Band<double> Judged => LeftOut ?? Replicated;

    /// <summary>The tail probability that counts: of the observation left out, or replicated where it cannot be.</summary>
    public double JudgedTailProbability => LeftOutTailProbability ?? TailProbability;

    /// <summary>ln p of the observation, predicted from all the others; null for a quantity made of several.</summary>
    public required double? LeftOutLogDensity { get; init; }
}
