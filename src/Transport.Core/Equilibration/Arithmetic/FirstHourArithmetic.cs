using static System.FormattableString;

namespace Transport;

/// <summary>Free water and small-pore fluid of the first hour, from the volume drained at 60 min and sodium.</summary>
internal sealed class FirstHourArithmetic(IndexInputs inputs, SodiumArithmetic sodium)
{
    private const string Name = "free water at 60 min";
    private const string Source = "sodium balance of the first hour, small-pore fluid with plasma sodium (La Milia et al., Kidney Int 2005;68:840-846; memory)";

    private EquilibrationTest Test => inputs.Test;

    public FirstHourIndices? Of(EquilibrationIndices indices)
    {
        var drained = Test.DrainedAt(IndexInputs.OneHour, inputs.EarlyTolerance);
        var (start, hour) = (inputs.Initial(sample => sample.Sodium), inputs.AtOneHour(sample => sample.Sodium));
        var reason = drained is null ? "volume at 60 min not measured: it needs a temporary drain"
            : hour is null ? "dialysate sodium at 60 min not measured"
            : Test.PlasmaSodium is not { MillimolesPerLiter: > 0 } ? "plasma sodium not measured"
            : null;
        if (reason is not null)
        {
            inputs.Missing(Name, reason);
            return null;
        }

        var (D60, P) = (hour!.Sodium!.Value, Test.PlasmaSodium!.Value);
        var isLabel = start is null;
        var F = start?.Sodium ?? Test.Solution.Sodium;
        var residual = isLabel ? default : inputs.ResidualVolume ?? default;
        var net = (drained!.Value - Test.EnteredVolume).Milliliters;

        // In: entered and drained volume (L), D60, F and P (mmol/L), diffused sodium (mmol).
        var R = residual.Liters;
        double Removed(double[] x) => (x[1] + R) * x[2] - (x[0] + R) * x[3];
        double SmallPore(double[] x) => 1000 * (Removed(x) - x[5]) / x[4];
        double FreeWater(double[] x) => 1000 * (x[1] - x[0]) - SmallPore(x);

        var (permeability, origin) = sodium.Permeability(indices);
        var gain = SodiumDip.HiddenByDiffusion(
            [(start?.Time.TotalMinutes ?? 0, F.MillimolesPerLiter), (hour.Time.TotalMinutes, D60.MillimolesPerLiter)], P.MillimolesPerLiter, permeability, 1000);
        (double, double)[] Inputs(double diffused) =>
        [
            (Test.EnteredVolume.Liters, inputs.EnteredDeviation / 1000), (drained.Value.Liters, inputs.Options.VolumeDeviation.Liters),
            (D60.MillimolesPerLiter, inputs.SodiumDeviation(D60)),
            (F.MillimolesPerLiter, isLabel ? Math.Max(2.0, inputs.SodiumDeviation(F)) : inputs.SodiumDeviation(F)),
            (P.MillimolesPerLiter, inputs.SodiumDeviation(P)), (diffused, Math.Abs(diffused) / 3),
        ];

        var fresh = isLabel ? "bag's sodium as labelled, which may be several mmol/L off" : "D(0) as measured";
        var withResidual = residual.Milliliters > 0 ? Invariant($", both volumes with the residual {residual.Milliliters:0} mL") : ", residual volume left out";
        var balance = Invariant($"{drained.Value.Milliliters:0} mL × {D60.MillimolesPerLiter:0.0} − {Test.EnteredVolume.Milliliters:0} mL × {F.MillimolesPerLiter:0.0} mmol/L ({fresh}){withResidual}");
        var diffusion = Invariant($"less {gain:0.0} mmol diffused with K = {permeability:0.0} mL/min ({origin})");
        IndexValue Value(string name, string unit, Func<double[], double> formula, string text, double diffused = 0)
        {
            var (value, deviation) = ErrorPropagation.Of(formula, Inputs(diffused));
            return new(name, value, unit, text, Source, deviation);
        }

        double[] plain = [.. Inputs(0).Select(input => input.Item1)];
        var slopes = ErrorPropagation.Sensitivities(FreeWater, plain);
        return new()
        {
            NetUltrafiltration = new("net ultrafiltration at 60 min", net, "mL",
                Invariant($"{drained.Value.Milliliters:0} mL drained at 60 min − {Test.EnteredVolume.Milliliters:0} mL entered"), "mass balance",
                double.Hypot(inputs.Options.VolumeDeviation.Milliliters, inputs.EnteredDeviation)),
            SodiumRemoved = Value("sodium removed at 60 min", "mmol", Removed, balance),
            SmallPoreFluid = Value("small-pore fluid at 60 min", "mL", SmallPore, Invariant($"sodium removed ({balance}) / {P.MillimolesPerLiter:0.0} mmol/L plasma sodium")),
            FreeWater = Value(Name, "mL", FreeWater, Invariant($"{net:0} mL − small-pore fluid ({balance}, over {P.MillimolesPerLiter:0.0} mmol/L plasma sodium); no diffusion, no absorption")),
            FreeWaterFraction = net > 0
                ? Value("free water at 60 min, fraction", "", x => FreeWater(x) / (1000 * (x[1] - x[0])), "free water over net ultrafiltration at 60 min")
                : inputs.Missing("free water at 60 min, fraction", "no net ultrafiltration at 60 min"),
            CorrectedSmallPoreFluid = Value("small-pore fluid at 60 min, corrected for diffusion", "mL", SmallPore, $"{balance}, {diffusion}", gain),
            CorrectedFreeWater = Value("free water at 60 min, corrected for diffusion", "mL", FreeWater, $"as above, {diffusion}", gain),
            Sensitivities =
            [
                new(Name, "1 mmol/L more in dialysate sodium at 60 min", slopes[2], "mL"),
                new(Name, "1 mmol/L more in " + (isLabel ? "the bag's sodium" : "dialysate sodium at 0 min"), slopes[3], "mL"),
                new(Name, "1 mmol/L more in plasma sodium", slopes[4], "mL"),
                new(Name, "50 mL more drained at 60 min", slopes[1] / 20, "mL"),
            ],
            IsFreshSodiumLabelled = isLabel,
        };
    }
}
