namespace Transport.Analysis;

/// <summary>One night beside what was expected of it.</summary>
public sealed record ReviewedNight
{
    /// <summary>As written.</summary>
    public required NightRecord Record { get; init; }

    /// <summary>Ultrafiltration of the night as far as the book lets it be told; of night and day together where <see cref="HoldsDay"/>.</summary>
    public Volume? Ultrafiltration { get; init; }

    /// <summary>Whether the number holds the day as well, because the initial drain that would part them is not written.</summary>
    public bool HoldsDay { get; init; }

    /// <summary>What was to be expected of it, as a 90 % band with night-to-night variation; null without a regimen.</summary>
    public Band<Volume>? Expected { get; init; }

    /// <summary>The same of the initial drain.</summary>
    public Band<Volume>? ExpectedInitialDrain { get; init; }

    /// <summary>What the level before a change that was found would let expect of the ultrafiltration; null where none had begun.</summary>
    public Volume? ExpectedBeforeChange { get; init; }

    /// <summary>The same of the initial drain.</summary>
    public Volume? InitialDrainBeforeChange { get; init; }

    /// <summary>
    /// What was to be expected of the average dwell, as a 90 % band: the plan, less what is written as lost or else what drains took longer, and this person's clock so
    /// far. Whether or not it is written; null of exchanges by hand, whose times are.
    /// </summary>
    public Band<TimeSpan>? ExpectedDwell { get; init; }

    /// <summary>Body weight with an empty belly, by the habit that the book shows.</summary>
    public Mass? EmptyWeight { get; init; }

    /// <summary>Every number beside its expectation.</summary>
    public IReadOnlyList<NightReading> Readings { get; init; } = [];

    /// <summary>Why the night is not charted; empty where it is.</summary>
    public string LeftOut { get; init; } = "";

    /// <summary>Whether what went in hardly came out, by the numbers: no membrane is charted by them, and no mean holds them.</summary>
    internal bool IsRetained { get; init; }

    /// <summary><see cref="LikelihoodChart.LogRatio"/> of a slow loss by this night; null where it was not treated.</summary>
    internal double? LossLogRatio { get; init; }

    /// <summary>What the numbers were set beside; null where there is nothing to set them beside.</summary>
    internal NightBasis? Basis { get; init; }
}
