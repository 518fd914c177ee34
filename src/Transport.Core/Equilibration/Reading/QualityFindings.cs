using static System.FormattableString;

namespace Transport;

/// <summary>Whether the numbers of a test can be right, and what keeps them from being compared. Nothing is withheld that can be computed.</summary>
internal static class QualityFindings
{
    /// <summary>What may have happened to a creatinine that cannot be, in a clause.</summary>
    public const string MixUp = "look for swapped samples or columns, a unit, and glucose read as creatinine";

    private const double DisagreementLimit = 4;

    public static IEnumerable<Finding> Of(EquilibrationIndices indices) => [.. Ratios(indices), .. Residual(indices), .. FreeWater(indices)];

    /// <summary>Whether creatinine is ahead of urea by more than the assays' standard deviation of the difference. At the start both are what the cavity held before, and nothing has crossed.</summary>
    public static bool IsCreatinineAhead(SampleRatios sample) =>
        sample is { DialysateToPlasmaCreatinine: { } creatinine, DialysateToPlasmaUrea: { } urea } && sample.Time > TimeSpan.Zero
        && creatinine.Value - urea.Value > double.Hypot(creatinine.StandardDeviation ?? 0, urea.StandardDeviation ?? 0);

    private static string Preliminary(EquilibrationIndices indices) =>
        indices.Classification is { CreatinineInDoubt: not null } ? " The class is preliminary and not comparable with the published ones." : "";

    private static IEnumerable<Finding> Ratios(EquilibrationIndices indices)
    {
        var limits = indices.Options.Thresholds;
        var above = indices.Ratios
            .SelectMany(sample => new[] { (sample.Time, Ratio: sample.DialysateToPlasmaCreatinine), (sample.Time, Ratio: sample.DialysateToPlasmaUrea) })
            .Where(one => one.Ratio?.Value > limits.DialysateToPlasmaHigh.Value).ToList();
        if (above.Count > 0)
        {
            // One thing is the matter however many solutes show it.
            var isImpossible = above.Exists(one => one.Ratio!.Value > limits.DialysateToPlasmaImpossible.Value);
            yield return new(isImpossible ? Severity.Error : Severity.Warning, "dialysate-above-plasma",
                (isImpossible
                    ? $"Dialysate far above plasma suggests a mix-up: {MixUp}."
                    : $"Dialysate above plasma may be assay error near equilibrium, or a mix-up: {MixUp} first.")
                + Preliminary(indices))
            {
                Field = string.Join(", ", above.Select(one => one.Ratio!.Name).Distinct()),
                Found = string.Join("; ", above.Select(one => Invariant($"{one.Ratio!.Name} {one.Ratio.Value:0.00} at {one.Time.TotalMinutes:0} min"))),
                Expected = $"at most {(isImpossible ? limits.DialysateToPlasmaImpossible : limits.DialysateToPlasmaHigh)}",
            };
        }

        var ahead = indices.Ratios.Where(IsCreatinineAhead).ToList();
        if (ahead.Count > 0 && !above.Exists(one => one.Ratio!.Name == "D/P creatinine"))
        {
            yield return new(Severity.Warning, "creatinine-ahead-of-urea",
                "Creatinine is nearer to plasma's level than urea at the same time. Urea is smaller and crosses faster, so one of the two is not what it says: look for creatinine not corrected for glucose, swapped columns or samples, and a unit."
                + Preliminary(indices))
            {
                Field = "D/P creatinine, D/P urea",
                Found = string.Join("; ", ahead.Select(sample => Invariant($"{sample.DialysateToPlasmaCreatinine!.Value:0.00} and {sample.DialysateToPlasmaUrea!.Value:0.00} at {sample.Time.TotalMinutes:0} min"))),
                Expected = "creatinine below urea, but for one standard deviation of their difference (choice)",
            };
        }

        if (indices.IsPlasmaGlucoseHigh && indices.Test.PlasmaGlucose is { } plasma)
        {
            yield return new(Severity.Warning, "plasma-glucose-high",
                "High plasma glucose takes away osmotic gradient, so ultrafiltration, D/D0 and the sodium dip are not comparable.")
            {
                Field = "plasma glucose",
                Found = Invariant($"{plasma.MillimolesPerLiter:0.0} mmol/L"),
                Expected = $"at most {limits.HighPlasmaGlucose}",
            };
        }

        if (indices.IsInitialGlucoseEstimated && indices.InitialGlucose is { } initial)
        {
            yield return new(Severity.Note, "initial-glucose-estimated",
                "D0 glucose was not measured; it was estimated by mixing, and D/D0 is uncertain to the same degree.")
            {
                Field = initial.Name,
                Found = Invariant($"{initial.Value:0.0} ± {initial.StandardDeviation:0.0} mmol/L"),
            };
        }
    }

    private static IEnumerable<Finding> Residual(EquilibrationIndices indices)
    {
        var limits = indices.Options.Thresholds;
        if (indices.ResidualVolume is not { } residual)
        {
            yield break;
        }

        if (indices.IsResidualVolumeLarge)
        {
            yield return new(Severity.Warning, "residual-volume-large",
                "Much fluid was left in the cavity, which suggests an incomplete drain; D/D0 and ultrafiltration are not comparable.")
            {
                Field = residual.Name,
                Found = Invariant($"{residual.Value:0} mL, fill {indices.Test.EnteredVolume.Milliliters:0} mL"),
                Expected = $"at most {limits.LargeResidualVolume} and at most a share of {limits.LargeResidualShare}",
            };
        }

        if (indices.ResidualByDilution is { } dilution && dilution.DisagreementRatio > DisagreementLimit)
        {
            yield return new(Severity.Warning, "residual-volume-solutes-disagree",
                "Solutes give residual volumes further apart than their assays explain: transfer during instillation, a late sample, or a mix-up.")
            {
                Field = dilution.Index.Name,
                Found = string.Join(", ", dilution.EachSolute.Select(one => Invariant($"{one.Name} {one.Value:0} ± {one.StandardDeviation:0} mL"))),
                Expected = Invariant($"a disagreement ratio of at most {DisagreementLimit:0} (choice)"),
            };
        }
    }

    private static IEnumerable<Finding> FreeWater(EquilibrationIndices indices)
    {
        if (indices.FirstHour is not { } hour)
        {
            yield break;
        }

        if (hour.FreeWater.Value < 0 || hour.FreeWater.Value > hour.NetUltrafiltration.Value)
        {
            yield return new(Severity.Warning, "free-water-implausible",
                "Free water comes out below zero or above the ultrafiltration, which an error of sodium or high absorption can do; it is shown as it is.")
            {
                Field = hour.FreeWater.Name,
                Found = Invariant($"{hour.FreeWater.Value:0} ± {hour.FreeWater.StandardDeviation:0} mL of {hour.NetUltrafiltration.Value:0} mL"),
                Expected = "between zero and the ultrafiltration (computed)",
            };
        }

        if (hour.IsFreshSodiumLabelled)
        {
            yield return new(Severity.Warning, "fresh-sodium-labelled",
                "Sodium at 0 min was not measured and the label's was taken: free water is uncertain by about 15 mL for each mmol/L that it is off.")
            {
                Field = hour.FreeWater.Name,
                Found = Invariant($"{indices.Test.Solution.Sodium.MillimolesPerLiter:0.#} mmol/L"),
                Expected = "sodium measured at 0 min (choice)",
            };
        }
    }
}
