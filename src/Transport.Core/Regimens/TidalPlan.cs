namespace Transport;

/// <summary>Tidal exchanges: after a full first fill only a part is drained and refilled; the last drain is complete.</summary>
/// <remarks>
/// An expected ultrafiltration below the true one lets the cavity fill up, cycle by cycle, by the difference; one above it eats the reserve. So it is
/// the simulated peak that limits apply to, not the fill.
/// </remarks>
public sealed record TidalPlan
{
    /// <summary>Tidal exchanges.</summary>
    /// <param name="fill">The first fill, and every fill after a complete drain.</param>
    /// <param name="tidalShare">The part that is drained and refilled, of the fill; 1 drains completely every time. In use: 0.5 to 0.85 (read).</param>
    /// <exception cref="ArgumentOutOfRangeException">The fill is not positive, or the share not between 0.05 and 1.</exception>
    public TidalPlan(Volume fill, double tidalShare)
    {
        Fill = fill;
        TidalShare = tidalShare;
    }

    /// <summary>The first fill, and every fill after a complete drain.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero or negative.</exception>
    public Volume Fill
    {
        get;
        init => field = Require.MoreThanZero(value, nameof(Fill));
    }

    /// <summary>The part of the fill that is drained and refilled.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not between 0.05 and 1.</exception>
    public double TidalShare
    {
        get;
        init => field = Require.InRange(value, 0.05, 1, "", nameof(TidalShare));
    }

    /// <summary>Ultrafiltration expected of the night: each tidal drain takes its part of it besides; zero: none is added.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public Volume ExpectedUltrafiltration
    {
        get;
        init => field = Require.ZeroOrMore(value, nameof(ExpectedUltrafiltration));
    }

    /// <summary>Every how many cycles the drain is complete; null: only the last.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Below 1.</exception>
    public int? CompleteDrainEvery
    {
        get;
        init => field = value is null or >= 1 ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "Expected 1 or more.");
    }

    /// <summary>What is refilled after a tidal drain.</summary>
    public Volume TidalVolume => Fill * TidalShare;

    /// <summary>How many cycles a supply of fluid makes: the first full, the others tidal, whatever is drained in between.</summary>
    public int CyclesOf(Volume fluid) => fluid < Fill ? 0 : 1 + (int)Math.Floor((fluid - Fill) / TidalVolume + 1e-9);

    internal IEnumerable<Exchange> Exchanges(int cycles, DialysisSolution solution)
    {
        var partial = new PartialDrain(TidalVolume, ExpectedUltrafiltration * (1.0 / cycles));
        var fill = Fill;
        for (var i = 1; i <= cycles; i++)
        {
            var complete = TidalShare == 1 || i == cycles || (CompleteDrainEvery is { } every && i % every == 0);
            yield return new(solution, fill) { PartialDrain = complete ? null : partial };
            fill = complete ? Fill : TidalVolume;
        }
    }
}
