using static System.FormattableString;

namespace Transport.Reporting;

/// <summary>Charts of studies of strategies over virtual patients.</summary>
public static class StrategyCharts
{
    private static readonly MarkerShape[] Shapes = [MarkerShape.Ring, MarkerShape.Square, MarkerShape.Circle, MarkerShape.Triangle, MarkerShape.Diamond];
    private static readonly Tone[] Tones = [Tone.Neutral, Tone.Middle, Tone.Strong, Tone.Light];

    /// <summary>The strategies side by side: means over the patients with their intervals, a row for each.</summary>
    public static Figure Comparison(StrategyStudyResult study)
    {
        ArgumentNullException.ThrowIfNull(study);
        var rows = study.Summaries;
        var range = study.Design.Loss.Fluid;
        return new(
            Invariant($"Strategies over {study.Design.Patients} virtual patients"),
            $"Point: mean; whisker: 95 % interval of the mean. Shaded: the ultrafiltration that was asked for. Regret: loss less that of what would have been best for each; loss: {study.Design.Loss} (choices). Nobody here exists.",
            string.Join(" ", rows.Select(row => Invariant($"{row.Strategy}: ultrafiltration {Digits.Fixed(row.UltrafiltrationMilliliters.Mean, 0)} mL, {Digits.Fixed(100 * row.ShareInRange, 0)} % of patients in the range, glucose {Digits.Fixed(row.GlucoseAbsorbedGrams.Mean, 0)} g, regret {Digits.Fixed(row.RegretGrams.Mean, 1)} g."))),
            Panel("ultrafiltration in 24 h", "mL", row => row.UltrafiltrationMilliliters) with { Marks = [Mark.OverX(new(range.Floor.Milliliters, range.Ceiling.Milliliters), "asked for")] },
            Panel("weekly Kt/V urea", "", row => row.UreaDose),
            Panel("glucose absorbed in 24 h", "g", row => row.GlucoseAbsorbedGrams),
            Panel("regret", "g", row => row.RegretGrams))
        {
            Columns = 2,
            Key = KeyPlacement.None,
        };

        Panel Panel(string label, string unit, Func<StrategySummary, MeanInterval> read) =>
            new(new(label, unit), Axis.OfCategories([.. rows.Select(row => row.Strategy).Reverse()]) with { Range = new(-0.5, rows.Length + 0.1) })
            {
                RelativeHeight = Math.Clamp(0.35 + 0.07 * rows.Length, 0.5, 2),
                Series =
                [
                    new("mean", [.. rows.Select(row => read(row).Mean)], [.. rows.Select((_, i) => (double)(rows.Length - 1 - i))])
                    {
                        Pattern = LinePattern.None,
                        Marker = MarkerShape.Circle,
                        Weight = 1.2,
                        XWhiskers = [.. rows.Select(row => new Extent(read(row).Low, read(row).High))],
                    },
                ],
            };
    }

    /// <summary>Every patient under every strategy: the fluid that is removed, and the regret, against how fast the membrane is.</summary>
    public static Figure Patients(StrategyStudyResult study)
    {
        ArgumentNullException.ThrowIfNull(study);
        var range = study.Design.Loss.Fluid;
        var strategies = study.Design.Strategies;
        return new(
            "Each virtual patient under each strategy",
            "One point for each patient and strategy, by the true membrane; no scatter from day to day. Shaded: the ultrafiltration that was asked for.",
            string.Join(" ", study.Summaries.Select(row => Invariant($"{row.Strategy}: {Digits.Fixed(100 * row.ShareInRange, 0)} % of patients in the range, {Digits.Fixed(100 * row.ShareAboveRange, 0)} % above it."))),
            Panel("ultrafiltration in 24 h", "mL", row => row.UltrafiltrationMilliliters) with { Marks = [Mark.OverY(new(range.Floor.Milliliters, range.Ceiling.Milliliters), "asked for")] },
            Panel("regret", "g", row => row.RegretGrams));

        Panel Panel(string label, string unit, Func<StrategyRow, double> read) => new(new("A0/Δx of the true membrane, per 1.73 m²", "cm"), new(label, unit))
        {
            Series = [.. strategies.Select((strategy, i) =>
            {
                var own = study.Of(strategy.Name);
                return new Series(strategy.Name, [.. own.Select(row => row.DiffusionAreaCentimeters)], [.. own.Select(read)])
                {
                    Pattern = LinePattern.None,
                    Marker = Shapes[i % Shapes.Length],
                    Tone = Tones[i % Tones.Length],
                    Notes = [.. own.Select(row => Invariant($"patient {row.Patient}: {row.Regimen}"))],
                };
            })],
        };
    }
}
