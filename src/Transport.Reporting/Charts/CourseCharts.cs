namespace Transport.Reporting;

/// <summary>Charts of one simulated dwell.</summary>
public static class CourseCharts
{
    // Glucose in one hue, strengths told apart by lightness, never by the colors of bag caps; icodextrin is grey and dotted.
    private static readonly Tone[] Strengths = [Tone.Light, Tone.Middle, Tone.Strong];

    /// <summary>Volume, glucose and sodium of a dwell against time.</summary>
    public static Figure Of(DwellCourse course)
    {
        ArgumentNullException.ThrowIfNull(course);
        var end = course.Dwell.Duration;
        var minutes = Enumerable.Range(0, 121).Select(i => i / 120.0 * end.TotalMinutes).ToArray();
        var (peakTime, peak) = course.PeakUltrafiltration();
        var (dipTime, dip) = course.SodiumMinimum();
        return new(
            "One dwell",
            $"{course.Dwell.Solution}, {Digits.Of(course.Dwell.Fill.Milliliters, 4)} mL on {Digits.Fixed(course.Dwell.Residual.Volume.Milliliters, 0)} mL of residual fluid; plasma constant.{(course.Dwell.Solution.Caution is { } caution ? " " + caution : "")}",
            $"Net ultrafiltration is largest, {Digits.Fixed(peak.Milliliters, 0)} mL, at {Digits.Hours(peakTime)}. Dialysate sodium is lowest, {Digits.Fixed(dip.MillimolesPerLiter, 1)} mmol/L, at {Digits.Hours(dipTime)}.",
            Line("net ultrafiltration", "mL", t => course.NetUltrafiltrationAt(t).Milliliters),
            course.Dwell.Solution.Polymer is null
                ? Line("dialysate glucose", "mmol/L", t => course.DialysateAt(Solutes.Glucose, t).MillimolesPerLiter)
                : Line("glucose polymer absorbed", "g", t => course.PolymerAbsorbedAt(t).Grams),
            Line("dialysate sodium", "mmol/L", t => course.DialysateAt(Solutes.Sodium, t).MillimolesPerLiter))
        {
            Columns = 3,
        };

        Panel Line(string label, string unit, Func<TimeSpan, double> read) => new(new("dwell time", "h"), new(label, unit))
        {
            Series = [new(label, [.. minutes.Select(t => t / 60)], [.. minutes.Select(t => read(TimeSpan.FromMinutes(t)))])],
        };
    }

    /// <summary>Net ultrafiltration and dialysate sodium of several dwells against time, glucose strengths beside icodextrin.</summary>
    /// <param name="courses">At least one, weakest glucose first; each is drawn to its own end.</param>
    /// <exception cref="ArgumentException">There is none.</exception>
    public static Figure SideBySide(IReadOnlyList<DwellCourse> courses)
    {
        ArgumentNullException.ThrowIfNull(courses);
        if (courses.Count == 0)
        {
            throw new ArgumentException("Expected at least one dwell.", nameof(courses));
        }

        var glucose = courses.Where(course => course.Dwell.Solution.Polymer is null).ToList();
        var caution = Caution.Of(courses.Select(course => course.Dwell.Solution));
        return new(
            "Volume and sodium of dwells side by side",
            $"One membrane, plasma constant. Solid: glucose. Dotted: icodextrin, calibrated on published means of populations.{(caution.Length > 0 ? " " + caution : "")}",
            string.Join(" ", courses.Select(Words)),
            Panel("net ultrafiltration", "mL", (course, t) => course.NetUltrafiltrationAt(t).Milliliters) with { Marks = [Mark.AtY(0, "nothing gained")] },
            Panel("dialysate sodium", "mmol/L", (course, t) => course.DialysateAt(Solutes.Sodium, t).MillimolesPerLiter))
        {
            Columns = 2,
        };

        string Words(DwellCourse course)
        {
            var (peakTime, peak) = course.PeakUltrafiltration();
            var sodium = course.SodiumMinimum().Sodium;
            return $"{course.Dwell.Solution}: most ultrafiltration {Digits.Fixed(peak.Milliliters, 0)} mL at {Digits.Hours(peakTime)}, at the end {Digits.Fixed(course.NetUltrafiltrationAt(course.Dwell.Duration).Milliliters, 0)} mL; lowest sodium {Digits.Fixed(sodium.MillimolesPerLiter, 1)} mmol/L.";
        }

        Panel Panel(string label, string unit, Func<DwellCourse, TimeSpan, double> read) => new(new("dwell time", "h"), new(label, unit))
        {
            Series = [.. courses.Select(course =>
            {
                var times = Enumerable.Range(0, 121).Select(i => i / 120.0 * course.Dwell.Duration).ToArray();
                var rank = glucose.IndexOf(course);
                return new Series(course.Dwell.Solution.Name, [.. times.Select(t => t.TotalHours)], [.. times.Select(t => read(course, t))])
                {
                    Tone = rank < 0 ? Tone.Neutral : Strengths[Math.Clamp(Strengths.Length - glucose.Count + rank, 0, Strengths.Length - 1)],
                    Pattern = rank < 0 ? LinePattern.Dot : LinePattern.Solid,
                };
            })],
        };
    }
}
