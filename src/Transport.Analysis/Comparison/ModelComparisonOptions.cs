namespace Transport.Analysis;

/// <summary>How models are compared.</summary>
public sealed record ModelComparisonOptions
{
    /// <summary>Draws of each posterior that predictions are made from.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than 400.</exception>
    public int Draws
    {
        get;
        init => field = value >= 400 ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "Expected at least 400 draws.");
    }
    = 4000;

    /// <summary>How the posteriors are drawn from. By default until 1000 draws are effective: sums of logarithms need no more.</summary>
    public PosteriorOptions Sampling { get; init; } = new() { DrawsPerChain = 2000, EffectiveDraws = 1000 };

    /// <summary>The defaults.</summary>
    public static ModelComparisonOptions Default { get; } = new();
}
