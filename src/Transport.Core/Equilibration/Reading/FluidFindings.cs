using static System.FormattableString;

namespace Transport;

/// <summary>Ultrafiltration, the sodium dip, free water, absorption and protein: what their pattern is compatible with.</summary>
internal static class FluidFindings
{
    public static IEnumerable<Finding> Of(EquilibrationIndices indices) =>
        [.. indices.IsPlasmaGlucoseHigh ? NotJudged(indices) : [.. Ultrafiltration(indices), .. Dip(indices), .. FreeWaterShare(indices)], .. Absorption(indices), .. Protein(indices)];

    // High plasma glucose takes away gradient: by that alone ultrafiltration and dip would be small, whatever the membrane.
    private static IEnumerable<Finding> NotJudged(EquilibrationIndices indices)
    {
        var capacity = UltrafiltrationCapacity.Of(indices);
        if (capacity is null && (!indices.IsStrong || indices.SodiumDip is null))
        {
            yield break;
        }

        yield return new(Severity.Warning, "fluid-not-judged",
            Invariant($"Ultrafiltration, sodium dip and free water are not judged: plasma glucose was {indices.Test.PlasmaGlucose!.Value.MillimolesPerLiter:0.0} mmol/L. Low values are then compatible with hyperglycaemia alone, which takes away gradient; repeat the test at a lower plasma glucose."))
        {
            Field = "plasma glucose",
            Found = capacity is null ? null : "net ultrafiltration " + UltrafiltrationCapacity.Found(indices, capacity.Net),
            Expected = $"at most {indices.Options.Thresholds.HighPlasmaGlucose}",
        };
    }

    private static IEnumerable<Finding> Ultrafiltration(EquilibrationIndices indices)
    {
        if (UltrafiltrationCapacity.Of(indices) is not { } capacity)
        {
            // No limit is known for a child or another dwell; that more went in than came out is below all of them.
            if ((indices.IsMiddle || indices.IsStrong) && indices.Test.Dwell <= IndexInputs.FourHours + IndexInputs.Minutes(indices.Options.Thresholds.FourHourTolerance)
                && indices.NetUltrafiltration is { } lost && lost.Value + (lost.StandardDeviation ?? 0) < 0)
            {
                yield return new(Severity.Warning, "ultrafiltration-negative",
                    "More fluid went in than came out. At this strength and after at most 4 h that is compatible with an incomplete drain, a leak or a wrong weight, and after these with fast loss of the glucose gradient.")
                {
                    Field = "net ultrafiltration",
                    Found = UltrafiltrationCapacity.Found(indices, lost.Value),
                    Expected = "above zero, but for the error of its volumes (choice)",
                };
            }

            yield break;
        }

        var (net, low, near) = (capacity.Net, capacity.Low, capacity.Near);
        if (net < low.Value)
        {
            yield return new(Severity.Warning, "low-ultrafiltration-capacity",
                "Net ultrafiltration is low for this strength; incomplete drain, a leak and residual volume are more common reasons than the membrane. A screening flag, no diagnosis.")
            {
                Field = "net ultrafiltration",
                Found = UltrafiltrationCapacity.Found(indices, net),
                Expected = $"at least {low}",
            };
            if (Class(indices) is { Category: TransportCategory.Fast } fast)
            {
                yield return new(Severity.Note, "low-ultrafiltration-fast-transfer",
                    "Low net ultrafiltration with fast transfer is compatible with early loss of the glucose gradient; shorter dwells lose less of it.")
                {
                    Field = "net ultrafiltration",
                    Found = Invariant($"{UltrafiltrationCapacity.Found(indices, net)}, D/P creatinine {fast.Value:0.00}"),
                    Expected = $"at least {low}",
                };
            }
        }
        else if (near is not null && net < near.Value)
        {
            yield return new(Severity.Warning, "ultrafiltration-near-limit", "Net ultrafiltration is near the limit for this strength.")
            {
                Field = "net ultrafiltration",
                Found = UltrafiltrationCapacity.Found(indices, net),
                Expected = $"at least {near}",
            };
        }
        else if (UltrafiltrationCapacity.IsOverfillUnknown(indices.Test) && net < low.Value + indices.Options.Thresholds.UnknownOverfill.Value)
        {
            yield return new(Severity.Note, "ultrafiltration-near-limit",
                "Without the overfill that the label hides, net ultrafiltration may be below the limit for this strength.")
            {
                Field = "net ultrafiltration",
                Found = UltrafiltrationCapacity.Found(indices, net),
                Expected = $"at least {low}",
            };
        }
        else if (indices.NetUltrafiltration?.StandardDeviation is { } deviation && net < low.Value + deviation)
        {
            yield return new(Severity.Note, "ultrafiltration-near-limit", "Net ultrafiltration lies within the error of its volumes above the limit for this strength.")
            {
                Field = "net ultrafiltration",
                Found = UltrafiltrationCapacity.Found(indices, net),
                Expected = $"at least {low}",
            };
        }
    }

