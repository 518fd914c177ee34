namespace Transport.Analysis;

/// <summary>One statement of a regimen file as it was written, whichever of the two forms it came from.</summary>
/// <param name="Regimen">The name of the regimen that it belongs to; empty where the file has one.</param>
/// <param name="Item">What is stated.</param>
/// <param name="Value">The value.</param>
/// <param name="Unit">Its unit; empty: the usual one.</param>
internal sealed record RegimenRow(string Regimen, string Item, string Value, string Unit)
{
    /// <summary>The solution of an exchange, a bag, a day fill; the name of a solution that is described.</summary>
    public string Solution { get; init; } = "";

    /// <summary>Clock time of an exchange by hand.</summary>
    public string Clock { get; init; } = "";

    /// <summary>Dwell time of an exchange; empty: it shares what remains.</summary>
    public string Dwell { get; init; } = "";

    /// <summary>What is drained of an exchange; empty: all but the residual.</summary>
    public string Drain { get; init; } = "";

    /// <summary>What is drained besides, expected from the blood.</summary>
    public string Expected { get; init; } = "";

    /// <summary>Row in a CSV file.</summary>
    public int? Row { get; init; }

    /// <summary>Which one it is of a list of several in a JSON file, where no row tells two apart that are alike.</summary>
    public int? Number { get; init; }
}
