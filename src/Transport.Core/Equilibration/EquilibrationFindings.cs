using static System.FormattableString;

namespace Transport;

/// <summary>What the indices of one test are compatible with. Tentative words only; nothing that needs a second test or years is said.</summary>
/// <remarks>
/// <para>
/// Codes: class-not-comparable, fast-transfer, slow-transfer, creatinine-glucose-classes-differ, dialysate-above-plasma,
/// plasma-glucose-high, initial-glucose-estimated, low-ultrafiltration-capacity, ultrafiltration-near-limit, low-osmotic-conductance,
/// low-ultrafiltration-dip-preserved, low-ultrafiltration-slow-transfer, sodium-dip-small-ultrafiltration-preserved,
/// sodium-dip-in-fast-transfer, sodium-dip-small.
/// </para>
/// <para>Volume limits are those of adults after about 4 h; children get none.</para>
/// </remarks>
internal static class EquilibrationFindings
{
    public static IReadOnlyList<Finding> Of(EquilibrationIndices indices) =>
    [
        .. Ratios(indices),
        .. Category(indices),
        .. Ultrafiltration(indices),
        .. Sodium(indices),
    ];

    private static IEnumerable<Finding> Ratios(EquilibrationIndices indices)
    {
        var limits = indices.Options.Thresholds;
        foreach (var ratio in indices.Ratios
            .SelectMany(sample => new[] { sample.DialysateToPlasmaCreatinine, sample.DialysateToPlasmaUrea })
            .OfType<IndexValue>()
            .Where(ratio => ratio.Value > limits.DialysateToPlasmaHigh.Value))
        {
            var isImpossible = ratio.Value > limits.DialysateToPlasmaImpossible.Value;
            yield return new(isImpossible ? Severity.Error : Severity.Warning, "dialysate-above-plasma",
                isImpossible
                    ? "Dialysate far above plasma suggests a mix-up of samples or units."
                    : "Dialysate slightly above plasma may be assay error near equilibrium, or a mix-up of samples or units.")
            {
                Field = ratio.Name,
                Found = ratio.Formula,
                Expected = $"at most {(isImpossible ? limits.DialysateToPlasmaImpossible : limits.DialysateToPlasmaHigh)}",
            };
        }

        if (indices.Test.PlasmaGlucose is { } plasma && plasma.MillimolesPerLiter > limits.HighPlasmaGlucose.Value)
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

    private static IEnumerable<Finding> Category(EquilibrationIndices indices)
    {
        if (indices.Classification is not { } classification)
        {
            yield break;
        }

        const string field = "transport category";
        var found = Invariant($"D/P creatinine {classification.Value:0.00}");
        foreach (var caution in classification.Cautions)
        {
            yield return new(Severity.Warning, "class-not-comparable", caution + " The class is preliminary and not comparable with the published ones.")
            {
                Field = field,
            };
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

    private static IEnumerable<Finding> Ultrafiltration(EquilibrationIndices indices)
    {
        if (Capacity(indices) is not { } capacity)
        {
            yield break;
        }

        var (net, low, near) = capacity;
        if (net < low.Value)
        {
            yield return new(Severity.Warning, "low-ultrafiltration-capacity",
                "Net ultrafiltration is low for this strength; incomplete drain, a leak and residual volume are more common reasons than the membrane. A screening flag, no diagnosis.")
            {
                Field = "net ultrafiltration",
                Found = FoundVolume(indices, net),
                Expected = $"at least {low}",
            };
        }
        else if (near is not null && net < near.Value)
        {
            yield return new(Severity.Warning, "ultrafiltration-near-limit", "Net ultrafiltration is near the limit for this strength.")
            {
                Field = "net ultrafiltration",
                Found = FoundVolume(indices, net),
                Expected = $"at least {near}",
            };
        }
        else if (IsOverfillUnknown(indices.Test) && net < low.Value + indices.Options.Thresholds.UnknownOverfill.Value)
        {
            yield return new(Severity.Note, "ultrafiltration-near-limit",
                "Without the overfill that the label hides, net ultrafiltration may be below the limit for this strength.")
            {
                Field = "net ultrafiltration",
                Found = FoundVolume(indices, net),
                Expected = $"at least {low}",
            };
        }
    }

    private static IEnumerable<Finding> Sodium(EquilibrationIndices indices)
    {
        var limits = indices.Options.Thresholds;
        if (!limits.IsStrongStrength(indices.Test.Solution) || indices.SodiumDip is not { } dip)
        {
            yield break;
        }

        var isSmall = dip.Value <= limits.SmallSodiumDip.Value || indices.SodiumRatioDip?.Value <= limits.SmallSodiumRatioDip.Value;
        bool? isLow = Capacity(indices) is { } capacity ? capacity.Net < capacity.Low.Value : null;
        var found = Invariant($"sodium dip {dip.Value:0.0} mmol/L")
            + (indices.SodiumRatioDip is { } ratio ? Invariant($", ratio dip {ratio.Value:0.000}") : "")
            + (indices.CorrectedSodiumDip is { } corrected ? Invariant($", corrected for diffusion {corrected.Value:0.0} mmol/L") : "")
            + (indices.NetUltrafiltration is { } net ? ", net ultrafiltration " + FoundVolume(indices, net.Value) : "")
            + (indices.Classification is { } classification ? Invariant($", D/P creatinine {classification.Value:0.00}") : "");
        var (fall, ratioFall) = (limits.SmallSodiumDip, limits.SmallSodiumRatioDip);
        var expected = (fall.Source, fall.Evidence) == (ratioFall.Source, ratioFall.Evidence)
            ? Invariant($"dip above {fall.Value:0.###} {fall.Unit} and ratio dip above {ratioFall}")
            : $"dip above {fall} and ratio dip above {ratioFall}";

        Finding At(Severity severity, string code, string message) =>
            new(severity, code, message) { Field = dip.Name, Found = found, Expected = expected };

        switch (isSmall, isLow, indices.Classification?.Category)
        {
            case (true, _, TransportCategory.Fast):
                yield return At(Severity.Note, "sodium-dip-in-fast-transfer",
                    "Fast transfer blunts the raw sodium dip through faster loss of glucose and diffusion of sodium, so the dip corrected for diffusion is the one to read.");
                break;
            case (true, true, TransportCategory.SlowAverage or TransportCategory.FastAverage):
                yield return At(Severity.Warning, "low-osmotic-conductance",
                    "Low net ultrafiltration with a small sodium dip at average transfer is compatible with a low osmotic conductance to glucose; one test does not tell since when.");
                break;
            case (true, false, not null):
                yield return At(Severity.Warning, "sodium-dip-small-ultrafiltration-preserved",
                    "The sodium dip is small while ultrafiltration is preserved, which suggests repeating sodium with one method for all samples, then following it.");
                break;
            case (true, true, TransportCategory.Slow):
                yield return At(Severity.Warning, "low-ultrafiltration-slow-transfer",
                    "Low net ultrafiltration with slow transfer is compatible with a small effective surface, after incomplete drain and leak have been looked for.");
                break;
            case (true, _, _):
                yield return At(Severity.Note, "sodium-dip-small",
                    "The sodium dip is small; without a net ultrafiltration that can be judged and a transfer class it says nothing by itself.");
                break;
            case (false, true, TransportCategory.SlowAverage or TransportCategory.FastAverage):
                yield return At(Severity.Note, "low-ultrafiltration-dip-preserved",
                    "Low net ultrafiltration with a preserved sodium dip at average transfer is compatible with incomplete drain, a leak or high fluid absorption.");
                break;
            default:
                break;
        }
    }

    /// <summary>Net ultrafiltration with the limits of its strength; null where no limit applies.</summary>
    private static (double Net, Threshold Low, Threshold? Near)? Capacity(EquilibrationIndices indices)
    {
        var limits = indices.Options.Thresholds;
        var test = indices.Test;
        var isAboutFourHours = Math.Abs(test.Dwell.TotalMinutes - 240) <= limits.ClassTolerance.Value;
        return indices.NetUltrafiltration is not { } net || !isAboutFourHours || test.Patient.AgeYears < limits.AdultAge.Value ? null
            : limits.IsStrongStrength(test.Solution) ? (net.Value, limits.LowUltrafiltrationStrong, null)
            : limits.IsMiddleStrength(test.Solution) ? (net.Value, limits.LowUltrafiltrationMiddle, limits.NearUltrafiltrationMiddle)
            : null;
    }

    private static bool IsOverfillUnknown(EquilibrationTest test) => test.FillBasis == FillBasis.Label && test.Overfill is null;

    private static string FoundVolume(EquilibrationIndices indices, double net) =>
        Invariant($"{net:0} mL after {indices.Test.Dwell.TotalMinutes:0} min of {indices.Test.Solution.Name}, fill {indices.Test.EnteredVolume.Milliliters:0} mL ({(indices.Test.FillBasis == FillBasis.Measured ? "measured" : IsOverfillUnknown(indices.Test) ? "label, overfill unknown" : "label plus overfill")})");

    private static string Border(CategoryCuts cuts, double border, string rule) =>
        Invariant($"border {border:0.00}, {rule} ({cuts.Source}; {cuts.Evidence.ToString().ToLowerInvariant()})");
}
