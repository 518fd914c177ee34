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
        ["urine"] = SampledFluid.Urine,
        ["pool"] = SampledFluid.CollectedDrain,
        ["all drains"] = SampledFluid.CollectedDrain,
        ["drains"] = SampledFluid.CollectedDrain,
    };

    /// <summary>Which fluid a section names; "drain 1", "bag 2", "exchange 3" and "cycle 4" are drains of a collection.</summary>
    public static SampledFluid? Fluid(string section)
    {
        var normal = Normal(section);
        return Fluids.TryGetValue(normal, out var fluid) ? fluid : Numbered().IsMatch(normal) ? SampledFluid.CollectedDrain : null;
    }

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
        ["potassium"] = Analyte.Potassium,
        ["k"] = Analyte.Potassium,
        ["protein"] = Analyte.TotalProtein,
        ["total protein"] = Analyte.TotalProtein,
        ["albumin"] = Analyte.Albumin,
        ["beta2 microglobulin"] = Analyte.Beta2Microglobulin,
        ["igg"] = Analyte.ImmunoglobulinG,
        ["immunoglobulin g"] = Analyte.ImmunoglobulinG,
        ["alpha2 macroglobulin"] = Analyte.Alpha2Macroglobulin,
        ["marker"] = Analyte.Marker,
        ["dextran"] = Analyte.Marker,
    };

    /// <summary>Units of an analyte.</summary>
    public static SheetQuantity QuantityOf(Analyte analyte) => analyte switch
    {
        Analyte.Creatinine => SheetQuantity.Creatinine,
        Analyte.Urea => SheetQuantity.Urea,
        Analyte.UreaNitrogen => SheetQuantity.UreaNitrogen,
        Analyte.Glucose => SheetQuantity.Glucose,
        Analyte.Sodium or Analyte.Potassium => SheetQuantity.Sodium,
        _ => SheetQuantity.MassConcentration,
    };

    /// <summary>Proteins by their analyte.</summary>
    public static IReadOnlyDictionary<Analyte, Protein> Proteins { get; } = new Dictionary<Analyte, Protein>
    {
        [Analyte.TotalProtein] = Protein.Total,
        [Analyte.Albumin] = Protein.Albumin,
        [Analyte.Beta2Microglobulin] = Protein.Beta2Microglobulin,
        [Analyte.ImmunoglobulinG] = Protein.ImmunoglobulinG,
        [Analyte.Alpha2Macroglobulin] = Protein.Alpha2Macroglobulin,
    };

    /// <summary>Whether a value is a mass concentration, of which no molar one is made.</summary>
    public static bool IsByMass(Analyte analyte) => analyte == Analyte.Marker || Proteins.ContainsKey(analyte);

    /// <summary>An analyte in words.</summary>
    public static string Name(Analyte analyte) => analyte switch
    {
        Analyte.UreaNitrogen => "urea nitrogen",
        _ when Proteins.TryGetValue(analyte, out var protein) => protein.Name,
        _ => Normal(analyte.ToString()),
    };

    /// <summary>A fluid in words.</summary>
    public static string Name(SampledFluid fluid) => fluid switch
    {
        SampledFluid.PrecedingDrain => "preceding drain",
        SampledFluid.CollectedDrain => "drain",
        _ => Normal(fluid.ToString()),
    };

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

    /// <summary>A drain's name: "Drain1" and "drain 1" are one.</summary>
    public static string BagName(string section) => Numbered().Replace(Normal(section), "${kind} ${number}");

    [GeneratedRegex(@"^(?<kind>drain|bag|exchange|cycle) ?(?<number>\d+)$")]
    private static partial Regex Numbered();

    [GeneratedRegex(@"[(\[].*[)\]]")]
    private static partial Regex Parenthesis();
}
