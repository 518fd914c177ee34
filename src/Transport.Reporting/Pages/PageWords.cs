using static System.FormattableString;

namespace Transport.Reporting;

/// <summary>Numbers and lists as a filed page words them.</summary>
internal static class PageWords
{
    /// <summary>"0.72 ± 0.03", "190 ± 35 mL": the deviation with one digit, two where the first is a one.</summary>
    public static string Value(IndexValue index) => Number(index) + (index.Unit.Length == 0 ? "" : " " + index.Unit);

    /// <summary>The same without its unit.</summary>
    public static string Number(IndexValue index) => index.StandardDeviation is > 0 and var deviation
        ? $"{Digits.Fixed(index.Value, Decimals(deviation))} ± {Digits.Fixed(deviation, Decimals(deviation))}"
        : Digits.Of(index.Value);

    private static int Decimals(double deviation)
    {
        var power = (int)Math.Floor(Math.Log10(deviation));
        return Math.Clamp(deviation / Math.Pow(10, power) < 1.95 ? 1 - power : -power, 0, 6);
    }

    /// <summary>What cannot be given, those with one reason together.</summary>
    public static string Missing(IReadOnlyList<MissingIndex> missing) => string.Join("; ", missing
        .DistinctBy(one => one.Name)
        .Where(one => !IsInside(one.Name, missing))
        .GroupBy(one => one.Reason)
        .Select(group => $"{Together([.. group.Select(one => one.Name)])} ({group.Key})")) is { Length: > 0 } words ? words + "." : "";

    // Without a dip there is no ratio of it either.
    private static bool IsInside(string name, IEnumerable<MissingIndex> missing) =>
        name is "sodium ratio dip" or "sodium dip, corrected for diffusion" && missing.Any(one => one.Name == "sodium dip");

    // "mass transfer area coefficient of creatinine, of urea, of glucose" says the long part once.
    private static string Together(IReadOnlyList<string> names)
    {
        const string coefficient = "mass transfer area coefficient";
        var after = string.Join(",", names.Where(name => name.StartsWith(coefficient + " of", StringComparison.Ordinal)).Select(name => name[coefficient.Length..]));
        return string.Join(", ", names.Where(name => !name.StartsWith(coefficient + " of", StringComparison.Ordinal)).Concat(after.Length > 0 ? [coefficient + after] : []));
    }

    /// <summary>"glucose 3.86 % (214.3 mmol/L), sodium 132 mmol/L".</summary>
    public static string Bag(DialysisSolution solution) => solution.Agent == OsmoticAgent.Glucose
        ? Invariant($"{solution.Name} ({solution.Glucose.MillimolesPerLiter:0.0} mmol/L), sodium {solution.Sodium.MillimolesPerLiter:0.#} mmol/L")
        : Invariant($"{solution.Name}, sodium {solution.Sodium.MillimolesPerLiter:0.#} mmol/L");

    /// <summary>"percentile 46 (z −0.1)".</summary>
    public static string Beside(ComparedIndex compared) => $"{Percentile(compared.Percentile)} (z {Digits.Fixed(compared.ZScore, 1)})";

    /// <summary>"46", "below 1", "above 99".</summary>
    public static string Percentile(double percentile) => percentile < 1 ? "below 1" : percentile > 99 ? "above 99" : Digits.Fixed(percentile, 0);

    /// <summary>"Italy 2019, 3.86 % (n 758, read)".</summary>
    public static string Series(ReferencePopulation population) =>
        Invariant($"{population.Name} (n {population.Count?.ToString(System.Globalization.CultureInfo.InvariantCulture) ?? "not known"}, {population.Evidence.ToString().ToLowerInvariant()})");

    public static bool IsChild(Patient patient) => patient.AgeYears < MembraneThresholds.Default.AdultAge.Value;

    /// <summary>"woman", "boy".</summary>
    public static string Person(Patient patient) => (patient.Sex, IsChild(patient)) switch
    {
        (Sex.Female, true) => "girl",
        (Sex.Female, false) => "woman",
        (_, true) => "boy",
        _ => "man",
    };

    /// <summary>Whose formula body water is by.</summary>
    public static string Name(BodyWaterFormula formula) => formula switch
    {
        BodyWaterFormula.HumeWeyers => "Hume and Weyers",
        BodyWaterFormula.Morgenstern => "Morgenstern 2006, of children on peritoneal dialysis",
        _ => "Watson",
    };

    public static string Date(DateOnly? date) => date?.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture) ?? "not on the sheet";

    public static string Capital(string words) => words.Length == 0 ? words : char.ToUpperInvariant(words[0]) + words[1..];
}
