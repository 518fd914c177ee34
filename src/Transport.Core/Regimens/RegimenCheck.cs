using System.Globalization;

namespace Transport;

/// <summary>Everything that stands against a regimen, in one pass.</summary>
internal static class RegimenCheck
{
    private const double MinutesPerDay = RegimenSchedule.MinutesPerDay;
    public const int MostCycles = 60;

    /// <param name="regimen">The regimen.</param>
    /// <param name="residual">Volume left after a drain, mL, which decides how long a drain of two slopes is planned to take.</param>
    public static List<Finding> Of(Regimen regimen, double residual)
    {
        List<Finding> findings = [];
        var schedule = new RegimenSchedule(regimen, residual);
        if (regimen.Night.Length > 0 || regimen.Day.Length == 0)
        {
            Cycles(regimen.Night.Length, findings);
        }

        if (regimen.Night.Length > 0)
        {
            Night(regimen, schedule, findings);
        }

        findings.AddRange(OfTheRest(regimen, schedule));
        findings.AddRange(IcodextrinFindings.Of(regimen, schedule));
        return [.. findings.OrderByDescending(finding => finding.Severity)];
    }

    /// <summary>What can be judged without the exchanges of the night.</summary>
    public static List<Finding> OfTheRest(Regimen regimen) => OfTheRest(regimen, new(regimen, regimen.UsualResidual));

    private static List<Finding> OfTheRest(Regimen regimen, RegimenSchedule schedule)
    {
        List<Finding> findings = [];
        var night = regimen.NightLength.TotalMinutes;
        if (!(night > 0))
        {
            Error(findings, "night-length", $"A night of {night:0.##} min cannot hold an exchange; it has to be more than zero.");
        }

        var given = schedule.Day.Sum(leg => leg.Given ?? 0);
        if (night + schedule.DayBusy + given > MinutesPerDay)
        {
            Error(findings, "night-too-long", $"A night of {night:0.##} min and {schedule.DayBusy:0.##} min for filling and draining the day fill{Given(given)} are more than 24 h.");
        }

        foreach (var solution in regimen.Day.Select(exchange => exchange.Solution).Distinct())
        {
            Solution(solution, findings);
        }

        Mixes(regimen, findings);
        if (regimen.Day.Length > 0)
        {
            DayFillLimit(regimen.Day.Max(exchange => exchange.Fill), regimen.Settings, findings);
        }

        return findings;
    }

    /// <summary>Two exchanges by hand with no time between them.</summary>
    public static Finding HandsTooClose(TimeOnly first, TimeOnly second) => new(
        Severity.Error,
        "hand-exchanges-too-close",
        Text($"Between {first:HH:mm} and {second:HH:mm} there is no time to drain, fill and dwell."));

    public static void Cycles(int cycles, List<Finding> findings)
    {
        if (cycles is < 1 or > MostCycles)
        {
            Error(findings, "cycles", $"A night of {cycles} cycles is none; 1 to {MostCycles} are possible.");
        }
    }

    public static void Fill(Volume fill, List<Finding> findings)
    {
        if (!(fill.Milliliters > 0))
        {
            Error(findings, "fill-not-positive", $"A volume per cycle of {fill.Milliliters:0} mL is no fill; it has to be more than zero.");
        }
    }

    public static void FillLimit(Volume fill, RegimenSettings settings, List<Finding> findings)
    {
        if (settings.LargestFill is { } limit && fill > limit)
        {
            Error(findings, "fill-above-limit", $"A volume per cycle of {fill.Milliliters:0} mL is above the largest fill of {limit.Milliliters:0} mL.");
        }
    }

    public static void DayFillLimit(Volume fill, RegimenSettings settings, List<Finding> findings)
    {
        if (settings.LargestFill is { } limit && fill > limit)
        {
            Error(findings, "day-fill-above-limit", $"A day fill of {fill.Milliliters:0} mL is above the largest fill of {limit.Milliliters:0} mL.");
        }
    }

