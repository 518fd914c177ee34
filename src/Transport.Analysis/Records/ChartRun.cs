namespace Transport.Analysis;

/// <summary>The charts of one channel as they run. Missing nights pass them by.</summary>
internal sealed class ChartRun(CusumChart sudden, EwmaChart? slow)
{
    // A single slip must not signal alone.
    private const double Furthest = 3.5;

    private double up;
    private double down;
    private double weighted;

    /// <summary>Where the slow chart stands, in its own limits; 0 without one.</summary>
    public double Slow => slow is null ? 0 : weighted / slow.Limit;

    /// <summary>Takes the next score; −1 or +1 where a chart signals, else 0.</summary>
    public int Take(double score)
    {
        var z = Math.Clamp(score, -Furthest, Furthest);
        up = Math.Max(0, up + z - sudden.Reference);
        down = Math.Max(0, down - z - sudden.Reference);
        if (slow is not null)
        {
            weighted = slow.Weight * z + (1 - slow.Weight) * weighted;
        }

        var isSlow = slow is not null && Math.Abs(weighted) > slow.Limit;
        return up > sudden.Limit || isSlow && weighted > 0 ? 1 : down > sudden.Limit || isSlow ? -1 : 0;
    }

    public void Reset() => up = down = weighted = 0;
}
