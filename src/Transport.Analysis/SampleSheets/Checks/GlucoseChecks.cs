using static System.FormattableString;
using Codes = Transport.Analysis.SampleSheetCodes;
using Limits = Transport.Analysis.SampleSheetLimits;

namespace Transport.Analysis;

/// <summary>Glucose against the bag, plasma and time.</summary>
internal sealed class GlucoseChecks(CheckInputs inputs)
{
    private const double GlucoseUnits = 18.0; // mg/dL per mmol/L

    private SheetDraft Draft => inputs.Draft;

    public static IEnumerable<Finding> Of(CheckInputs inputs)
    {
        var checks = new GlucoseChecks(inputs);
        return [.. checks.Glucose()];
    }

    private IEnumerable<Finding> Glucose()
    {
        // With another fluid dialysate glucose comes from plasma: it may rise, and is below plasma's.
        if (Draft.Agent != OsmoticAgent.Glucose)
        {
            yield break;
        }

        var points = inputs.Points(sample => sample.Glucose);
        if (inputs.Bag is { } strength && inputs.Initial?.Glucose is { } first)
        {
            var share = first.MillimolesPerLiter / strength;
            var row = Draft.Row(SampledFluid.Dialysate, Analyte.Glucose, inputs.Initial.Time)?.Row;
            var found = Invariant($"{first.MillimolesPerLiter:0.0} mmol/L, {share:0.00} of the bag's {strength:0.0}");
            var expected = Invariant($"{Limits.InitialGlucoseShareLow:0.00} to {Limits.InitialGlucoseShareHigh:0.00} of the bag's");
            if (share * GlucoseUnits is > 0.6 and < 1.1 || share / GlucoseUnits is > 0.6 and < 1.1)
            {
                yield return Codes.UnitSwap.Finding(
                    "Dialysate and bag glucose differ by about 18, the number of mg/dL in 1 mmol/L. Correct the unit of one of them.",
                    row, "dialysate glucose", found, expected);
                yield break;
            }

            if (share is < Limits.InitialGlucoseShareLow or > Limits.InitialGlucoseShareHigh)
            {
                var fitting = Limits.Strengths.MinBy(other => Math.Abs(first.MillimolesPerLiter / other - Limits.InitialGlucoseShareUsual));
                var fits = Math.Abs(first.MillimolesPerLiter / fitting - Limits.InitialGlucoseShareUsual) <= Limits.InitialGlucoseShareTolerance;
                yield return fits && !CheckInputs.Near(fitting, strength, Limits.ConventionGap)
                    ? Codes.WrongStrength.Finding(
                        Invariant($"This glucose belongs to a bag of {fitting:0.0} mmol/L rather than {strength:0.0}. Correct the solution, or check the sample; until then limits, D/D0 class, absorbed glucose and a fit are left out."),
                        row, "dialysate glucose", found, expected)
                    : Codes.InitialGlucoseUnexpected.Finding(
                        share > 1
                            ? "This is more glucose than mixing in the cavity leaves: an undiluted sample of the bag, or a bag labelled by the other convention (10 % more). D/D0 would be too low."
                            : "This is less glucose than mixing in the cavity leaves: a large residual volume, or a late sample. D/D0 would be too high.",
                        row, "dialysate glucose", found, expected);
            }
        }

        foreach (var finding in CurveChecks.Turns(inputs, Analyte.Glucose, points))
        {
            yield return finding;
        }

        if (points.Count > 0 && Draft.Plasma.Select(sample => sample.Glucose).Min() is { } lowest
            && lowest.MillimolesPerLiter - points[^1].Value.MillimolesPerLiter
                > Limits.TurnDeviations * Limits.Spread(Analyte.Glucose).StandardDeviationAt(lowest))
        {
            yield return Codes.GlucoseBelowPlasma.Finding(
                "Dialysate glucose cannot be below plasma's. Check the units, and whether a plasma value was entered as dialysate.",
                Draft.Row(SampledFluid.Dialysate, Analyte.Glucose, points[^1].Time)?.Row, "dialysate glucose",
                Invariant($"{points[^1].Value.MillimolesPerLiter:0.0} mmol/L"), Invariant($"at least plasma's {lowest.MillimolesPerLiter:0.0} mmol/L"));
        }
    }
}
