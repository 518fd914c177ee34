using System.Collections.Immutable;

namespace Transport.Analysis;

/// <summary>What is attainable and what it costs: the present regimen and the options, least glucose first. None of them is "the best".</summary>
public sealed record RegimenFront
{
    internal RegimenFront()
    {
    }

    /// <summary>The goals.</summary>
    public required RegimenGoals Goals { get; init; }

    /// <summary>What the patient does now, judged like the options; null where it was not given.</summary>
    public required RegimenOption? Present { get; init; }

    /// <summary>The options, least absorbed glucose first.</summary>
    public required ImmutableArray<RegimenOption> Options { get; init; }

    /// <summary>How many regimens were looked at.</summary>
    public required int CandidateCount { get; init; }

    /// <summary>How many of them meet every goal and limit.</summary>
    public required int FeasibleCount { get; init; }

    /// <summary>Why the others are not among the options; the counts and the options add up to the candidates.</summary>
    public required ImmutableSortedDictionary<DropReason, int> DroppedBecause { get; init; }

    /// <summary>Which goal nothing meets; null where something meets all.</summary>
    public required UnmetGoal? NothingMeets { get; init; }

    /// <summary>How many members of the ensemble the bands hold.</summary>
    public required int EnsembleMembers { get; init; }

    /// <summary>Multiple of the noise within which options count as ties: 1, or more where there were too many options.</summary>
    public required double TieWidth { get; init; }

    /// <summary>What to be careful about with the list as a whole.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }
}
