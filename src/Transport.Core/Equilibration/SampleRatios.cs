namespace Transport;

/// <summary>The ratios of one dialysate sample. What was not measured is null.</summary>
/// <param name="Time">Dwell time of the sample.</param>
public sealed record SampleRatios(TimeSpan Time)
{
    /// <summary>D/P creatinine, corrected for glucose where the assay asks for it.</summary>
    public IndexValue? DialysateToPlasmaCreatinine { get; init; }

    /// <summary>D/P creatinine as measured.</summary>
    public IndexValue? UncorrectedDialysateToPlasmaCreatinine { get; init; }

    /// <summary>D/P urea.</summary>
    public IndexValue? DialysateToPlasmaUrea { get; init; }

    /// <summary>D/D0 glucose; null for the initial sample itself.</summary>
    public IndexValue? DialysateToInitialGlucose { get; init; }
}
