namespace Transport.Reporting;

/// <summary>Charts of one simulated dwell.</summary>
public static class CourseCharts
{
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
            $"{course.Dwell.Solution}, {Digits.Of(course.Dwell.Fill.Milliliters, 4)} mL on {Digits.Fixed(course.Dwell.Residual.Volume.Milliliters, 0)} mL of residual fluid; plasma constant.",
            $"Net ultrafiltration is largest, {Digits.Fixed(peak.Milliliters, 0)} mL, at {Digits.Hours(peakTime)}. Dialysate sodium is lowest, {Digits.Fixed(dip.MillimolesPerLiter, 1)} mmol/L, at {Digits.Hours(dipTime)}.",
            Line("net ultrafiltration", "mL", t => course.NetUltrafiltrationAt(t).Milliliters),
            Line("dialysate glucose", "mmol/L", t => course.DialysateAt(Solutes.Glucose, t).MillimolesPerLiter),
            Line("dialysate sodium", "mmol/L", t => course.DialysateAt(Solutes.Sodium, t).MillimolesPerLiter))
        {
            Columns = 3,
        };

        Panel Line(string label, string unit, Func<TimeSpan, double> read) => new(new("dwell time", "h"), new(label, unit))
        {
            Series = [new(label, [.. minutes.Select(t => t / 60)], [.. minutes.Select(t => read(TimeSpan.FromMinutes(t)))])],
        };
    }
}
