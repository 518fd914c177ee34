namespace Transport.Reporting;

/// <summary>What can be drawn of a dwell against time: a name, a unit, and how it is read from the course.</summary>
/// <param name="Label">What is measured; not empty.</param>
/// <param name="Unit">Its unit as printed; empty for a ratio.</param>
/// <param name="Read">The value at a time from the end of instillation, in <paramref name="Unit"/>.</param>
public sealed record CourseQuantity(string Label, string Unit, Func<DwellCourse, TimeSpan, double> Read)
{
    /// <summary>Volume in the cavity, mL.</summary>
    public static CourseQuantity Volume { get; } = new("intraperitoneal volume", "mL", (course, time) => course.VolumeAt(time).Milliliters);

    /// <summary>Volume gained since the fill, mL.</summary>
    public static CourseQuantity NetUltrafiltration { get; } = new("net ultrafiltration", "mL", (course, time) => course.NetUltrafiltrationAt(time).Milliliters);

    /// <summary>Dialysate sodium, mmol/L.</summary>
    public static CourseQuantity DialysateSodium { get; } = new("dialysate sodium", "mmol/L", (course, time) => course.DialysateAt(Solutes.Sodium, time).MillimolesPerLiter);

    /// <summary>Dialysate glucose, mmol/L.</summary>
    public static CourseQuantity DialysateGlucose { get; } = new("dialysate glucose", "mmol/L", (course, time) => course.DialysateAt(Solutes.Glucose, time).MillimolesPerLiter);

    /// <summary>D/D0 glucose.</summary>
    public static CourseQuantity GlucoseToInitial { get; } = new("D/D0 glucose", "", (course, time) => course.GlucoseToInitialAt(time));

    /// <summary>Glucose absorbed so far, g.</summary>
    public static CourseQuantity GlucoseAbsorbed { get; } = new("glucose absorbed", "g", (course, time) => course.GlucoseAbsorbedAt(time).Grams);

    /// <summary>Sodium removed so far, mmol.</summary>
    public static CourseQuantity SodiumRemoved { get; } = new("sodium removed", "mmol", (course, time) => course.RemovedAt(Solutes.Sodium, time).Millimoles);

    /// <summary>Free water so far: through the ultrasmall pores, mL.</summary>
    public static CourseQuantity FreeWater { get; } = new("free water", "mL", (course, time) => course.PoreVolumesAt(time).Ultrasmall.Milliliters);

    /// <summary>Small-pore fluid so far, mL.</summary>
    public static CourseQuantity SmallPoreFluid { get; } = new("small-pore fluid", "mL", (course, time) => course.PoreVolumesAt(time).Small.Milliliters);

    /// <summary>Flow through the ultrasmall pores, mL/min.</summary>
    public static CourseQuantity UltrasmallPoreFlow { get; } = new("ultrasmall-pore flow", "mL/min", (course, time) => course.PoreFlowsAt(time).Ultrasmall.MillilitersPerMinute);

    /// <summary>Flow through the small pores, mL/min; negative where fluid is taken back.</summary>
    public static CourseQuantity SmallPoreFlow { get; } = new("small-pore flow", "mL/min", (course, time) => course.PoreFlowsAt(time).Small.MillilitersPerMinute);

    /// <summary>Flow across the membrane, all pores together, mL/min.</summary>
    public static CourseQuantity TranscapillaryFlow { get; } = new("transcapillary flow", "mL/min", (course, time) => course.PoreFlowsAt(time).Total.MillilitersPerMinute);

    /// <summary>What leaves the cavity as it is, mL/min.</summary>
    public static CourseQuantity BulkRemoval { get; } = new("lymph and fluid loss", "mL/min", (course, time) => course.BulkRemovalAt(time).MillilitersPerMinute);

    /// <summary>D/P of a solute.</summary>
    public static CourseQuantity DialysateToPlasma(Solute solute)
    {
        ArgumentNullException.ThrowIfNull(solute);
        return new($"D/P {solute.Name}", "", (course, time) => course.DialysateToPlasmaAt(solute, time));
    }

    /// <summary>Plasma volume cleared of a solute so far, mL.</summary>
    public static CourseQuantity Cleared(Solute solute)
    {
        ArgumentNullException.ThrowIfNull(solute);
        return new($"cleared of {solute.Name}", "mL", (course, time) => course.ClearedAt(solute, time).Milliliters);
    }
}
