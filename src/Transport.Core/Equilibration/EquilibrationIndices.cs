namespace Transport;

/// <summary>Everything that plain arithmetic says about one equilibration test.</summary>
/// <remarks>
/// What could not be computed is null, and <see cref="NotAvailable"/> says why. Nothing is filled in silently: where D0 is estimated,
/// the index says so.
/// </remarks>
public sealed record EquilibrationIndices
{
    /// <summary>The test.</summary>
    public required EquilibrationTest Test { get; init; }

    /// <summary>The choices made.</summary>
    public required EquilibrationIndicesOptions Options { get; init; }

    /// <summary>D/P and D/D0 of every dialysate sample, in order of time.</summary>
    public required IReadOnlyList<SampleRatios> Ratios { get; init; }

    /// <summary>Time of the sample that stands for 4 h: the nearest within 10 min of 240 min, otherwise the last; null without samples.</summary>
    public TimeSpan? FinalSampleTime { get; init; }

    /// <summary>Whether that sample lies within 10 min of 240 min; otherwise no class is comparable.</summary>
    public bool IsFourHourSample { get; init; }

    /// <summary>Whether creatinine was corrected for glucose.</summary>
    public bool IsCreatinineCorrected => Test.CreatinineAssay.Corrects;

    /// <summary>D/P creatinine of the 4-h sample, corrected for glucose where the assay has a factor.</summary>
    public IndexValue? DialysateToPlasmaCreatinine { get; init; }

    /// <summary>D/P creatinine of the 4-h sample as measured.</summary>
    public IndexValue? UncorrectedDialysateToPlasmaCreatinine { get; init; }

    /// <summary>D/P urea of the 4-h sample.</summary>
    public IndexValue? DialysateToPlasmaUrea { get; init; }

    /// <summary>D/D0 glucose of the 4-h sample.</summary>
    public IndexValue? DialysateToInitialGlucose { get; init; }

    /// <summary>D0 glucose, mmol/L: measured at 0 min, or estimated (see <see cref="IsInitialGlucoseEstimated"/>). Never the bag's.</summary>
    public IndexValue? InitialGlucose { get; init; }

    /// <summary>Whether D0 glucose was estimated from mixing.</summary>
    public bool IsInitialGlucoseEstimated { get; init; }

    /// <summary>Drained minus instilled volume as written, mL.</summary>
    public IndexValue? NetUltrafiltrationAsWritten { get; init; }

    /// <summary>Drained minus entered volume, mL: net of overfill where that is known.</summary>
    public IndexValue? NetUltrafiltration { get; init; }

    /// <summary>How overfill was handled, one sentence.</summary>
    public required string FillStatement { get; init; }

    /// <summary>Fall of dialysate sodium over the first hour, mmol/L.</summary>
    public IndexValue? SodiumDip { get; init; }

    /// <summary>Fall of D/P sodium over the first hour.</summary>
    public IndexValue? SodiumRatioDip { get; init; }

    /// <summary>The sodium dip without what diffusion hid of it, mmol/L. Fast transfer blunts the raw dip.</summary>
    public IndexValue? CorrectedSodiumDip { get; init; }

    /// <summary>Glucose absorbed, mmol.</summary>
    public IndexValue? GlucoseAbsorbed { get; init; }

    /// <summary>Glucose absorbed over glucose instilled.</summary>
    public IndexValue? GlucoseAbsorbedFraction { get; init; }

    /// <summary>Glucose absorbed, g.</summary>
    public IndexValue? GlucoseAbsorbedMass { get; init; }

    /// <summary>Mass transfer area coefficient of creatinine, mL/min.</summary>
    public IndexValue? CreatinineMassTransfer { get; init; }

    /// <summary>Mass transfer area coefficient of urea, mL/min.</summary>
    public IndexValue? UreaMassTransfer { get; init; }

    /// <summary>Mass transfer area coefficient of glucose, mL/min.</summary>
    public IndexValue? GlucoseMassTransfer { get; init; }

    /// <summary>The class of D/P creatinine; null where it cannot be given.</summary>
    public TransportClassification? Classification { get; init; }

    /// <summary>What could not be computed, and why.</summary>
    public required IReadOnlyList<MissingIndex> NotAvailable { get; init; }

    /// <summary>What the indices are compatible with, and what to read with care.</summary>
    public IReadOnlyList<Finding> Findings { get; init; } = [];

    /// <summary>
    /// Every index of the whole test that is there, in the order of a report. D/P creatinine as measured is left out where nothing was corrected.
    /// </summary>
    public IReadOnlyList<IndexValue> All =>
    [
        .. new[]
        {
            DialysateToPlasmaCreatinine, IsCreatinineCorrected ? UncorrectedDialysateToPlasmaCreatinine : null,
            DialysateToPlasmaUrea, DialysateToInitialGlucose, InitialGlucose,
            NetUltrafiltrationAsWritten, NetUltrafiltration, SodiumDip, SodiumRatioDip, CorrectedSodiumDip,
            GlucoseAbsorbed, GlucoseAbsorbedFraction, GlucoseAbsorbedMass, CreatinineMassTransfer, UreaMassTransfer, GlucoseMassTransfer,
        }.OfType<IndexValue>(),
    ];

    /// <summary>The indices of a test, with the choices as they ship.</summary>
    public static EquilibrationIndices Of(EquilibrationTest test) => Of(test, EquilibrationIndicesOptions.Default);

    /// <summary>The indices of a test.</summary>
    /// <param name="test">The test.</param>
    /// <param name="options">Borders, reference series, limits and assay errors.</param>
    public static EquilibrationIndices Of(EquilibrationTest test, EquilibrationIndicesOptions options)
    {
        ArgumentNullException.ThrowIfNull(test);
        ArgumentNullException.ThrowIfNull(options);
        var indices = new IndexArithmetic(test, options).Compute();
        return indices with { Findings = EquilibrationFindings.Of(indices) };
    }
}
