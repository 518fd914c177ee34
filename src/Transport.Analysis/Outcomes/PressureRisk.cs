using static System.FormattableString;

namespace Transport.Analysis;

/// <summary>From which pressure in the belly of an adult, lying, care is asked for: reference-data/regimen-targets.</summary>
public static class PressureRisk
{
    // Standard deviation between the 61 adults of CavityPressure.Population, cmH2O (read).
    internal const double DeviationBetweenPeople = 3.3;

    /// <summary>Sixteen cmH2O: prescriptions are usually kept below (Nephrol Dial Transplant 2007;22:1437, read).</summary>
    public static Pressure Caution { get; } = Pressure.FromCentimetersOfWater(16);

    /// <summary>Eighteen cmH2O, a limit in print: never above (Nefrologia 2017;37:579, read).</summary>
    public static Pressure Limit { get; } = Pressure.FromCentimetersOfWater(18);

    /// <summary>What the pressure at the fullest moment gives reason to say.</summary>
    internal static IEnumerable<Finding> Of(Band<double>? pressure, bool isMeasured, bool isChild)
    {
        // Limits of children, 14 and 18 cmH2O, are memory that was looked for in print and not found.
        if (isChild)
        {
            yield return new(
                Severity.Note,
                "pressure-not-judged",
                (isMeasured ? "The pressure in the belly is not judged" : "No pressure in the belly is given, since it was not measured")
                    + ": what is known of pressure at a volume, and its limits, is of adults. In a child the fill per m² and how the child bears it decide; measuring it tells more.");
            yield break;
        }

        if (pressure is { } unmeasured && !isMeasured && unmeasured.Median < Caution.CentimetersOfWater && unmeasured.High >= Limit.CentimetersOfWater)
        {
            yield return new(
                Severity.Note,
                "pressure-not-measured",
                Invariant($"The pressure was not measured in this patient: at the fullest, lying, it would be {unmeasured.Median:0.0} cmH2O in the middle of people and {unmeasured.High:0.0} in one of twenty, above {Limit.CentimetersOfWater:0}."));
        }

        if (pressure is { } band && band.Median >= Caution.CentimetersOfWater)
        {
            var line = band.Median >= Limit.CentimetersOfWater ? Limit : Caution;
            yield return new(
                Severity.Warning,
                "pressure-high",
                Invariant($"At the fullest the pressure, lying, would be {band.Median:0.0} cmH2O ({band.Low:0.0} to {band.High:0.0}), at or above {line.CentimetersOfWater:0}.{(isMeasured ? "" : " It was not measured in this patient: the figure is a population's.")}"));
        }
    }
}
