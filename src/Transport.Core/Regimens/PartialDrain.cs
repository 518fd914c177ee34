namespace Transport;

/// <summary>A drain that leaves fluid behind on purpose: a set volume runs out, or less if the cavity has no more above its residual.</summary>
/// <param name="Volume">What is to be drained; zero: nothing, the next fill comes on top.</param>
/// <param name="ExpectedUltrafiltration">What is drained besides, because it is expected to have come from the blood meanwhile.</param>
public sealed record PartialDrain(Volume Volume, Volume ExpectedUltrafiltration = default)
{
    /// <summary>What is to be drained.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public Volume Volume
    {
        get;
        init => field = Require.ZeroOrMore(value, nameof(Volume));
    }
    = Require.ZeroOrMore(Volume, nameof(Volume));

    /// <summary>What is drained besides.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public Volume ExpectedUltrafiltration
    {
        get;
        init => field = Require.ZeroOrMore(value, nameof(ExpectedUltrafiltration));
    }
    = Require.ZeroOrMore(ExpectedUltrafiltration, nameof(ExpectedUltrafiltration));

    /// <summary>Both.</summary>
    public Volume Total => Volume + ExpectedUltrafiltration;
}
