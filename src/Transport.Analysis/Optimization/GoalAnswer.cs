namespace Transport.Analysis;

/// <summary>How a regimen stands to a bound, over the ensemble.</summary>
/// <param name="Bound">The bound.</param>
/// <param name="Expected">Mean over the ensemble, in the measure's unit.</param>
/// <param name="ProbabilityOfMean">Probability that the mean of many days lies within.</param>
/// <param name="ProbabilityOfSingleDay">The same of a single day; null where its scatter is not known.</param>
public sealed record GoalAnswer(RegimenBound Bound, double Expected, Probability ProbabilityOfMean, Probability? ProbabilityOfSingleDay)
{
    /// <summary>The kidneys of the person; null: not known, and a dose is named as that of both.</summary>
    public ResidualFunction? Kidneys { get; init; }

    /// <summary>Whether it is met as it was asked for.</summary>
    public bool IsMet => Bound.Probability is { } asked ? Asked >= asked - 1e-9 : Bound.Holds(Expected);

    /// <summary>The single day first, in frequencies, then the mean of many days.</summary>
    public string Words => OptionWords.Answer(this);

    /// <summary>The probability that was asked for: of the mean, or of a single day.</summary>
    internal double Asked => (Bound.IsOfSingleDay ? ProbabilityOfSingleDay!.Value : ProbabilityOfMean).Value;
}
