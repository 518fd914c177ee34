namespace Transport.Reporting;

/// <summary>Charts of fits.</summary>
public static class FitCharts
{
    /// <summary>Each observed solute against dwell time with the fitted membrane's course; what was not fitted is marked as a check.</summary>
    public static Figure ObservedAndFitted(FittedMembrane fit)
    {
        ArgumentNullException.ThrowIfNull(fit);
        var exchange = fit.Exchanges[0];
        var course = DwellSimulation.Run(fit.Patient, fit.Membrane, exchange.Dwell, new() { Panel = SolutePanel.Full });
        var groups = exchange.Observations
            .Where(observation => observation.Quantity != ObservedQuantity.NetUltrafiltrationMilliliters)
            .GroupBy(observation => observation.Quantity)
            .ToList();
        return new(
            "The samples and the fitted membrane",
            "Whiskers: ± 2 SD of the measurement. A hollow mark was not used in the fit: it is a check of the model.",
            string.Join(" ", groups.Select(group => $"{group.Key.Name()} at {string.Join(", ", group.Select(o => Digits.Fixed(o.Time.TotalMinutes, 0)))} min: observed {string.Join(", ", group.Select(o => Digits.Fixed(o.Value, 2)))}; fitted {string.Join(", ", group.Select(o => Digits.Fixed(Value(course, o.Quantity, o.Time), 2)))}.")),
            [.. groups.Select(group => PanelOf(course, group.Key, [.. group]))])
        {
            Columns = 2,
        };
    }

    private static Panel PanelOf(DwellCourse course, ObservedQuantity quantity, Observation[] observations)
    {
        var minutes = Enumerable.Range(0, 61).Select(i => i / 60.0 * course.Dwell.Duration.TotalMinutes).ToArray();
        return new(new("dwell time", "min"), new(quantity.Name(), ""))
        {
            Series =
            [
                new("fitted membrane", minutes, [.. minutes.Select(t => Value(course, quantity, TimeSpan.FromMinutes(t)))]) { Tone = Tone.Middle },
                new("measured", [.. observations.Select(o => o.Time.TotalMinutes)], [.. observations.Select(o => o.Value)])
                {
                    Pattern = LinePattern.None,
                    Marker = observations[0].IsFitted ? MarkerShape.Circle : MarkerShape.Ring,
                    YWhiskers = [.. observations.Select(o => new Extent(o.Value - 2 * o.Deviation, o.Value + 2 * o.Deviation))],
                },
            ],
        };
    }

    private static double Value(DwellCourse course, ObservedQuantity quantity, TimeSpan time) => quantity switch
    {
        ObservedQuantity.CreatinineToPlasma => course.DialysateToPlasmaAt(Solutes.Creatinine, time),
        ObservedQuantity.UreaToPlasma => course.DialysateToPlasmaAt(Solutes.Urea, time),
        ObservedQuantity.SodiumToPlasma => course.DialysateToPlasmaAt(Solutes.Sodium, time),
        ObservedQuantity.AlbuminToPlasma => course.DialysateToPlasmaAt(Solutes.Albumin, time),
        ObservedQuantity.ImmunoglobulinGToPlasma => course.DialysateToPlasmaAt(Solutes.ImmunoglobulinG, time),
        ObservedQuantity.GlucoseToInitial => course.GlucoseToInitialAt(time),
        _ => course.DialysateAt(Solutes.Glucose, time) / course.Dwell.Solution.Glucose,
    };
}
