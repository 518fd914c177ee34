namespace Transport.Analysis;

/// <summary>One thing that a regimen file can state: its word, the trade's other words for it, and what its value is.</summary>
/// <param name="Name">As this project writes it.</param>
/// <param name="Kind">What the value is.</param>
/// <param name="Synonyms">What else is understood, in normal form.</param>
internal sealed record RegimenItem(string Name, RegimenValueKind Kind, params string[] Synonyms)
{
    public const string NightExchange = "night exchange";
    public const string DayExchange = "day exchange";
    public const string HandExchange = "hand exchange";
    public const string Bag = "bag";
    public const string DayBag = "day bag";
    public const string Solution = "solution";
    public const string DayFill = "day fill";
    public const string Week = "week";
    public const string NightsPerWeek = "nights per week";

    /// <summary>Whether a row is one of several of its kind.</summary>
    public bool IsList => Name is NightExchange or DayExchange or HandExchange or Bag or DayBag or Week;

    public static IReadOnlyList<RegimenItem> All { get; } =
    [
        new("night solution", RegimenValueKind.Word, "strength", "night strength", "night fluid"),
        new("cycles", RegimenValueKind.Count, "number of cycles", "night cycles", "number of exchanges"),
        new("volume per cycle", RegimenValueKind.Volume, "fill volume", "fill", "inflow volume", "volume per exchange"),
        new("night length", RegimenValueKind.Duration, "therapy time", "treatment time", "night", "time on the machine"),
        new("night start", RegimenValueKind.Clock, "start", "therapy start", "first fill at"),
        new(DayFill, RegimenValueKind.Volume, "last fill", "last fill volume", "final fill", "wet day"),
        new("fluid in all", RegimenValueKind.Volume, "therapy volume", "total volume", "total therapy volume"),
        new("spare fluid", RegimenValueKind.Word, "spare"),
        new("complete drain every", RegimenValueKind.Count, "full drain every", "full drains every"),
        new("expected ultrafiltration", RegimenValueKind.Volume, "expected uf", "total uf expected", "tidal ultrafiltration", "tidal uf"),
        new("tidal share", RegimenValueKind.Share, "tidal", "tidal percent", "tidal per cent", "tidal %", "tidal volume percent"),
        new(NightExchange, RegimenValueKind.Volume, "night cycle", "cycle"),
        new(DayExchange, RegimenValueKind.Volume, "midday exchange", "day dwell"),
        new(HandExchange, RegimenValueKind.Volume, "manual exchange", "exchange by hand", "exchange"),
        new("dry from", RegimenValueKind.Clock, "drained at"),
        new(Bag, RegimenValueKind.Volume, "night bag"),
        new(DayBag, RegimenValueKind.Volume, "last bag", "last fill bag"),
        new("fill flow", RegimenValueKind.Flow, "inflow rate"),
        new("drain time", RegimenValueKind.Duration, "outflow time"),
        new("drain fast flow", RegimenValueKind.Flow),
        new("drain slow flow", RegimenValueKind.Flow),
        new("drain fast share", RegimenValueKind.Share),
        new("drain transition volume", RegimenValueKind.Volume, "transition volume", "break volume"),
        new("longest drain", RegimenValueKind.Duration, "drain time limit"),
        new("line volume", RegimenValueKind.Volume, "patient line volume"),
        new("residual volume", RegimenValueKind.Volume, "residual"),
        new("largest fill", RegimenValueKind.Volume, "fill limit"),
        new("largest volume", RegimenValueKind.Volume, "volume limit"),
        new(Solution, RegimenValueKind.Strength, "solution glucose"),
        new("solution sodium", RegimenValueKind.Ion),
        new("solution potassium", RegimenValueKind.Ion),
        new("solution calcium", RegimenValueKind.Ion),
        new("solution magnesium", RegimenValueKind.Ion),
        new("solution lactate", RegimenValueKind.Ion),
        new("solution bicarbonate", RegimenValueKind.Ion),
        new("solution phosphate", RegimenValueKind.Ion),
        new(NightsPerWeek, RegimenValueKind.Count, "days per week", "nights a week"),
        new(Week, RegimenValueKind.Word),
    ];

    /// <summary>The item that a word names; null where none.</summary>
    public static RegimenItem? Of(string word)
    {
        var normal = SheetWords.Normal(word);
        return All.FirstOrDefault(item => item.Name == normal || item.Synonyms.Contains(normal));
    }
}
