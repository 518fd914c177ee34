namespace Transport.Analysis;

/// <content>The facts.</content>
internal static partial class SheetWords
{
    public static SheetItem Code { get; } = new("code", SheetValueKind.Text, "patient code", "patient", "id", "identifier");

    public static SheetItem Sex { get; } = SheetItem.Choice(
        "sex", [(Transport.Sex.Female, ["female", "f", "woman", "w"]), (Transport.Sex.Male, ["male", "m", "man"])], "gender");

    public static SheetItem Age { get; } = SheetItem.Number("age", SheetQuantity.Age, SampleSheetLimits.AgeYears, "age at test");

    public static SheetItem Height { get; } = SheetItem.Number("height", SheetQuantity.Height, SampleSheetLimits.HeightCentimeters, "body height", "stature");

    public static SheetItem Weight { get; } = SheetItem.Number(
        "weight", SheetQuantity.Weight, SampleSheetLimits.WeightKilograms, "body weight", "dry weight", "ideal weight", "empty weight");

    public static SheetItem RenalUreaClearance { get; } = SheetItem.Number(
        "renal urea clearance", SheetQuantity.RenalClearance, SampleSheetLimits.RenalClearance, "residual urea clearance", "kru");

    public static SheetItem RenalCreatinineClearance { get; } = SheetItem.Number(
        "renal creatinine clearance", SheetQuantity.RenalClearance, SampleSheetLimits.RenalClearance, "residual creatinine clearance", "krcr");

    public static SheetItem Urine { get; } = SheetItem.Number(
        "urine volume", SheetQuantity.DailyVolume, SampleSheetLimits.UrinePerDay, "urine", "urine output", "urine per day", "diuresis");

    public static SheetItem Date { get; } = new("date", SheetValueKind.Date, "test date", "date of test");

    public static SheetItem Tester { get; } = new("tester", SheetValueKind.Text, "tested by", "nurse", "performed by");

    public static SheetItem Laboratory { get; } = new("laboratory", SheetValueKind.Text, "lab", "analyzed by");

    public static SheetItem SolutionGlucose { get; } = SheetItem.Number(
        "solution glucose", SheetQuantity.Strength, SampleSheetLimits.SolutionGlucose,
        "glucose", "dextrose", "bag glucose", "glucose strength", "strength", "solution dextrose", "bag dextrose");

    public static SheetItem SolutionSodium { get; } = SheetItem.Number(
        "solution sodium", SheetQuantity.Sodium, SampleSheetLimits.SolutionSodium, "sodium", "bag sodium", "fresh sodium");

    public static SheetItem Agent { get; } = SheetItem.Choice(
        "osmotic agent",
        [
            (OsmoticAgent.Glucose, ["glucose", "dextrose"]),
            (OsmoticAgent.Icodextrin, ["icodextrin", "polyglucose", "glucose polymer"]),
            (OsmoticAgent.AminoAcids, ["amino acids", "amino acid"]),
        ],
        "agent", "osmotic");

    public static SheetItem Fill { get; } = SheetItem.Number(
        "fill volume", SheetQuantity.WeighedVolume, SampleSheetLimits.FillMilliliters,
        "fill", "instilled volume", "inflow volume", "infused volume", "volume in", "bag volume");

    public static SheetItem Basis { get; } = SheetItem.Choice(
        "fill basis", [(FillBasis.Measured, ["weighed", "measured"]), (FillBasis.Label, ["label", "nominal", "bag label"])], "basis", "fill known by");

    public static SheetItem Overfill { get; } = SheetItem.Number(
        "overfill", SheetQuantity.Volume, SampleSheetLimits.OverfillMilliliters, "overfill less flush", "bag overfill");

    public static SheetItem Drained { get; } = SheetItem.Number(
        "drained volume", SheetQuantity.WeighedVolume, SampleSheetLimits.DrainedMilliliters,
        "drain volume", "drained", "drain", "outflow volume", "effluent volume", "volume out");

    public static SheetItem Residual { get; } = SheetItem.Number(
        "residual volume", SheetQuantity.Volume, SampleSheetLimits.ResidualMilliliters, "residual", "volume left");

    public static SheetItem Dwell { get; } = SheetItem.Number(
        "dwell", SheetQuantity.Duration, SampleSheetLimits.DwellMinutes, "dwell time", "dwell duration");

    public static SheetItem EndOfInflow { get; } = new(
        "end of inflow", SheetValueKind.Clock, "inflow end", "end of instillation", "end of fill", "instillation end");

    public static SheetItem StartOfDrain { get; } = new("start of drain", SheetValueKind.Clock, "drain start", "start of outflow", "outflow start");

