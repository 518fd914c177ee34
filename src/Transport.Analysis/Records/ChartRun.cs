namespace Transport.Analysis;

/// <summary>The charts of one channel as they run. Missing nights pass them by.</summary>
internal sealed class ChartRun(CusumChart sudden, EwmaChart? rise = null)
{
    // A single slip must not signal alone.
    private const double Furthest = 3.5;

    private double up;
    private double down;
    private double rising;

    /// <summary>Where the slow chart stands, in its own limit; 0 without one.</summary>
    public double Slow => rise is null ? 0 : rising / rise.Limit;

    /// <summary>Takes the next score; −1 or +1 where a chart signals, else 0.</summary>
    public int Take(double score)
    {
        var z = Math.Clamp(score, -Furthest, Furthest);
        up = Math.Max(0, up + z - sudden.Reference);
        down = Math.Max(0, down - z - sudden.Reference);
        rising = rise is null ? 0 : rise.Weight * z + (1 - rise.Weight) * rising;
        return up > sudden.Limit || rising > rise?.Limit ? 1 : down > sudden.Limit ? -1 : 0;
    }

    public void Reset() => up = down = rising = 0;
}
