using System.Text.RegularExpressions;

namespace Transport.Analysis;

/// <summary>The vocabulary of a sheet: columns, sections, facts, analytes, each with its synonyms, all in normal form.</summary>
internal static partial class SheetWords
{
    /// <summary>A column of the table.</summary>
    public sealed record ColumnWords(string Name, bool Needed, params string[] Synonyms);

    /// <summary>The columns, in the order of <see cref="SheetRow"/>.</summary>
    public static IReadOnlyList<ColumnWords> Columns { get; } =
    [
        new("section", true, "sample", "fluid", "group"),
        new("item", true, "analyte", "name", "parameter", "what"),
        new("time", true, "dwell time", "minutes", "sample time", "clock"),
        new("value", true, "result", "measured"),
        new("unit", true, "units"),
        new("remark", false, "remarks", "comment", "comments", "note", "notes"),
    ];

    /// <summary>Which column a header names; -1 where none.</summary>
    public static int Column(string name)
    {
        var normal = Normal(Parenthesis().Replace(name, ""));
        return Columns.ToList().FindIndex(column => column.Name == normal || column.Synonyms.Contains(normal));
    }

    /// <summary>Sections that hold facts. A fact is known by its name, so that a blank section will do.</summary>
    public static IReadOnlyList<string> FactSections { get; } = ["", "patient", "test", "solution", "bag"];

    /// <summary>Sections that hold measurements.</summary>
    public static IReadOnlyDictionary<string, SampledFluid> Fluids { get; } = new Dictionary<string, SampledFluid>
    {
        ["dialysate"] = SampledFluid.Dialysate,
        ["effluent"] = SampledFluid.Dialysate,
        ["d"] = SampledFluid.Dialysate,
        ["plasma"] = SampledFluid.Plasma,
        ["serum"] = SampledFluid.Plasma,
        ["blood"] = SampledFluid.Plasma,
        ["p"] = SampledFluid.Plasma,
        ["preceding drain"] = SampledFluid.PrecedingDrain,
        ["previous drain"] = SampledFluid.PrecedingDrain,
        ["preceding dwell"] = SampledFluid.PrecedingDrain,
        ["overnight drain"] = SampledFluid.PrecedingDrain,
    };

    /// <summary>What is measured.</summary>
    public static IReadOnlyDictionary<string, Analyte> Analytes { get; } = new Dictionary<string, Analyte>
    {
        ["creatinine"] = Analyte.Creatinine,
        ["creat"] = Analyte.Creatinine,
        ["crea"] = Analyte.Creatinine,
        ["cr"] = Analyte.Creatinine,
        ["urea"] = Analyte.Urea,
        ["urea nitrogen"] = Analyte.UreaNitrogen,
        ["urea n"] = Analyte.UreaNitrogen,
        ["bun"] = Analyte.UreaNitrogen,
        ["glucose"] = Analyte.Glucose,
        ["dextrose"] = Analyte.Glucose,
        ["sugar"] = Analyte.Glucose,
        ["sodium"] = Analyte.Sodium,
        ["na"] = Analyte.Sodium,
        ["na+"] = Analyte.Sodium,
    };

    /// <summary>Units of an analyte.</summary>
    public static SheetQuantity QuantityOf(Analyte analyte) => analyte switch
    {
        Analyte.Creatinine => SheetQuantity.Creatinine,
        Analyte.Urea => SheetQuantity.Urea,
        Analyte.UreaNitrogen => SheetQuantity.UreaNitrogen,
        Analyte.Glucose => SheetQuantity.Glucose,
        _ => SheetQuantity.Sodium,
    };

    /// <summary>An analyte in words.</summary>
    public static string Name(Analyte analyte) => analyte == Analyte.UreaNitrogen ? "urea nitrogen" : Normal(analyte.ToString());

    /// <summary>A fluid in words.</summary>
    public static string Name(SampledFluid fluid) => fluid == SampledFluid.PrecedingDrain ? "preceding drain" : Normal(fluid.ToString());

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
        "fill volume", SheetQuantity.Volume, SampleSheetLimits.FillMilliliters,
        "fill", "instilled volume", "inflow volume", "infused volume", "volume in", "bag volume");

    public static SheetItem Basis { get; } = SheetItem.Choice(
        "fill basis", [(FillBasis.Measured, ["weighed", "measured"]), (FillBasis.Label, ["label", "nominal", "bag label"])], "basis", "fill known by");

    public static SheetItem Overfill { get; } = SheetItem.Number(
        "overfill", SheetQuantity.Volume, SampleSheetLimits.OverfillMilliliters, "overfill less flush", "bag overfill");

    public static SheetItem Drained { get; } = SheetItem.Number(
        "drained volume", SheetQuantity.Volume, SampleSheetLimits.DrainedMilliliters,
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

    /// <summary>All facts, in the order of the blank sheet.</summary>
    public static IReadOnlyList<SheetItem> Facts { get; } =
    [
        Code, Sex, Age, Height, Weight, Urine, RenalUreaClearance, RenalCreatinineClearance,
        Date, SolutionGlucose, SolutionSodium, Agent, Fill, Basis, Overfill, Residual, EndOfInflow, StartOfDrain, Dwell, Drained, Method, Factor,
    ];

    /// <summary>The fact of a name; null where there is none.</summary>
    public static SheetItem? Fact(string normal) => Facts.FirstOrDefault(item => item.Name == normal || item.Synonyms.Contains(normal));

    /// <summary>Lower case; one space for each run of spaces, hyphens and underscores; no colon at the end.</summary>
    public static string Normal(string word) => Gaps().Replace(word.Trim().ToLowerInvariant(), " ").Trim(' ', ':');

    /// <summary>Lower case, without spaces, u for micro in each of its spellings.</summary>
    public static string NormalUnit(string unit)
    {
        var normal = string.Concat(unit.ToLowerInvariant().Where(letter => !char.IsWhiteSpace(letter)))
            .Replace('\u00B5', 'u').Replace('\u03BC', 'u').Replace("micromol", "umol", StringComparison.Ordinal);
        return normal.StartsWith("mcmol", StringComparison.Ordinal) ? "u" + normal[2..] : normal;
    }

    /// <summary>Whether a value cell says that nothing was measured.</summary>
    public static bool IsBlank(string value) => Normal(value) is "" or "–" or "n/a" or "na" or "nd" or "not done" or "not measured";

    [GeneratedRegex(@"[\s_-]+")]
    private static partial Regex Gaps();

    [GeneratedRegex(@"[(\[].*[)\]]")]
    private static partial Regex Parenthesis();
}
