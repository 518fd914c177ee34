namespace Transport.Reporting;

/// <summary>Charts of regimens.</summary>
public static class RegimenCharts
{
    /// <summary>What each option gives against the glucose it costs; the present regimen among them.</summary>
    public static Figure TradeOff(RegimenFront front)
    {
        ArgumentNullException.ThrowIfNull(front);
        var rows = Reports.RowsOf(front);
        return new(
            "What the options give, and the glucose they cost",
            "Whiskers: 90 % band. Shaded: the range of ultrafiltration that was asked for.",
            string.Join(" ", rows.Select(row =>
                $"{row.Name}: glucose {Digits.Fixed(row.Option.GlucoseAbsorbed.Median.Grams, 0)} g, ultrafiltration {Digits.Fixed(row.Option.Ultrafiltration.Median.Milliliters, 0)} mL, Kt/V {Digits.Fixed(row.Option.UreaDose.Median, 2)}, sodium {Digits.Fixed(row.Option.SodiumRemoved.Median.Millimoles, 0)} mmol.")),
            Panel(rows, "ultrafiltration in 24 h", "mL", option => Extents(option.Ultrafiltration, value => value.Milliliters)) with
            {
                Marks =
                [
                    Mark.OverY(new(front.Goals.Fluid.Floor.Milliliters, front.Goals.Fluid.Ceiling.Milliliters), "asked for"),
                    .. Labels(rows, option => option.Ultrafiltration.Median.Milliliters),
                ],
            },
            Panel(rows, "weekly Kt/V urea", "", option => Extents(option.UreaDose, value => value)) with
            {
                Marks = Labels(rows, option => option.UreaDose.Median),
            },
            Panel(rows, "sodium removed in 24 h", "mmol", option => Extents(option.SodiumRemoved, value => value.Millimoles)) with
            {
                Marks = Labels(rows, option => option.SodiumRemoved.Median.Millimoles),
            })
        {
            Columns = 3,
            Key = KeyPlacement.Below,
        };
    }

    /// <summary>The volume in the cavity over 24 h, from the start of the night.</summary>
    /// <exception cref="ArgumentException">The outcome was made without a timeline.</exception>
    public static Figure Day(RegimenOutcome outcome)
    {
        ArgumentNullException.ThrowIfNull(outcome);
        if (outcome.Timeline.IsEmpty)
        {
            throw new ArgumentException($"The outcome has no timeline: set {nameof(RegimenOptions)}.{nameof(RegimenOptions.Timeline)}.", nameof(outcome));
        }

        var hours = outcome.Timeline.Select(point => point.Time.TotalHours).ToArray();
        return new(
            "A day of this regimen",
            outcome.Regimen.Describe() + ".",
            $"Volume in the cavity over 24 h, at most {Digits.Fixed(outcome.Peak.Volume.Milliliters, 0)} mL.",
            Line("volume in the cavity", "mL", point => point.Volume.Milliliters),
            Line("dialysate glucose", "mmol/L", point => point.Glucose.MillimolesPerLiter))
        {
            Columns = 2,
        };

        Panel Line(string label, string unit, Func<TimelinePoint, double> read) => new(new("from the start of the night", "h"), new(label, unit))
        {
            Series = [new(label, hours, [.. outcome.Timeline.Select(read)]) { Weight = 1.4 }],
        };
    }

    private static Panel Panel(IReadOnlyList<(string Name, RegimenOption Option)> rows, string label, string unit, Func<RegimenOption, (double Median, Extent Band)> read)
    {
        return new(new("glucose absorbed in 24 h", "g"), new(label, unit))
        {
            Series = [.. new[] { Of("now", Reports.PresentName, true), Of("options", Reports.PresentName, false) }.OfType<Series>()],
        };

        Series? Of(string name, string present, bool isPresent)
        {
            var own = rows.Where(row => row.Name == present == isPresent).Select(row => row.Option).ToList();
            return own.Count == 0
                ? null
                : new(name, [.. own.Select(option => option.GlucoseAbsorbed.Median.Grams)], [.. own.Select(option => read(option).Median)])
                {
                    Pattern = LinePattern.None,
                    Marker = isPresent ? MarkerShape.Diamond : MarkerShape.Circle,
                    Tone = isPresent ? Tone.Attention : Tone.Strong,
                    Weight = 1.2,
                    XWhiskers = [.. own.Select(option => Extents(option.GlucoseAbsorbed, value => value.Grams).Band)],
                    YWhiskers = [.. own.Select(option => read(option).Band)],
                    Notes = [.. own.Select(option => option.Regimen.Describe())],
                };
        }
    }

    private static IReadOnlyList<Mark> Labels(IReadOnlyList<(string Name, RegimenOption Option)> rows, Func<RegimenOption, double> read) =>
        [.. rows.Select(row => Mark.AtPoint(row.Option.GlucoseAbsorbed.Median.Grams, read(row.Option), row.Name))];

    private static (double Median, Extent Band) Extents<T>(Band<T> band, Func<T, double> read)
        where T : struct => (read(band.Median), new(read(band.Low), read(band.High)));
}
