namespace Transport.Analysis;

/// <summary>How a density is drawn from.</summary>
internal sealed record SamplerOptions
{
    /// <summary>Draws kept of each of the four chains.</summary>
    public int Draws { get; init; } = 1000;

    /// <summary>Effective draws, in the middle and in the tails of every coordinate, for which the chains go on beyond <see cref="Draws"/>, that many at a time.</summary>
    /// <value>The default is 0: they do not.</value>
    public double EffectiveDraws { get; init; }

    /// <summary>Draws of each chain at which they end all the same.</summary>
    public int MostDraws { get; init; }

    /// <summary>Draws of each chain that tune the proposal and are thrown away; at least 20 for each coordinate are needed for a covariance.</summary>
    public int WarmUp { get; init; } = 500;

    /// <summary>Seed of the draws.</summary>
    public int Seed { get; init; } = 20261125;

    /// <summary>Share of the proposals that are independent of where the chain is; the rest are steps of a random walk.</summary>
    /// <value>The default is 0.8: see docs/decisions/0007 for what was measured.</value>
    public double IndependentShare { get; init; } = 0.8;

    /// <summary>Degrees of freedom of the independent proposals: heavier tails than the density's keep a chain from sticking there.</summary>
    public double DegreesOfFreedom { get; init; } = 6;

    /// <summary>The defaults.</summary>
    public static SamplerOptions Default { get; } = new();
}
