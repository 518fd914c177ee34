namespace Transport.Analysis;

/// <summary>An empty record book.</summary>
internal static class BlankBook
{
    public static void Write(TextWriter writer)
    {
        ArgumentNullException.ThrowIfNull(writer);
        writer.WriteLine("# One row a night. What stays the same (fluids, volumes, cycles, what UF counts, how weight is taken, the target weight and the day it was set) is written once; blank means as above.");
        writer.WriteLine("# UF counts: night, night and day, or night and initial drain. Weighed: empty or full. Dwell deviation: lost minutes are positive. Strengths: mmol/L, % anhydrous or % monohydrate.");
        writer.WriteLine("# Exchanges by hand: a row each, with the same date and its exchange number.");
        writer.WriteLine(string.Join(',', BookWords.Columns.Select(Header)));
    }

    private static string Header(BookColumn column) =>
        column == BookWords.BloodGlucose || column == BookWords.NightFluid || column == BookWords.DayFluid ? $"{column.Name} (mmol/L)"
        : column.Quantity is { } quantity && quantity.Units[0].Name is { Length: > 0 } unit ? $"{column.Name} ({unit})"
        : column.Name;
}
