namespace Transport.Analysis;

/// <summary>Holds a calibrated polymer against everything that was read of icodextrin's dwells, the fitted figures marked.</summary>
public static class PolymerCheck
{
    /// <summary>Published figures beside computed ones, misses included.</summary>
    /// <param name="calibrated">A calibration whose dwell lasts 16 h.</param>
    /// <exception cref="ArgumentOutOfRangeException">The dwell is shorter.</exception>
    public static IReadOnlyList<PublishedFigure> Of(CalibratedPolymer calibrated)
    {
        ArgumentNullException.ThrowIfNull(calibrated);
        var (first, regular) = (calibrated.Course, calibrated.CourseOfRegularUser);
        var loss = (calibrated.Membrane.PolymerTissueUptake + Clearance.FromMillilitersPerMinute(calibrated.Membrane.LymphaticRemoval.MillilitersPerMinute)).MillilitersPerMinute;
        return
        [
            Volume("ultrafiltration, 4 h", IcodextrinSeries.FourHours),
            Volume("ultrafiltration, 10 h, daily users", IcodextrinSeries.TenHours),
            Volume("ultrafiltration, 14 h, the same", IcodextrinSeries.FourteenHours),
            Volume("ultrafiltration, 16 h", IcodextrinSeries.SixteenHours),
            Absorbed("absorbed share, 8 h, a register", 8, 0.20),
            Absorbed("absorbed share, 12 h, the same", 12, 0.34),
            Absorbed("absorbed share, 12 h, a trial", 12, 0.401),
            new("tissue uptake and lymph: tracer's absorption", "mL/min", 1.2, 1.25, 1.3, null, loss, loss, false),
            new("effluent osmolality, 9 to 14 h", "mOsm/kg", 288, 307, 326, null, Osmolality(first), Osmolality(regular), false),
        ];

        PublishedFigure Volume(string what, VolumeTarget series) => new(
            what,
            "mL",
            (series.Mean - series.Deviation).Milliliters,
            series.Mean.Milliliters,
            (series.Mean + series.Deviation).Milliliters,
            series.StandardError.Milliliters,
            first.NetUltrafiltrationAt(series.Time).Milliliters,
            regular.NetUltrafiltrationAt(series.Time).Milliliters,
            series == calibrated.Early || series == calibrated.Late);

        PublishedFigure Absorbed(string what, double hours, double share) =>
            new(what, "", share, share, share, null, Share(first, hours), Share(regular, hours), false);

        static double Share(DwellCourse course, double hours) =>
            course.PolymerAbsorbedAt(TimeSpan.FromHours(hours)) / course.PolymerAt(TimeSpan.Zero);

        // Sodium with its anion, urea, glucose, and every chain; activity is left out.
        static double Osmolality(DwellCourse course)
        {
            var time = TimeSpan.FromHours(12);
            return 2 * course.DialysateAt(Solutes.Sodium, time).MillimolesPerLiter
                + course.DialysateAt(Solutes.Urea, time).MillimolesPerLiter
                + course.DialysateAt(Solutes.Glucose, time).MillimolesPerLiter
                + course.Dwell.Solution.Polymer!.Fractions.Sum(fraction => course.DialysateAt(fraction.Solute, time).MillimolesPerLiter);
        }
    }
}
