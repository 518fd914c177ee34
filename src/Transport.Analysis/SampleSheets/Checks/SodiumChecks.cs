using static System.FormattableString;
using Codes = Transport.Analysis.SampleSheetCodes;
using Limits = Transport.Analysis.SampleSheetLimits;
using Words = Transport.Analysis.SheetWords;

namespace Transport.Analysis;

/// <summary>Sodium of the first hour.</summary>
internal sealed class SodiumChecks(CheckInputs inputs)
{
    private SheetDraft Draft => inputs.Draft;

    public static IEnumerable<Finding> Of(CheckInputs inputs)
    {
        var checks = new SodiumChecks(inputs);
        return [.. checks.Sodium()];
    }

    private IEnumerable<Finding> Sodium()
    {
        if (Draft.Agent == OsmoticAgent.Glucose && inputs.Initial?.Sodium is { } mixed && Draft.Number(Words.SolutionSodium) is { } labelled
            && Math.Abs(mixed.MillimolesPerLiter - labelled) > Limits.InitialSodiumGap)
        {
            yield return Codes.InitialSodiumUnexpected.Finding(
                "Sodium at 0 min is further from the bag's than mixing and a label explain: a swapped sample, another fluid, or a mistyped value.",
                Draft.Row(SampledFluid.Dialysate, Analyte.Sodium, inputs.Initial.Time)?.Row, "dialysate sodium",
                Invariant($"{mixed.MillimolesPerLiter:0.#} mmol/L"), Invariant($"within {Limits.InitialSodiumGap:0} mmol/L of the bag's {labelled:0.#}"));
        }

        var hour = Draft.Dialysate.FirstOrDefault(sample =>
            sample.Sodium is not null && Math.Abs(sample.Time.TotalMinutes - 60) <= Limits.DipSampleMinutes);
        if (inputs.Bag >= Limits.SievingStrength && inputs.Initial?.Sodium is { } before && hour?.Sodium is { } after && after >= before)
        {
            yield return Codes.SodiumNotFalling.Finding(
                "With this solution sodium falls in the first hour, because water passes without it. Check for swapped samples, the assay and the fluid; if all is right, repeat it.",
                Draft.Row(SampledFluid.Dialysate, Analyte.Sodium, hour.Time)?.Row, "dialysate sodium",
                Invariant($"{after.MillimolesPerLiter:0.#} mmol/L"), Invariant($"below {before.MillimolesPerLiter:0.#} mmol/L, that of 0 min"));
        }
    }
}
