namespace Transport;

/// <summary>When each day first holds more than its limit.</summary>
/// <remarks>
/// Once more around, with samples, and only where the fullest moment says that there is something to find: the integration itself looks for no limit. Between samples the
/// volume is taken to be straight, which it is while fluid runs in and nearly is otherwise.
/// </remarks>
internal static class FirstAbove
{
    private const double Interval = 0.5;

    /// <summary>For each day the time from the start of its night; null where it stays below.</summary>
    public static TimeSpan?[] Of(CavityRun run, RegimenRing ring, ReadOnlySpan<Regimen?> days, SolutePanel panel, RunControl control)
    {
        var limits = new double[days.Length];
        for (var day = 0; day < days.Length; day++)
        {
            limits[day] = days[day]?.VolumeLimit.Milliliters ?? double.PositiveInfinity;
        }

        var found = new TimeSpan?[days.Length];
        if (!Exceeds(ring, limits))
        {
            return found;
        }

        run.Sampler = new(Interval, panel, CavityPressure.Population, run.State.Length);
        run.Course = null;
        run.TurnBack(ring.Period);
        ring.Restart();
        ring.Once(control);
        var points = run.Sampler.Points;
        run.Sampler = null;
        for (var i = 0; i < points.Count; i++)
        {
            var (minutes, volume) = (points[i].Time.TotalMinutes, points[i].Volume.Milliliters);
            var day = Math.Clamp((int)(minutes / RegimenSchedule.MinutesPerDay), 0, days.Length - 1);
            if (found[day] is null && volume > limits[day])
            {
                var rise = i == 0 ? 0 : volume - points[i - 1].Volume.Milliliters;
                var early = rise <= 0 ? 0 : Math.Min(1, (volume - limits[day]) / rise) * (minutes - points[i - 1].Time.TotalMinutes);
                found[day] = TimeSpan.FromMinutes(minutes - early - day * RegimenSchedule.MinutesPerDay);
            }
        }

        return found;
    }

    private static bool Exceeds(RegimenRing ring, double[] limits)
    {
        for (var k = 0; k < ring.Plan.Count; k++)
        {
            if (ring[k].Peak > limits[ring.Plan[k].Day])
            {
                return true;
            }
        }

        return false;
    }
}
