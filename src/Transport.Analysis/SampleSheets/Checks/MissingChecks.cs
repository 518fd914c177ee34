using static System.FormattableString;
using Codes = Transport.Analysis.SampleSheetCodes;
using Limits = Transport.Analysis.SampleSheetLimits;
using Words = Transport.Analysis.SheetWords;

namespace Transport.Analysis;

/// <summary>What a test lacks.</summary>
internal sealed class MissingChecks(CheckInputs inputs)
{
    private SheetDraft Draft => inputs.Draft;

    public static IEnumerable<Finding> Of(CheckInputs inputs)
    {
        var checks = new MissingChecks(inputs);
        return [.. checks.MissingFacts(), .. checks.MissingMeasurements()];
    }

    private IEnumerable<Finding> MissingFacts()
    {
        if (inputs.Lacks(Words.SolutionGlucose) && Draft.Agent == OsmoticAgent.Glucose)
        {
            yield return Codes.MissingStrength.Finding(
                "The glucose concentration of the solution is missing. Add it from the bag's list of contents.", field: Words.SolutionGlucose.Name);
        }

        if (inputs.Lacks(Words.Fill))
        {
            yield return Codes.MissingFill.Finding("The fill volume is missing. Add what was instilled.", field: Words.Fill.Name);
        }
        else if (inputs.Lacks(Words.Basis))
        {
            yield return Codes.MissingFillBasis.Finding(
                "It is not said whether the fill was weighed or read from the label; the label is assumed. Add 'weighed' or 'label'.", field: Words.Basis.Name);
        }

        if (inputs.Lacks(Words.Dwell) && Draft.ClockedDwellMinutes is null)
        {
            yield return Codes.MissingDwell.Finding(
                "The dwell time is missing. Add it, or the clock times of end of inflow and start of drain.", field: Words.Dwell.Name);
        }
        else if (Draft.Number(Words.Dwell) is null && Draft.ClockedDwellMinutes is { } clocked && !Limits.DwellMinutes.Contains(clocked))
        {
            yield return Codes.ImpossibleValue.Finding(
                "The clock times make a dwell that is not possible; correct one of them.",
                Draft.RowOf(Words.StartOfDrain), Words.Dwell.Name, Invariant($"{clocked:0.#} min"), CheckInputs.Text(Limits.DwellMinutes));
        }

        if (inputs.Lacks(Words.Drained))
        {
            yield return Codes.MissingDrainedVolume.Finding(
                "The drained volume is missing, so ultrafiltration and everything that rests on volumes is not given. Add it if it was measured.",
                field: Words.Drained.Name);
        }

        if (inputs.Lacks(Words.SolutionSodium))
        {
            yield return Codes.SolutionSodiumAssumed.Finding(
                "The sodium of the solution is not given: 132 mmol/L is assumed. Add it from the bag's list of contents.", field: Words.SolutionSodium.Name);
        }

        var renal = new[] { Words.RenalUreaClearance, Words.RenalCreatinineClearance };
        if (inputs.Lacks(Words.Urine))
        {
            yield return Codes.ResidualFunctionNotGiven.Finding(
                "Nothing is said about urine: none is assumed, and a patient who passes urine would be dried out by a fluid range that rests on it. Write 'urine volume', 0 if there is none.", field: Words.Urine.Name);
        }

        foreach (var item in renal.Where(item => inputs.Lacks(item) && !(renal.All(inputs.Lacks) && Draft.Number(Words.Urine) is null or 0)))
        {
            yield return Codes.ResidualClearanceMissing.Finding(
                $"There is residual kidney function but no {item.Name}: zero is assumed for it, which makes doses too low. Add it from a 24-h urine.", field: item.Name);
        }
    }

    private IEnumerable<Finding> MissingMeasurements()
    {
        if (Draft.Dialysate.Count == 0 && Draft.Plasma.Count == 0 && !Draft.IsAnyWritten)
        {
            yield return Codes.MissingMeasurements.Finding("The sheet has no measurement, so there is nothing to compute. Add what was measured.");
        }

        if (!Draft.IsWritten(SampledFluid.Plasma, Analyte.Creatinine))
        {
            yield return Codes.MissingPlasmaCreatinine.Finding(
                "Without plasma creatinine there is no D/P creatinine and no class. Add it if it was measured; simulations assume a typical one.", field: "plasma creatinine", expected: "creatinine of blood drawn during the dwell");
        }

        if (!Draft.IsWritten(SampledFluid.Dialysate, Analyte.Creatinine))
        {
            yield return Codes.MissingDialysateCreatinine.Finding(
                "Without dialysate creatinine there is no D/P creatinine and no class. Add it if it was measured.", field: "dialysate creatinine", expected: "creatinine at 0, 120 and 240 min");
        }
        else if (Draft.DwellMinutes is { } dwell
            && !Draft.IsWritten(Analyte.Creatinine, dwell - Limits.FinalSampleMinutes, double.PositiveInfinity))
        {
            yield return Codes.MissingFinalSample.Finding(
                Invariant($"There is no dialysate creatinine within {Limits.FinalSampleMinutes} min of the end of the dwell ({dwell:0.#} min), so D/P at its end is not given. Add the last sample if there is one."),
                field: "dialysate creatinine");
        }

        if (inputs.Form != TestForm.Fast && Draft.Agent == OsmoticAgent.Glucose && !Draft.IsWritten(Analyte.Glucose, 0, Limits.InitialSampleMinutes))
        {
            yield return Codes.MissingInitialGlucose.Finding(
                "There is no dialysate glucose at 0 min, so D/D0 is not given (the bag's glucose would be about 15 % too high). Add it if it was measured.",
                field: "dialysate glucose");
        }

        var typical = PlasmaComposition.Typical;
        foreach (var (analyte, value) in new[] { (Analyte.Urea, typical.Urea), (Analyte.Glucose, typical.Glucose), (Analyte.Sodium, typical.Sodium) })
        {
            if (!Draft.IsWritten(SampledFluid.Plasma, analyte) && !(analyte == Analyte.Urea && Draft.IsWritten(SampledFluid.Plasma, Analyte.UreaNitrogen)))
            {
                yield return Codes.PlasmaNotMeasured.Finding(
                    Invariant($"Plasma {Words.Name(analyte)} not measured: {value.MillimolesPerLiter:0} mmol/L assumed in simulations only."),
                    field: $"plasma {Words.Name(analyte)}");
            }
        }
    }
}
