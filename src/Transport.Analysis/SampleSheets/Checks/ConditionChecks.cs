using static System.FormattableString;
using Codes = Transport.Analysis.SampleSheetCodes;
using Words = Transport.Analysis.SheetWords;

namespace Transport.Analysis;

/// <summary>What went before the test, how it was carried out, and whether the named form is the one that was measured. All of it is still computed.</summary>
internal static class ConditionChecks
{
    private static readonly MembraneThresholds Thresholds = MembraneThresholds.Default;

    public static IEnumerable<Finding> Of(CheckInputs inputs) => [.. Form(inputs), .. Dates(inputs), .. Before(inputs)];

    private static IEnumerable<Finding> Form(CheckInputs inputs)
    {
        if (inputs is not { Draft.NamedForm: { } named, Recognized: { } recognized } || named == recognized
            || (named == TestForm.PairedOneHour && recognized is TestForm.OneHour or TestForm.TemporaryDrain)
            || (named == TestForm.FourHour && recognized == TestForm.FourHourWithSodium))
        {
            yield break;
        }

        yield return Codes.FormDiffers.Finding(
            $"The sheet is named a {named.Name()}, but holds what a {recognized.Name()} has. What the named form needs and is not there cannot be given.",
            inputs.Draft.RowOf(Words.Form), Words.Form.Name, recognized.Name(), named.Name());
    }

    private static IEnumerable<Finding> Dates(CheckInputs inputs)
    {
        var draft = inputs.Draft;
        if (draft.Date(Words.Date) is not { } test)
        {
            yield break;
        }

        foreach (var (item, kind, limit, what) in new[]
        {
            (Words.DialysisStart, Codes.EarlyTest, Thresholds.EarlyAfterStart, "the start of dialysis"),
            (Words.LastPeritonitis, Codes.RecentPeritonitis, Thresholds.RecentPeritonitis, "a peritonitis"),
        })
        {
            if (draft.Date(item) is not { } day)
            {
                continue;
            }

            var days = test.DayNumber - day.DayNumber;
            if (days < 0)
            {
                yield return Codes.DateAfterTest.Finding("This date is after that of the test; correct one of the two.", draft.RowOf(item), item.Name, Invariant($"{-days} days after the test"));
            }
            else if (days < limit.Value)
            {
                yield return kind.Finding(
                    $"Transfer changes in the first weeks after {what}: results are preliminary and the class not comparable.",
                    draft.RowOf(item), item.Name, Invariant($"{days} days before the test"), Invariant($"at least {limit}"));
            }
        }
    }

    private static IEnumerable<Finding> Before(CheckInputs inputs)
    {
        var draft = inputs.Draft;
        if (draft.Number(Words.PrecedingDwell) is { } dwell && dwell < Thresholds.ShortPrecedingDwell.Value)
        {
            yield return Codes.PrecedingDwellShort.Finding(
                "After so short a dwell the tissue still holds glucose and urea of the one before: results are preliminary.",
                draft.RowOf(Words.PrecedingDwell), Words.PrecedingDwell.Name, Invariant($"{dwell:0.#} min"), $"at least {Thresholds.ShortPrecedingDwell}");
        }

        if (draft.Choice<OsmoticAgent>(Words.PrecedingAgent) == OsmoticAgent.Icodextrin)
        {
            yield return Codes.PrecedingIcodextrin.Finding(
                "Icodextrin left in the cavity and its sugars in blood disturb ultrafiltration and some glucose assays and meters: results are preliminary.",
                draft.RowOf(Words.PrecedingAgent), Words.PrecedingAgent.Name, "icodextrin", "glucose the night before");
        }

        if (draft.Number(Words.Instillation) is { } minutes && minutes > Thresholds.SlowInstillation.Value)
        {
            yield return Codes.InstillationSlow.Finding(
                "Transfer had begun long before time zero: early D/P are too high and D0 too low.",
                draft.RowOf(Words.Instillation), Words.Instillation.Name, Invariant($"{minutes:0.#} min"), $"at most {Thresholds.SlowInstillation}");
        }
    }
}
