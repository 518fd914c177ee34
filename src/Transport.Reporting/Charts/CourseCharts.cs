namespace Transport.Reporting;

/// <summary>Charts of simulated dwells, whatever the model of the membrane.</summary>
public static class CourseCharts
{
    /// <summary>Volume, glucose and sodium of a dwell against time.</summary>
    public static Figure Of(DwellCourse course)
    {
        ArgumentNullException.ThrowIfNull(course);
        var peak = course.PeakUltrafiltration();
        var (dipTime, dip) = course.SodiumMinimum();
        return new(
            "One dwell",
            $"{Bag(course)}; plasma constant.{Cautions([course])}",
            $"Net ultrafiltration is largest, {Digits.Fixed(peak.NetUltrafiltration.Milliliters, 0)} mL, at {Digits.Hours(peak.Time)}. Dialysate sodium is lowest, {Digits.Fixed(dip.MillimolesPerLiter, 1)} mmol/L, at {Digits.Hours(dipTime)}.",
            Line("net ultrafiltration", "mL", t => course.NetUltrafiltrationAt(t).Milliliters),
            course.Dwell.Solution.Polymer is null
                ? Line("dialysate glucose", "mmol/L", t => course.DialysateAt(Solutes.Glucose, t).MillimolesPerLiter)
                : Line("glucose polymer absorbed", "g", t => course.PolymerAbsorbedAt(t).Grams),
            Line("dialysate sodium", "mmol/L", t => course.DialysateAt(Solutes.Sodium, t).MillimolesPerLiter))
        {
            Columns = 3,
        };

        Panel Line(string label, string unit, Func<TimeSpan, double> read) =>
            Empty(label, unit) with { Series = [Curve(label, course, read)] };
    }

    /// <summary>Volume and dialysate sodium of several dwells of one membrane: glucose strengths, icodextrin.</summary>
    /// <param name="courses">At least one, weakest glucose first; each is drawn to its own end.</param>
    /// <exception cref="ArgumentException">There is no dwell, or they are not of one membrane.</exception>
    public static Figure ByStrength(IReadOnlyList<DwellCourse> courses)
    {
        ArgumentNullException.ThrowIfNull(courses);
        if (courses.Count == 0 || courses.Any(course => !Equals(course.Membrane, courses[0].Membrane)))
        {
            throw new ArgumentException("Expected at least one dwell, all of one membrane.", nameof(courses));
        }

        var glucose = courses.Where(course => course.Dwell.Solution.Polymer is null).ToList();
        var polymer = glucose.Count < courses.Count ? " Dotted: icodextrin, calibrated on published means of populations." : "";
        return new(
            "The same membrane at each strength",
            $"{Digits.Of(courses[0].Dwell.Fill.Milliliters, 4)} mL on {Digits.Fixed(courses[0].Dwell.Residual.Volume.Milliliters, 0)} mL of residual fluid; plasma constant. Thin line: volume at the start.{polymer}{Cautions(courses)}",
            "Volume in mL and dialysate sodium in mmol/L against dwell time in hours. " + string.Join(" ", courses.Select(Words)),
            Lines("intraperitoneal volume", "mL", (course, t) => course.VolumeAt(t).Milliliters) with
            {
                Marks = [Mark.AtY(courses[0].VolumeAt(TimeSpan.Zero).Milliliters, "at the start")],
            },
            Lines("dialysate sodium", "mmol/L", (course, t) => course.DialysateAt(Solutes.Sodium, t).MillimolesPerLiter))
        {
            Columns = 2,
        };

        Panel Lines(string label, string unit, Func<DwellCourse, TimeSpan, double> read) => Empty(label, unit) with
        {
            Series =
            [
                .. courses.Select(course => Curve(course.Dwell.Solution.Name, course, t => read(course, t)) with
                {
                    Tone = course.Dwell.Solution.Polymer is null ? DwellCharts.ToneOf(glucose.IndexOf(course), glucose.Count) : Tone.Neutral,
                    Pattern = course.Dwell.Solution.Polymer is null ? LinePattern.Solid : LinePattern.Dot,
                }),
            ],
        };

        static string Words(DwellCourse course)
        {
            var peak = course.PeakUltrafiltration();
            var (time, sodium) = course.SodiumMinimum();
            return $"{course.Dwell.Solution.Name}: most {Digits.Fixed(peak.Volume.Milliliters, 0)} mL at {Digits.Hours(peak.Time)}{(peak.IsAtEnd ? ", still rising" : "")}; least sodium {Digits.Fixed(sodium.MillimolesPerLiter, 1)} mmol/L at {Digits.Hours(time)}.";
        }
    }