    private static IEnumerable<Finding> Dip(EquilibrationIndices indices)
    {
        var limits = indices.Options.Thresholds;
        if (!indices.IsStrong || indices.SodiumDip is not { } dip)
        {
            yield break;
        }

        var isSmall = dip.Value <= limits.SmallSodiumDip.Value || indices.SodiumRatioDip?.Value <= limits.SmallSodiumRatioDip.Value;
        var isLow = UltrafiltrationCapacity.Of(indices)?.IsLow;
        var found = Invariant($"sodium dip {dip.Value:0.0} mmol/L")
            + (indices.SodiumRatioDip is { } ratio ? Invariant($", ratio dip {ratio.Value:0.000}") : "")
            + (indices.CorrectedSodiumDip is { } corrected ? Invariant($", corrected for diffusion {corrected.Value:0.0} mmol/L") : "")
            + (indices.NetUltrafiltration is { } net ? ", net ultrafiltration " + UltrafiltrationCapacity.Found(indices, net.Value) : "")
            + (Class(indices) is { } classification ? Invariant($", D/P creatinine {classification.Value:0.00}") : "");
        var (fall, ratioFall) = (limits.SmallSodiumDip, limits.SmallSodiumRatioDip);
        var expected = (fall.Source, fall.Evidence) == (ratioFall.Source, ratioFall.Evidence)
            ? Invariant($"dip above {fall.Value:0.###} {fall.Unit} and ratio dip above {ratioFall}")
            : $"dip above {fall} and ratio dip above {ratioFall}";

        Finding At(Severity severity, string code, string message) =>
            new(severity, code, message) { Field = dip.Name, Found = found, Expected = expected };

        switch (isSmall, isLow, Class(indices)?.Category)
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

        // Small even where diffusion does not explain it: as at average transfer, no silence and no label.
        if (isLow == false && Class(indices)?.Category == TransportCategory.Fast && indices.CorrectedSodiumDip is { } kept && kept.Value <= fall.Value)
        {
            yield return At(Severity.Warning, "sodium-dip-small-ultrafiltration-preserved",
                "The sodium dip is small even without what diffusion hid, while ultrafiltration is preserved, which suggests repeating sodium with one method for all samples, then following it.");
        }

        // Whether conductance is low beside fast transfer can only be read from what transfer does not blunt.
        if (isLow == true && Class(indices)?.Category == TransportCategory.Fast && indices.CorrectedSodiumDip is { } free && free.Value <= fall.Value)
        {
            yield return At(Severity.Note, "corrected-dip-small-in-fast-transfer",
                "The dip is small even without what diffusion hid, which is compatible with a low osmotic conductance beside fast transfer; one test does not tell since when.");
        }
    }

    // Where creatinine itself is in doubt, fluid is read as without a class.
    private static TransportClassification? Class(EquilibrationIndices indices) => indices.Classification is { CreatinineInDoubt: null } sure ? sure : null;

    private static IEnumerable<Finding> FreeWaterShare(EquilibrationIndices indices)
    {
        var limits = indices.Options.Thresholds;
        if (indices.IsStrong && indices.FirstHour?.FreeWaterFraction is { } share && share.Value < limits.SmallFreeWaterShare.Value)
        {
            yield return new(Severity.Note, "free-water-share-low",
                "Little of the first hour's ultrafiltration is free water, which is compatible with a low osmotic conductance; sodium to 1 mmol/L decides, so a repeat with one method tells more.")
            {
                Field = share.Name,
                Found = Invariant($"{share.Value:0.00} ± {share.StandardDeviation:0.00}"),
                Expected = $"at least {limits.SmallFreeWaterShare}",
            };
        }
    }

    private static IEnumerable<Finding> Absorption(EquilibrationIndices indices)
    {
        var limit = indices.Options.Thresholds.HighMarkerLoss;
        if (indices.Marker?.LossFlow is { } loss && loss.Value > limit.Value)
        {
            yield return new(Severity.Note, "fluid-absorption-high", "Marker is lost fast, which is compatible with high fluid absorption by tissue and lymph, or with a leak.")
            {
                Field = loss.Name,
                Found = Invariant($"{loss.Value:0.00} ± {loss.StandardDeviation:0.00} mL/min"),
                Expected = $"at most {limit}",
            };
        }
    }

    private static IEnumerable<Finding> Protein(EquilibrationIndices indices)
    {
        var limit = indices.Options.Thresholds.HighProteinClearance;
        if (indices.Proteins?.Clearances.FirstOrDefault(one => one.Name == "clearance of " + Transport.Protein.Total.Name) is { } clearance
            && clearance.Value * 1440 > limit.Value)
        {
            yield return new(Severity.Note, "protein-loss-high",
                "Protein loss is high; it goes with large-pore flow, inflammation and venous pressure, and one measurement does not tell which.")
            {
                Field = clearance.Name,
                Found = Invariant($"{clearance.Value * 1440:0} mL/day"),
                Expected = $"at most {limit}",
            };
        }
    }
}
