using static System.FormattableString;

namespace Transport;

/// <summary>The sodium dip in the first hour: raw, as a ratio, without what diffusion hid of it, and the largest over the dwell.</summary>
internal sealed class SodiumArithmetic(IndexInputs inputs)
{
    private const string Source = "Morelle et al., Perit Dial Int 2021;41:352-372 (memory)";

    private EquilibrationTest Test => inputs.Test;

    public EquilibrationIndices Of(EquilibrationIndices indices)
    {
        var (start, hour) = (inputs.Initial(sample => sample.Sodium), inputs.AtOneHour(sample => sample.Sodium));
        if (start?.Sodium is not { } D0 || hour?.Sodium is not { } D60)
        {
            var reason = start is null ? "dialysate sodium at 0 min not measured" : "dialysate sodium at 60 min not measured";
            foreach (var name in new[] { "sodium dip", "sodium ratio dip", "sodium dip, corrected for diffusion" })
            {
                inputs.Missing(name, reason);
            }

            return indices;
        }

        var dip = (D0 - D60).MillimolesPerLiter;
        var spread = double.Hypot(inputs.SodiumDeviation(D0), inputs.SodiumDeviation(D60));
        indices = indices with
        {
            SodiumDip = new("sodium dip", dip, "mmol/L",
                Invariant($"D(0) − D({hour.Time.TotalMinutes:0} min) = {D0.MillimolesPerLiter:0.0} − {D60.MillimolesPerLiter:0.0} mmol/L, both measured"),
                Source, spread),
            LargestSodiumDip = Largest(start, D0),
        };
        if (Test.PlasmaSodium is not { MillimolesPerLiter: > 0 } plasma)
        {
            inputs.Missing("sodium ratio dip", "plasma sodium not measured");
            inputs.Missing("sodium dip, corrected for diffusion", "plasma sodium not measured");
            return indices;
        }

        return indices with
        {
            SodiumRatioDip = new("sodium ratio dip", dip / plasma.MillimolesPerLiter, "",
                Invariant($"{dip:0.0} / {plasma.MillimolesPerLiter:0.0} mmol/L plasma sodium"), Source,
                ErrorPropagation.Of(x => x[0] / x[1], (dip, spread), (plasma.MillimolesPerLiter, inputs.SodiumDeviation(plasma))).Deviation),
            CorrectedSodiumDip = Corrected(indices, dip, spread, start, hour, plasma),
        };
    }

    // Papers that sample over the whole dwell call the largest fall the dip; this test calls that at 60 min so. They are kept apart.
    private IndexValue? Largest(DialysateSample start, Concentration initial)
    {
        var later = Test.Dialysate.Where(sample => sample.Sodium is not null && sample.Time > start.Time).ToList();
        var lowest = later.MinBy(sample => sample.Sodium!.Value);
        return later.Count < 2 || lowest?.Sodium is not { } least
            ? null
            : new("largest sodium dip", (initial - least).MillimolesPerLiter, "mmol/L",
                Invariant($"D(0) − D({lowest.Time.TotalMinutes:0} min) = {initial.MillimolesPerLiter:0.0} − {least.MillimolesPerLiter:0.0} mmol/L, largest of {later.Count} samples"),
                "definition of permeability analyses (memory)", double.Hypot(inputs.SodiumDeviation(initial), inputs.SodiumDeviation(least)));
    }

    private IndexValue? Corrected(
        EquilibrationIndices indices, double dip, double spread, DialysateSample start, DialysateSample hour, Concentration plasma)
    {
        const string name = "sodium dip, corrected for diffusion";
        var (permeability, origin) = Permeability(indices);
        var residual = inputs.AssumedResidualVolume;
        var atHour = Test.DrainedAt(IndexInputs.OneHour, inputs.EarlyTolerance);
        var volume = (atHour ?? (Test.EnteredVolume + (Test.DrainedVolume ?? Test.EnteredVolume)) * 0.5) + residual;
        if (volume.Milliliters <= 0)
        {
            return inputs.Missing(name, "no volume instilled");
        }

        var course = Test.Dialysate
            .Where(sample => sample.Sodium is not null && sample.Time >= start.Time && sample.Time <= hour.Time)
            .Select(sample => (sample.Time.TotalMinutes, sample.Sodium!.Value.MillimolesPerLiter))
            .ToList();
        var hidden = SodiumDip.HiddenByDiffusion(course, plasma.MillimolesPerLiter, permeability, volume.Milliliters);
        var how = (atHour is null ? "mean of start and end" : "drained at 60 min") + Invariant($", residual volume {residual.Milliliters:0} mL{(inputs.ResidualVolume is null ? " assumed" : "")}");
        return new(name, dip + hidden, "mmol/L",
            Invariant($"{dip:0.0} mmol/L + K ∫(P − D)dt / V with K = {permeability:0.0} mL/min ({origin}) and V = {volume.Milliliters:0} mL ({how})"),
            "mass balance; permeability from memory (4 to 8 mL/min), uncertain by a third", double.Hypot(spread, hidden / 3));
    }

    /// <summary>Diffusive permeability to sodium, mL/min: as chosen, half that of creatinine, or the middle of what is remembered.</summary>
    public (double Value, string Origin) Permeability(EquilibrationIndices indices) =>
        inputs.Options.SodiumPermeability is { } chosen ? (chosen.MillilitersPerMinute, "as chosen")
        : indices.CreatinineMassTransfer is { } creatinine ? (creatinine.Value / 2, "half that of creatinine")
        : (6.0, "middle of 4 to 8");
}
