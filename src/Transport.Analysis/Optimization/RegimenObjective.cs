namespace Transport.Analysis;

/// <summary>What is to be as little or as much as the goals allow, judged at the ensemble's center.</summary>
/// <remarks>Litres and cycles always count as costs: clearance against the number of cycles is a flat optimum, at which more fluid buys next to nothing.</remarks>
public sealed record RegimenObjective
{
    private RegimenObjective(RegimenMeasure measure, bool lessIsBetter)
    {
        Measure = measure != RegimenMeasure.Ultrafiltration ? measure : throw new ArgumentException(
            "Ultrafiltration is a target with a floor and a ceiling, not an objective: above the need it dries the patient out. Give a bound.", nameof(measure));
        LessIsBetter = lessIsBetter;
    }

    /// <summary>What.</summary>
    public RegimenMeasure Measure { get; }

    /// <summary>Whether less of it is better.</summary>
    public bool LessIsBetter { get; }

    /// <summary>Most clearance and sodium for the least glucose, strongest bags and night.</summary>
    public static IReadOnlyList<RegimenObjective> Usual { get; } =
    [
        Least(RegimenMeasure.GlucoseAbsorbed),
        Most(RegimenMeasure.UreaDose),
        Most(RegimenMeasure.SodiumRemoved),
        Least(RegimenMeasure.StrongestExchanges),
        Least(RegimenMeasure.NightLength),
    ];

    /// <summary>As little as possible.</summary>
    /// <exception cref="ArgumentException">The measure is the ultrafiltration.</exception>
    public static RegimenObjective Least(RegimenMeasure measure) => new(measure, true);

    /// <summary>As much as possible.</summary>
    /// <exception cref="ArgumentException">The measure is the ultrafiltration.</exception>
    public static RegimenObjective Most(RegimenMeasure measure) => new(measure, false);
}
