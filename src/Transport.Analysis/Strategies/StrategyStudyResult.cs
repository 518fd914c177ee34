using System.Collections.Immutable;

namespace Transport.Analysis;

/// <summary>The rows of a study, patient after patient, and what they come to.</summary>
public sealed class StrategyStudyResult
{
    internal StrategyStudyResult(StrategyStudyDesign design, ImmutableArray<StrategyRow> rows) => (Design, Rows) = (design, rows);

    /// <summary>What was asked.</summary>
    public StrategyStudyDesign Design { get; }

    /// <summary>Patient after patient, the strategies of each in the design's order.</summary>
    public ImmutableArray<StrategyRow> Rows { get; }

    /// <summary>The rows of one strategy, in order of the patients.</summary>
    public ImmutableArray<StrategyRow> Of(string strategy) => [.. Rows.Where(row => row.Strategy == strategy)];

    /// <summary>Each strategy over the population, and against the first.</summary>
    public ImmutableArray<StrategySummary> Summaries =>
        [.. Design.Strategies.Select((strategy, i) => Summary(strategy.Name, i == 0 ? null : Difference(strategy.Name, Design.Strategies[0].Name)))];

    /// <summary>One strategy less another, patient by patient.</summary>
    /// <exception cref="ArgumentException">The study has no such strategy.</exception>
    public StrategyDifference Difference(string strategy, string against)
    {
        var pairs = Known(strategy).Zip(Known(against)).ToList();
        return new(
            strategy,
            against,
            Between(row => row.UltrafiltrationMilliliters),
            Between(row => row.UreaDose),
            Between(row => row.SodiumRemovedMillimoles),
            Between(row => row.GlucoseAbsorbedGrams),
            Between(row => row.LossGrams));

        MeanInterval Between(Func<StrategyRow, double> of) => MeanInterval.Of(pairs.Select(pair => of(pair.First) - of(pair.Second)));
    }

    private StrategySummary Summary(string strategy, StrategyDifference? difference)
    {
        var rows = Known(strategy);
        var range = Design.Loss.Fluid;
        return new(
            strategy,
            rows.Average(row => range.Contains(Volume.FromMilliliters(row.UltrafiltrationMilliliters)) ? 1.0 : 0),
            rows.Average(row => row.UltrafiltrationMilliliters > range.Ceiling.Milliliters ? 1.0 : 0),
            Mean(row => row.UltrafiltrationMilliliters),
            Mean(row => row.UreaDose),
            Mean(row => row.SodiumRemovedMillimoles),
            Mean(row => row.GlucoseAbsorbedGrams),
            Mean(row => row.LossGrams),
            Mean(row => row.RegretGrams),
            difference);

        MeanInterval Mean(Func<StrategyRow, double> of) => MeanInterval.Of(rows.Select(of));
    }

    private ImmutableArray<StrategyRow> Known(string strategy) => Of(strategy) is { IsEmpty: false } rows
        ? rows
        : throw new ArgumentException($"Expected one of {string.Join(", ", Design.Strategies.Select(one => one.Name))}; found {strategy}.", nameof(strategy));
}
