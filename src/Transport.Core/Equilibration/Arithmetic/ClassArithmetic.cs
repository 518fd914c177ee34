using static System.FormattableString;
using static Transport.IndexInputs;

namespace Transport;

/// <summary>The class of D/P creatinine, its cross-check by glucose, and all that makes it preliminary.</summary>
internal sealed class ClassArithmetic(IndexInputs inputs)
{
    private EquilibrationTest Test => inputs.Test;

    public TransportClassification? Of(EquilibrationIndices indices)
    {
        const string name = "transport category";
        if (indices.DialysateToPlasmaCreatinine is not { } ratio || indices.FinalSampleTime is not { } time)
        {
            inputs.Missing(name, "D/P creatinine not available");
            return null;
        }

        if (Test.Solution.Agent != OsmoticAgent.Glucose)
        {
            inputs.Missing(name, "the classes are for glucose solutions");
            return null;
        }

        if ((time - FourHours).Duration() > Minutes(inputs.Limits.ClassTolerance))
        {
            inputs.Missing(name, Invariant($"the last sample was taken at {time.TotalMinutes:0} min, the classes are for 240 min"));
            return null;
        }

        var cuts = inputs.Options.Cuts ?? (inputs.IsAdult ? CategoryCuts.Twardowski1987Creatinine : CategoryCuts.Warady1996Creatinine);
        var largest = Math.Min(cuts.LargestValue, inputs.Limits.DialysateToPlasmaImpossible.Value);
        if (ratio.Value < 0 || ratio.Value > largest)
        {
            inputs.Missing(name, Invariant($"D/P creatinine {ratio.Value:0.00} is outside 0 to {largest:0.00}"));
            return null;
        }

        var population = inputs.Options.Population ?? ReferencePopulations.For(Test);
        return TransportClassification.Of(ratio.Value, cuts, population, inputs.Options.WithinPersonStandardDeviation) with
        {
            GlucoseCategory = GlucoseCategory(indices),
            CreatinineInDoubt = InDoubt(indices),
            Cautions = Cautions(indices),
        };
    }

    private TransportCategory? GlucoseCategory(EquilibrationIndices indices)
    {
        // High plasma glucose takes away gradient and slows the fall of dialysate glucose: neither is comparable with the borders.
        if (!indices.IsMiddle || indices.IsPlasmaGlucoseHigh)
        {
            return null;
        }

        if (Test.Form == TestForm.Fast)
        {
            // No D0: the absolute glucose has borders of its own, for adults.
            return inputs.IsAdult && inputs.AtEndOfDwell(sample => sample.Glucose)?.Glucose is { } absolute
                && absolute.MillimolesPerLiter <= CategoryCuts.TwardowskiFastGlucose.LargestValue
                    ? CategoryCuts.TwardowskiFastGlucose.Of(absolute.MillimolesPerLiter)
                    : null;
        }

        var cuts = inputs.Options.GlucoseCuts ?? (inputs.IsAdult ? CategoryCuts.Twardowski1987Glucose : CategoryCuts.Warady1996Glucose);
        return !indices.IsInitialGlucoseEstimated
            && indices.DialysateToInitialGlucose is { Value: >= 0 } ratio
            && ratio.Value <= cuts.LargestValue
                ? cuts.Of(ratio.Value)
                : null;
    }

    // Above plasma is the graver of the two, and says it alone.
    private string? InDoubt(EquilibrationIndices indices) =>
        indices.DialysateToPlasmaCreatinine!.Value > inputs.Limits.DialysateToPlasmaHigh.Value
            ? Invariant($"dialysate creatinine stands above plasma's (D/P {indices.DialysateToPlasmaCreatinine.Value:0.00})")
            : indices.Ratios.FirstOrDefault(sample => sample.Time == indices.FinalSampleTime) is { } last && QualityFindings.IsCreatinineAhead(last)
                ? Invariant($"creatinine is ahead of urea, which is smaller and crosses faster (D/P {last.DialysateToPlasmaCreatinine!.Value:0.00} against {last.DialysateToPlasmaUrea!.Value:0.00} at the same time)")
                : null;

    // The doubt about creatinine comes first.
    private List<string> Cautions(EquilibrationIndices indices)
    {
        var cautions = new List<string>();
        if (InDoubt(indices) is { } doubt)
        {
            cautions.Add($"{char.ToUpperInvariant(doubt[0])}{doubt[1..]}: {QualityFindings.MixUp} first.");
        }

        if (!indices.IsFourHourSample)
        {
            cautions.Add(Invariant(
                $"The sample was taken at {indices.FinalSampleTime!.Value.TotalMinutes:0} min, not at 240 ± {inputs.Limits.FourHourTolerance.Value:0} min."));
        }

        if ((Test.Dwell - FourHours).Duration() > Minutes(inputs.Limits.FourHourTolerance))
        {
            cautions.Add(Invariant($"The dwell was {Test.Dwell.TotalMinutes:0} min, not 240 ± {inputs.Limits.FourHourTolerance.Value:0} min."));
        }

        var (fill, low, high) = inputs.IsAdult
            ? (Test.EnteredVolume.Milliliters, inputs.Limits.AdultFillLow, inputs.Limits.AdultFillHigh)
            : (Test.EnteredVolume.Milliliters / Test.Patient.BodySurface.SquareMeters, inputs.Limits.ChildFillLow, inputs.Limits.ChildFillHigh);
        if (fill < low.Value || fill > high.Value)
        {
            cautions.Add(Invariant($"The fill was {fill:0} {low.Unit}, outside {low.Value:0} to {high.Value:0} {low.Unit}."));
        }

        if (Test.IsStrengthInDoubt)
        {
            cautions.Add("The glucose at 0 min belongs to a bag of another strength, so a sample or the bag may be another's.");
        }

        if (Test.CreatinineAssay is { Corrects: false, Method: not CreatinineMethod.Enzymatic })
        {
            cautions.Add("Creatinine was not corrected for glucose, which may raise D/P.");
        }

        return [.. cautions, .. Conditions()];
    }

    // What went before makes a test preliminary; nothing of it keeps an index from being computed.
    private IEnumerable<string> Conditions()
    {
        var conditions = Test.Conditions;
        if (DaysSince(conditions.DialysisStart) is { } onDialysis && onDialysis < inputs.Limits.EarlyAfterStart.Value)
        {
            yield return Invariant($"The test was made {onDialysis:0} days after the start of dialysis, within the first {inputs.Limits.EarlyAfterStart.Value:0}.");
        }

        if (DaysSince(conditions.LastPeritonitis) is { } sincePeritonitis && sincePeritonitis < inputs.Limits.RecentPeritonitis.Value)
        {
            yield return Invariant($"The test was made {sincePeritonitis:0} days after a peritonitis had resolved, fewer than {inputs.Limits.RecentPeritonitis.Value:0}.");
        }

        if (conditions.PrecedingDwell is { } before && before < Minutes(inputs.Limits.ShortPrecedingDwell))
        {
            yield return Invariant($"The dwell before the test was {before.TotalMinutes:0} min, shorter than {inputs.Limits.ShortPrecedingDwell.Value:0} min.");
        }

        if (conditions.PrecedingAgent == OsmoticAgent.Icodextrin)
        {
            yield return "The dwell before the test was of icodextrin, whose rest in the cavity and in blood disturbs ultrafiltration and some glucose assays and meters.";
        }

        double? DaysSince(DateOnly? day) => day is { } then && Test.Date is { } now && now >= then ? now.DayNumber - then.DayNumber : null;
    }
}
