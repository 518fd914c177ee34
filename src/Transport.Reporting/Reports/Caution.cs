namespace Transport.Reporting;

/// <summary>What stands on every page that shows results of a patient.</summary>
public static class Caution
{
    /// <summary>What does not wait for anything that is computed.</summary>
    internal const string AtOnce = "Cloudy effluent, fever or abdominal pain, even with clear fluid: the patient contacts the unit at once and keeps the bag. Redness, pus, swelling or pain at the exit site or over the tunnel: the patient contacts the unit the same day. Breathlessness, pain on filling, swelling of belly, groin or leg, or blood: stop and call.";

    private static readonly string[] Lines =
    [
        "Decision support for licensed prescribers. Nothing here is a prescription or an order; confirm it with the treating team. Local protocol rules.",
        "Do not change bags, fill volumes or medicines on this output alone. Clinical volume, blood pressure, symptoms, nutrition, potassium and phosphate are not assessed here; laboratory values rule.",
        AtOnce,
        "Stronger fluid can dry a patient out and cost urine; weaker fluid can overload. Ultrafiltration at large fills is overstated by the model, because it underrates the effect of pressure.",
        "Estimates are of the day of the test. After peritonitis, or when the test is older than six months, they may no longer hold; a new test tells. No flag is not safety.",
        "Reference values are of adults on chronic dialysis; only the class of a child, and its series, are those of children. Pregnancy, ascites, liver disease, a failing transplant and acute dialysis are outside all of them.",
    ];

    /// <summary>The same for one sheet of paper without a simulation on it.</summary>
    internal static string OnPaper => string.Join(" ", Lines[0], Lines[1], Lines[2], "Estimates are of the day of the test; after peritonitis or six months a new test tells. No flag is not safety.");

    /// <summary>What the use of these solutions does to other measurements, a sentence or more; empty where there is nothing to say.</summary>
    internal static string Of(IEnumerable<DialysisSolution> solutions) =>
        string.Join(" ", solutions.Select(solution => solution.Caution).OfType<string>().Distinct());

    /// <summary>The bags whose use a test's page has to warn of: its own, and what was in the belly before it, which acts on meters and assays for days.</summary>
    internal static IEnumerable<DialysisSolution> SolutionsOf(EquilibrationTest test) =>
        test.Conditions.PrecedingAgent == OsmoticAgent.Icodextrin ? [test.Solution, DialysisSolution.Icodextrin] : [test.Solution];

    /// <summary>The same of a regimen.</summary>
    internal static string Of(Regimen regimen) =>
        Of(regimen.Exchanges.Select(exchange => exchange.Solution));

    /// <summary>The same of what is done on the days of a row.</summary>
    internal static string Of(RegimenOutlook outlook) =>
        Of((outlook.Week?.Week.Days ?? [outlook.Regimen]).OfType<Regimen>().SelectMany(regimen => regimen.Exchanges).Select(exchange => exchange.Solution));

    /// <summary>The cautions.</summary>
    public static ReportBlock Block()
    {
        var block = new ReportBlock().Heading("Before anybody acts on this");
        foreach (var line in Lines)
        {
            block.Item(line);
        }

        return block;
    }
}
