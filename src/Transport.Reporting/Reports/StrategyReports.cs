using static System.FormattableString;

namespace Transport.Reporting;

/// <summary>Studies of strategies in words and tables.</summary>
public static class StrategyReports
{
    /// <summary>What each strategy does for the population, and against the first within the patient.</summary>
    public static ReportBlock Of(StrategyStudyResult study)
    {
        ArgumentNullException.ThrowIfNull(study);
        var design = study.Design;
        var block = new ReportBlock()
            .Sentence(Invariant($"{design.Patients} virtual patients, seed {design.Seed}: {design.Population.Description}. Each is tested with {design.Test.Solution.Name} for {Digits.Hours(design.Test.Duration)} and fitted; strategies see the test and the fit, and are judged by the true membrane."))
            .Table(new(
                ["^strategy", "#in fluid\nrange", "#above\nit", "#mean UF, mL\n95 % interval", "#weekly\nKt/V", "#glucose\nabsorbed, g", "#regret, g"],
                [.. study.Summaries.Select(row => (IReadOnlyList<string>)
                [
                    row.Strategy,
                    Digits.Fixed(100 * row.ShareInRange, 0) + " %",
                    Digits.Fixed(100 * row.ShareAboveRange, 0) + " %",
                    Interval(row.UltrafiltrationMilliliters, 0),
                    Interval(row.UreaDose, 2),
                    Interval(row.GlucoseAbsorbedGrams, 0),
                    Interval(row.RegretGrams, 1),
                ])]));
        var pairs = study.Summaries.Select(row => row.AgainstFirst).OfType<StrategyDifference>().ToList();
        if (pairs.Count > 0)
        {
            block.Heading($"Within the patient, less {design.Strategies[0].Name}");
            block.Table(new(
                ["^strategy", "#UF, mL", "#weekly\nKt/V", "#Na removed,\nmmol", "#glucose\nabsorbed, g", "#loss, g"],
                [.. pairs.Select(row => (IReadOnlyList<string>)
                [
                    row.Strategy,
                    Interval(row.UltrafiltrationMilliliters, 0),
                    Interval(row.UreaDose, 2),
                    Interval(row.SodiumRemovedMillimoles, 0),
                    Interval(row.GlucoseAbsorbedGrams, 0),
                    Interval(row.LossGrams, 1),
                ])]));
        }

        block.Heading("Strategies");
        block.Table(new(["^strategy", "^what it does"], [.. design.Strategies.Select(strategy => (IReadOnlyList<string>)[strategy.Name, PageWords.Capital(strategy.Description) + "."])]));
        return block.Small($"Nobody here exists. Regret: loss less that of the regimen that would have been best for the true membrane; loss: {design.Loss}. Its weights are choices, so that strategies can be told apart by one number; it says nothing about a patient. The model is its own judge: where it misses people, every strategy is judged wrongly.");

        static string Interval(MeanInterval interval, int decimals) =>
            $"{Digits.Fixed(interval.Mean, decimals)}\n{Digits.Fixed(interval.Low, decimals)} to {Digits.Fixed(interval.High, decimals)}";
    }
}
