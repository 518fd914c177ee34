using static System.FormattableString;
using Codes = Transport.Analysis.SampleSheetCodes;
using Limits = Transport.Analysis.SampleSheetLimits;
using Words = Transport.Analysis.SheetWords;

namespace Transport.Analysis;

/// <summary>Whether the times of samples, blood and dwell fit together.</summary>
internal sealed class TimeChecks(CheckInputs inputs)
{
    private SheetDraft Draft => inputs.Draft;

    public static IEnumerable<Finding> Of(CheckInputs inputs)
    {
        var checks = new TimeChecks(inputs);
        return [.. checks.Times()];
    }

    private IEnumerable<Finding> Times()
    {
        foreach (var series in new[] { SampledFluid.Dialysate, SampledFluid.Plasma }
            .SelectMany(Draft.Of).Where(measured => measured.Time is not null).GroupBy(measured => (measured.Fluid, measured.Analyte)))
        {
            if (series.Zip(series.Skip(1)).FirstOrDefault(pair => pair.Second.Time < pair.First.Time).Second is { } early)
            {
                yield return Codes.TimesOutOfOrder.Finding(
                    "This sample is earlier than the one above it. Samples are sorted by time; check that no two were swapped.",
                    early.Row, CheckInputs.Field(early.Fluid, early.Analyte), CheckInputs.Minutes(early.Time!.Value));
            }
        }

        foreach (var (first, second) in Draft.Dialysate.Zip(Draft.Dialysate.Skip(1))
            .Where(pair => (pair.Second.Time - pair.First.Time).TotalMinutes < Limits.DistinctSampleMinutes))
        {
            yield return Codes.TimesNearlyEqual.Finding(
                "Two dialysate samples are only minutes apart. If they are one sample, give all its values the same time.",
                inputs.RowAt(second.Time), "time", $"{CheckInputs.Minutes(first.Time)} and {CheckInputs.Minutes(second.Time)}");
        }

        if (Draft.DwellMinutes is not { } dwell)
        {
            yield break;
        }

        foreach (var sample in Draft.Dialysate.Where(sample => sample.Time.TotalMinutes > dwell + Limits.LateSampleMinutes))
        {
            yield return Codes.TimeBeyondDwell.Finding(
                Invariant($"This sample would be {sample.Time.TotalMinutes - dwell:0.#} min after the end of the dwell. Correct its time or the dwell; 'h:mm' is a clock time exactly where 'end of inflow' is given."),
                inputs.RowAt(sample.Time), "time", CheckInputs.Minutes(sample.Time), Invariant($"0 to {dwell:0.#} min"));
        }

        foreach (var sample in Draft.Plasma.Where(sample =>
            sample.Time?.TotalMinutes is { } time && (time < -Limits.BloodMinutes || time > dwell + Limits.BloodMinutes)))
        {
            yield return Codes.PlasmaTimeFar.Finding(
                "Blood was drawn more than an hour outside the dwell; plasma may differ from that of the dwell. Check the time.",
                Draft.Of(SampledFluid.Plasma).First(measured => measured.Time == sample.Time).Row, "time", CheckInputs.Minutes(sample.Time!.Value), "about the middle of the dwell");
        }

        if (Draft.Number(Words.Dwell) is { } stated && Draft.ClockedDwellMinutes is { } clocked
            && Math.Abs(stated - clocked) > Limits.ClockDisagreementMinutes)
        {
            yield return Codes.DwellDisagrees.Finding(
                Invariant($"The written dwell is {stated:0.#} min, by the clock it is {clocked:0.#} min. The written one is used; correct the wrong one."),
                Draft.RowOf(Words.Dwell), Words.Dwell.Name);
        }
    }
}
