using System.Globalization;
using CsvHelper;

namespace Transport.Analysis;

/// <summary>The sheet a nurse fills in, for the 4-h test.</summary>
internal static class BlankSheet
{
    private static readonly (SheetItem Item, string Value, string Unit, string Remark)[] Facts =
    [
        (SheetWords.Code, "", "", "a code of your own, never a name"),
        (SheetWords.Sex, "", "", "female or male"),
        (SheetWords.Age, "", "years", ""),
        (SheetWords.Height, "", "cm", ""),
        (SheetWords.Weight, "", "kg", "without dialysate in the belly"),
        (SheetWords.Urine, "", "mL/day", "0 where there is none"),
        (SheetWords.RenalUreaClearance, "", "mL/min", ""),
        (SheetWords.RenalCreatinineClearance, "", "mL/min", ""),
        (SheetWords.Date, "", "", "year-month-day"),
        (SheetWords.SolutionGlucose, "", "mmol/L", "from the list of contents; or g/L; or % anhydrous; or % monohydrate"),
        (SheetWords.SolutionSodium, "", "mmol/L", ""),
        (SheetWords.Agent, "glucose", "", ""),
        (SheetWords.Fill, "", "mL", "what went in, less the flush"),
        (SheetWords.Basis, "", "", "weighed or label"),
        (SheetWords.Overfill, "", "mL", "only with a label fill: what the bag holds above it, less the flush"),
        (SheetWords.Residual, "", "mL", "only if known"),
        (SheetWords.EndOfInflow, "", "", "clock time hh:mm; then sample times may be clock times too"),
        (SheetWords.StartOfDrain, "", "", "clock time hh:mm"),
        (SheetWords.Dwell, "", "min", "not needed where both clock times are given"),
        (SheetWords.Drained, "", "mL", "all that came out, samples included"),
        (SheetWords.Method, "", "", "enzymatic or Jaffe"),
        (SheetWords.Factor, "", "mg/dL per mg/dL", "only with Jaffe: from your laboratory; or µmol/L per mmol/L"),
    ];

    private static readonly (SampledFluid Fluid, Analyte Analyte, string Time, string Unit)[] Samples =
    [
        (SampledFluid.Dialysate, Analyte.Creatinine, "0", "µmol/L"),
        (SampledFluid.Dialysate, Analyte.Creatinine, "120", "µmol/L"),
        (SampledFluid.Dialysate, Analyte.Creatinine, "240", "µmol/L"),
        (SampledFluid.Dialysate, Analyte.Urea, "0", "mmol/L"),
        (SampledFluid.Dialysate, Analyte.Urea, "120", "mmol/L"),
        (SampledFluid.Dialysate, Analyte.Urea, "240", "mmol/L"),
        (SampledFluid.Dialysate, Analyte.Glucose, "0", "mmol/L"),
        (SampledFluid.Dialysate, Analyte.Glucose, "120", "mmol/L"),
        (SampledFluid.Dialysate, Analyte.Glucose, "240", "mmol/L"),
        (SampledFluid.Dialysate, Analyte.Sodium, "0", "mmol/L"),
        (SampledFluid.Dialysate, Analyte.Sodium, "60", "mmol/L"),
        (SampledFluid.Dialysate, Analyte.Sodium, "240", "mmol/L"),
        (SampledFluid.Plasma, Analyte.Creatinine, "120", "µmol/L"),
        (SampledFluid.Plasma, Analyte.Urea, "120", "mmol/L"),
        (SampledFluid.Plasma, Analyte.Glucose, "120", "mmol/L"),
        (SampledFluid.Plasma, Analyte.Sodium, "120", "mmol/L"),
    ];

    public static void Write(TextWriter writer)
    {
        ArgumentNullException.ThrowIfNull(writer);
        using var csv = new CsvWriter(writer, CultureInfo.InvariantCulture, leaveOpen: true);
        Row(csv, [.. SheetWords.Columns.Select(column => column.Name)]);
        Array.ForEach(Facts, fact =>
            Row(csv, [Array.IndexOf(Facts, fact) < 8 ? "patient" : "test", fact.Item.Name, "", fact.Value, fact.Unit, fact.Remark]));
        Array.ForEach(Samples, sample =>
            Row(csv, [SheetWords.Name(sample.Fluid), SheetWords.Name(sample.Analyte), sample.Time, "", sample.Unit, ""]));
    }

    private static void Row(CsvWriter csv, string[] fields)
    {
        Array.ForEach(fields, csv.WriteField);
        csv.NextRecord();
    }
}
