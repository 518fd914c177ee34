using System.Globalization;

namespace Transport.Reporting;

/// <summary>Charts of a reviewed record book.</summary>
public static class RecordCharts
{
    // Of the panels below the first.
    private const double Small = 0.4;
    private const double EdgeShare = 0.25;
    private const int MostBelow = 2;

    /// <summary>Nights beside what was expected, weight and pressure below: from a day to the last night written.</summary>
    /// <param name="review">The review.</param>
    /// <param name="days">How many days back from the last night; at least 7.</param>
    /// <exception cref="ArgumentException">The book has fewer than two nights, or nothing of those shown can be drawn.</exception>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than 7 days.</exception>
    public static Figure Nights(RecordReview review, int days = 35)
    {
        ArgumentNullException.ThrowIfNull(review);
        ArgumentOutOfRangeException.ThrowIfLessThan(days, 7);
        if (review.Nights.Count < 2)
        {
            throw new ArgumentException("A chart needs two nights.", nameof(review));
        }

        return NightsOrNone(review, days) ?? throw new ArgumentException("The nights shown have neither ultrafiltration nor weight.", nameof(review));
    }

    /// <summary>As <see cref="Nights"/>; null where there is nothing to draw, which is no reason to withhold what the nights say.</summary>
    internal static Figure? NightsOrNone(RecordReview review, int days)
    {
        if (review.Nights.Count < 2)
        {
            return null;
        }

        var last = review.Nights[^1].Record.Date;
        var first = review.Nights.Select(night => night.Record.Date).First(date => date.DayNumber > last.DayNumber - days);
        first = first == last ? review.Nights[^2].Record.Date : first;
        var shown = review.Nights.Where(night => night.Record.Date >= first).ToList();
        var axis = Axis.OfDays(first, last);
        List<Panel> panels = [.. new[] { Ultrafiltration(), InitialDrain(), Dwell(), Weight(), Pressure() }.OfType<Panel>()];
        if (panels.Count == 0)
        {
            return null;
        }

        return new(
            string.Create(CultureInfo.InvariantCulture, $"Nights from {first:yyyy-MM-dd} to {last:yyyy-MM-dd}"),
            "Shaded: where nine nights in ten were to be expected before each was seen, by the fitted membrane, the regimen as run and this person's own nights. Rings: nights left out of the charts.",
            Words(shown),
            [.. panels])
        {
            Columns = 1,
            Key = KeyPlacement.Below,
        };

        double X(ReviewedNight night) => night.Record.Date.DayNumber - first.DayNumber;

        Panel? Ultrafiltration()
        {
            var seen = shown.Where(night => night.Ultrafiltration is not null).ToList();
            var panel = Beside(new(shown[^1].Record.IsByHand ? "ultrafiltration of 24 h" : "ultrafiltration of the night", "mL"), seen, night => night.Ultrafiltration!.Value.Milliliters, night => night.Expected?.Select(volume => volume.Milliliters), night => night.ExpectedBeforeChange?.Milliliters);
            return panel is null ? null : panel with
            {
                RelativeHeight = 0.62,
                Marks = [.. panel.Marks, .. review.Changes.Where(change => change.SignalledOn >= first).Select(change => Mark.AtX(change.SignalledOn.DayNumber - first.DayNumber, "change signalled"))
                    .Concat(shown.Where(night => night.Record.Effluent is EffluentLook.Cloudy or EffluentLook.Brown).Take(1).Select(night => Mark.AtX(X(night), night.Record.Effluent == EffluentLook.Brown ? "brown" : "cloudy")))],
            };
        }

        Panel? InitialDrain()
        {
            var seen = shown.Where(night => night.Record.InitialDrain is not null).ToList();
            if (seen.Count == 0)
            {
                return null;
            }

            // After dry days most of them lie at zero, where half a dot would be cut off.
            double[] ends = [.. seen.SelectMany(night => new[] { night.Record.InitialDrain, night.ExpectedInitialDrain?.Low, night.ExpectedInitialDrain?.High, night.InitialDrainBeforeChange }).OfType<Volume>().Select(volume => volume.Milliliters)];
            Axis drains = new("initial drain", "mL");
            return Beside(ends.Min() > 0.4 * ends.Max() ? drains : drains with { Range = new(-0.08 * ends.Max(), 1.06 * ends.Max()) }, seen, night => night.Record.InitialDrain!.Value.Milliliters, night => night.ExpectedInitialDrain?.Select(volume => volume.Milliliters), night => night.InitialDrainBeforeChange?.Milliliters) is { } panel
                ? panel with { RelativeHeight = Small }
                : null;
        }

        Panel? Dwell()
        {
            // An exchange by hand has its times, and no average that is expected.
            var seen = shown.Where(night => night.Record.AverageDwell is not null && night.ExpectedDwell is not null).ToList();
            return Beside(new("average dwell", "min"), seen, night => night.Record.AverageDwell!.Value.TotalMinutes, night => night.ExpectedDwell?.Select(time => time.TotalMinutes)) is { } panel
                ? panel with { RelativeHeight = Small }
                : null;
        }

        Panel? Beside(Axis values, List<ReviewedNight> seen, Func<ReviewedNight, double> read, Func<ReviewedNight, Band<double>?> expect, Func<ReviewedNight, double?>? before = null)
        {
            var charted = seen.Where(night => night.LeftOut.Length == 0).ToList();
            var leftOut = seen.Where(night => night.LeftOut.Length > 0).ToList();
            var banded = seen.Where(night => expect(night) is not null).ToList();
            var earlier = before is null ? [] : banded.Where(night => before(night) is not null).ToList();

            // A night that kept 5 L would press all others into a line: what is far below what is charted stands at the lower edge, and its number beside it.
            double[] drawn = [.. charted.Select(read), .. banded.SelectMany(night => new[] { expect(night)!.Value.Low, expect(night)!.Value.High })];
            var edge = drawn.Length > 1 ? drawn.Min() - EdgeShare * (drawn.Max() - drawn.Min()) : double.NegativeInfinity;
            List<Series> series =
            [
                .. charted.Count > 0 ? new[] { Points("observed", charted, MarkerShape.Circle, Tone.Strong) } : [],
                .. leftOut.Count > 0 ? new[] { Points("left out of the charts", leftOut, MarkerShape.Ring, Tone.Middle) } : [],
                .. banded.Count > 1 ? new[] { new Series("expected", [.. banded.Select(X)], [.. banded.Select(night => expect(night)!.Value.Median)]) { Tone = Tone.Middle, Weight = 1, Pattern = LinePattern.Dash } } : [],
                .. earlier.Count > 1 ? new[] { new Series("expected before the change", [.. earlier.Select(X)], [.. earlier.Select(night => before!(night)!.Value)]) { Tone = Tone.Strong, Weight = 1, Pattern = LinePattern.Dot } } : [],
            ];
            return series.Count == 0 ? null : new(axis, values)
            {
                Series = series,
                Bands = banded.Count > 1
                    ? [new("expected, 90 %", [.. banded.Select(X)], [.. banded.Select(night => expect(night)!.Value.Low)], [.. banded.Select(night => expect(night)!.Value.High)])]
                    : [],
                Marks = [.. leftOut.Where(night => read(night) < edge).TakeLast(MostBelow).Select(night => Mark.AtX(X(night), $"{Digits.Fixed(read(night), 0)} {values.Unit}"))],
            };

            Series Points(string name, List<ReviewedNight> nights, MarkerShape marker, Tone tone) => new(name, [.. nights.Select(X)], [.. nights.Select(night => night.LeftOut.Length > 0 ? Math.Max(read(night), edge) : read(night))])
            {
                Pattern = LinePattern.None,
                Marker = marker,
                Tone = tone,
                Notes = [.. nights.Select(night => string.Create(CultureInfo.InvariantCulture, $"{night.Record.Date:d MMM}: {Digits.Fixed(read(night), 0)} {values.Unit}{(night.LeftOut.Length > 0 ? ", " + night.LeftOut : "")}"))],
            };
        }

        Panel? Weight()
        {
            var seen = shown.Where(night => night.EmptyWeight is not null).ToList();
            return seen.Count < 2 ? null : new(axis, new("empty weight", "kg"))
            {
                RelativeHeight = Small,
                Series = [new("weight", [.. seen.Select(X)], [.. seen.Select(night => night.EmptyWeight!.Value.Kilograms)]) { Marker = MarkerShape.Circle, Weight = 1 }],
            };
        }

        Panel? Pressure()
        {
            var seen = shown.Where(night => night.Record.Sitting is not null).ToList();
            return seen.Count < 2 ? null : new(axis, new("pressure sitting", "mmHg"))
            {
                RelativeHeight = Small,
                Series =
                [
                    Line("systolic", pressure => pressure.SystolicMillimetersOfMercury, MarkerShape.Circle, LinePattern.Solid),
                    Line("diastolic", pressure => pressure.DiastolicMillimetersOfMercury, MarkerShape.Ring, LinePattern.Dot),
                ],
            };

            Series Line(string name, Func<BloodPressure, int> read, MarkerShape marker, LinePattern pattern) =>
                new(name, [.. seen.Select(X)], [.. seen.Select(night => (double)read(night.Record.Sitting!.Value))]) { Marker = marker, Pattern = pattern, Weight = 1 };
        }
    }

    private static string Words(List<ReviewedNight> shown)
    {
        var charted = shown.Where(night => night is { Ultrafiltration: not null, Expected: not null, LeftOut: "" }).ToList();
        var outside = charted.Count(night => night.Ultrafiltration < night.Expected!.Value.Low || night.Ultrafiltration > night.Expected.Value.High);
        return charted.Count == 0
            ? "No night of these could be set beside an expectation."
            : string.Create(
                CultureInfo.InvariantCulture,
                $"{charted.Count} nights charted: {charted.Average(night => night.Ultrafiltration!.Value.Milliliters):0} mL on average where {charted.Average(night => night.Expected!.Value.Median.Milliliters):0} mL were expected; {outside} outside the band, of which about {0.1 * charted.Count:0} are to be expected.");
    }
}
