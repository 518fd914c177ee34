using static System.FormattableString;
using Codes = Transport.Analysis.SampleSheetCodes;
using Limits = Transport.Analysis.SampleSheetLimits;
using Words = Transport.Analysis.SheetWords;

namespace Transport.Analysis;

/// <summary>The creatinine assay, and creatinine after its correction.</summary>
internal sealed class CreatinineChecks(CheckInputs inputs)
{
    private const double CreatinineUnits = 88.4; // µmol/L per mg/dL

    private SheetDraft Draft => inputs.Draft;

    public static IEnumerable<Finding> Of(CheckInputs inputs)
    {
        var checks = new CreatinineChecks(inputs);
        return [.. checks.Assay(), .. checks.Creatinine()];
    }

    private IEnumerable<Finding> Assay()
    {
        var (method, factor) = (Draft.Assay.Method, Draft.Assay.GlucoseFactor);
        if (method == CreatinineMethod.NotStated && !(inputs.Written.Contains(Words.Method.Name) && Draft.RowOf(Words.Method) is null))
        {
            yield return Codes.AssayNotStated.Finding(
                "The creatinine method is not stated. If it is an alkaline-picrate (Jaffe) method, early D/P are too high. Ask the laboratory and add it.",
                Draft.RowOf(Words.Method), Words.Method.Name, expected: "enzymatic or Jaffe");
        }

        if (method == CreatinineMethod.Jaffe && inputs.Lacks(Words.Factor))
        {
            yield return Codes.JaffeWithoutFactor.Finding(
                "A Jaffe method reads glucose as creatinine, and no factor is given to correct for it: D/P creatinine is too high. Ask the laboratory for its factor and add it.",
                Draft.RowOf(Words.Method), Words.Factor.Name);
        }

        if (method == CreatinineMethod.Enzymatic && factor > 0)
        {
            yield return Codes.FactorContradictsMethod.Finding(
                "An enzymatic method needs no glucose factor. Remove the factor, or correct the method.", Draft.RowOf(Words.Factor), Words.Factor.Name);
        }

        foreach (var sample in Draft.Assay.Corrects ? Draft.Dialysate : [])
        {
            var row = Draft.Row(SampledFluid.Dialysate, Analyte.Creatinine, sample.Time)?.Row;
            if (sample is { Creatinine: not null, Glucose: null })
            {
                yield return Codes.MissingGlucoseForCorrection.Finding(
                    "This creatinine cannot be corrected without the glucose of the same sample, and is left out. Add the glucose.", row, "dialysate creatinine");
            }
            else if (inputs.Corrected(sample) is { } corrected && corrected < default(Concentration))
            {
                var beyond = -corrected.MillimolesPerLiter > Limits.Spread(Analyte.Creatinine).StandardDeviationAt(sample.Creatinine!.Value);
                yield return (beyond ? Codes.CorrectedCreatinineNegative : Codes.CorrectedCreatinineBelowZero).Finding(
                    beyond
                        ? "The factor takes more from this creatinine than there is. Check the factor and its unit, the creatinine and the glucose."
                        : "The corrected creatinine is slightly below zero, as the spread of the assay explains. Check the factor if it happens often.",
                    row, "dialysate creatinine", Invariant($"{corrected.MicromolesPerLiter:0.#} µmol/L after correction"), "zero or more");
            }
        }

        if (inputs.PlasmaCreatinine is { } plasma && plasma <= default(Concentration))
        {
            yield return Codes.CorrectedCreatinineNegative.Finding(
                "The factor takes more from plasma creatinine than there is. Check the factor and its unit.",
                Draft.RowOf(Words.Factor), "plasma creatinine", Invariant($"{plasma.MicromolesPerLiter:0.#} µmol/L after correction"), "more than zero");
        }
    }

    private IEnumerable<Finding> Creatinine()
    {
        var corrected = Draft.Dialysate.Select(sample => (sample.Time, Value: inputs.Corrected(sample))).Where(point => point.Value is not null)
            .Select(point => (point.Time, Value: point.Value!.Value)).ToList();
        if (inputs.PlasmaCreatinine is { MillimolesPerLiter: > 0 } plasma && corrected.Count > 0)
        {
            var last = corrected[^1].Value / plasma;
            if (last * CreatinineUnits is > 0.3 and < 1.1 || last / CreatinineUnits is > 0.3 and < 1.1)
            {
                yield return Codes.UnitSwap.Finding(
                    Invariant($"Dialysate and plasma creatinine differ by about 88.4, the number of µmol/L in 1 mg/dL (D/P {last:G3}). Correct the unit of one of them."),
                    Draft.Row(SampledFluid.Dialysate, Analyte.Creatinine, corrected[^1].Time)?.Row, "dialysate creatinine",
                    Invariant($"D/P {last:G3}"), "D/P between 0.3 and 1.1");
                yield break;
            }

            foreach (var finding in CurveChecks.Ratios(inputs, Analyte.Creatinine, corrected, plasma))
            {
                yield return finding;
            }

            if (inputs.Initial is not null && corrected[0].Time == inputs.Initial.Time)
            {
                var first = corrected[0].Value / plasma;
                var readsGlucose = !Draft.Assay.Corrects && Draft.Assay.Method != CreatinineMethod.Enzymatic;
                var limit = readsGlucose ? Limits.InitialCreatinineRatio : Limits.InitialCreatinineRatioWithoutGlucose;
                if (first > limit)
                {
                    yield return Codes.InitialRatioHigh.Finding(
                        readsGlucose
                            ? "So much creatinine at 0 min is probably glucose read as creatinine. Apply the laboratory's glucose factor."
                            : "So much creatinine at 0 min means much fluid left from before, or a late sample.",
                        Draft.Row(SampledFluid.Dialysate, Analyte.Creatinine, inputs.Initial.Time)?.Row, "dialysate creatinine",
                        Invariant($"D/P {first:0.00} at 0 min"), Invariant($"at most {limit:0.00}"));
                }
            }
        }

        foreach (var finding in CurveChecks.Turns(inputs, Analyte.Creatinine, corrected))
        {
            yield return finding;
        }
    }
}
