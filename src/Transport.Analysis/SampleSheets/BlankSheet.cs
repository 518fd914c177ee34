using System.Globalization;
using CsvHelper;

namespace Transport.Analysis;

/// <summary>The sheets that a nurse fills in, one for each form of test.</summary>
internal static class BlankSheet
{
    private static readonly (SheetItem Item, string Value, string Unit, string Remark)[] Person =
    [
        (SheetWords.Code, "", "", "a code of your own, never a name"),
        (SheetWords.Sex, "", "", "female or male"),
        (SheetWords.Age, "", "years", ""),
        (SheetWords.Height, "", "cm", ""),
        (SheetWords.Weight, "", "kg", "without dialysate in the belly"),
    ];

    private static readonly (SheetItem Item, string Value, string Unit, string Remark)[] Residual =
    [
        (SheetWords.Urine, "", "mL/day", "0 where there is none"),
        (SheetWords.RenalUreaClearance, "", "mL/min", ""),
        (SheetWords.RenalCreatinineClearance, "", "mL/min", ""),
    ];

    private static readonly (SheetItem Item, string Value, string Unit, string Remark)[] Bag =
    [
        (SheetWords.SolutionGlucose, "", "mmol/L", "from the list of contents; or g/L; or % anhydrous; or % monohydrate"),
        (SheetWords.SolutionSodium, "", "mmol/L", ""),
        (SheetWords.Agent, "glucose", "", ""),
    ];

    private static readonly (SheetItem Item, string Value, string Unit, string Remark)[] Dwell =
    [
        (SheetWords.Fill, "", "mL", "what went in, less the flush"),
        (SheetWords.Basis, "", "", "weighed or label"),
        (SheetWords.Overfill, "", "mL", "only with a label fill: what the bag holds above it, less the flush"),
        (SheetWords.Residual, "", "mL", "only if known"),
        (SheetWords.EndOfInflow, "", "", "clock time hh:mm; then sample times may be clock times too"),
        (SheetWords.StartOfDrain, "", "", "clock time hh:mm"),
        (SheetWords.Dwell, "", "min", "not needed where both clock times are given"),
        (SheetWords.Drained, "", "mL", "all that came out, samples included"),
    ];

    private static readonly (SheetItem Item, string Value, string Unit, string Remark)[] Conditions =
    [
        (SheetWords.DialysisStart, "", "", "year-month-day"),
        (SheetWords.LastPeritonitis, "", "", "year-month-day on which it had resolved; blank where there was none"),
        (SheetWords.PrecedingDwell, "", "h", ""),
        (SheetWords.PrecedingAgent, "", "", "glucose or icodextrin"),
        (SheetWords.Instillation, "", "min", ""),
    ];

    private static readonly (SheetItem Item, string Value, string Unit, string Remark)[] Assay =
    [
        (SheetWords.Method, "", "", "enzymatic or Jaffe"),
        (SheetWords.Factor, "", "mg/dL per mg/dL", "only with Jaffe: from your laboratory; or µmol/L per mmol/L"),
    ];

    public static void Write(TextWriter writer, TestForm form)
    {
        ArgumentNullException.ThrowIfNull(writer);
        using var csv = new CsvWriter(writer, CultureInfo.InvariantCulture, leaveOpen: true);
        Row(csv, [.. SheetWords.Columns.Select(column => column.Name)]);
        if (form == TestForm.Collection)
        {
            WriteCollection(csv);
        }
        else
        {
            WriteTest(csv, form);
        }
    }

    private static void WriteTest(CsvWriter csv, TestForm form)
    {
        Facts(csv, "patient", [.. Person, .. Residual]);
        if (form is not (TestForm.FourHour or TestForm.FourHourWithSodium))
        {
            Facts(csv, "test", [(SheetWords.Form, WordOf(form), "", "")]);
        }

        Facts(csv, "test", [(SheetWords.Date, "", "", "year-month-day"), .. Bag, .. Dwell]);
        if (form == TestForm.TemporaryDrain)
        {
            Facts(csv, "test", [(SheetWords.TemporaryDrained, "", "mL", "weighed at 60 min and given back")]);
        }

        Facts(csv, "test", [.. Assay, .. Conditions]);
        foreach (var (analyte, times) in Samples(form))
        {
            Array.ForEach(times, time => Row(csv, ["dialysate", SheetWords.Name(analyte), time, "", Unit(analyte), ""]));
        }

        var blood = form is TestForm.OneHour or TestForm.PairedOneHour ? "60" : "120";
        Array.ForEach(Plasma, analyte => Row(csv, ["plasma", SheetWords.Name(analyte), blood, "", Unit(analyte), ""]));
        if (form == TestForm.Permeability)
        {
            Array.ForEach(Proteins, analyte => Row(csv, ["plasma", SheetWords.Name(analyte), blood, "", Unit(analyte), ""]));
        }
    }

