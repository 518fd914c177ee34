namespace Transport;

/// <summary>How the cavity runs out.</summary>
public sealed record DrainProfile
{
    private DrainProfile(TimeSpan? time, FlowRate fast, FlowRate slow, double breakShare, Volume? transition = null)
    {
        WholeDrain = time;
        Fast = fast;
        Slow = slow;
        BreakShare = breakShare;
        TransitionVolume = transition;
    }

    /// <summary>Time in which the whole drain runs out at one rate; null where there are two slopes.</summary>
    public TimeSpan? WholeDrain { get; }

    /// <summary>Flow before the break; zero where there is one rate.</summary>
    public FlowRate Fast { get; }

    /// <summary>Flow after the break; zero where there is one rate.</summary>
    public FlowRate Slow { get; }

    /// <summary>Share of the volume at the start of the drain that runs fast, 0 to 1; it has no say where the transition is a volume.</summary>
    public double BreakShare { get; }

    /// <summary>Volume in the cavity at which the drain becomes slow; null where the break is a share.</summary>
    public Volume? TransitionVolume { get; }

    /// <summary>Twelve minutes at one rate: 2 L in the middle of the 10 to 20 min seen in practice (memory).</summary>
    public static DrainProfile Default { get; } = Within(TimeSpan.FromMinutes(12));

    /// <summary>One rate, chosen at the start of each drain so that what lies above the residual runs out in this time.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The time is not between 1 and 120 min.</exception>
    public static DrainProfile Within(TimeSpan time)
    {
        Require.InRange(time.TotalMinutes, 1, 120, "min", nameof(time));
        return new(time, default, default, 1);
    }

    /// <summary>Fast down to a break, then slow: what catheters do.</summary>
    /// <param name="fast">150 to 250 mL/min (read, a thesis).</param>
    /// <param name="slow">40 to 50 mL/min (read, the same).</param>
    /// <param name="breakShare">Share of the volume that runs fast; about 0.8, and a matter of patient and catheter.</param>
    /// <exception cref="ArgumentOutOfRangeException">A flow is not positive, or the share is outside 0 to 1.</exception>
    public static DrainProfile TwoSlope(FlowRate fast, FlowRate slow, double breakShare)
    {
        Require.Positive(fast.MillilitersPerMinute, "mL/min", nameof(fast));
        Require.Positive(slow.MillilitersPerMinute, "mL/min", nameof(slow));
        return new(null, fast, slow, Require.InRange(breakShare, 0, 1, ""));
    }

    /// <summary>Fast down to a volume, then slow: a catheter whose transition has been measured.</summary>
    /// <param name="fast">150 to 250 mL/min (read, a thesis).</param>
    /// <param name="slow">40 to 50 mL/min (read, the same).</param>
    /// <param name="transition">Volume in the cavity at which the drain becomes slow.</param>
    /// <exception cref="ArgumentOutOfRangeException">A flow or the volume is not positive.</exception>
    public static DrainProfile TwoSlopeAt(FlowRate fast, FlowRate slow, Volume transition)
    {
        Require.Positive(fast.MillilitersPerMinute, "mL/min", nameof(fast));
        Require.Positive(slow.MillilitersPerMinute, "mL/min", nameof(slow));
        return new(null, fast, slow, 0, Require.MoreThanZero(transition, nameof(transition)));
    }

    /// <summary>How long a complete drain takes while nothing crosses the membrane.</summary>
    /// <param name="start">Volume in the cavity at the start of the drain.</param>
    /// <param name="end">Volume left behind.</param>
    public TimeSpan TimeFor(Volume start, Volume end) =>
        TimeSpan.FromMinutes(MinutesFor(start.Milliliters, end.Milliliters, end.Milliliters));

    /// <summary>Volume at which the slow part begins, mL; for one rate, nothing.</summary>
    internal double BreakVolume(double start) => TransitionVolume is { } volume ? Math.Min(volume.Milliliters, start) : (1 - BreakShare) * start;

    /// <summary>Volume in the cavity after so many minutes of a drain while nothing crosses the membrane, mL.</summary>
    internal double VolumeAfter(double minutes, double start, double residual)
    {
        if (WholeDrain is { } time)
        {
            return Math.Max(residual, start - (start - residual) * minutes / time.TotalMinutes);
        }

        var broken = Math.Clamp(BreakVolume(start), Math.Min(residual, start), start);
        var fast = (start - broken) / Fast.MillilitersPerMinute;
        return minutes <= fast
            ? start - minutes * Fast.MillilitersPerMinute
            : Math.Max(residual, broken - (minutes - fast) * Slow.MillilitersPerMinute);
    }

    /// <summary>A drain from one volume to another, where a complete one would go on to the residual.</summary>
    internal double MinutesFor(double start, double end, double residual)
    {
        if (WholeDrain is { } time)
        {
            return end == residual ? time.TotalMinutes : time.TotalMinutes * (start - end) / (start - residual);
        }

        var broken = Math.Clamp(BreakVolume(start), Math.Min(end, start), start);
        return (start - broken) / Fast.MillilitersPerMinute + Math.Max(0, broken - end) / Slow.MillilitersPerMinute;
    }
}
