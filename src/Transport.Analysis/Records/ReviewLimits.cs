namespace Transport.Analysis;

/// <summary>The thresholds of a review, as data: a local protocol replaces what it wants with <c>with</c>.</summary>
public sealed record ReviewLimits
{
    /// <summary>How many days before the last night count as now (choice).</summary>
    public int NowDays { get; init; } = 3;

    /// <summary>How many days after a peritonitis nights stay out of the charts: 28, as for tests (choice).</summary>
    public int PeritonitisDays { get; init; } = 28;

    /// <summary>A drain below this share of what was in is low: 0.85 (memory, low).</summary>
    public double LowDrainShare { get; init; } = 0.85;

    /// <summary>On so many of the last seven nights a thing is repeated: 3 (choice).</summary>
    public int RepeatedNights { get; init; } = 3;

    /// <summary>Cavity volume over the fill that is worth a warning: 1.5 (memory, low).</summary>
    public double OverfillShare { get; init; } = 1.5;

    /// <summary>The same where it is high: 2.0 (memory, low).</summary>
    public double HighOverfillShare { get; init; } = 2.0;

    /// <summary>Lost dwell of a night that counts, share of the planned: 0.10 (choice).</summary>
    public double LostDwellShare { get; init; } = 0.10;

    /// <summary>Rise of nights with the strongest bag, of the last 28 against the 28 before, that counts (choice).</summary>
    public int StrongestRise { get; init; } = 6;

    /// <summary>Slope of weight that counts, kg in 28 days (choice).</summary>
    public double WeightSlopeKilograms { get; init; } = 1.5;

    /// <summary>Slope of systolic pressure that counts, mmHg in 28 days (choice).</summary>
    public double PressureSlopeMillimetersOfMercury { get; init; } = 15;

    /// <summary>How many standard errors a slope has to be away from zero (choice).</summary>
    public double SlopeErrors { get; init; } = 4;

    /// <summary>Blood glucose that counts as high, mmol/L (choice).</summary>
    public double HighGlucoseMillimolesPerLiter { get; init; } = 15;

    /// <summary>Nights until the charts' signals count: 30 (choice).</summary>
    public int LearningNights { get; init; } = 30;

    /// <summary>Charts of each channel.</summary>
    public ReviewCharts Charts { get; init; } = ReviewCharts.Default;

    /// <summary>The defaults.</summary>
    public static ReviewLimits Default { get; } = new();
}