    private static void WriteCollection(CsvWriter csv)
    {
        Facts(csv, "patient", Person);
        Facts(csv, "test",
        [
            (SheetWords.Form, WordOf(TestForm.Collection), "", ""),
            (SheetWords.Date, "", "", "year-month-day on which it ended"),
            (SheetWords.CollectionTime, "24", "h", ""),
            (SheetWords.BloodTime, "", "", "clock time hh:mm"),
            .. Assay,
        ]);
        for (var bag = 1; bag <= 4; bag++)
        {
            var section = "drain " + bag.ToString(CultureInfo.InvariantCulture);
            Facts(csv, section, [(SheetWords.Fill, "", "mL", ""), .. Bag[..2], (SheetWords.Drained, "", "mL", "")]);
            Array.ForEach(Plasma, analyte => Row(csv, [section, SheetWords.Name(analyte), "", "", Unit(analyte), ""]));
            Row(csv, [section, SheetWords.Name(Analyte.TotalProtein), "", "", "g/L", "only if measured"]);
        }

        Row(csv, ["urine", "volume", "", "", "mL", "0 where there is none"]);
        Array.ForEach([Analyte.Creatinine, Analyte.Urea, Analyte.Sodium], analyte => Row(csv, ["urine", SheetWords.Name(analyte), "", "", Unit(analyte), ""]));
        Array.ForEach([.. Plasma, Analyte.TotalProtein], analyte => Row(csv, ["plasma", SheetWords.Name(analyte), "", "", Unit(analyte), ""]));
    }

    private static readonly string[] AtEnd = ["240"];
    private static readonly string[] FirstHour = ["0", "60"];
    private static readonly string[] WithHour = ["0", "60", "240"];
    private static readonly string[] WithMiddle = ["0", "120", "240"];
    private static readonly string[] FourTimes = ["0", "60", "120", "240"];
    private static readonly string[] WithMarker = ["0", "10", "20", "30", "60", "120", "180", "240"];

    private static readonly Analyte[] Plasma = [Analyte.Creatinine, Analyte.Urea, Analyte.Glucose, Analyte.Sodium];

    private static readonly Analyte[] Proteins = [Analyte.TotalProtein, Analyte.Albumin, Analyte.Beta2Microglobulin, Analyte.ImmunoglobulinG, Analyte.Alpha2Macroglobulin];

    // When each analyte is sampled in dialysate.
    private static (Analyte Analyte, string[] Times)[] Samples(TestForm form) => form switch
    {
        TestForm.Fast => [.. Plasma.Select(analyte => (analyte, AtEnd))],
        TestForm.OneHour or TestForm.PairedOneHour => [.. Plasma.Select(analyte => (analyte, FirstHour))],
        TestForm.Permeability =>
        [
            (Analyte.Marker, WithMarker),
            .. Plasma.Select(analyte => (analyte, FourTimes)),
            .. Proteins.Select(analyte => (analyte, AtEnd)),
        ],
        _ => [.. Plasma.Select(analyte => (analyte, analyte == Analyte.Sodium || form == TestForm.TemporaryDrain ? WithHour : WithMiddle))],
    };

    private static string Unit(Analyte analyte) => SheetWords.QuantityOf(analyte).Units[0].Name;

    private static string WordOf(TestForm form) => SheetWords.Form.Choices!.First(choice => choice.Value == (int)form).Key;

    private static void Facts(CsvWriter csv, string section, (SheetItem Item, string Value, string Unit, string Remark)[] facts) =>
        Array.ForEach(facts, fact => Row(csv, [section, fact.Item.Name, "", fact.Value, fact.Unit, fact.Remark]));

    private static void Row(CsvWriter csv, string[] fields)
    {
        Array.ForEach(fields, csv.WriteField);
        csv.NextRecord();
    }
}
