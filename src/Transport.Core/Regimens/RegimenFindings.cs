using System.Globalization;

namespace Transport;

/// <summary>What the outcome of a regimen gives reason to say.</summary>
internal static class RegimenFindings
{
    // Glucose above this is the strongest bag, mmol/L: between 2.27 and 3.86 %.
    private const double Strongest = 180;

    public static List<Finding> Of(RegimenOutcome outcome)
    {
        List<Finding> findings = [.. outcome.Regimen.Findings];
        if (outcome.FirstAboveLimit is { } first)
        {
            Warn(
                findings,
                "overfill",
                $"From minute {first.TotalMinutes:0} on the cavity holds more than {outcome.Regimen.VolumeLimit.Milliliters:0} mL, at its fullest {outcome.Peak.Volume.Milliliters:0} mL at minute {outcome.Peak.Time.TotalMinutes:0} ({PhaseName(outcome.Peak.Phase)}).");
        }

        if (outcome.Options.LargestFluidRemoval is { } ceiling && outcome.FluidRemoval > ceiling)
        {
            Warn(
                findings,
                "above-fluid-ceiling",
                $"Ultrafiltration and urine remove {outcome.FluidRemoval.Milliliters:0} mL in 24 h, more than {ceiling.Milliliters:0} mL: the patient may dry out and lose urine.");
        }

        if (outcome.Ultrafiltration.Milliliters < 0)
        {
            Warn(findings, "fluid-taken-up", $"In 24 h the body takes up {-outcome.Ultrafiltration.Milliliters:0} mL of the fluid instead of losing any.");
        }
        else if (outcome.DayUltrafiltration.Milliliters < 0)
        {
            Warn(
                findings,
                "day-takes-up-fluid",
                $"The day takes up {-outcome.DayUltrafiltration.Milliliters:0} mL; the night removes {outcome.NightUltrafiltration.Milliliters:0} mL.");
        }

        if (outcome.Regimen.Exchanges.Any(exchange => IsStrongest(exchange.Solution)))
        {
            Warn(findings, "strongest-bag-daily", $"The strongest glucose every day: over years its use ages the membrane, and on any day it can dry the patient out.");
        }

        if (outcome.SmallestVolume.Milliliters < 0.5 * outcome.Regimen.ResidualFor(outcome.Patient))
        {
            findings.Add(new(
                Severity.Note,
                "cavity-runs-empty",
                "The residual fluid is taken up during the day; the first drain of the night leaves it behind again and is smaller by that much."));
        }

        if (outcome.Options.Body?.Pools.Where(pool => pool.IsForResearch).Select(pool => pool.Solute.Name).ToList() is [_, ..] names)
        {
            Warn(
                findings,
                "research-pool",
                $"Plasma of {string.Join(" and ", names)} moved in a pool: for research only, no prediction of a level, which laboratory values alone can tell.");
        }

        return [.. findings.OrderByDescending(finding => finding.Severity)];
    }

    internal static bool IsStrongest(DialysisSolution solution) => solution.Glucose.MillimolesPerLiter > Strongest;

    private static string PhaseName(RegimenPhase phase) => phase switch
    {
        RegimenPhase.Fill => "fill",
        RegimenPhase.Dwell => "dwell of the night",
        RegimenPhase.Drain or RegimenPhase.DayDrain or RegimenPhase.EveningDrain => "drain",
        RegimenPhase.DayFill => "day fill",
        _ => "day",
    };

    private static void Warn(List<Finding> findings, string code, FormattableString message) =>
        findings.Add(new(Severity.Warning, code, message.ToString(CultureInfo.InvariantCulture)));
}
