using static System.FormattableString;
using Codes = Transport.Analysis.SampleSheetCodes;
using Words = Transport.Analysis.SheetWords;

namespace Transport.Analysis;

/// <summary>What a collection of a day lacks. A missing value leaves out what rests on it, never the whole.</summary>
internal static class CollectionChecks
{
    public static IEnumerable<Finding> Of(CheckInputs inputs) => [.. Missing(inputs), .. Drains(inputs)];

    private static IEnumerable<Finding> Missing(CheckInputs inputs)
    {
        var draft = inputs.Draft;
        if (inputs.Lacks(Words.CollectionTime))
        {
            yield return Codes.CollectionTimeAssumed.Finding("It is not said how long was collected; 24 h are assumed.", field: Words.CollectionTime.Name);
        }

        if (draft.Bags.Count == 0)
        {
            yield return Codes.MissingMeasurements.Finding("The collection has no drain, so there is nothing to compute. Add each bag as 'drain 1', 'drain 2', or all as 'pool'.");
        }

        foreach (var analyte in new[] { Analyte.Urea, Analyte.Creatinine })
        {
            if (!draft.IsWritten(SampledFluid.Plasma, analyte) && !(analyte == Analyte.Urea && draft.IsWritten(SampledFluid.Plasma, Analyte.UreaNitrogen)))
            {
                yield return Codes.CollectionPlasmaMissing.Finding(
                    $"Plasma {Words.Name(analyte)} is missing, and so are the clearances that rest on it. Add it.", field: $"plasma {Words.Name(analyte)}");
            }
        }

        if (draft.Assay.Method == CreatinineMethod.NotStated)
        {
            yield return Codes.AssayNotStated.Finding(
                "The creatinine method is not stated. If it is an alkaline-picrate (Jaffe) method, creatinine in the drains is too high. Ask the laboratory and add it.",
                draft.RowOf(Words.Method), Words.Method.Name, expected: "enzymatic or Jaffe");
        }
    }

    private static IEnumerable<Finding> Drains(CheckInputs inputs)
    {
        var draft = inputs.Draft;
        foreach (var bag in draft.Bags)
        {
            var drained = draft.OfBag(bag, Words.Drained);
            if (drained is null)
            {
                yield return Codes.MissingBagVolume.Finding($"The drained volume of {bag} is missing; without it no sum over the day is right. Add it.", field: Words.Drained.Name);
            }

            if (draft.OfBag(bag, Words.Fill) is not { } fill || draft.OfBag(bag, Words.SolutionGlucose) is null)
            {
                yield return Codes.BagFillMissing.Finding(
                    $"Fill or glucose of {bag} is not given, so that ultrafiltration, sodium and glucose balance of the day cannot be. Add them.", field: bag);
            }
            else if (drained is { } volume && !bag.StartsWith("pool", StringComparison.Ordinal) && bag.Any(char.IsAsciiDigit)
                && !SampleSheetLimits.NetUltrafiltration.Contains(volume - fill))
            {
                yield return Codes.UltrafiltrationImplausible.Finding(
                    "This net ultrafiltration is hardly possible. Check both volumes, the tare of the bags, and whether the drain was complete.",
                    field: bag, found: Invariant($"{volume - fill:0} mL of ultrafiltration"), expected: CheckInputs.Text(SampleSheetLimits.NetUltrafiltration));
            }
        }
    }
}
