namespace Transport.Analysis;

/// <summary>What the value of a fact is.</summary>
internal enum SheetValueKind
{
    Text,
    Number,
    Choice,
    Date,
    Clock,
}

/// <summary>A fact that a sheet can hold: main name, what its value is, and the synonyms it goes by.</summary>
internal sealed record SheetItem(string Name, SheetValueKind Kind, params string[] Synonyms)
{
    /// <summary>Units of a number.</summary>
    public SheetQuantity? Quantity { get; init; }

    /// <summary>What a number can be.</summary>
    public PlausibleRange? Range { get; init; }

    /// <summary>The words of a choice, each with the value of its enumeration.</summary>
    public IReadOnlyDictionary<string, int>? Choices { get; init; }

    public static SheetItem Number(string name, SheetQuantity quantity, PlausibleRange range, params string[] synonyms) =>
        new(name, SheetValueKind.Number, synonyms) { Quantity = quantity, Range = range };

    public static SheetItem Choice<T>(string name, (T Value, string[] Words)[] choices, params string[] synonyms)
        where T : struct, Enum => new(name, SheetValueKind.Choice, synonyms)
        {
            Choices = choices.SelectMany(choice => choice.Words.Select(word => (word, Convert.ToInt32(choice.Value, null))))
                .ToDictionary(pair => pair.word, pair => pair.Item2),
        };
}
