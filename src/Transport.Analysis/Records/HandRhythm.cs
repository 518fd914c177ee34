namespace Transport.Analysis;

/// <summary>Days of exchanges by hand as regimens, so that they have an expectation.</summary>
/// <remarks>
/// Clock times are taken to the half hour and fills to 100 mL: what a day differs by within that is a few millilitres, and days that are alike share one simulation.
/// </remarks>
internal sealed class HandRhythm
{
    private const int Minutes = 30;
    private const double Milliliters = 100;

    private readonly Dictionary<string, Regimen?> known = [];

    /// <summary>The regimen of a day; null where times, fills or fluids are missing, or it cannot be carried out, which is then a finding.</summary>
    public Regimen? Of(NightRecord day, List<Finding> findings)
    {
        if (day.Exchanges.Length < 2 || day.Exchanges.Any(exchange => exchange is not { Began: not null, Filled.Milliliters: > 0, Fluid: not null }))
        {
            return null;
        }

        HandExchange[] exchanges = [.. day.Exchanges.Select(exchange => new HandExchange(Rounded(exchange.Began!.Value), exchange.Fluid!.Solution, Rounded(exchange.Filled!.Value)))];
        var key = string.Join('|', exchanges.Select(exchange => exchange.ToString()));
        if (known.TryGetValue(key, out var regimen))
        {
            return regimen;
        }

        try
        {
            return known[key] = Regimen.Ambulatory(exchanges);
        }
        catch (Exception problem) when (problem is RegimenException or ArgumentException)
        {
            findings.Add(new(Severity.Error, "book-regimen-impossible", $"What the book says is run cannot be carried out, so nothing is expected of these days: {problem.Message}")
            {
                Row = day.Row,
                Field = "began",
            });
            return known[key] = null;
        }
    }

    private static TimeOnly Rounded(TimeOnly time) => new(Minutes * (long)Math.Round(time.ToTimeSpan().TotalMinutes / Minutes) % (24 * 60) * TimeSpan.TicksPerMinute);

    private static Volume Rounded(Volume volume) => Volume.FromMilliliters(Milliliters * Math.Round(volume.Milliliters / Milliliters));
}
