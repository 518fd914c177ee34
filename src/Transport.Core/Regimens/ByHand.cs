namespace Transport;

/// <summary>Makes a regimen of exchanges by hand at clock times.</summary>
internal static class ByHand
{
    public static Regimen Of(HandExchange[] exchanges, RegimenSettings settings, TimeOnly? dryFrom)
    {
        if (exchanges.Length < (dryFrom is null ? 2 : 1))
        {
            throw new ArgumentException($"Expected at least {(dryFrom is null ? "two exchanges" : "one exchange")}.", nameof(exchanges));
        }

        List<Finding> reasons = [.. exchanges.Select(exchange => exchange.Solution).Where(solution => solution.Mix is not null).Distinct().Select(RegimenCheck.MixByHand)];
        var regimen = dryFrom is { } dry ? WithDryPart(exchanges, settings, dry, reasons) : NeverDry([.. exchanges.OrderBy(exchange => exchange.Time)], settings, reasons);
        if (regimen is not null)
        {
            return regimen;
        }

        // What a regimen would be asked that there is none of.
        RegimenCheck.DayFillLimit(exchanges.Max(exchange => exchange.Fill), settings, reasons);
        throw new RegimenException(reasons);
    }

    // From the evening on; the drain of what was in comes before a fill, and the last one of the day takes what remains.
    private static Regimen? NeverDry(HandExchange[] byTime, RegimenSettings settings, List<Finding> reasons)
    {
        HandExchange[] inOrder = [byTime[^1], .. byTime[..^1]];
        var legs = Legs(inOrder, settings, i => DrainMinutes(inOrder[(i + inOrder.Length - 1) % inOrder.Length], settings), inOrder[0].Time, reasons);
        var start = inOrder[0].Time.Add(TimeSpan.FromMinutes(DrainMinutes(inOrder[^1], settings)));
        var night = (inOrder[1].Time - start).TotalMinutes + DrainMinutes(inOrder[0], settings);
        return reasons.Count > 0 ? null : new(TimeSpan.FromMinutes(night), [legs[0]], legs[1..], settings) { NightStart = start };
    }

    // From the last drain on, which leaves the cavity dry until the first exchange: that one has nothing to drain.
    private static Regimen? WithDryPart(HandExchange[] exchanges, RegimenSettings settings, TimeOnly dry, List<Finding> reasons)
    {
        HandExchange[] inOrder = [.. exchanges.OrderBy(exchange => (exchange.Time - dry).TotalMinutes)];
        var legs = Legs(inOrder, settings, i => i == 0 ? 0 : DrainMinutes(inOrder[i - 1], settings), dry, reasons);
        var start = dry.Add(TimeSpan.FromMinutes(DrainMinutes(inOrder[^1], settings)));
        return reasons.Count > 0 ? null : new(inOrder[0].Time - start, [], legs, settings) { NightStart = start };
    }

    // The last leg shares what remains, which is its own time up to the end.
    private static Exchange[] Legs(HandExchange[] inOrder, RegimenSettings settings, Func<int, double> drainBefore, TimeOnly end, List<Finding> reasons)
    {
        var legs = new Exchange[inOrder.Length];
        for (var i = 0; i < legs.Length; i++)
        {
            var (here, next) = (inOrder[i], i + 1 < inOrder.Length ? inOrder[i + 1].Time : end);
            var dwell = (next - here.Time).TotalMinutes - drainBefore(i) - here.Fill.Milliliters / settings.FillFlow.MillilitersPerMinute;
            if (!(dwell > 0))
            {
                reasons.Add(RegimenCheck.HandsTooClose(here.Time, next));
            }

            legs[i] = new(here.Solution, here.Fill, i == legs.Length - 1 || !(dwell > 0) ? null : TimeSpan.FromMinutes(dwell));
        }

        return legs;
    }

    private static double DrainMinutes(HandExchange one, RegimenSettings settings)
    {
        var residual = settings.Residual?.Milliliters ?? RegimenSettings.UsualResidual;
        return settings.DrainOf(one.Fill.Milliliters + residual, residual, residual).Minutes;
    }
}
