using System.Collections.Immutable;
using System.Globalization;

namespace Transport;

/// <summary>A regimen in plain words.</summary>
internal static class RegimenWords
{
    public static string Of(Regimen regimen) => regimen.IsByHand ? OfHand(regimen) :
        $"{HoursAndMinutes(regimen.NightLength)} at night: {(regimen.Night.IsEmpty ? "dry" : string.Join(", ", Groups(regimen.Night)))}; day: {OfDay(regimen)}";

    /// <summary>What is done in a week, or in several that differ: which days go with which regimen.</summary>
    public static string Of(RegimenWeek week)
    {
        var regimens = week.Days.OfType<Regimen>().Distinct().ToList();
        var weeks = week.Weeks == 1 ? "a week" : string.Create(CultureInfo.InvariantCulture, $"in {week.Weeks} weeks");
        return string.Join("; ", regimens.Select(regimen =>
        {
            var days = week.Days.Count(day => day == regimen);
            return string.Create(CultureInfo.InvariantCulture, $"{days} {(days == 1 ? "day" : "days")} {weeks}: {Of(regimen)}");
        }).Concat(week.Nights == week.Days.Length ? [] : [string.Create(CultureInfo.InvariantCulture, $"{week.Days.Length - week.Nights} without")]));
    }

    /// <summary>What stays in overnight where exchanges are by hand: "2.0 L glucose 2.27 %", "dry".</summary>
    public static string OvernightByHand(Regimen regimen) => regimen.Night is [var one] ? $"{Liters(one.Fill)} {one.Solution.Name}" : "dry";

    private static string OfHand(Regimen regimen)
    {
        var count = regimen.Night.Length + regimen.Day.Length;
        return string.Create(CultureInfo.InvariantCulture, $"{count} {(count == 1 ? "exchange" : "exchanges")} by hand: ") + string.Join("; ", new[]
        {
            regimen.Day.IsEmpty ? null : $"by day {OfDay(regimen)}",
            regimen.Night.IsEmpty ? $"dry for {HoursAndMinutes(regimen.NightLength)}" : $"overnight {OvernightByHand(regimen)}{Own(regimen.Night[0])}",
        }.OfType<string>());
    }

    /// <summary>What is done by day.</summary>
    public static string OfDay(Regimen regimen)
    {
        if (regimen.Day is [] or [{ DwellTime: null }] && !regimen.IsByHand)
        {
            return regimen.Day is [var only] ? $"{Liters(only.Fill)} {only.Solution.Name}" : "dry";
        }

        // By hand the last of the day stays in for what remains; its dwell is said as the others' are.
        var schedule = new RegimenSchedule(regimen, regimen.UsualResidual);
        var day = regimen.IsByHand
            ? [.. regimen.Day.Zip(schedule.Day, (exchange, leg) => leg.Dwell > 0 ? exchange with { DwellTime = TimeSpan.FromMinutes(Math.Round(leg.Dwell)) } : exchange)]
            : regimen.Day;
        return day.IsEmpty ? "dry" : string.Join(", ", Groups(day)) + (schedule.DayEndsDry ? ", then dry" : "");
    }

    private static string Liters(Volume volume) => volume.Liters.ToString("0.0##", CultureInfo.InvariantCulture) + " L";

    private static string HoursAndMinutes(TimeSpan time)
    {
        var minutes = (int)Math.Round(time.TotalMinutes);
        return (minutes / 60, minutes % 60) switch
        {
            (0, var m) => string.Create(CultureInfo.InvariantCulture, $"{m} min"),
            (var h, 0) => string.Create(CultureInfo.InvariantCulture, $"{h} h"),
            var (h, m) => string.Create(CultureInfo.InvariantCulture, $"{h} h {m} min"),
        };
    }

    private static IEnumerable<string> Groups(ImmutableArray<Exchange> exchanges)
    {
        for (var first = 0; first < exchanges.Length;)
        {
            var last = first;
            while (last < exchanges.Length && exchanges[last] == exchanges[first])
            {
                last++;
            }

            yield return string.Create(
                CultureInfo.InvariantCulture,
                $"{last - first} × {Liters(exchanges[first].Fill)} {exchanges[first].Solution.Name}{Own(exchanges[first])}");
            first = last;
        }
    }

    private static string Own(Exchange exchange)
    {
        List<string> own = [];
        if (exchange.DwellTime is { } time)
        {
            own.Add($"dwell {HoursAndMinutes(time)}");
        }

        if (exchange.PartialDrain is { } drain)
        {
            own.Add($"drains {Liters(drain.Total)}");
        }

        return own.Count == 0 ? "" : $" ({string.Join(", ", own)})";
    }
}
