namespace Transport.Analysis;

/// <summary>A column of a record book: its main name, and the synonyms it goes by.</summary>
internal sealed record BookColumn(string Name, params string[] Synonyms)
{
    /// <summary>Units of its numbers; null where it holds words.</summary>
    public SheetQuantity? Quantity { get; init; }

    /// <summary>What a number can be.</summary>
    public PlausibleRange? Range { get; init; }

    /// <summary>The words that it takes, each with the value of its enumeration.</summary>
    public IReadOnlyDictionary<string, int>? Words { get; init; }

    /// <summary>Whether a number without a unit has no meaning: the header or the cell has to name it.</summary>
    public bool NeedsUnit { get; init; }

    public static BookColumn Number(string name, SheetQuantity quantity, PlausibleRange range, params string[] synonyms) =>
        new(name, synonyms) { Quantity = quantity, Range = range };

    public static BookColumn Choice<T>(string name, (T Value, string[] Words)[] choices, params string[] synonyms)
        where T : struct, Enum => new(name, synonyms) { Words = SheetItem.Choice(name, choices).Choices };
}
