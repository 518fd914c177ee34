namespace Transport.Analysis;

/// <summary>How a posterior is drawn from.</summary>
public sealed record PosteriorOptions
{
    /// <summary>Draws kept of each of the four chains, and how many more are drawn at a time where they are not worth enough.</summary>
    /// <value>The default is 5000. At least 100.</value>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than 100.</exception>
    public int DrawsPerChain
    {
        get;
        init => field = value >= 100 ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "Expected at least 100 draws.");
    }
    = 5000;

    /// <summary>What the draws have to be worth: effective draws of every coordinate, in the middle and in the tails. 0: whatever they are.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative or not finite.</exception>
    public double EffectiveDraws
    {
        get;
        init => field = Require.NotNegative(value, "", nameof(EffectiveDraws));
    }
    = 4000;

    /// <summary>Draws of each chain at which the chains end, worth enough or not.</summary>
    public int MostDrawsPerChain { get; init; } = 25_000;

    /// <summary>Seed of the draws: the same seed gives the same draws everywhere.</summary>
    public int Seed { get; init; } = 20261125;

    /// <summary>How carefully dwells are integrated.</summary>
    /// <value>The default tolerance is 1e-6, a hundred-thousandth of an assay's error.</value>
    public IntegrationOptions Integration { get; init; } = new() { RelativeTolerance = 1e-6 };

    /// <summary>The defaults.</summary>
    public static PosteriorOptions Default { get; } = new();
}
