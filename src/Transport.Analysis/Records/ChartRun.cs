namespace Transport.Analysis;

/// <summary>The charts of one channel as they run. Missing nights pass them by.</summary>
internal sealed class ChartRun(CusumChart sudden, EwmaChart? fall = null, EwmaChart? rise = null)
{
    // A single slip must not signal alone.
    private const double Furthest = 3.5;

    private double up;
    private double down;
    private double falling;
    private double rising;

    /// <summary>Where the slow charts stand, in their own limits, −1 to 1; 0 without them.</summary>
    public double Slow => fall is null || rise is null ? 0 : falling < 0 ? falling / fall.Limit : rising / rise.Limit;

    /// <summary>Takes the next score; −1 or +1 where a chart signals, else 0.</summary>
    public int Take(double score)
    {
        var z = Math.Clamp(score, -Furthest, Furthest);
        up = Math.Max(0, up + z - sudden.Reference);
        down = Math.Max(0, down - z - sudden.Reference);
        falling = fall is null ? 0 : fall.Weight * z + (1 - fall.Weight) * falling;
        rising = rise is null ? 0 : rise.Weight * z + (1 - rise.Weight) * rising;
        return up > sudden.Limit || rising > rise?.Limit ? 1 : down > sudden.Limit || -falling > fall?.Limit ? -1 : 0;
    }

    public void Reset() => up = down = falling = rising = 0;
}
