using static System.FormattableString;

namespace Transport.Reporting;

/// <summary>Charts of regimens side by side, and of one knob at a time.</summary>
public static partial class RegimenCharts
{
    private static readonly OutcomeMeasure[] Usual =
    [
        OutcomeMeasures.Ultrafiltration, OutcomeMeasures.KtOverV, OutcomeMeasures.SodiumRemoved, OutcomeMeasures.CreatinineClearance,
        OutcomeMeasures.GlucoseAbsorbed, OutcomeMeasures.LargestPressure, OutcomeMeasures.TimeConnected, OutcomeMeasures.FluidUsed,
    ];

    /// <summary>What other regimens give more or less than the present one: a panel for each figure, a row for each regimen.</summary>
    /// <param name="comparison">The regimens.</param>
    /// <param name="measures">Which figures; none: the usual eight. What cannot be given is left out.</param>
    /// <exception cref="ArgumentException">There is nothing to compare with, or none of the figures can be given.</exception>
    public static Figure Comparison(RegimenComparison comparison, params IReadOnlyList<OutcomeMeasure> measures)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        ArgumentNullException.ThrowIfNull(measures);
        var others = comparison.Rows.Skip(1).ToList();
        var shown = (measures.Count > 0 ? measures : Usual).Select(measure => OrPeritoneal(measure, comparison.Present)).Distinct().Where(measure => others.All(row => row[measure].Difference is not null)).ToList();
        if (others.Count == 0 || shown.Count == 0)
        {
            throw new ArgumentException("Expected another regimen beside the present one, and a figure that both have.", nameof(comparison));
        }

