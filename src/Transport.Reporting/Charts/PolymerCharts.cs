namespace Transport.Reporting;

/// <summary>Charts of a glucose polymer's calibration.</summary>
public static class PolymerCharts
{
    /// <summary>The calibrated dwell against published means with their standard deviations; what was not fitted is hollow.</summary>
    public static Figure PublishedAndComputed(CalibratedPolymer calibrated)
    {
        ArgumentNullException.ThrowIfNull(calibrated);
        VolumeTarget[] predicted = [IcodextrinSeries.TenHours, IcodextrinSeries.FourteenHours];
        VolumeTarget[] fitted = [calibrated.Early, calibrated.Late];
        return new(
            "Icodextrin: published ultrafiltration and the calibrated dwell",
            "2 L of 7.5 %. Whiskers: ± 1 SD between people. Filled: fitted; hollow: not used, daily users on a cycler. " + Caution.Of([calibrated.Dwell.Solution]),
            $"Computed after 4, 10, 14 and 16 h: {Numbers(calibrated.Course)} mL in a first dwell, {Numbers(calibrated.CourseOfRegularUser)} mL in a regular user, {Numbers(calibrated.CourseWithoutCalibration)} mL by hindrance theory alone. In print: 273 and 729 mL (fitted), 352 and 372 mL at 10 and 14 h.",
            new Panel(new("dwell time", "h"), new("net ultrafiltration", "mL"))
            {
                Series =
                [
                    Line("hindrance theory alone", calibrated.CourseWithoutCalibration) with { Tone = Tone.Neutral, Pattern = LinePattern.Dot },
                    Line("first dwell", calibrated.Course),
                    Line("regular user", calibrated.CourseOfRegularUser) with { Tone = Tone.Middle, Pattern = LinePattern.Dash },
                    Points("published, fitted", fitted) with { Marker = MarkerShape.Circle },
                    Points("published, not used", predicted) with { Marker = MarkerShape.Ring },
                ],
            })
        {
            Key = KeyPlacement.Below,
        };

        static Series Points(string name, IReadOnlyList<VolumeTarget> targets) => new(
            name, [.. targets.Select(target => target.Time.TotalHours)], [.. targets.Select(target => target.Mean.Milliliters)])
        {
            Pattern = LinePattern.None,
            Weight = 1.2,
            YWhiskers = [.. targets.Select(target => new Extent((target.Mean - target.Deviation).Milliliters, (target.Mean + target.Deviation).Milliliters))],
        };

        static Series Line(string name, DwellCourse course)
        {
            var times = Enumerable.Range(0, 97).Select(i => i / 96.0 * course.Dwell.Duration).ToArray();
            return new(name, [.. times.Select(time => time.TotalHours)], [.. times.Select(time => course.NetUltrafiltrationAt(time).Milliliters)]);
        }

        static string Numbers(DwellCourse course) => string.Join(", ", new double[] { 4, 10, 14, 16 }
            .Where(hours => hours <= course.Dwell.Duration.TotalHours)
            .Select(hours => Digits.Fixed(course.NetUltrafiltrationAt(TimeSpan.FromHours(hours)).Milliliters, 0)));
    }
}