    private static void Night(Regimen regimen, RegimenSchedule schedule, List<Finding> findings)
    {
        foreach (var solution in regimen.Night.Select(exchange => exchange.Solution).Distinct())
        {
            Solution(solution, findings);
        }

        FillLimit(regimen.Night.Max(exchange => exchange.Fill), regimen.Settings, findings);
        Dwells(regimen, schedule, findings);
    }

    private static void Dwells(Regimen regimen, RegimenSchedule schedule, List<Finding> findings)
    {
        var night = regimen.NightLength.TotalMinutes;
        var busy = schedule.NightBusy;
        var given = regimen.Night.Sum(exchange => exchange.DwellTime?.TotalMinutes ?? 0);
        var sharing = regimen.Night.Count(exchange => exchange.DwellTime is null);
        if (sharing == 0)
        {
            // Written for a person of 1.73 m²; what another one's drains take longer or less long moves the end of the night by seconds.
            busy = new RegimenSchedule(regimen, regimen.UsualResidual).NightBusy;
            if (Math.Abs(busy + given - night) > 0.01)
            {
                Error(
                    findings,
                    "night-not-filled",
                    $"The exchanges take {busy + given:0.##} min, the night has {night:0.##} min. An exchange without a dwell time takes what remains.");
            }
        }
        else if (schedule.NightShare <= 0)
        {
            Error(
                findings,
                "night-too-short",
                $"A night of {night:0.##} min is too short for {regimen.Cycles} cycles: fills and drains alone take {busy:0.##} min{Given(given)}. The shortest that works is {busy + given + sharing * Regimen.ShortDwell:0.##} min, with {Regimen.ShortDwell:0} min of dwell per cycle.");
            return;
        }

        var shortest = schedule.Night.Min(leg => leg.Dwell);
        if (shortest < Regimen.ShortDwell)
        {
            findings.Add(new(
                Severity.Warning,
                "short-dwell",
                Text($"A dwell of {shortest:0.#} min is below {Regimen.ShortDwell:0} min: most of the night is filling and draining.")));
        }
    }

    // A machine mixes the bag on its heater with what hangs beside it: while it mixes, no third solution is at hand but the bag of the day.
    private static void Mixes(Regimen regimen, List<Finding> findings)
    {
        var mixed = regimen.Exchanges.Where(exchange => exchange.Solution.Mix is not null);
        if (!mixed.Any())
        {
            return;
        }

        var bags = regimen.Night.Concat(mixed).SelectMany(exchange => exchange.Solution.Bags.Select(bag => bag.Solution)).Distinct().ToList();
        if (bags.Count > 2)
        {
            Error(findings, "mix-not-possible", $"A machine mixes two solutions, and this regimen draws on {bags.Count}: {string.Join(", ", bags.Select(solution => solution.Name))}. Make do with two, or leave one unmixed for the day.");
        }
    }

    /// <summary>An exchange by hand of what only a machine mixes.</summary>
    public static Finding MixByHand(DialysisSolution solution) => new(
        Severity.Error, "mix-not-possible", $"Exchanges by hand take one bag, and {solution.Name} is mixed by a machine of two. Take one of them.");

    private static string Given(double given) => given == 0 ? "" : Text($" and given dwells {given:0.##} min");

    private static void Solution(DialysisSolution solution, List<Finding> findings)
    {
        if (solution.Agent is not (OsmoticAgent.Glucose or OsmoticAgent.Icodextrin))
        {
            Error(findings, "solution-not-simulated", $"Only glucose and icodextrin solutions can be simulated, and {solution.Name} is neither.");
        }
    }

    public static void Error(List<Finding> findings, string code, FormattableString message) =>
        findings.Add(new(Severity.Error, code, Text(message)));

    private static string Text(FormattableString message) => message.ToString(CultureInfo.InvariantCulture);
}
