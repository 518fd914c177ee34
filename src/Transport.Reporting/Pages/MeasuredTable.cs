using static System.FormattableString;

namespace Transport.Reporting;

/// <summary>Laboratory values as they were written, in the laboratory's own units, with the other unit in brackets.</summary>
internal static class MeasuredTable
{
    /// <summary>One row for each analyte, one column for each sample.</summary>
    public static PageText Of(PageText page, SampleSheet sheet)
    {
        var understood = sheet.Measurements.Where(row => row.IsUnderstood).ToList();
        var values = understood.Where(row => row.Analyte != Analyte.Marker).ToList();
        var samples = values.Select(Sample).Distinct().OrderBy(sample => sample.Order).ToList();
        page.Table(["in the laboratory's units", .. samples.Select(sample => "#" + sample.Name)],
            [.. values.GroupBy(row => row.Analyte).Select(group => (IReadOnlyList<string>)
            [
                $"{Name(group.Key)}, {group.First().Unit}{(OtherUnit(group.First()) is { } other ? $" ({other})" : "")}",
                .. samples.Select(sample => group.FirstOrDefault(row => Sample(row) == sample) is { } row ? Cell(row, group.First().Unit) : ""),
            ])]);

        // A marker is sampled at times of its own, which would make the table wider than the paper.
        return page.Small(string.Join("; ", understood.Except(values).GroupBy(row => row.Unit)
            .Select(group => $"Marker, {group.Key}: {string.Join(", ", group.OrderBy(row => row.Time).Select(row => $"{row.Text} ({Sample(row).Name})"))}.")));
    }

    private static (double Order, string Name) Sample(SheetMeasurement row) => row.Fluid switch
    {
        SampledFluid.PrecedingDrain => (-1, "drain before"),
        SampledFluid.Dialysate => (row.Time!.Value.TotalMinutes, Invariant($"{row.Time.Value.TotalMinutes:0} min")),
        SampledFluid.CollectedDrain => (row.Bag.Any(char.IsAsciiDigit) ? double.Parse(string.Concat(row.Bag.Where(char.IsAsciiDigit)), System.Globalization.CultureInfo.InvariantCulture) : 0, row.Bag),
        SampledFluid.Urine => (1e6, "urine"),
        _ => (1e7 + (row.Time?.TotalMinutes ?? -1), row.Time is { } time ? Invariant($"plasma\n{time.TotalMinutes:0} min") : "plasma"),
    };

    // A sample in another unit than the others of its row says it.
    private static string Cell(SheetMeasurement row, string? unit) => row.Text + (row.Unit == unit ? "" : " " + row.Unit) + (Other(row) is { } other ? $"\n({Digits.Of(other)})" : "");

    private static string Name(Analyte analyte) => analyte switch
    {
        Analyte.UreaNitrogen => "urea nitrogen",
        Analyte.TotalProtein => "total protein",
        Analyte.ImmunoglobulinG => "IgG",
        Analyte.Beta2Microglobulin => "β2-microglobulin",
        Analyte.Alpha2Macroglobulin => "α2-macroglobulin",
        _ => analyte.ToString().ToLowerInvariant(),
    };

    private static bool IsMolar(SheetMeasurement row) => row.Unit!.Contains("mol", StringComparison.Ordinal);

    private static string? OtherUnit(SheetMeasurement row) => row.Analyte switch
    {
        Analyte.Creatinine => IsMolar(row) ? "mg/dL" : "µmol/L",
        Analyte.Urea => IsMolar(row) ? "urea nitrogen, mg/dL" : "mmol/L",
        Analyte.UreaNitrogen => "urea, mmol/L",
        Analyte.Glucose => IsMolar(row) ? "mg/dL" : "mmol/L",
        _ => null,
    };

    private static double? Other(SheetMeasurement row) => row.Value is not { } value ? null : row.Analyte switch
    {
        Analyte.Creatinine => IsMolar(row) ? value.MilligramsPerDeciliter(Solutes.Creatinine) : value.MicromolesPerLiter,
        Analyte.Urea when IsMolar(row) => value.MillimolesPerLiter * 2.8014, // two atoms of nitrogen, 28.014 g/mol
        Analyte.Urea or Analyte.UreaNitrogen => value.MillimolesPerLiter,
        Analyte.Glucose => IsMolar(row) ? value.MilligramsPerDeciliter(Solutes.Glucose) : value.MillimolesPerLiter,
        _ => null,
    };
}
