namespace Transport.Reporting;

/// <summary>Charts of regimens.</summary>
public static partial class RegimenCharts
{
    /// <summary>What each option gives and the glucose it costs, the present regimen on top: a row for each, so that no name covers another.</summary>
    public static Figure TradeOff(RegimenFront front)
    {
        ArgumentNullException.ThrowIfNull(front);
        var rows = Reports.RowsOf(front);
        var kidneys = Reports.KidneysOf(front);
        return new(
            "What the options give and cost",
            $"Point: median; whisker: 90 % band, of ultrafiltration with doubt of {rows.Aggregate(Doubt.None, (all, row) => all | row.Option.Ultrafiltration.Doubt).Words()}. Shaded: the range of ultrafiltration that was asked for. More ultrafiltration is not better." + Space(string.Join(" ", rows.Select(row => Caution.Of(row.Option.Regimen)).Distinct())),
            string.Join(" ", rows.Select(row =>
                $"{row.Name}: glucose {Digits.Fixed(row.Option.GlucoseAbsorbed.Median.Grams, 0)} g, ultrafiltration {Digits.Fixed(row.Option.Ultrafiltration.Median.Milliliters, 0)} mL, {(kidneys.IsUreaClearanceKnown ? "" : "peritoneal ")}Kt/V {Digits.Fixed(row.Option.UreaDose.Median, 2)}, sodium {Digits.Fixed(row.Option.SodiumRemoved.Median.Millimoles, 0)} mmol.")),
            Panel(rows, "glucose absorbed in 24 h", "g", option => Extents(option.GlucoseAbsorbed, value => value.Grams)),
            Panel(rows, "ultrafiltration in 24 h", "mL", option => Extents(option.Ultrafiltration, value => value.Milliliters)) with
            {
                Marks = [Mark.OverX(new(front.Goals.Fluid.Floor.Milliliters, front.Goals.Fluid.Ceiling.Milliliters), "asked for")],
            },
            Panel(rows, "sodium removed in 24 h", "mmol", option => Extents(option.SodiumRemoved, value => value.Millimoles)),
            Panel(rows, "weekly Kt/V urea" + Reports.OnlyPeritoneal(kidneys.IsUreaClearanceKnown), "", option => Extents(option.UreaDose, value => value)))
        {
            Columns = 2,
            Key = KeyPlacement.Below,
        };
    }

    /// <summary>The volume in the cavity over 24 h, its glucose, and the pressure beside its lines of risk, from the start of the night.</summary>
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
            outcome.Regimen.Describe() + "." + (outcome.Options.Pressure is null ? " The pressure was not measured in this patient: the line is a population's." : "") + Space(Caution.Of(outcome.Regimen)),
            $"Volume in the cavity over 24 h, at most {Digits.Fixed(outcome.Peak.Volume.Milliliters, 0)} mL, where the pressure, lying, is {Digits.Fixed(outcome.Timeline.Max(point => point.Pressure.CentimetersOfWater), 1)} cmH2O.",
            Line("volume in the cavity", "mL", point => point.Volume.Milliliters),
            Line("dialysate glucose", "mmol/L", point => point.Glucose.MillimolesPerLiter),
            Line("pressure in the cavity, lying", "cmH2O", point => point.Pressure.CentimetersOfWater) with
            {
                Marks =
                [
                    Mark.AtY(PressureRisk.Caution.CentimetersOfWater, "care from here on"), Mark.AtY(PressureRisk.Limit.CentimetersOfWater, "limit in print"),
                ],
            })
        {
            Columns = 3,
            Key = KeyPlacement.None,
        };

        Panel Line(string label, string unit, Func<TimelinePoint, double> read) => new(new("from the start of the night", "h"), new(label, unit))
        {
            Series = [new(label, hours, [.. outcome.Timeline.Select(read)]) { Weight = 1.4 }],
        };
    }

    private static Panel Panel(IReadOnlyList<(string Name, RegimenOption Option)> rows, string label, string unit, Func<RegimenOption, (double Median, Extent Band)> read)
    {
        // Categories stand bottom up; above the first row is room for the label of a shaded range.
        var names = Axis.OfCategories([.. rows.Select(row => row.Name).Reverse()]) with { Range = new(-0.5, rows.Count + 0.3) };
        return new(new(label, unit), names)
        {
            RelativeHeight = Math.Clamp(0.35 + 0.07 * rows.Count, 0.5, 2),
            Series = [.. new[] { Of("now", true), Of("options", false) }.OfType<Series>()],
        };

        Series? Of(string name, bool isPresent)
        {
            var own = rows.Select((row, i) => (row.Name, row.Option, Height: (double)(rows.Count - 1 - i))).Where(row => row.Name == Reports.PresentName == isPresent).ToList();
            return own.Count == 0
                ? null
                : new(name, [.. own.Select(row => read(row.Option).Median)], [.. own.Select(row => row.Height)])
                {
                    Pattern = LinePattern.None,
                    Marker = isPresent ? MarkerShape.Diamond : MarkerShape.Circle,
                    Tone = isPresent ? Tone.Attention : Tone.Strong,
                    Weight = 1.2,
                    XWhiskers = [.. own.Select(row => read(row.Option).Band)],
                    Notes = [.. own.Select(row => row.Option.Regimen.Describe())],
                };
        }
    }

    private static string Space(string caution) => caution.Length > 0 ? " " + caution : "";

    private static (double Median, Extent Band) Extents<T>(Band<T> band, Func<T, double> read)
        where T : struct => (read(band.Median), new(read(band.Low), read(band.High)));
}
