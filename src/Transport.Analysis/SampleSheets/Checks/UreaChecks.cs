using static System.FormattableString;
using Codes = Transport.Analysis.SampleSheetCodes;
using Limits = Transport.Analysis.SampleSheetLimits;

namespace Transport.Analysis;

/// <summary>Urea, and urea that may be its nitrogen.</summary>
internal sealed class UreaChecks(CheckInputs inputs)
{
    private const double UreaNitrogenInUrea = 2.14; // mass of urea per mass of its nitrogen

    private SheetDraft Draft => inputs.Draft;

    public static IEnumerable<Finding> Of(CheckInputs inputs)
    {
        var checks = new UreaChecks(inputs);
        return [.. checks.Urea()];
    }

    private IEnumerable<Finding> Urea()
    {
        var points = inputs.Points(sample => sample.Urea);
        if (CheckInputs.Mean(Draft.Plasma.Select(sample => sample.Urea)) is { } plasma)
        {
            var row = Draft.Row(SampledFluid.Plasma, Analyte.Urea)!;
            var isNitrogen = row.Analyte == Analyte.UreaNitrogen;
            if (isNitrogen ? plasma.MillimolesPerLiter > Limits.HighPlasmaUrea : plasma.MillimolesPerLiter < Limits.LowPlasmaUrea)
            {
                yield return Codes.UreaOrUreaNitrogen.Finding(
                    isNitrogen
                        ? "This urea nitrogen is so high that it may be urea. Ask the laboratory; 1 mg/dL of urea nitrogen is 2.14 mg/dL of urea."
                        : "This urea is so low that it may be urea nitrogen. Ask the laboratory; 1 mg/dL of urea nitrogen is 2.14 mg/dL of urea.",
                    row.Row, "plasma urea", $"{row.Text} {row.UnitText}");
            }

            if (points.Count > 0)
            {
                var last = points[^1].Value / plasma;
                var creatinine = Draft.Dialysate.LastOrDefault(sample => sample.Time == points[^1].Time) is { } sample && inputs.PlasmaCreatinine is { } serum
                    ? inputs.Corrected(sample) / serum
                    : null;
                if (last / UreaNitrogenInUrea is > 0.8 and < 1.05 || (last < creatinine && last * UreaNitrogenInUrea is > 0.8 and < 1.05))
                {
                    yield return Codes.UreaOrUreaNitrogen.Finding(
                        "Dialysate and plasma urea fit each other if one of them is urea nitrogen. Ask the laboratory.",
                        Draft.Row(SampledFluid.Dialysate, Analyte.Urea, points[^1].Time)?.Row, "dialysate urea", Invariant($"D/P {last:0.00}"));
                }

                foreach (var finding in CurveChecks.Ratios(inputs, Analyte.Urea, points, plasma))
                {
                    yield return finding;
                }
            }
        }

        foreach (var finding in CurveChecks.Turns(inputs, Analyte.Urea, points))
        {
            yield return finding;
        }
    }
}
