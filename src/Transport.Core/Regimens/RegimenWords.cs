using System.Collections.Immutable;
using System.Globalization;

namespace Transport;

/// <summary>A regimen in plain words.</summary>
internal static class RegimenWords
{
    public static string Of(Regimen regimen) =>
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

    /// <summary>What is done by day.</summary>
    public static string OfDay(Regimen regimen) => regimen.Day switch
    {
        [] => "dry",
        [{ DwellTime: null } only] => $"{Liters(only.Fill)} {only.Solution.Name}",
        var several => string.Join(", ", Groups(several)) + (new RegimenSchedule(regimen, regimen.UsualResidual).DayEndsDry ? ", then dry" : ""),
    };

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
