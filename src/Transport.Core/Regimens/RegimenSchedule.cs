using System.Collections.Immutable;

namespace Transport;

/// <summary>
/// The times that a regimen plans, in min from the start of the night: exchange after exchange, drains as if only the expected ultrafiltration crossed
/// the membrane.
/// </summary>
internal readonly struct RegimenSchedule
{
    public const double MinutesPerDay = 1440;

    /// <summary>Exchanges as they are planned.</summary>
    public readonly Leg[] Night;

    /// <summary>The same of the day.</summary>
    public readonly Leg[] Day;

    /// <summary>Dwell of each exchange of the night that has none of its own, min; NaN where every one has.</summary>
    public readonly double NightShare;

    /// <summary>The same of the day.</summary>
    public readonly double DayShare;

    /// <param name="regimen">The regimen.</param>
    /// <param name="residual">Volume left after a complete drain, mL.</param>
    public RegimenSchedule(Regimen regimen, double residual)
    {
        var night = regimen.NightLength.TotalMinutes;
        var volume = residual;
        Night = Legs(regimen, regimen.Night, residual, ref volume, lastIsComplete: false);
        Day = Legs(regimen, regimen.Day, residual, ref volume, lastIsComplete: true);
        NightShare = Spread(Night, 0, night);
        DayShare = Spread(Day, night, MinutesPerDay - night);
    }

    /// <summary>Fills and drains of the night, min.</summary>
    public double NightBusy => Night.Sum(leg => leg.Fill + leg.Drain);

    /// <summary>Fills and drains of the day, min.</summary>
    public double DayBusy => Day.Sum(leg => leg.Fill + leg.Drain);

    /// <summary>Whether the day ends before the night begins again, and is dry in between.</summary>
    public bool DayEndsDry => Day.Length > 0 && double.IsNaN(DayShare) && MinutesPerDay - Day[^1].DrainStart - Day[^1].Drain > 1e-6;

    private static Leg[] Legs(Regimen regimen, ImmutableArray<Exchange> exchanges, double residual, ref double volume, bool lastIsComplete)
    {
        var legs = new Leg[exchanges.Length];
        for (var i = 0; i < legs.Length; i++)
        {
            var exchange = exchanges[i];
            var partial = lastIsComplete && i == legs.Length - 1 ? null : exchange.PartialDrain;
            volume += exchange.Fill.Milliliters + (partial?.ExpectedUltrafiltration.Milliliters ?? 0);
            var asked = partial is null ? residual : Math.Max(residual, volume - partial.Total.Milliliters);
            var (minutes, left) = regimen.Settings.DrainOf(volume, asked, residual);
            legs[i] = new()
            {
                Fill = regimen.FillMinutes(exchange.Fill.Milliliters),
                Given = exchange.DwellTime?.TotalMinutes,
                Drain = minutes,
            };
            volume = left;
        }

        return legs;
    }

    private static double Spread(Leg[] legs, double start, double length)
    {
        var sharing = legs.Count(leg => leg.Given is null);
        var share = sharing == 0
            ? double.NaN
            : (length - legs.Sum(leg => leg.Fill + leg.Drain) - legs.Sum(leg => leg.Given ?? 0)) / sharing;
        var time = start;
        for (var i = 0; i < legs.Length; i++)
        {
            legs[i].Dwell = legs[i].Given ?? share;
            time += legs[i].Fill + legs[i].Dwell;
            legs[i].DrainStart = time;
            time += legs[i].Drain;
        }

        return share;
    }

    /// <summary>One exchange's times, min.</summary>
    public struct Leg
    {
        public double Fill;
        public double? Given;
        public double Dwell;
        public double DrainStart;
        public double Drain;
    }
}
