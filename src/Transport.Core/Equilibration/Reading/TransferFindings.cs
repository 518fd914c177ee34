using static System.FormattableString;

namespace Transport;

/// <summary>How fast small solutes cross: class, what makes it preliminary, and other signs of a large surface.</summary>
internal static class TransferFindings
{
    public static IEnumerable<Finding> Of(EquilibrationIndices indices) => [.. Category(indices), .. Surface(indices)];

    private static IEnumerable<Finding> Category(EquilibrationIndices indices)
    {
        if (indices.Classification is not { } classification)
        {
            yield break;
        }

        const string field = "transport category";
        var found = Invariant($"D/P creatinine {classification.Value:0.00}");
        var isInDoubt = classification.CreatinineInDoubt is not null;

        // The doubt about creatinine is a finding of its own.
        foreach (var caution in classification.CautionsBesideDoubt)
        {
            yield return new(Severity.Warning, "class-not-comparable", caution + " The class is preliminary and not comparable with the published ones.")
            {
                Field = field,
            };
        }

        if (isInDoubt)
        {
            yield break;
        }

        if (classification.Category == TransportCategory.Fast)
        {
            yield return new(Severity.Note, "fast-transfer",
                Invariant($"D/P creatinine is compatible with fast transfer of small solutes (class High; its probability here is {100 * classification.Probabilities.Fast:0} %)."))
            {
                Field = field,
                Found = found,
                Expected = Border(classification.Cuts, classification.Cuts.FastBorder, classification.Cuts.BorderRule),
            };
        }

        if (classification.Category == TransportCategory.Slow)
        {
            yield return new(Severity.Note, "slow-transfer",
                Invariant($"D/P creatinine is compatible with slow transfer of small solutes (class Low; its probability here is {100 * classification.Probabilities.Slow:0} %)."))
            {
                Field = field,
                Found = found,
                Expected = Border(classification.Cuts, classification.Cuts.SlowBorder, Invariant($"{classification.Cuts.SlowBorder:0.00} itself counts as {TransportCategory.SlowAverage.Name()}")),
            };
        }

        if (classification.GlucoseCategory is { } glucose && Math.Abs(glucose - classification.Category) >= 2)
        {
            yield return new(Severity.Warning, "creatinine-glucose-classes-differ",
                "Creatinine and glucose disagree by two classes or more, which suggests checking both assays, the correction for glucose and D0; creatinine decides.")
            {
                Field = field,
                Found = $"{classification.Category.Name()} by creatinine, {glucose.Name()} by glucose",
                Expected = "at most one class apart",
            };
        }
    }

    private static IEnumerable<Finding> Surface(EquilibrationIndices indices)
    {
        var limits = indices.Options.Thresholds;
        if (UltrafiltrationCapacity.Of(indices) is null || !indices.IsStrong)
        {
            yield break;
        }

        // Absorbed glucose says nothing while plasma glucose is high.
        foreach (var (index, limit) in new[] { (indices.CreatinineMassTransfer, limits.LargeSurfaceMassTransfer), (indices.IsPlasmaGlucoseHigh ? null : indices.GlucoseAbsorbedFraction, limits.LargeGlucoseAbsorption) })
        {
            // Beyond the limit by more than its own error, as ultrafiltration is judged.
            if (index is not null && index.Value - (index.StandardDeviation ?? 0) > limit.Value)
            {
                yield return new(Severity.Note, "large-vascular-surface", "This is compatible with a large effective vascular surface.")
                {
                    Field = index.Name,
                    Found = Invariant($"{index.Value:0.##} ± {index.StandardDeviation:0.##} {index.Unit}").TrimEnd(),
                    Expected = $"at most {limit}",
                };
            }
        }
    }

    private static string Border(CategoryCuts cuts, double border, string rule) =>
        Invariant($"border {border:0.00}, {rule} ({cuts.Source}; {cuts.Evidence.ToString().ToLowerInvariant()})");
}
