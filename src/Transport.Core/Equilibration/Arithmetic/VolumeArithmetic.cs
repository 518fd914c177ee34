using static System.FormattableString;

namespace Transport;

/// <summary>Net ultrafiltration with its handling of overfill, and absorbed glucose.</summary>
internal sealed class VolumeArithmetic(IndexInputs inputs)
{
    private const string Source = "mass balance";

    private EquilibrationTest Test => inputs.Test;

    public string FillStatement => (Test.FillBasis, Test.Overfill) switch
    {
        (FillBasis.Measured, _) => "The fill was measured, so overfill is inside it.",
        (_, { } overfill) => Invariant($"The fill is the label's plus a stated overfill of {overfill.Milliliters:0} mL."),
        _ => Invariant($"The fill is the label's: net ultrafiltration may contain about {inputs.Limits.UnknownOverfill.Value:0} mL of overfill."),
    };

    public EquilibrationIndices Volumes(EquilibrationIndices indices)
    {
        if (Test.DrainedVolume is not { } drained || Test.NetUltrafiltration is not { } net)
        {
            inputs.Missing("net ultrafiltration", "drained volume not measured");
            return indices;
        }

        var deviation = double.Hypot(inputs.Options.VolumeDeviation.Milliliters, inputs.EnteredDeviation);
        return indices with
        {
            NetUltrafiltrationAsWritten = new("net ultrafiltration, as written", (drained - Test.InstilledVolume).Milliliters, "mL",
                Invariant($"{drained.Milliliters:0} mL drained − {Test.InstilledVolume.Milliliters:0} mL instilled"), Source, deviation),
            NetUltrafiltration = new("net ultrafiltration", net.Milliliters, "mL",
                Invariant($"{drained.Milliliters:0} mL drained − {Test.EnteredVolume.Milliliters:0} mL entered. {indices.FillStatement}"), Source, deviation),
        };
    }

    public EquilibrationIndices GlucoseAbsorption(EquilibrationIndices indices)
    {
        var reason = Test.Solution.Agent != OsmoticAgent.Glucose || Test.Solution.Glucose.MillimolesPerLiter <= 0 ? "not a glucose solution"
            : Test.IsStrengthInDoubt ? "the strength of the bag is in doubt"
            : Test.DrainedVolume is null ? "drained volume not measured"
            : Test.InstilledVolume.Milliliters <= 0 ? "no volume instilled"
            : inputs.AtEndOfDwell(sample => sample.Glucose) is null ? "dialysate glucose at the end of the dwell not measured"
            : null;
        if (reason is not null)
        {
            inputs.Missing("glucose absorbed", reason);
            return indices;
        }

        var (end, drainedVolume) = (inputs.AtEndOfDwell(sample => sample.Glucose)!.Glucose!.Value, Test.DrainedVolume!.Value);
        var instilled = Test.Solution.Glucose * Test.EnteredVolume;
        var absorbed = instilled - end * drainedVolume;
        var spread = ErrorPropagation.Of(
            x => x[0] * x[1] - x[2] * x[3],
            (Test.Solution.Glucose.MillimolesPerLiter, 0), (Test.EnteredVolume.Liters, inputs.EnteredDeviation / 1000),
            (end.MillimolesPerLiter, inputs.AssayDeviation(end)), (drainedVolume.Liters, inputs.Options.VolumeDeviation.Liters)).Deviation!.Value;
        var grams = Solutes.Glucose.MolarMassGramsPerMole / 1000;
        var formula = Invariant(
            $"{Test.EnteredVolume.Milliliters:0} mL × {Test.Solution.Glucose.MillimolesPerLiter:0.0} mmol/L (label) − {drainedVolume.Milliliters:0} mL × {end.MillimolesPerLiter:0.0} mmol/L; residual volume left out");
        return indices with
        {
            GlucoseAbsorbed = new("glucose absorbed", absorbed.Millimoles, "mmol", formula, Source, spread),
            GlucoseAbsorbedFraction = new("glucose absorbed, fraction", absorbed / instilled, "",
                formula + Invariant($", over {instilled.Millimoles:0.0} mmol instilled"), Source, spread / instilled.Millimoles),
            GlucoseAbsorbedMass = new("glucose absorbed, mass", absorbed.Millimoles * grams, "g", formula, Source, spread * grams),
        };
    }
}