    /// <summary>Dwells that differ in one thing: each quantity in a panel, each dwell a line, told apart by lightness and pattern in the order given, unless a dwell states its own pattern.</summary>
    /// <param name="title">What is compared; not empty.</param>
    /// <param name="caption">What the reader must know; may be empty.</param>
    /// <param name="courses">1 to 4; each is drawn to its own end.</param>
    /// <param name="quantities">At least one.</param>
    /// <exception cref="ArgumentException">No dwell, more than four, or no quantity.</exception>
    public static Figure Compare(string title, string caption, IReadOnlyList<NamedCourse> courses, params IReadOnlyList<CourseQuantity> quantities)
    {
        ArgumentNullException.ThrowIfNull(courses);
        ArgumentNullException.ThrowIfNull(quantities);
        if (courses.Count is 0 or > 4 || quantities.Count == 0)
        {
            throw new ArgumentException($"Expected 1 to 4 dwells and at least one quantity; found {courses.Count} and {quantities.Count}.", nameof(courses));
        }

        return new(
            title,
            caption + Cautions(courses.Select(named => named.Course)),
            string.Join(" ", courses.Select(named => $"{named.Name}: " + string.Join(", ", quantities.Select(quantity =>
                $"{quantity.Label} {Digits.Of(quantity.Read(named.Course, named.Course.Dwell.Duration), 3)}{(quantity.Unit.Length > 0 ? " " + quantity.Unit : "")} at the end")) + ".")),
            [
                .. quantities.Select(quantity => Empty(quantity.Label, quantity.Unit) with
                {
                    Series =
                    [
                        .. courses.Select((named, i) => Curve(named.Name, named.Course, t => quantity.Read(named.Course, t), intervals: 48) with
                        {
                            Tone = ComparedTones[i],
                            Pattern = named.Pattern ?? ComparedPatterns[i],
                        }),
                    ],
                }),
            ])
        {
            Columns = Math.Min(3, quantities.Count),
        };
    }

    /// <summary>Simulated courses with printed means and their standard deviations between people.</summary>
    /// <param name="title">What is compared; not empty.</param>
    /// <param name="caption">The sources.</param>
    /// <param name="quantity">What is drawn.</param>
    /// <param name="courses">1 to 4 dwells.</param>
    /// <param name="points">At least one; those of one name share a marker.</param>
    /// <exception cref="ArgumentException">No or too many dwells, or no point.</exception>
    public static Figure WithPublished(
        string title, string caption, CourseQuantity quantity, IReadOnlyList<NamedCourse> courses, params IReadOnlyList<PublishedPoint> points)
    {
        ArgumentNullException.ThrowIfNull(quantity);
        ArgumentNullException.ThrowIfNull(points);
        var lines = Compare(title, caption, courses, quantity);
        if (points.Count == 0)
        {
            throw new ArgumentException("Expected at least one printed mean.", nameof(points));
        }

        var series = points.GroupBy(point => point.Name).Select((named, i) => new Series(
            named.Key, [.. named.Select(point => point.Time.TotalHours)], [.. named.Select(point => point.Value)])
        {
            Pattern = LinePattern.None,
            Marker = PublishedMarkers[i % PublishedMarkers.Length],
            Tone = Tone.Attention,
            YWhiskers = [.. named.Select(point => new Extent(point.Value - (point.StandardDeviation ?? 0), point.Value + (point.StandardDeviation ?? 0)))],
        });
        return new(
            title,
            caption,
            lines.AltText + " Printed: " + string.Join(", ", points.Select(point =>
                $"{point.Name} {Digits.Of(point.Value, 3)}{(point.StandardDeviation is { } sd ? " ± " + Digits.Of(sd, 2) : "")} at {Digits.Hours(point.Time)}")) + ".",
            lines.Panels[0] with { Series = [.. lines.Panels[0].Series, .. series] })
        {
            Key = KeyPlacement.Below,
        };
    }

    private static readonly MarkerShape[] PublishedMarkers = [MarkerShape.Circle, MarkerShape.Square, MarkerShape.Diamond, MarkerShape.Triangle];

    // Prints in grey: no two of them agree in both.
    private static readonly Tone[] ComparedTones = [Tone.Strong, Tone.Middle, Tone.Light, Tone.Neutral];

