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

    /// <summary>The form of the test, as named or recognized.</summary>
    public TestForm Form => Test.Form;

    /// <summary>Whether the limits for 3.86 % apply: a solution of that strength, of which there is no doubt.</summary>
    internal bool IsStrong => !Test.IsStrengthInDoubt && Options.Thresholds.IsStrongStrength(Test.Solution);

    /// <summary>Whether the limits for 2.27 % and the classes of D/D0 apply.</summary>
    internal bool IsMiddle => !Test.IsStrengthInDoubt && Options.Thresholds.IsMiddleStrength(Test.Solution);

    /// <summary>Whether plasma glucose takes away so much gradient that ultrafiltration, dip and absorbed glucose say nothing of the membrane.</summary>
    internal bool IsPlasmaGlucoseHigh => Test.PlasmaGlucose is { } plasma && plasma.MillimolesPerLiter > Options.Thresholds.HighPlasmaGlucose.Value;

    /// <summary>Whether so much was left in the cavity that D/D0 and ultrafiltration are not those of a full drain.</summary>
    internal bool IsResidualVolumeLarge => ResidualVolume is { } residual
        && (residual.Value > Options.Thresholds.LargeResidualVolume.Value || residual.Value > Options.Thresholds.LargeResidualShare.Value * Test.EnteredVolume.Milliliters);

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

    /// <summary>Residual volume before the test, mL: as written, or by dilution; null where neither is there.</summary>
    public IndexValue? ResidualVolume { get; init; }

    /// <summary>Residual volume by dilution, one for each solute; null where nothing was diluted measurably.</summary>
    public ResidualVolumeByDilution? ResidualByDilution { get; init; }

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

    /// <summary>Largest fall of dialysate sodium over all samples, mmol/L; not the dip at 60 min.</summary>
    public IndexValue? LargestSodiumDip { get; init; }

    /// <summary>Free water and small-pore fluid of the first hour; null where the volume at 60 min or sodium was not measured.</summary>
    public FirstHourIndices? FirstHour { get; init; }

    /// <summary>Dwell time at which D/P urea and D/D0 glucose cross, min.</summary>
    public IndexValue? CrossingTime { get; init; }

    /// <summary>Fluid kinetics from a volume marker; null where none was given.</summary>
    public MarkerKinetics? Marker { get; init; }

    /// <summary>Protein clearances; null where no protein was measured.</summary>
    public ProteinTransport? Proteins { get; init; }

    /// <summary>Glucose absorbed, mmol.</summary>
    public IndexValue? GlucoseAbsorbed { get; init; }

    /// <summary>Glucose absorbed over glucose instilled.</summary>
    public IndexValue? GlucoseAbsorbedFraction { get; init; }

    /// <summary>Glucose absorbed, g.</summary>
    public IndexValue? GlucoseAbsorbedMass { get; init; }

    /// <summary>Mass transfer area coefficient of creatinine, mL/min.</summary>
    public IndexValue? CreatinineMassTransfer { get; init; }

    /// <summary>The same with each convection weight in use; empty where the coefficient is missing.</summary>
    public IReadOnlyList<IndexValue> CreatinineMassTransferForms { get; init; } = [];

    /// <summary>Mass transfer area coefficient of urea, mL/min.</summary>
    public IndexValue? UreaMassTransfer { get; init; }

    /// <summary>Mass transfer area coefficient of glucose, mL/min.</summary>
    public IndexValue? GlucoseMassTransfer { get; init; }

    /// <summary>The indices beside the chosen series, and why others cannot be compared.</summary>
    public PopulationComparison? Comparison { get; init; }

    /// <summary>The class of D/P creatinine; null where it cannot be given.</summary>
    public TransportClassification? Classification { get; init; }

    /// <summary>What could not be computed, and why.</summary>
    public required IReadOnlyList<MissingIndex> NotAvailable { get; init; }

    /// <summary>What the indices are compatible with, and what to read with care.</summary>
    public IReadOnlyList<Finding> Findings { get; init; } = [];

    /// <summary>Patterns of membrane dysfunction that the findings are compatible with.</summary>
    public IReadOnlyList<MembranePattern> Patterns => MembranePatterns.Of(Findings);

    /// <summary>
    /// Every index of the whole test that is there, in the order of a report. D/P creatinine as measured is left out where nothing was corrected.
    /// </summary>
    public IReadOnlyList<IndexValue> All =>
    [
        .. new[]
        {
            DialysateToPlasmaCreatinine, IsCreatinineCorrected ? UncorrectedDialysateToPlasmaCreatinine : null,
            DialysateToPlasmaUrea, DialysateToInitialGlucose, InitialGlucose,
            NetUltrafiltrationAsWritten, NetUltrafiltration, ResidualVolume, SodiumDip, SodiumRatioDip, CorrectedSodiumDip, LargestSodiumDip,
        }.OfType<IndexValue>(),
        .. FirstHour?.All ?? [],
        .. new[]
        {
            GlucoseAbsorbed, GlucoseAbsorbedFraction, GlucoseAbsorbedMass, CreatinineMassTransfer, UreaMassTransfer, GlucoseMassTransfer, CrossingTime,
        }.OfType<IndexValue>(),
        .. Marker?.All ?? [],
        .. Proteins?.All ?? [],
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
        var indices = Arithmetic(new(test, options));
        indices = indices with { Comparison = PopulationComparison.Of(indices, options.Population ?? ReferencePopulations.For(test)) };
        return indices with { Findings = EquilibrationFindings.Of(indices) };
    }

    // In the order in which one rests on another.
    private static EquilibrationIndices Arithmetic(IndexInputs inputs)
    {
        var (ratios, volumes, sodium) = (new RatioArithmetic(inputs), new VolumeArithmetic(inputs), new SodiumArithmetic(inputs));
        var initialGlucose = ratios.InitialGlucose(out var isEstimated);
        var (final, isFourHour) = FinalSample(inputs);
        var atFinal = final is null ? null : ratios.Of(final, initialGlucose);
        ratios.ExplainMissing(final, atFinal, initialGlucose);
        var indices = new EquilibrationIndices
        {
            Test = inputs.Test,
            Options = inputs.Options,
            Ratios = [.. inputs.Test.Dialysate.Select(sample => ratios.Of(sample, initialGlucose))],
            FinalSampleTime = final?.Time,
            IsFourHourSample = isFourHour,
            DialysateToPlasmaCreatinine = atFinal?.DialysateToPlasmaCreatinine,
            UncorrectedDialysateToPlasmaCreatinine = atFinal?.UncorrectedDialysateToPlasmaCreatinine,
            DialysateToPlasmaUrea = atFinal?.DialysateToPlasmaUrea,
            DialysateToInitialGlucose = atFinal?.DialysateToInitialGlucose,
            InitialGlucose = initialGlucose,
            IsInitialGlucoseEstimated = isEstimated,
            FillStatement = volumes.FillStatement,
            ResidualVolume = inputs.Test.ResidualVolume is { } written
                ? new("residual volume", written.Milliliters, "mL", "as written", "the sheet")
                : inputs.Dilution?.Index,
            ResidualByDilution = inputs.Dilution,
            NotAvailable = inputs.NotAvailable,
        };
        indices = volumes.GlucoseAbsorption(volumes.Volumes(indices));
        indices = new MassTransferArithmetic(inputs).Of(indices);
        indices = sodium.Of(indices);
        indices = indices with
        {
            FirstHour = new FirstHourArithmetic(inputs, sodium).Of(indices),
            CrossingTime = Transport.CrossingTime.Of(indices, inputs),
            Marker = MarkerKinetics.Of(inputs),
            Proteins = ProteinTransport.Of(inputs),
        };
        inputs.Missing(PairedTest.Name, PairedTest.NeedsTwo);
        return indices with { Classification = new ClassArithmetic(inputs).Of(indices) };
    }

    // What stands for 4 h: the nearest sample with creatinine, then any; outside the tolerance the last one.
    private static (DialysateSample? Sample, bool IsFourHour) FinalSample(IndexInputs inputs)
    {
        var samples = inputs.Test.Dialysate;
        var four = inputs.Nearest(IndexInputs.FourHours, inputs.Limits.FourHourTolerance, sample => sample.Creatinine)
            ?? inputs.Nearest(IndexInputs.FourHours, inputs.Limits.FourHourTolerance, sample => sample.Urea ?? sample.Glucose ?? sample.Sodium);
        return four is not null ? (four, true) : (samples.LastOrDefault(sample => sample.Creatinine is not null) ?? (samples.Count > 0 ? samples[^1] : null), false);
    }
}
