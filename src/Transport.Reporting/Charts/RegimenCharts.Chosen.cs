using static System.FormattableString;

namespace Transport.Reporting;

/// <content>The trade-off with one option picked out, beside its day.</content>
public static partial class RegimenCharts
{
    /// <summary>Every option by what it gives and costs, one of them picked out, and beside it that one's day.</summary>
    /// <param name="front">The options, searched for with a timeline (<see cref="RegimenOptions.Timeline"/>).</param>
    /// <param name="chosen">Which option, from 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such option.</exception>
    /// <exception cref="ArgumentException">The search was made without a timeline.</exception>
    public static Figure Chosen(RegimenFront front, int chosen)
    {
        ArgumentNullException.ThrowIfNull(front);
        ArgumentOutOfRangeException.ThrowIfNegative(chosen);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(chosen, front.Options.Length);
        var rows = Reports.RowsOf(front);
        var (name, option) = rows.Single(row => ReferenceEquals(row.Option, front.Options[chosen]));
        var timeline = option.Outcome.Timeline;
        if (timeline.IsEmpty)
        {
            throw new ArgumentException($"There is no timeline: search with {nameof(RegimenSearchOptions)}.{nameof(RegimenSearchOptions.Simulation)} that has a {nameof(RegimenOptions.Timeline)}.", nameof(front));
        }

        var aside = 0.03 * Reach([.. rows.Select(row => Place(row.Option).X), option.GlucoseAbsorbed.Low.Grams, option.GlucoseAbsorbed.High.Grams]);
        var up = 0.05 * Reach([.. rows.Select(row => Place(row.Option).Y), option.Ultrafiltration.Low.Milliliters, option.Ultrafiltration.High.Milliliters]);
        var hours = timeline.Select(point => point.Time.TotalHours).ToArray();
        return new(
            Invariant($"Option {name} among the others, and its day"),
            Invariant($"{name}: {option.Regimen.Describe()}. Left, point: median; whisker: 90 % band; shaded: the range of ultrafiltration that was asked for. Right: its day by the fitted membrane alone. More ultrafiltration is not better.") + Space(Caution.Of(option.Regimen)),
            Invariant($"Option {name}: glucose {Digits.Fixed(option.GlucoseAbsorbed.Median.Grams, 0)} g, ultrafiltration {Digits.Fixed(option.Ultrafiltration.Median.Milliliters, 0)} mL, {(option.Outcome.Patient.ResidualFunction.IsUreaClearanceKnown ? "" : "peritoneal ")}Kt/V {Digits.Fixed(option.UreaDose.Median, 2)}; at most {Digits.Fixed(option.Outcome.Peak.Volume.Milliliters, 0)} mL in the belly."),
            new Panel(new("glucose absorbed in 24 h", "g"), new("ultrafiltration in 24 h", "mL"))
            {
                Title = "all options",
                Series =
                [
                    .. Points("others", rows.Where(row => row.Name != name && row.Name != Reports.PresentName), MarkerShape.Ring, Tone.Middle, false),
                    .. Points("now", rows.Where(row => row.Name == Reports.PresentName), MarkerShape.Diamond, Tone.Neutral, false),
                    .. Points("picked out", rows.Where(row => row.Name == name), MarkerShape.Circle, Tone.Attention, true),
                ],
                Marks =
                [
                    Mark.OverY(new(front.Goals.Fluid.Floor.Milliliters, front.Goals.Fluid.Ceiling.Milliliters), "asked for"),
                    .. rows.Select(row => NameOf(row.Name, row.Option)),
                ],
            },
            new Panel(new("from the start of the night", "h"), new("volume in the belly", "mL") { Range = new(0, 1.08 * front.Options.Max(one => one.Outcome.Peak.Volume.Milliliters)) })
            {
                Title = Invariant($"a day of option {name}"),
                Series = [new("volume", hours, [.. timeline.Select(point => point.Volume.Milliliters)]) { Weight = 1.4 }],
            })
        {
            Columns = 2,
            Key = KeyPlacement.Below,
        };

        // A name stands in the first corner of its point where no whisker and no other point is.
        Mark NameOf(string own, RegimenOption one)
        {
            var (x, y) = Place(one);
            (double X, double Y)[] corners = [(x + aside, y + up), (x - aside, y + up), (x + aside, y - up), (x - aside, y - up)];
            var at = corners.Where(place => !IsCovered(place.X, place.Y)).Append(corners[0]).First();
            return Mark.Note(at.X, at.Y, own);

            bool IsCovered(double atX, double atY)
            {
                var (pickedX, pickedY) = Place(option);
                var isByVertical = Math.Abs(atX - pickedX) < 0.7 * aside
                    && atY > option.Ultrafiltration.Low.Milliliters - 0.7 * up && atY < option.Ultrafiltration.High.Milliliters + 0.7 * up;
                var isByHorizontal = Math.Abs(atY - pickedY) < 0.7 * up
                    && atX > option.GlucoseAbsorbed.Low.Grams - 0.7 * aside && atX < option.GlucoseAbsorbed.High.Grams + 0.7 * aside;
                return isByVertical || isByHorizontal
                    || rows.Any(row => row.Name != own && Math.Abs(Place(row.Option).X - atX) < aside && Math.Abs(Place(row.Option).Y - atY) < up);
            }
        }

        static double Reach(double[] all) => Math.Max(1, all.Max() - all.Min());

        static (double X, double Y) Place(RegimenOption one) => (one.GlucoseAbsorbed.Median.Grams, one.Ultrafiltration.Median.Milliliters);

        static IEnumerable<Series> Points(string name, IEnumerable<(string Name, RegimenOption Option)> some, MarkerShape marker, Tone tone, bool hasBands)
        {
            var own = some.ToList();
            if (own.Count > 0)
            {
                yield return new(name, [.. own.Select(row => row.Option.GlucoseAbsorbed.Median.Grams)], [.. own.Select(row => row.Option.Ultrafiltration.Median.Milliliters)])
                {
                    Pattern = LinePattern.None,
                    Marker = marker,
                    Tone = tone,
                    Weight = 1.2,
                    XWhiskers = hasBands ? [.. own.Select(row => Extents(row.Option.GlucoseAbsorbed, value => value.Grams).Band)] : null,
                    YWhiskers = hasBands ? [.. own.Select(row => Extents(row.Option.Ultrafiltration, value => value.Milliliters).Band)] : null,
                    Notes = [.. own.Select(row => $"{row.Name}: {row.Option.Regimen.Describe()}")],
                };
            }
        }
    }

    /// <summary>The same behind a knob: whichever option is turned to is picked out and shows its day. It turns without a script.</summary>
    /// <param name="front">At least one option, searched for with a timeline; of more than twelve the first twelve.</param>
    /// <exception cref="ArgumentException">No option, or no timeline.</exception>
    public static FigureSteps Options(RegimenFront front)
    {
        ArgumentNullException.ThrowIfNull(front);
        var names = Reports.RowsOf(front).Where(row => row.Name != Reports.PresentName).Select(row => row.Name).Take(12).ToList();
        return new("option", 0, [.. names.Select((name, i) => new FigureStep(name, Chosen(front, i)))]);
    }
}
