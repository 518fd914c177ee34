using static System.FormattableString;
using Codes = Transport.Analysis.SampleSheetCodes;
using Limits = Transport.Analysis.SampleSheetLimits;
using Words = Transport.Analysis.SheetWords;

namespace Transport.Analysis;

/// <summary>What holds for every curve of a dwell: D/P rises and stays below one, D/D0 falls.</summary>
internal static class CurveChecks
{
    public static IEnumerable<Finding> Ratios(CheckInputs inputs, Analyte analyte, List<(TimeSpan Time, Concentration Value)> points, Concentration plasma)
    {
        var (time, value) = points.MaxBy(point => point.Value);
        var ratio = value / plasma;
        if (ratio > Limits.FullRatio)
        {
            var impossible = ratio > Limits.ImpossibleRatio;
            yield return (impossible ? Codes.RatioImpossible : Codes.RatioAboveOne).Finding(
                impossible
                    ? $"Dialysate {Words.Name(analyte)} cannot be so far above plasma's. Check for a wrong sample, a plasma swap, units, and glucose read as creatinine."
                    : $"Dialysate {Words.Name(analyte)} is a little above plasma's, which the spread of the assay can explain. Check both values.",
                inputs.Draft.Row(SampledFluid.Dialysate, analyte, time)?.Row, $"dialysate {Words.Name(analyte)}",
                Invariant($"D/P {ratio:0.00} at {time.TotalMinutes:0.#} min"), Invariant($"at most {Limits.FullRatio:0.00}"));
        }
    }

    // D/P rises and D/D0 falls throughout a dwell; the common denominator cancels, so that the dialysate values decide.
    public static IEnumerable<Finding> Turns(CheckInputs inputs, Analyte analyte, List<(TimeSpan Time, Concentration Value)> points)
    {
        var falls = analyte == Analyte.Glucose;
        foreach (var (before, after) in points.Zip(points.Skip(1)))
        {
            var turn = (falls ? 1 : -1) * (after.Value - before.Value).MillimolesPerLiter;
            if (turn < 0)
            {
                continue;
            }

            var spread = Limits.Spread(analyte);
            var beyond = turn > Limits.TurnDeviations
                * double.Hypot(spread.StandardDeviationAt(before.Value), spread.StandardDeviationAt(after.Value));
            var kind = (falls, beyond) switch
            {
                (true, true) => Codes.GlucoseRising,
                (true, false) => Codes.GlucoseNotFalling,
                (false, true) => Codes.RatioFalling,
                (false, false) => Codes.RatioNotRising,
            };
            yield return kind.Finding(
                $"Dialysate {Words.Name(analyte)} should {(falls ? "fall" : "rise")} from {CheckInputs.Minutes(before.Time)} to {CheckInputs.Minutes(after.Time)}. "
                + (beyond ? "Two samples are probably swapped, or one is of something else." : "The spread of the assay can explain it; check both values."),
                inputs.Draft.Row(SampledFluid.Dialysate, analyte, after.Time)?.Row, $"dialysate {Words.Name(analyte)}",
                $"{Written(before.Time)} then {Written(after.Time)}{(analyte == Analyte.Creatinine && inputs.Draft.Assay.Corrects ? " before correction" : "")}");
        }

        string Written(TimeSpan time) => inputs.Draft.Row(SampledFluid.Dialysate, analyte, time) is { } row ? $"{row.Text} {row.UnitText}" : "";
    }
}
