using static System.FormattableString;
using static Transport.IndexInputs;

namespace Transport;

/// <summary>Mass transfer area coefficients of a test's two ends.</summary>
internal sealed class MassTransferArithmetic(IndexInputs inputs)
{
    private const string Creatinine = "mass transfer area coefficient of creatinine";
    private const string Urea = "mass transfer area coefficient of urea";
    private const string Glucose = "mass transfer area coefficient of glucose";

    /// <summary>Convection weights of the forms in use, each with the name that it goes by (memory).</summary>
    private static readonly (double Weight, string Name)[] Forms = [(0, "Garred"), (0.33, "Waniewski, 0.33"), (0.5, "Waniewski, 0.5"), (1, "Henderson and Nolph")];

    private EquilibrationTest Test => inputs.Test;

    public EquilibrationIndices Of(EquilibrationIndices indices)
    {
        var creatinine = Coefficient(Creatinine, "creatinine", Test.CorrectedPlasmaCreatinine, Test.CorrectedDialysateCreatinine, inputs.Options.MassTransfer);
        return indices with
        {
            CreatinineMassTransfer = creatinine,
            CreatinineMassTransferForms = creatinine is null
                ? []
                : [.. Forms.Select(form => Coefficient(
                    $"{Creatinine} ({form.Name})", "creatinine", Test.CorrectedPlasmaCreatinine, Test.CorrectedDialysateCreatinine,
                    inputs.Options.MassTransfer with { ConvectionWeight = form.Weight })!)],
            UreaMassTransfer = Coefficient(Urea, "urea", Test.PlasmaUrea, sample => sample.Urea, inputs.Options.MassTransfer),
            GlucoseMassTransfer = Test.Solution.Agent != OsmoticAgent.Glucose
                ? inputs.Missing(Glucose, "not a glucose solution")
                : indices.IsInitialGlucoseEstimated
                ? inputs.Missing(Glucose, "dialysate glucose at 0 min not measured")
                : Coefficient(Glucose, "glucose", Test.PlasmaGlucose, sample => sample.Glucose, inputs.Options.MassTransfer),
        };
    }

    private IndexValue? Coefficient(
        string name, string solute, Concentration? plasma, Func<DialysateSample, Concentration?> read, MassTransferOptions choices)
    {
        var start = inputs.Initial(read);
        var end = inputs.AtEndOfDwell(read);
        var reason = Test.DrainedVolume is not { Milliliters: > 0 } ? "drained volume not measured"
            : inputs.ResidualVolume is null ? "residual volume not known"
            : plasma is null ? $"plasma {solute} not measured"
            : start is null ? $"dialysate {solute} at 0 min not measured"
            : end is null || end.Time <= start.Time ? $"dialysate {solute} at the end of the dwell not measured"
            : null;
        if (reason is not null)
        {
            return inputs.Missing(name, reason);
        }

        var (before, after) = (inputs.ResidualVolume!.Value, Test.ResidualVolumeAfter ?? inputs.ResidualVolume.Value);
        var (V0, Vt) = (Test.EnteredVolume + before, Test.DrainedVolume!.Value + after);
        if (V0.Milliliters <= 0)
        {
            return inputs.Missing(name, "no volume instilled");
        }

        var (D0, Dt) = (read(start!)!.Value, read(end!)!.Value);
        if (MassTransferCoefficient.Of(plasma!.Value, D0, Dt, V0, Vt, end!.Time - start!.Time, choices) is not { } value)
        {
            return inputs.Missing(name, $"dialysate and plasma {solute} have met, so no coefficient can be told");
        }

        // The logarithm's own derivatives: finite differences would step over equilibrium, where it ends.
        var (p, d0, dt) = (plasma.Value.MillimolesPerLiter / choices.PlasmaWaterFraction, D0.MillimolesPerLiter, Dt.MillimolesPerLiter);
        var logError = inputs.Options.AssayVariation * Math.Sqrt(
            Square(dt / (p - dt)) + Square(d0 / (p - d0)) + Square(p / (p - dt) - p / (p - d0)));
        var mean = choices.MeanVolume == MeanVolume.Logarithmic ? "logarithmic" : "arithmetic";
        var water = choices.PlasmaWaterFraction < 1 ? Invariant($"plasma water {choices.PlasmaWaterFraction:0.000}") : "plasma as measured";
        var same = Test.ResidualVolumeAfter is null ? "; the residual volume is taken to be the same before and after" : "";
        return new(name, value.MillilitersPerMinute, "mL/min",
            Invariant($"(Vm/t) ln[(P − D0) V0^(1−F) / ((P − Dt) Vt^(1−F))], F = {choices.ConvectionWeight:0.##}, {mean} mean of {V0.Milliliters:0} and {Vt.Milliliters:0} mL, {water}, {(end.Time - start.Time).TotalMinutes:0} min{same}"),
            "integrated mass balance without absorption (computed); names and weights of the forms from memory",
            (V0 + Vt).Milliliters / 2 / (end.Time - start.Time).TotalMinutes * logError);
    }
}
