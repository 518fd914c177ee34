using static System.FormattableString;
using static Transport.IndexInputs;

namespace Transport;

/// <summary>D/P and D/D0 of each sample, and the D0 that the latter rests on.</summary>
internal sealed class RatioArithmetic(IndexInputs inputs)
{
    private const string RatioSource = "Twardowski et al., Perit Dial Bull 1987;7:138-147 (memory)";

    private EquilibrationTest Test => inputs.Test;

    // With another fluid dialysate glucose comes from plasma and rises.
    private bool IsGlucose => Test.Solution.Agent == OsmoticAgent.Glucose;

    public SampleRatios Of(DialysateSample sample, IndexValue? initialGlucose)
    {
        return new(sample.Time)
        {
            DialysateToPlasmaCreatinine = CreatinineRatio(sample),
            UncorrectedDialysateToPlasmaCreatinine = Ratio(
                "D/P creatinine, uncorrected", sample.Creatinine, CorrectedCreatinine.Mean(Test.Plasma.Select(plasma => plasma.Creatinine)), sample.Time, "D/P as measured"),
            DialysateToPlasmaUrea = Ratio("D/P urea", sample.Urea, Test.PlasmaUrea, sample.Time, "D/P"),
            DialysateToInitialGlucose = IsGlucose && sample.Glucose is { } glucose && initialGlucose is { Value: > 0 } d0
                    && sample.Time > inputs.EarlyTolerance
                ? new("D/D0 glucose", glucose.MillimolesPerLiter / d0.Value, "",
                    Invariant($"D/D0 at {sample.Time.TotalMinutes:0} min = {glucose.MillimolesPerLiter:0.0} / {d0.Value:0.0} mmol/L, {d0.Formula}"),
                    RatioSource,
                    Math.Abs(glucose.MillimolesPerLiter) / d0.Value
                        * Math.Sqrt(Square(inputs.Options.AssayVariation) + Square((d0.StandardDeviation ?? 0) / d0.Value)))
                : null,
        };
    }

    private IndexValue? CreatinineRatio(DialysateSample sample)
    {
        if (Test.CorrectedDialysateCreatinine(sample) is not { } dialysate
            || Test.CorrectedPlasmaCreatinine is not { MillimolesPerLiter: > 0 } plasma)
        {
            return null;
        }

        var how = Test.CreatinineAssay switch
        {
            { Corrects: true } assay => Invariant($"both corrected for glucose, factor {assay.GlucoseFactor:0.#########}"),
            { Method: CreatinineMethod.Enzymatic } => "enzymatic, no correction needed",
            { Method: CreatinineMethod.Jaffe } => "Jaffe, not corrected for glucose: no factor given",
            _ => "not corrected for glucose: method not stated",
        };
        var glucoseShare = Test.CreatinineAssay.Corrects && sample.Creatinine is { } measured ? measured - dialysate : default;
        var dialysateError = inputs.Options.AssayVariation
            * Math.Sqrt(Square((dialysate + glucoseShare) / plasma) + Square(glucoseShare / plasma));
        var ratio = dialysate / plasma;
        return new("D/P creatinine", ratio, "",
            Invariant($"D/P at {sample.Time.TotalMinutes:0} min = {dialysate.MicromolesPerLiter:0.0} / {plasma.MicromolesPerLiter:0.0} µmol/L, {how}"),
            RatioSource,
            Math.Sqrt(Square(dialysateError) + Square(ratio * inputs.Options.AssayVariation)));
    }

    private IndexValue? Ratio(string name, Concentration? dialysate, Concentration? plasma, TimeSpan time, string formula) =>
        dialysate is { } d && plasma is { MillimolesPerLiter: > 0 } p
            ? new(name, d / p, "",
                Invariant($"{formula} at {time.TotalMinutes:0} min = {d.MillimolesPerLiter:0.###} / {p.MillimolesPerLiter:0.###} mmol/L"),
                RatioSource,
                Math.Abs(d / p) * inputs.Options.AssayVariation * Math.Sqrt(2))
            : null;

    public void ExplainMissing(DialysateSample? final, SampleRatios? ratios, IndexValue? initialGlucose)
    {
        if (ratios?.DialysateToPlasmaCreatinine is null)
        {
            inputs.Missing("D/P creatinine",
                final is null ? "no dialysate sample"
                : final.Creatinine is null ? At(final, "dialysate creatinine")
                : Test.CorrectedPlasmaCreatinine is not { MillimolesPerLiter: > 0 } ? "plasma creatinine not measured"
                : Invariant($"dialysate glucose at {final.Time.TotalMinutes:0} min not measured, so creatinine cannot be corrected for it"));
        }

        if (ratios?.DialysateToPlasmaUrea is null)
        {
            inputs.Missing("D/P urea", final is null ? "no dialysate sample"
                : final.Urea is null ? At(final, "dialysate urea") : "plasma urea not measured");
        }

        if (ratios?.DialysateToInitialGlucose is null)
        {
            inputs.Missing("D/D0 glucose", final is null ? "no dialysate sample"
                : !IsGlucose ? "not a glucose solution"
                : final.Glucose is null ? At(final, "dialysate glucose")
                : initialGlucose is null ? "no volume instilled, so D0 cannot be estimated"
                : initialGlucose.Value <= 0 ? "no glucose at 0 min"
                : "no dialysate sample after the start");
        }
    }

    public IndexValue? InitialGlucose(out bool isEstimated)
    {
        isEstimated = false;
        if (inputs.Initial(sample => sample.Glucose) is { Glucose: { } measured })
        {
            return new("D0 glucose", measured.MillimolesPerLiter, "mmol/L", "D0 measured", "mass balance",
                measured.MillimolesPerLiter * inputs.Options.AssayVariation);
        }

        if (Test.Solution.Agent != OsmoticAgent.Glucose)
        {
            return null;
        }

        isEstimated = true;
        var residual = inputs.AssumedResidualVolume;
        var entered = Test.EnteredVolume;
        var total = entered + residual;
        if (total.Milliliters <= 0)
        {
            isEstimated = false;
            return null;
        }

        var value = CavityMixing.InitialConcentration(entered, Test.Solution.Glucose, residual, inputs.Options.AssumedResidualGlucose).MillimolesPerLiter;
        var perMilliliter = (Test.Solution.Glucose - inputs.Options.AssumedResidualGlucose).MillimolesPerLiter * entered.Milliliters
            / Square(total.Milliliters);
        var fromVolume = inputs.ResidualVolume is null ? 100 * perMilliliter : 0.0;
        var fromGlucose = 20 * (residual / total);
        var known = inputs.ResidualVolume is null ? "assumed" : "known";
        return new("D0 glucose", value, "mmol/L",
            Invariant($"D0 estimated by mixing: {entered.Milliliters:0} mL of {Test.Solution.Glucose.MillimolesPerLiter:0.0} mmol/L with a residual volume of {residual.Milliliters:0} mL ({known}) at {inputs.Options.AssumedResidualGlucose.MillimolesPerLiter:0} mmol/L (assumed)"),
            "mass balance",
            Math.Sqrt(Square(fromVolume) + Square(fromGlucose)));
    }
}