    private static readonly LinePattern[] ComparedPatterns = [LinePattern.Solid, LinePattern.Dash, LinePattern.Solid, LinePattern.Dot];

    /// <summary>The same dwell with two models of the membrane, and where they part: volume, D/P creatinine, D/D0 glucose.</summary>
    /// <param name="one">The model that is asked.</param>
    /// <param name="oneName">What the reader calls it.</param>
    /// <param name="other">The second opinion.</param>
    /// <param name="otherName">What the reader calls that.</param>
    /// <exception cref="ArgumentException">The dwells are not the same, or a name is empty.</exception>
    public static Figure TwoModels(DwellCourse one, string oneName, DwellCourse other, string otherName)
    {
        ArgumentNullException.ThrowIfNull(one);
        ArgumentNullException.ThrowIfNull(other);
        if (one.Dwell != other.Dwell)
        {
            throw new ArgumentException("Expected the same dwell with both models.", nameof(other));
        }

        Func<DwellCourse, TimeSpan, double> volume = (course, t) => course.VolumeAt(t).Milliliters;
        Func<DwellCourse, TimeSpan, double> creatinine = (course, t) => course.DialysateToPlasmaAt(Solutes.Creatinine, t);
        Func<DwellCourse, TimeSpan, double> glucose = (course, t) => course.GlucoseToInitialAt(t);
        return new(
            "The same dwell with two models of the membrane",
            $"{Bag(one)}; plasma constant. Shaded: where the two part, with the widest gap. Neither is fitted to the other; agreement is no proof.",
            $"{oneName} beside {otherName}. Widest gaps: volume {Gap(volume, 0, " mL")}, D/P creatinine {Gap(creatinine, 2, "")}, D/D0 glucose {Gap(glucose, 2, "")}.",
            Both("intraperitoneal volume", "mL", volume, 0),
            Both("D/P creatinine", "", creatinine, 2),
            Both("D/D0 glucose", "", glucose, 2))
        {
            Columns = 3,
        };

        string Gap(Func<DwellCourse, TimeSpan, double> read, int decimals, string unit)
        {
            var time = Widest(read);
            return $"{Digits.Fixed(Math.Abs(read(one, time) - read(other, time)), decimals)}{unit} at {Digits.Hours(time)}";
        }

        TimeSpan Widest(Func<DwellCourse, TimeSpan, double> read) => Times(one).MaxBy(t => Math.Abs(read(one, t) - read(other, t)));

        Panel Both(string label, string unit, Func<DwellCourse, TimeSpan, double> read, int decimals)
        {
            var times = Times(one);
            var widest = Widest(read);
            var hours = times.Select(t => t.TotalHours).ToArray();
            var gap = Math.Abs(read(one, widest) - read(other, widest));
            return Empty(label, unit) with
            {
                Series =
                [
                    Curve(oneName, one, t => read(one, t)) with { Tone = Tone.Strong },
                    Curve(otherName, other, t => read(other, t)) with { Tone = Tone.Middle, Pattern = LinePattern.Dash },
                ],
                Bands =
                [
                    new(
                        "where they part", hours,
                        [.. times.Select(t => Math.Min(read(one, t), read(other, t)))], [.. times.Select(t => Math.Max(read(one, t), read(other, t)))]),
                ],
                Marks = [Mark.AtX(widest.TotalHours, $"{Digits.Fixed(gap, decimals)}{(unit.Length > 0 ? " " + unit : "")} apart")],
            };
        }
    }

    private static string Bag(DwellCourse course) =>
        $"Fill of {course.Dwell.Solution}, {Digits.Of(course.Dwell.Fill.Milliliters, 4)} mL on {Digits.Fixed(course.Dwell.Residual.Volume.Milliliters, 0)} mL of residual fluid";

    // With a space before it; empty where no solution asks for one.
    private static string Cautions(IEnumerable<DwellCourse> courses) =>
        Caution.Of(courses.Select(course => course.Dwell.Solution)) is { Length: > 0 } caution ? " " + caution : "";

    private static TimeSpan[] Times(DwellCourse course, int intervals = 120) => [.. Enumerable.Range(0, intervals + 1).Select(i => course.Dwell.Duration * (i / (double)intervals))];

    private static Panel Empty(string label, string unit) => new(new("dwell time", "h"), new(label, unit));

    private static Series Curve(string name, DwellCourse course, Func<TimeSpan, double> read, int intervals = 120)
    {
        var times = Times(course, intervals);
        return new(name, [.. times.Select(t => t.TotalHours)], [.. times.Select(read)]);
    }
}
