namespace Transport.Analysis;

/// <summary>What is missing, and what does not fit together. Each check looks at what is there and says nothing about what is not.</summary>
internal static class SheetChecks
{
    public static IEnumerable<Finding> Of(SheetDraft draft, IReadOnlyList<SheetFact> facts)
    {
        var inputs = new CheckInputs(draft, facts);
        return draft.IsCollection
            ? [.. PersonChecks.Of(inputs), .. CollectionChecks.Of(inputs)]
            :
            [
                .. PersonChecks.Of(inputs), .. MissingChecks.Of(inputs), .. ConditionChecks.Of(inputs), .. TimeChecks.Of(inputs),
                .. SolutionChecks.Of(inputs), .. CreatinineChecks.Of(inputs), .. UreaChecks.Of(inputs), .. GlucoseChecks.Of(inputs),
                .. SodiumChecks.Of(inputs),
            ];
    }
}
