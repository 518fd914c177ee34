using static System.FormattableString;

namespace Transport.Analysis;

/// <summary>What a regimen's outlook gives reason to say: of fluid by the middle of its bands, so that no sentence contradicts the table beside it.</summary>
internal static class OutlookFindings
{
    // Findings of the membrane at the center carry that membrane's own volumes, which what the model misses has not moved.
    private static readonly string[] OfFluid = ["fluid-taken-up", "day-takes-up-fluid", "above-fluid-ceiling"];

    /// <summary>Differences of ultrafiltration below this are ties, mL (choice, after the noise of measuring it); a middle that is nearer to nothing says neither that fluid is lost nor that it is taken up.</summary>
    internal const double FluidNoise = 100;

    public static IReadOnlyList<Finding> Of(RegimenOutlook outlook, IEnumerable<RegimenOutcome> days)
    {
        var (options, patient) = (outlook.Options, outlook.Outcome.Patient);
        List<Regimen> regimens = [.. outlook.Regimens];
        return
        [
            .. BeyondTheTest.FillOfChild(patient, regimens)
                .Concat(Range(outlook))
                .Concat(Fluid(outlook))
                .Concat(BeyondTheTest.Urine(patient))
                .Concat(PressureRisk.Of(outlook[OutcomeMeasures.LargestPressure].Value, options.IsPressureMeasured, TargetAssessment.IsChild(patient)))
                .Concat(days.SelectMany(day => day.Findings).Where(finding => !OfFluid.Contains(finding.Code)))
                .Concat(BeyondTheTest.FillAboveTested(regimens, options.LargestTestedFill))
                .Concat(BeyondTheTest.LargeFills(patient, regimens))
                .Concat(regimens.Exists(regimen => !regimen.Night.IsEmpty) ? [BeyondTheTest.NightIsSupine(options.Layers)] : [])
                .Distinct()
                .OrderByDescending(finding => finding.Severity),
        ];
    }

    private static IEnumerable<Finding> Range(RegimenOutlook outlook)
    {
        if (outlook.Options.Fluid is not { } range)
        {
            yield return new(
                Severity.Warning,
                "fluid-range-not-given",
                "No range of ultrafiltration was given: whether this dries the patient out, or leaves too much fluid, is not judged here.");
            yield break;
        }

        foreach (var finding in range.Findings)
        {
            yield return finding;
        }

        var (fluid, floor, ceiling) = (Middle(outlook, OutcomeMeasures.Ultrafiltration), range.Floor.Milliliters, range.Ceiling.Milliliters);
        if (fluid > ceiling)
        {
            yield return new(
                Severity.Warning,
                "above-fluid-ceiling",
                Invariant($"Ultrafiltration of {fluid:0} mL in 24 h lies {fluid - ceiling:0} mL above the ceiling of {ceiling:0} mL: the patient may dry out and lose urine."));
        }
        else if (fluid < floor)
        {
            yield return new(
                Severity.Warning,
                "below-fluid-floor",
                Invariant($"Ultrafiltration of {(fluid < 0 ? "−" : "")}{Math.Abs(fluid):0} mL in 24 h lies {floor - fluid:0} mL below the floor of {floor:0} mL: fluid may build up in the body."));
        }
    }

    private static IEnumerable<Finding> Fluid(RegimenOutlook outlook)
    {
        if (outlook.Options.Simulation.LargestFluidRemoval is { } most && outlook[OutcomeMeasures.FluidRemoval].Value is { } removal && removal.Median > most.Milliliters)
        {
            yield return new(
                Severity.Warning,
                "above-fluid-ceiling",
                Invariant($"Ultrafiltration and urine remove {removal.Median:0} mL in 24 h, more than {most.Milliliters:0} mL: the patient may dry out and lose urine."));
        }

        if (Middle(outlook, OutcomeMeasures.Ultrafiltration) is < -FluidNoise and var all)
        {
            yield return new(Severity.Warning, "fluid-taken-up", Invariant($"In 24 h the body takes up {-all:0} mL of the fluid instead of losing any."));
        }
        else if (Middle(outlook, OutcomeMeasures.DayUltrafiltration) is < -FluidNoise and var day)
        {
            yield return new(
                Severity.Warning,
                "day-takes-up-fluid",
                Invariant($"The day takes up {-day:0} mL; the night removes {Middle(outlook, OutcomeMeasures.NightUltrafiltration):0} mL."));
        }
    }

    private static double Middle(RegimenOutlook outlook, OutcomeMeasure measure) => outlook[measure].Value!.Value.Median;
}
