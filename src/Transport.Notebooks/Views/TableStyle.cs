namespace Transport.Notebooks;

/// <summary>How a table of values looks in our page and in any notebook front end.</summary>
internal static class TableStyle
{
    public const string Table = "border-collapse:collapse;font-variant-numeric:tabular-nums;margin:0";

    // A translucent gray, and no other color: the table follows light and dark.
    public const string RowStart = "<tr style=\"border-bottom:1px solid #8884;background:none\">";
}
