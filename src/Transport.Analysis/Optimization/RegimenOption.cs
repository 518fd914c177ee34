using System.Collections.Immutable;

namespace Transport.Analysis;

/// <summary>One regimen that could be chosen, with what it does and how sure that is. Decision support for licensed prescribers.</summary>
public sealed record RegimenOption
{
    internal RegimenOption()
    {
    }

    /// <summary>The regimen.</summary>
    public required Regimen Regimen { get; init; }

    /// <summary>Its day at the ensemble's center.</summary>
    public required RegimenOutcome Outcome { get; init; }

    /// <summary>What changes from the present regimen; null where none was given.</summary>
    public required RegimenChange? Change { get; init; }

    /// <summary>How often the ultrafiltration of a single day lies in the range, in words; the sentence to show first.</summary>
    public required string SingleDay { get; init; }

    /// <summary>Probability that the ultrafiltration of a single day lies in the range.</summary>
    public required Probability ProbabilityOfDayInRange { get; init; }

    /// <summary>Probability that the mean over many days lies in the range.</summary>
    public required Probability ProbabilityOfMeanInRange { get; init; }

    /// <summary>24-h ultrafiltration, mean over many days.</summary>
    public required Band<Volume> Ultrafiltration { get; init; }

    /// <summary>24-h ultrafiltration of a single day.</summary>
    public required Band<Volume> UltrafiltrationOfOneDay { get; init; }

    /// <summary>Weekly total Kt/V of urea.</summary>
    public required Band<double> UreaDose { get; init; }

    /// <summary>Glucose absorbed in 24 h.</summary>
    public required Band<Mass> GlucoseAbsorbed { get; init; }

    /// <summary>Sodium removed by the peritoneum in 24 h, centred on published series.</summary>
    public required Band<AmountOfSubstance> SodiumRemoved { get; init; }

    /// <summary>How it stands to each of the goals' bounds.</summary>
    public required ImmutableArray<GoalAnswer> Answers { get; init; }

    /// <summary>Exchanges with a strongest glucose (above 180 mmol/L) in 24 h.</summary>
    public required int StrongestExchanges { get; init; }

    /// <summary>What it gains and gives up against its neighbors in the list.</summary>
    public required string Why { get; init; }

    /// <summary>What to be careful about.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }
}
