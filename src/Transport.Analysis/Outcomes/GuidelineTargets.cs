namespace Transport.Analysis;

/// <summary>Targets of guidelines and series for adults, as data: reference-data/regimen-targets.</summary>
public static class GuidelineTargets
{
    /// <summary>ISPD 2020: no single clearance is a target; when anuric, weak evidence for 1.7.</summary>
    public static GuidelineTarget Ispd2020 { get; } =
        UreaDose("total_ktv_ispd_2020", 1.7, "ISPD", 2020, "weak evidence; several measures and shared goals are asked for instead", Evidence.Read) with { OnlyWithoutUrine = true };

    /// <summary>KDOQI 2006.</summary>
    public static GuidelineTarget Kdoqi2006 { get; } = UreaDose("total_ktv_kdoqi_2006", 1.7, "KDOQI", 2006, "minimum", Evidence.Read);

    /// <summary>Canada 2011.</summary>
    public static GuidelineTarget Canada2011 { get; } = UreaDose("total_ktv_canada_2011", 1.7, "Canadian Society of Nephrology", 2011, "minimum", Evidence.Read);

    /// <summary>Japan 2009.</summary>
    public static GuidelineTarget Japan2009 { get; } = UreaDose("total_ktv_japan_2009", 1.7, "Japanese Society for Dialysis Therapy", 2009, "minimum", Evidence.Read);

    /// <summary>Europe 2005, creatinine.</summary>
    public static GuidelineTarget Europe2005Creatinine { get; } =
        Creatinine("creatinine_clearance_europe_2005", 45, "European best practice", 2005, "besides Kt/V; slow transfer and cyclers", Evidence.Memory) with { OnlyAutomated = true };

    /// <summary>Europe 2005, fluid.</summary>
    public static GuidelineTarget Europe2005Fluid { get; } =
        Fluid("ultrafiltration_europe_2005", 1000, "European best practice", 2005, "without urine; not found in print", Evidence.Memory);

    /// <summary>The line of EAPOS.</summary>
    public static GuidelineTarget Eapos { get; } =
        Fluid("ultrafiltration_eapos_2003", 750, "EAPOS", 2003, "an observation, no recommendation: below it more deaths, for many reasons", Evidence.Read) with { OnlyAutomated = true };

    /// <summary>All of them, the newest first.</summary>
    public static IReadOnlyList<GuidelineTarget> All { get; } =
        [Ispd2020, Canada2011, Japan2009, Kdoqi2006, Europe2005Creatinine, Europe2005Fluid, Eapos];

    /// <summary>How a regimen stands to targets.</summary>
    /// <param name="outlook">The regimen.</param>
    /// <param name="targets">Which targets; null: <see cref="All"/>.</param>
    public static IReadOnlyList<TargetAssessment> Of(RegimenOutlook outlook, IEnumerable<GuidelineTarget>? targets = null)
    {
        ArgumentNullException.ThrowIfNull(outlook);
        return [.. (targets ?? All).Select(target => TargetAssessment.Of(outlook, target))];
    }

    private static GuidelineTarget UreaDose(string code, double least, string source, int year, string strength, Evidence evidence) =>
        new(code, OutcomeMeasures.KtOverV, least, source, year, strength, evidence) { NoiseOfOneDay = OutcomeMeasures.UreaDoseOfOneDay };

    private static GuidelineTarget Creatinine(string code, double least, string source, int year, string strength, Evidence evidence) =>
        new(code, OutcomeMeasures.CreatinineClearance, least, source, year, strength, evidence) { NoiseOfOneDay = OutcomeMeasures.CreatinineClearanceOfOneDay };

    private static GuidelineTarget Fluid(string code, double least, string source, int year, string strength, Evidence evidence) =>
        new(code, OutcomeMeasures.Ultrafiltration, least, source, year, strength, evidence) { OnlyWithoutUrine = true };
}
