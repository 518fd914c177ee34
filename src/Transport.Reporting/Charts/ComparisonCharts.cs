namespace Transport.Reporting;

/// <summary>Charts of comparisons of models.</summary>
public static class ComparisonCharts
{
    private static readonly (MarkerShape Marker, Tone Tone)[] Voices =
        [(MarkerShape.Circle, Tone.Strong), (MarkerShape.Ring, Tone.Strong), (MarkerShape.Triangle, Tone.Middle), (MarkerShape.Diamond, Tone.Light)];

    /// <summary>Where each observation lies in what each model predicts of it from all the others; at most four models.</summary>
    /// <exception cref="ArgumentException">More than four models.</exception>
    public static Figure PredictiveChecks(ModelComparison comparison)
    {
        ArgumentNullException.ThrowIfNull(comparison);

        // By name, so that a model keeps its mark from one comparison to the next.
        ComparedModel[] models = [.. comparison.Models.OrderBy(model => model.Name, StringComparer.Ordinal)];
        if (models.Length > Voices.Length)
        {
            throw new ArgumentException(FormattableString.Invariant($"Expected at most {Voices.Length} models to be told apart in a chart; found {models.Length}."), nameof(comparison));
        }

        // First datum on top.
        var count = models[0].Checks.Count;
        double[] rows = [.. Enumerable.Range(0, count).Select(i => (double)(count - 1 - i))];
        var step = 0.36 / models.Length;
        return new(
            "Each datum beside what each model predicts of it",
            "A bar is the middle 90 % of what a model predicts of a datum from all the others, errors included (a fall of sodium, made of two data, from all of them); a mark is what was observed. A mark outside its bar speaks against the model, once in ten by chance. Each row and model has a scale of its own, so that all bars are alike.",
            string.Join(" ", models.Select(model => $"{model.Name}: {Outside(model)}.")),
            new Panel(
                new("observed less the median, in half-widths of the bar", ""),
                Axis.OfCategories([.. models[0].Checks.Reverse().Select(check => check.Name)]))
            {
                RelativeHeight = Math.Clamp(0.3 + 0.14 * count, 0.4, 4),
                Series =
                [
                    new("middle 90 % of what is predicted", new double[count], rows)
                    {
                        Pattern = LinePattern.None, Marker = MarkerShape.Tick, Tone = Tone.Neutral, Weight = 20, XWhiskers = [.. rows.Select(_ => new Extent(-1, 1))],
                    },
                    .. models.Select((model, m) => new Series(
                        model.Name, [.. model.Checks.Select(Place)], [.. rows.Select(row => row + step * ((models.Length - 1) / 2.0 - m))])
                    {
                        Pattern = LinePattern.None,
                        Marker = Voices[m].Marker,
                        Tone = Voices[m].Tone,
                        Notes = [.. model.Checks.Select(check => $"{check.Name}: observed {Digits.Of(check.Observed)}, {model.Name} {Digits.Of(check.Judged.Low)} to {Digits.Of(check.Judged.High)} {check.Unit}".TrimEnd())],
                    }),
                ],
            });
    }

    private static double Place(PredictiveCheck check)
    {
        var (observed, middle) = (check.Observed, check.Judged.Median);
        return (observed - middle) / (observed > middle ? check.Judged.High - middle : middle - check.Judged.Low);
    }

    private static string Outside(ComparedModel model) => model.Checks.Where(check => Math.Abs(Place(check)) > 1).Select(check => check.Name).ToArray() is { Length: > 0 } names
        ? $"outside its bar {string.Join(", ", names)}"
        : "every datum in its bar";
}
