namespace Transport.Analysis;

/// <summary>A lasting change that the charts signal: when it may have begun, how large it is, and what it is compatible with.</summary>
public sealed record ChangeFound
{
    /// <summary>The night on which the first chart signalled.</summary>
    public required DateOnly SignalledOn { get; init; }

    /// <summary>The chart's channel; null of the chart of drains, which weighs initial drain and ultrafiltration together.</summary>
    public required NightChannel? Channel { get; init; }

    /// <summary>Whether what was observed is below what was expected; always true of the chart of drains, which watches one direction alone.</summary>
    public required bool IsDownward { get; init; }

    /// <summary>When it began: the middle of the posterior.</summary>
    public required DateOnly Began { get; init; }

    /// <summary>5 % of the posterior lies before this day.</summary>
    public required DateOnly BeganEarliest { get; init; }

    /// <summary>5 % of it lies after this day.</summary>
    public required DateOnly BeganLatest { get; init; }

    /// <summary>The last night looked at: of a change that grows the sizes are those of that night.</summary>
    public required DateOnly LookedAtUntil { get; init; }

    /// <summary>By how much a night's ultrafiltration has changed, of night and day where <see cref="HoldsDay"/>, all explanations together; null where the book has none since it began.</summary>
    public required Band<Volume>? Size { get; init; }

    /// <summary>Whether the ultrafiltration of the book is that of night and day in one number.</summary>
    public required bool HoldsDay { get; init; }

    /// <summary>By how much the initial drain has changed, likewise; null where the book has none since it began.</summary>
    public required Band<Volume>? InitialDrainSize { get; init; }

    /// <summary>Explanations by weight.</summary>
    public required IReadOnlyList<Explanation> Explanations { get; init; }

    /// <summary>What would tell the two most compatible explanations apart.</summary>
    public string Separation => Explanations is [var first, var second, ..] ? ChangeWords.Separation(first.Cause, second.Cause) : "";
}
