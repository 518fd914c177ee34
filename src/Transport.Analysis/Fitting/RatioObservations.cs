namespace Transport.Analysis;

/// <summary>The ratios of a test as observations with their errors.</summary>
internal sealed class RatioObservations(EquilibrationTest test, AssayErrors errors)
{
    // The sample at time zero tells of the residual fluid, not of transport; of sodium it tells the bag and the assay.
    private static readonly TimeSpan Early = TimeSpan.FromMinutes(5);

    public void AddTo(List<Observation> observations)
    {
        var sampling = errors.SamplingVariation;
        observations.AddRange(Of(
            ObservedQuantity.CreatinineToPlasma, test.CorrectedPlasmaCreatinine, test.CorrectedDialysateCreatinine, errors.CreatinineVariation, sampling, errors.CreatinineFloor));
        observations.AddRange(Of(
            ObservedQuantity.UreaToPlasma, test.PlasmaUrea, sample => sample.Urea, errors.UreaVariation, sampling, errors.UreaFloor)
            .Select(observation => observation with { IsFitted = false }));
        observations.AddRange(Of(
            ObservedQuantity.SodiumToPlasma, test.PlasmaSodium, sample => sample.Sodium, errors.SodiumVariation, 0, default, hasInitial: true));
        var initial = test.SampleAt(TimeSpan.Zero, Early)?.Glucose is { MillimolesPerLiter: > 0 } measured ? measured : (Concentration?)null;
        observations.AddRange(Of(
            initial is null ? ObservedQuantity.GlucoseToFresh : ObservedQuantity.GlucoseToInitial,
            initial ?? test.Solution.Glucose,
            sample => sample.Glucose,
            errors.GlucoseVariation,
            sampling,
            errors.GlucoseFloor,
            denominatorIsExact: initial is null));
        AddProtein(observations, ObservedQuantity.AlbuminToPlasma, Protein.Albumin);
        AddProtein(observations, ObservedQuantity.ImmunoglobulinGToPlasma, Protein.ImmunoglobulinG);
    }

    private IEnumerable<Observation> Of(
        ObservedQuantity quantity,
        Concentration? denominator,
        Func<DialysateSample, Concentration?> read,
        double variation,
        double sampling,
        Concentration floor,
        bool denominatorIsExact = false,
        bool hasInitial = false)
    {
        if (denominator is not { MillimolesPerLiter: > 0 } reference)
        {
            yield break;
        }

        foreach (var sample in test.Dialysate)
        {
            if ((hasInitial || sample.Time > Early) && read(sample) is { MillimolesPerLiter: > 0 } value)
            {
                var ratio = value / reference;
                var own = ratio * Math.Sqrt(variation * variation + sampling * sampling);
                yield return new(
                    quantity, sample.Time, ratio, Math.Sqrt(own * own + Math.Pow(floor / reference, 2)), denominatorIsExact ? 0 : variation * ratio, IsFitted: true);
            }
        }
    }

    private void AddProtein(List<Observation> observations, ObservedQuantity quantity, Protein protein)
    {
        if (test.PlasmaOf(protein) is not { GramsPerLiter: > 0 } plasma)
        {
            return;
        }

        foreach (var sample in test.Dialysate.Where(sample => sample.Time > Early))
        {
            if (sample.Of(protein) is { GramsPerLiter: > 0 } value)
            {
                var ratio = value.GramsPerLiter / plasma.GramsPerLiter;
                var own = Math.Sqrt(errors.ProteinVariation * errors.ProteinVariation + errors.SamplingVariation * errors.SamplingVariation);
                observations.Add(new(quantity, sample.Time, ratio, own * ratio, errors.ProteinVariation * ratio, IsFitted: true));
            }
        }
    }
}