        return new(
            "What would differ from now",
            $"Point: median difference from the present regimen; whisker: 90 % band, what both have in common in doubt left out. Now: {comparison.Present.Describe()}. "
                + string.Join(" ", others.Select(row => $"{PageWords.Capital(row.Name)}: {row.Change!.Text}.")) + " More is not better by itself."
                + Space(string.Join(" ", comparison.Rows.Select(row => Caution.Of(row)).Where(caution => caution.Length > 0).Distinct())),
            string.Join(" ", others.Select(row => $"{row.Name}: {string.Join(", ", shown.Select(measure => Words(row[measure])))}.")),
            [.. shown.Select(measure => DifferencePanel(comparison.Present, others, measure))])
        {
            Columns = 2,
            Key = KeyPlacement.None,
        };
    }

    /// <summary>A day of each regimen: the volume in the belly against time.</summary>
    /// <exception cref="ArgumentException">The comparison was made without a timeline.</exception>
    public static Figure Days(RegimenComparison comparison)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        if (comparison.Rows.Any(row => !row.Timeline.Any()))
        {
            throw new ArgumentException(
                $"There is no timeline: set {nameof(OutlookOptions)}.{nameof(OutlookOptions.Simulation)} with {nameof(RegimenOptions.Timeline)}.", nameof(comparison));
        }

        var most = comparison.Rows.Max(Fullest);
        var isWeek = comparison.Rows.Any(row => row.Week is not null);
        return new(
            isWeek ? "Through each regimen" : "A day of each regimen",
            string.Join(" ", comparison.Rows.Select(row => $"{PageWords.Capital(row.Name)}: {row.Describe()}."))
                + Space(string.Join(" ", comparison.Rows.Select(row => Caution.Of(row)).Where(caution => caution.Length > 0).Distinct())),
            string.Join(" ", comparison.Rows.Select(row => Invariant($"{row.Name}: at most {Digits.Fixed(Fullest(row), 0)} mL in the belly, {row.Outcome.Drains.Length} drains{(row.Week is null ? "" : " on its first day")}."))),
            [.. comparison.Rows.Select(row => new Panel(
                row.Week is null ? new("from the start of the night", "h") : new("from the start of the first night", "days"), new("volume in the belly", "mL") { Range = new(0, 1.08 * most) })
            {
                Title = row.Name,
                RelativeHeight = 0.7,
                Series =
                [
                    new(row.Name, [.. row.Timeline.Select(point => row.Week is null ? point.Time.TotalHours : point.Time.TotalDays)], [.. row.Timeline.Select(point => point.Volume.Milliliters)])
                    {
                        Weight = row.Week is null ? 1.4 : 0.9,
                    },
                ],
            })])
        {
            Columns = isWeek ? 1 : comparison.Rows.Length == 3 ? 3 : Math.Min(2, comparison.Rows.Length),
            Key = KeyPlacement.None,
        };
    }

    /// <summary>Figures against a knob, each with its band. Where the regimen cannot be carried out there is nothing.</summary>
    /// <param name="whatIf">The knob and what it does.</param>
    /// <param name="measures">Which figures; none: ultrafiltration, Kt/V, sodium, glucose. What cannot be given is left out.</param>
    /// <exception cref="ArgumentException">Fewer than two places can be carried out, or none of the figures can be given.</exception>
    public static Figure Of(WhatIf whatIf, params IReadOnlyList<OutcomeMeasure> measures)
    {
        ArgumentNullException.ThrowIfNull(whatIf);
        ArgumentNullException.ThrowIfNull(measures);
        var places = whatIf.Points.Where(point => point.Outlook is not null).DistinctBy(point => point.Value).OrderBy(point => point.Value).ToList();
        OutcomeMeasure[] usual = [OutcomeMeasures.Ultrafiltration, OutcomeMeasures.KtOverV, OutcomeMeasures.SodiumRemoved, OutcomeMeasures.GlucoseAbsorbed];
        var shown = (measures.Count > 0 ? measures : usual).Select(measure => OrPeritoneal(measure, whatIf.Present)).Distinct().Where(measure => places.All(place => place.Outlook![measure].Value is not null)).ToList();
        if (places.Count < 2 || shown.Count == 0)
        {
            throw new ArgumentException("Expected two places or more that can be carried out, and a figure that all of them have.", nameof(whatIf));
        }

        var knob = whatIf.Knob;
        double[] x = [.. places.Select(place => place.Value)];
        return new(
            $"If the {knob.Name} were otherwise",
            $"Line: median; shaded: 90 % band. All else as now: {whatIf.Present.Regimen.Describe()}. A model's answer, not advice." + Space(Caution.Of(whatIf.Present.Regimen)),
            string.Join(" ", shown.Select(measure => Invariant($"{PageWords.Capital(measure.Name)} goes from {Digits.Fixed(Value(places[0], measure).Median, measure.Decimals)} to {Digits.Fixed(Value(places[^1], measure).Median, measure.Decimals)} {measure.Unit} as the {knob.Name} goes from {x[0]:0.##} to {x[^1]:0.##} {knob.Unit}."))),
            [.. shown.Select(measure => new Panel(new(knob.Name, knob.Unit), new(measure.Name, measure.Unit))
            {
                Bands = [new("90 % band", x, [.. places.Select(place => Value(place, measure).Low)], [.. places.Select(place => Value(place, measure).High)])],
                Series = [new("median", x, [.. places.Select(place => Value(place, measure).Median)])],
                Marks = whatIf.Present[measure].Value is { } now ? [Mark.AtY(now.Median, "now")] : [],
            })])
        {
            Columns = Math.Min(2, shown.Count),
            Key = KeyPlacement.None,
        };

        static Band<double> Value(WhatIfPoint place, OutcomeMeasure measure) => place.Outlook![measure].Value!.Value;
    }

    /// <summary>A total, or what the peritoneum does of it where nothing was stated about urine.</summary>
    internal static OutcomeMeasure OrPeritoneal(OutcomeMeasure measure, RegimenOutlook of) => of[measure].Value is not null ? measure
        : measure == OutcomeMeasures.KtOverV ? OutcomeMeasures.PeritonealKtOverV
        : measure == OutcomeMeasures.CreatinineClearance ? OutcomeMeasures.PeritonealCreatinineClearance
        : measure;

    private static Panel DifferencePanel(RegimenOutlook present, List<RegimenOutlook> others, OutcomeMeasure measure)
    {
        var names = Axis.OfCategories([.. others.Select(row => row.Name).Reverse()]) with { Range = new(-0.5, others.Count - 0.3) };
        var bands = others.Select(row => row[measure].Difference!.Value).ToList();
        var reach = Math.Max(bands.Max(band => Math.Max(Math.Abs(band.Low), Math.Abs(band.High))), Math.Pow(10, -measure.Decimals));
        return new(new("more or less than now", measure.Unit) { Range = new(-1.15 * reach, 1.15 * reach) }, names)
        {
            Title = Invariant($"{measure.Name}: now {Digits.Fixed(present[measure].Value!.Value.Median, measure.Decimals)} {measure.Unit}").TrimEnd(),
            RelativeHeight = Math.Clamp(0.35 + 0.07 * others.Count, 0.45, 2),
            Marks = [Mark.AtX(0, "now")],
            Series =
            [
                new("difference from now", [.. bands.Select(band => band.Median)], [.. Enumerable.Range(0, others.Count).Select(i => (double)(others.Count - 1 - i))])
                {
                    Pattern = LinePattern.None,
                    Marker = MarkerShape.Circle,
                    Weight = 1.2,
                    XWhiskers = [.. bands.Select(band => new Extent(band.Low, band.High))],
                    Notes = [.. others.Select(row => row.Describe())],
                },
            ],
        };
    }

    private static double Fullest(RegimenOutlook row) => (row.Week?.Days.OfType<RegimenOutcome>() ?? [row.Outcome]).Max(day => day.Peak.Volume.Milliliters);

    private static string Words(MeasuredOutcome one) =>
        Invariant($"{one.Measure.Name} {(one.Difference!.Value.Median < 0 ? "" : "+")}{Digits.Fixed(one.Difference!.Value.Median, one.Measure.Decimals)} {one.Measure.Unit}").TrimEnd();
}
