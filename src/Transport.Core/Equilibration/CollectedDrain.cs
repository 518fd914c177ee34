namespace Transport;

/// <summary>One drained bag of a collection, or all of a day pooled.</summary>
/// <param name="Name">What the sheet calls it.</param>
/// <param name="Drained">Volume drained.</param>
public sealed record CollectedDrain(string Name, Volume Drained)
{
    /// <summary>Volume drained.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public Volume Drained
    {
        get;
        init => field = Require.ZeroOrMore(value, nameof(Drained));
    }
    = Require.ZeroOrMore(Drained, nameof(Drained));

    /// <summary>Volume instilled; null where not written down.</summary>
    public Volume? Fill { get; init; }

    /// <summary>Fluid instilled; null where not written down.</summary>
    public DialysisSolution? Solution { get; init; }

    /// <summary>What the laboratory found in it; its time means nothing.</summary>
    public DialysateSample Sample { get; init; } = new(TimeSpan.Zero);
}
