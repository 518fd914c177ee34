using System.Globalization;
using CsvHelper;

namespace Transport.Analysis;

/// <summary>The sheets that a nurse fills in, one for each form of test.</summary>
public static class BlankSheet
{
    /// <summary>The words that name a form, as <c>test form</c> of a sheet takes them; the first of each form is the usual one.</summary>
    public static IReadOnlyDictionary<string, TestForm> Forms { get; } =
        SheetWords.Form.Choices!.ToDictionary(choice => choice.Key, choice => (TestForm)choice.Value);

    /// <summary>The form that words name, capitals, hyphens and spaces aside; null where they name none.</summary>
    public static TestForm? FormNamed(string words)
    {
        ArgumentNullException.ThrowIfNull(words);
        return Forms.TryGetValue(SheetWords.Normal(words), out var form) ? form : null;
    }

    /// <summary>The rows of a form's blank sheet, in their order.</summary>
    public static IReadOnlyList<BlankRow> Of(TestForm form) => form == TestForm.Collection ? OfCollection() : OfTest(form);

    private static readonly (SheetItem Item, string Value, string Unit, string Remark)[] Person =
    [
        (SheetWords.Code, "", "", "a code of your own, never a name"),
        (SheetWords.Sex, "", "", "female or male"),
        (SheetWords.Age, "", "years", ""),
        (SheetWords.Height, "", "cm", ""),
        (SheetWords.Weight, "", "kg", "without dialysate in the belly"),
    ];

    private static readonly (SheetItem Item, string Value, string Unit, string Remark)[] People =
    [
        (SheetWords.Tester, "", "", ""),
        (SheetWords.Laboratory, "", "", ""),
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
        (SheetWords.FillTare, "", "g", "only with weights: the empty bag"),
        (SheetWords.DrainTare, "", "g", "only with weights: the empty bag"),
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

    internal static void Write(TextWriter writer, TestForm form)
    {
        ArgumentNullException.ThrowIfNull(writer);
        using var csv = new CsvWriter(writer, CultureInfo.InvariantCulture, leaveOpen: true);
        Row(csv, [.. SheetWords.Columns.Select(column => column.Name)]);
        foreach (var row in Of(form))
        {
            Row(csv, [row.Section, row.Item, row.Time, row.Value, row.Unit, row.Remark]);
        }
    }

    private static List<BlankRow> OfTest(TestForm form)
    {
        var rows = new List<BlankRow>();
        rows.AddRange(Facts("patient", [.. Person, .. Residual]));
        if (form is not (TestForm.FourHour or TestForm.FourHourWithSodium))
        {
            rows.AddRange(Facts("test", [(SheetWords.Form, WordOf(form), "", "")]));
        }

        rows.AddRange(Facts("test", [(SheetWords.Date, "", "", "year-month-day"), .. People, .. Bag, .. Dwell]));
        if (form == TestForm.TemporaryDrain)
        {
            rows.AddRange(Facts("test", [(SheetWords.TemporaryDrained, "", "mL", "weighed at 60 min and given back")]));
        }

        rows.AddRange(Facts("test", [.. Assay, .. Conditions]));
        rows.AddRange(Samples(form).SelectMany(sample => sample.Times.Select(time => Value("dialysate", sample.Analyte, time))));
        var blood = form is TestForm.OneHour or TestForm.PairedOneHour ? "60" : "120";
        rows.AddRange(Plasma.Select(analyte => Value("plasma", analyte, blood)));
        if (form == TestForm.Permeability)
        {
            rows.AddRange(Proteins.Select(analyte => Value("plasma", analyte, blood)));
        }

        return rows;
    }

    private static List<BlankRow> OfCollection()
    {
        var rows = new List<BlankRow>();
        rows.AddRange(Facts("patient", Person));
        rows.AddRange(Facts("test",
        [
            (SheetWords.Form, WordOf(TestForm.Collection), "", ""),
            (SheetWords.Date, "", "", "year-month-day on which it ended"),
            .. People,
            (SheetWords.CollectionTime, "24", "h", ""),
            (SheetWords.BloodTime, "", "", "clock time hh:mm"),
            .. Assay,
        ]));
        for (var bag = 1; bag <= 4; bag++)
        {
            var section = "drain " + bag.ToString(CultureInfo.InvariantCulture);
            rows.AddRange(Facts(section, [(SheetWords.Fill, "", "mL", ""), .. Bag[..2], (SheetWords.Drained, "", "mL", "")]));
            rows.AddRange(Plasma.Select(analyte => Value(section, analyte)));
            rows.Add(Value(section, Analyte.TotalProtein) with { Remark = "only if measured" });
        }

        rows.Add(new("urine", "volume", "", "", "mL", "0 where there is none"));
        rows.AddRange(new[] { Analyte.Creatinine, Analyte.Urea, Analyte.Sodium }.Select(analyte => Value("urine", analyte)));
        rows.AddRange(Plasma.Append(Analyte.TotalProtein).Select(analyte => Value("plasma", analyte)));
        return rows;
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

    private static BlankRow Value(string section, Analyte analyte, string time = "") =>
        new(section, SheetWords.Name(analyte), time, "", SheetWords.QuantityOf(analyte).Units[0].Name, "");

    private static string WordOf(TestForm form) => SheetWords.Form.Choices!.First(choice => choice.Value == (int)form).Key;

    private static IEnumerable<BlankRow> Facts(string section, (SheetItem Item, string Value, string Unit, string Remark)[] facts) =>
        facts.Select(fact => new BlankRow(section, fact.Item.Name, "", fact.Value, fact.Unit, fact.Remark));

    private static void Row(CsvWriter csv, string[] fields)
    {
        Array.ForEach(fields, csv.WriteField);
        csv.NextRecord();
    }
}