    public static SheetItem Method { get; } = SheetItem.Choice(
        "creatinine method",
        [
            (CreatinineMethod.Enzymatic, ["enzymatic", "enzyme"]),
            (CreatinineMethod.Jaffe, ["jaffe", "jaffé", "picrate", "alkaline picrate"]),
            (CreatinineMethod.NotStated, ["not stated", "unknown"]),
        ],
        "creatinine assay", "assay", "method");

    public static SheetItem Factor { get; } = SheetItem.Number(
        "creatinine glucose factor", SheetQuantity.GlucoseFactor, SampleSheetLimits.GlucoseFactor,
        "glucose factor", "glucose correction factor", "correction factor");

    public static SheetItem Form { get; } = SheetItem.Choice(
        "test form",
        [
            (TestForm.FourHour, ["4 h", "classic", "standard"]),
            (TestForm.FourHourWithSodium, ["4 h with sodium", "modified"]),
            (TestForm.Fast, ["fast"]),
            (TestForm.OneHour, ["1 h", "one hour"]),
            (TestForm.PairedOneHour, ["1 h paired", "paired"]),
            (TestForm.TemporaryDrain, ["4 h with temporary drain", "temporary drain", "combined"]),
            (TestForm.Permeability, ["permeability analysis", "permeability"]),
            (TestForm.Collection, ["24 h collection", "collection"]),
        ],
        "form", "kind of test");

    public static SheetItem FillTare { get; } = SheetItem.Number("fill tare", SheetQuantity.Tare, SampleSheetLimits.TareGrams, "empty fill bag");

    public static SheetItem DrainTare { get; } = SheetItem.Number("drain tare", SheetQuantity.Tare, SampleSheetLimits.TareGrams, "empty drain bag");

    public static SheetItem TemporaryDrained { get; } = SheetItem.Number(
        "drained volume at 60 min", SheetQuantity.WeighedVolume, SampleSheetLimits.DrainedMilliliters, "temporary drain", "drained at 60 min");

    public static SheetItem ResidualAfter { get; } = SheetItem.Number(
        "residual volume after", SheetQuantity.Volume, SampleSheetLimits.ResidualMilliliters, "residual after", "volume left after");

    public static SheetItem DialysisStart { get; } = new("start of dialysis", SheetValueKind.Date, "dialysis since", "first dialysis");

    public static SheetItem LastPeritonitis { get; } = new("last peritonitis", SheetValueKind.Date, "end of last peritonitis");

    public static SheetItem PrecedingDwell { get; } = SheetItem.Number(
        "preceding dwell", SheetQuantity.Duration, SampleSheetLimits.DwellMinutes, "dwell before");

    public static SheetItem PrecedingAgent { get; } = SheetItem.Choice(
        "preceding agent",
        [
            (OsmoticAgent.Glucose, ["glucose", "dextrose"]),
            (OsmoticAgent.Icodextrin, ["icodextrin", "polyglucose", "glucose polymer"]),
            (OsmoticAgent.AminoAcids, ["amino acids", "amino acid"]),
        ],
        "agent before", "preceding solution");

    public static SheetItem Instillation { get; } = SheetItem.Number(
        "instillation time", SheetQuantity.Duration, SampleSheetLimits.InstillationMinutes, "inflow time", "fill time");

    public static SheetItem CollectionTime { get; } = SheetItem.Number(
        "collection time", SheetQuantity.Hours, SampleSheetLimits.CollectionHours, "collected for", "collection duration");

    public static SheetItem BloodTime { get; } = new("blood time", SheetValueKind.Clock, "time of blood", "blood drawn at");

    /// <summary>Facts that each drain of a collection has of its own; those of the test stand for drains without.</summary>
    public static IReadOnlyList<SheetItem> DrainFacts { get; } = [Drained, Fill, SolutionGlucose, SolutionSodium, Agent];

    /// <summary>All facts, in the order of the blank sheet.</summary>
    public static IReadOnlyList<SheetItem> Facts { get; } =
    [
        Code, Sex, Age, Height, Weight, Urine, RenalUreaClearance, RenalCreatinineClearance,
        Date, SolutionGlucose, SolutionSodium, Agent, Fill, Basis, Overfill, Residual, EndOfInflow, StartOfDrain, Dwell, Drained, Method, Factor,
        Form, FillTare, DrainTare, TemporaryDrained, ResidualAfter, DialysisStart, LastPeritonitis, PrecedingDwell, PrecedingAgent, Instillation,
        CollectionTime, BloodTime, Tester, Laboratory,
    ];

    /// <summary>The fact of a name; null where there is none.</summary>
    public static SheetItem? Fact(string normal) => Facts.FirstOrDefault(item => item.Name == normal || item.Synonyms.Contains(normal));
}
