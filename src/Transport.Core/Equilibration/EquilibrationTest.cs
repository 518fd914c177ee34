namespace Transport;

/// <summary>A timed equilibration test of one dwell, complete enough to compute something from.</summary>
/// <remarks>
/// Time zero is the end of instillation. Samples are kept in order of time, in whatever order they are given. What was not measured is null and stays null: nothing
/// is filled in. Reading and checking a sheet is Transport.Analysis' work.
/// </remarks>
public sealed record EquilibrationTest
{
    /// <summary>Whose test it is.</summary>
    public required Patient Patient { get; init; }

    /// <summary>Date of the test; null where it was not written down.</summary>
    public DateOnly? Date { get; init; }

    /// <summary>The solution instilled.</summary>
    public required DialysisSolution Solution { get; init; }

    /// <summary>
    /// Whether the glucose measured at 0 min belongs to a bag of another strength. Nothing that rests on the strength is then given: no limit, no class of D/D0, no
    /// absorbed glucose, no fit.
    /// </summary>
    public bool IsStrengthInDoubt { get; init; }

    /// <summary>Volume instilled, as written on the sheet.</summary>
    public required Volume InstilledVolume { get; init; }

    /// <summary>How <see cref="InstilledVolume"/> is known.</summary>
    public required FillBasis FillBasis { get; init; }

    /// <summary>By how much the bag holds more than its label, less what was flushed; null where unknown. Counts only where the basis is the label.</summary>
    public Volume? Overfill { get; init; }

    /// <summary>Everything drained at the end, samples that were not given back included; null where not measured.</summary>
    public Volume? DrainedVolume { get; init; }

    /// <summary>Volume left in the cavity before instillation; null where not known.</summary>
    public Volume? ResidualVolume { get; init; }

    /// <summary>Volume left after the final drain, from a rinse; null where it was not measured and is taken to be that before.</summary>
    public Volume? ResidualVolumeAfter { get; init; }

    /// <summary>A complete drain within the dwell that was weighed and given back; null where there was none.</summary>
    public TemporaryDrain? TemporaryDrain { get; init; }

    /// <summary>The fluid drained before the test, from whose dilution the residual volume follows; null where it was not sampled.</summary>
    public DialysateSample? PrecedingDrain { get; init; }

    /// <summary>What went before the test and how it was carried out.</summary>
    public TestConditions Conditions { get; init; } = TestConditions.NotStated;

    /// <summary>The form that the user named; null where the test speaks for itself.</summary>
    public TestForm? NamedForm { get; init; }

    /// <summary>The form: as named, otherwise as recognized.</summary>
    public TestForm Form => NamedForm ?? TestForms.Recognize(this);

    /// <summary>Dwell time from end of instillation to start of the final drain.</summary>
    public required TimeSpan Dwell { get; init; }

    /// <summary>How creatinine was measured.</summary>
    public required CreatinineAssay CreatinineAssay { get; init; }

    /// <summary>Dialysate samples in order of time. The last one may be of the drained bag.</summary>
    public required IReadOnlyList<DialysateSample> Dialysate
    {
        get;
        init => field = [.. value.OrderBy(sample => sample.Time)];
    }

    /// <summary>Plasma samples in order of time, those without one first.</summary>
    public required IReadOnlyList<PlasmaSample> Plasma
    {
        get;
        init => field = [.. value.OrderBy(sample => sample.Time)];
    }

    /// <summary>Volume that truly entered: the measured one, or the label's plus its overfill where that is known.</summary>
    public Volume EnteredVolume => FillBasis == FillBasis.Label && Overfill is { } overfill ? InstilledVolume + overfill : InstilledVolume;

    /// <summary>Whether its bag, or the dwell before it, was of icodextrin, which disturbs some meters and assays for days.</summary>
    internal bool IsBesideIcodextrin => OsmoticAgent.Icodextrin == Solution.Agent || Conditions.PrecedingAgent == OsmoticAgent.Icodextrin;

    /// <summary>Drained minus entered volume; null where the drained volume was not measured. See <see cref="EnteredVolume"/> for overfill.</summary>
    public Volume? NetUltrafiltration => DrainedVolume - EnteredVolume;

    /// <summary>Volume drained at a dwell time: by the temporary drain, or by the final one of a dwell of that length; null where neither was then.</summary>
    public Volume? DrainedAt(TimeSpan time, TimeSpan tolerance) =>
        TemporaryDrain is { } drain && (drain.Time - time).Duration() <= tolerance ? drain.Volume
        : (Dwell - time).Duration() <= tolerance ? DrainedVolume
        : null;

    /// <summary>Creatinine of a dialysate sample, corrected for glucose where the assay asks for it; null where it cannot be.</summary>
    public Concentration? CorrectedDialysateCreatinine(DialysateSample sample)
    {
        ArgumentNullException.ThrowIfNull(sample);
        return CorrectedCreatinine.Of(CreatinineAssay, sample);
    }

    /// <summary>Mean plasma creatinine over the samples, corrected for glucose where the assay asks for it; null where not measured.</summary>
    /// <remarks>A plasma sample without glucose is corrected with the mean plasma glucose of the others, or not at all: the correction is below 1 %.</remarks>
    public Concentration? CorrectedPlasmaCreatinine => CorrectedCreatinine.Of(CreatinineAssay, Plasma);

    /// <summary>Mean plasma urea; null where not measured.</summary>
    public Concentration? PlasmaUrea => PlasmaMean(sample => sample.Urea);

    /// <summary>Mean plasma glucose; null where not measured.</summary>
    public Concentration? PlasmaGlucose => PlasmaMean(sample => sample.Glucose);

    /// <summary>Mean plasma sodium; null where not measured.</summary>
    public Concentration? PlasmaSodium => PlasmaMean(sample => sample.Sodium);

    /// <summary>Mean plasma concentration of a protein; null where not measured.</summary>
    public MassConcentration? PlasmaOf(Protein protein)
    {
        var values = Plasma.Select(sample => sample.Of(protein)).OfType<MassConcentration>().ToList();
        return values.Count == 0 ? null : MassConcentration.FromGramsPerLiter(values.Average(value => value.GramsPerLiter));
    }

    /// <summary>The dialysate sample nearest to a time, if one lies within the tolerance.</summary>
    public DialysateSample? SampleAt(TimeSpan time, TimeSpan tolerance) =>
        Dialysate.Where(sample => (sample.Time - time).Duration() <= tolerance).MinBy(sample => (sample.Time - time).Duration());

    private Concentration? PlasmaMean(Func<PlasmaSample, Concentration?> read) => CorrectedCreatinine.Mean(Plasma.Select(read));
}
