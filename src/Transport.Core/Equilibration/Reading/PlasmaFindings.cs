using static System.FormattableString;

namespace Transport;

/// <summary>Glucose and sodium in blood that are dangerous whatever the membrane does: what every page of a test or a collection says first.</summary>
internal static class PlasmaFindings
{
    private const string Now = "act on it now, by local protocol, unless somebody has";

    /// <param name="plasma">The blood samples; the worst of them counts.</param>
    /// <param name="isBesideIcodextrin">Whether icodextrin is in use, or was just before, so that some meters cannot be trusted.</param>
    /// <param name="limits">The limits.</param>
    public static IEnumerable<Finding> Of(IReadOnlyList<PlasmaSample> plasma, bool isBesideIcodextrin, MembraneThresholds limits)
    {
        if (Least(plasma, sample => sample.Glucose) < limits.LowPlasmaGlucose.Value)
        {
            yield return new(Severity.Warning, "plasma-glucose-low",
                $"Plasma glucose is low: {Now}. Blood that stood before its plasma was separated reads low as well: measure again, but do not wait for it."
                + (isBesideIcodextrin ? " Beside icodextrin some meters read falsely high and hide a low glucose: let the laboratory measure." : ""))
            {
                Field = "plasma glucose",
                Found = Glucose(Least(plasma, sample => sample.Glucose)),
                Expected = $"at least {limits.LowPlasmaGlucose}",
            };
        }

        if (Most(plasma, sample => sample.Glucose) > limits.VeryHighPlasmaGlucose.Value)
        {
            yield return new(Severity.Warning, "plasma-glucose-very-high",
                $"Plasma glucose is very high: {Now}. Blood drawn beside an infusion, or a tube of dialysate, reads high as well."
                + (isBesideIcodextrin ? " Beside icodextrin some meters read falsely high, and insulin on a false value is dangerous: let the laboratory measure first." : ""))
            {
                Field = "plasma glucose",
                Found = Glucose(Most(plasma, sample => sample.Glucose)),
                Expected = $"at most {limits.VeryHighPlasmaGlucose}",
            };
        }

        if (Least(plasma, sample => sample.Sodium) < limits.LowPlasmaSodium.Value)
        {
            yield return new(Severity.Warning, "plasma-sodium-low",
                $"Plasma sodium is very low: {Now}. A high glucose lowers it{(isBesideIcodextrin ? ", icodextrin by a few mmol/L," : "")} and much fat or protein does so in appearance: a direct electrode tells.")
            {
                Field = "plasma sodium",
                Found = Sodium(Least(plasma, sample => sample.Sodium)),
                Expected = $"at least {limits.LowPlasmaSodium}",
            };
        }

        if (Most(plasma, sample => sample.Sodium) > limits.HighPlasmaSodium.Value)
        {
            yield return new(Severity.Warning, "plasma-sodium-high",
                $"Plasma sodium is very high: {Now}. Short strong dwells take water and leave sodium; blood drawn beside an infusion reads high as well.")
            {
                Field = "plasma sodium",
                Found = Sodium(Most(plasma, sample => sample.Sodium)),
                Expected = $"at most {limits.HighPlasmaSodium}",
            };
        }
    }

    // Not measured is null, which is neither below nor above anything. Judged as it is printed: 72 mg/dL, which are 3.997 mmol/L, are not low.
    private static double? Least(IEnumerable<PlasmaSample> plasma, Func<PlasmaSample, Concentration?> read) => plasma.Min(sample => Printed(read(sample)));

    private static double? Most(IEnumerable<PlasmaSample> plasma, Func<PlasmaSample, Concentration?> read) => plasma.Max(sample => Printed(read(sample)));

    private static double? Printed(Concentration? value) => value is { } measured ? Math.Round(measured.MillimolesPerLiter, 1) : null;

    // In both units: whoever is used to the other one must not take 2.4 for a typing error.
    private static string Glucose(double? millimolar) => Invariant($"{millimolar:0.0} mmol/L ({millimolar * Solutes.Glucose.MolarMassGramsPerMole / 10:0} mg/dL)");

    private static string Sodium(double? millimolar) => Invariant($"{millimolar:0.#} mmol/L");
}
