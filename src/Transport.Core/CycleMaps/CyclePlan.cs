namespace Transport;

/// <summary>A regimen as a ring of exchanges.</summary>
internal static class CyclePlan
{
    /// <summary>
    /// The exchanges of 24 h from the first fill of the night on, a dry time as one of its own. False for what does not drain completely: it carries over too
    /// much for one exchange to be told from the next.
    /// </summary>
    /// <param name="regimen">A regimen that can be carried out.</param>
    /// <param name="residual">Volume left after a drain, mL.</param>
    /// <param name="transient">Which fills start the transient.</param>
    /// <param name="into">What is found is added to it.</param>
    public static bool TryRead(Regimen regimen, double residual, TransientUse transient, List<CycleKind> into)
    {
        // A drain that time ends, and a line that empties first, leave what the maps do not know of.
        if (regimen.Settings.LongestDrain is not null || regimen.Settings.LineVolume > default(Volume))
        {
            return false;
        }

        foreach (var exchange in regimen.Night)
        {
            if (exchange.PartialDrain is not null)
            {
                return false;
            }
        }

        foreach (var exchange in regimen.Day)
        {
            if (exchange.PartialDrain is not null)
            {
                return false;
            }
        }

        var schedule = new RegimenSchedule(regimen, residual);
        var isDry = regimen.Day.IsEmpty || schedule.DayEndsDry;
        for (var i = 0; i < regimen.Night.Length; i++)
        {
            var (exchange, leg) = (regimen.Night[i], schedule.Night[i]);
            var starts = transient == TransientUse.EveryFill || (transient == TransientUse.FirstFill && i == 0);
            into.Add(new(exchange.Solution, exchange.Fill.Milliliters, Even(leg.Dwell), leg.Drain, true, starts, i == 0 && isDry ? CycleStart.Nothing : CycleStart.Residual));
        }

        for (var i = 0; i < regimen.Day.Length; i++)
        {
            var (exchange, leg) = (regimen.Day[i], schedule.Day[i]);

            // What stays in until the night is drained in time for it.
            var stays = i == regimen.Day.Length - 1 && !schedule.DayEndsDry;
            var start = i == 0 ? regimen.NightLength.TotalMinutes : schedule.Day[i - 1].DrainStart + schedule.Day[i - 1].Drain;
            var dwell = stays ? RegimenSchedule.MinutesPerDay - leg.Drain - start - leg.Fill : leg.Dwell;
            into.Add(new(exchange.Solution, exchange.Fill.Milliliters, Even(dwell), leg.Drain, false, transient == TransientUse.EveryFill));
        }

        if (isDry)
        {
            var start = regimen.Day.IsEmpty ? regimen.NightLength.TotalMinutes : schedule.Day[^1].DrainStart + schedule.Day[^1].Drain;
            into.Add(new(null, 0, Even(RegimenSchedule.MinutesPerDay - start), 0, false, false));
        }

        return true;
    }

    // Two ways to add up a night must not make two exchanges of one.
    private static double Even(double minutes) => Math.Round(minutes, 7);
}
