using Codes = Transport.Analysis.SampleSheetCodes;
using Words = Transport.Analysis.SheetWords;

namespace Transport.Analysis;

/// <summary>Whose sheet it is, and of when.</summary>
internal static class PersonChecks
{
    public static IEnumerable<Finding> Of(CheckInputs inputs)
    {
        foreach (var item in new[] { Words.Sex, Words.Age, Words.Height, Words.Weight }.Where(inputs.Lacks))
        {
            yield return Codes.MissingPatientFact.Finding(
                $"The patient's {item.Name} is missing; body water and body surface need it. Add it.", field: item.Name);
        }

        if (inputs.Lacks(Words.Code))
        {
            yield return Codes.MissingCode.Finding("The sheet has no patient code, so its pages cannot be filed. Add a code, never a name.", field: Words.Code.Name);
        }

        if (inputs.Lacks(Words.Date))
        {
            yield return Codes.MissingDate.Finding("The sheet has no date of test. Add it.", field: Words.Date.Name);
        }
    }
}
