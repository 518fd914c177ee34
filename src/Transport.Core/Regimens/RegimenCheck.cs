using System.Globalization;

namespace Transport;

/// <summary>Everything that stands against a regimen, in one pass.</summary>
internal static class RegimenCheck
{
    private const double MinutesPerDay = 1440;
    private const int MostCycles = 60;

    public static List<Finding> Of(Regimen regimen)
    {
        List<Finding> findings = [];
        Cycles(regimen.Night.Length, findings);
        if (regimen.Night.Length > 0)
        {
            Night(regimen, findings);
        }

        findings.AddRange(OfTheRest(regimen));
        findings.AddRange(IcodextrinFindings.Of(regimen));
        return [.. findings.OrderByDescending(finding => finding.Severity)];
    }

    /// <summary>What can be judged without the exchanges.</summary>
    public static List<Finding> OfTheRest(Regimen regimen)
    {
        List<Finding> findings = [];
        var night = regimen.NightLength.TotalMinutes;
        if (!(night > 0))
        {
            Error(findings, "night-length", $"A night of {night:0.##} min cannot hold an exchange; it has to be more than zero.");
        }

        var day = regimen.DayFill is { } fill ? regimen.FillMinutes(fill.Volume.Milliliters) + regimen.DrainMinutes(fill.Volume.Milliliters) : 0;
        if (night + day > MinutesPerDay)
        {
            Error(findings, "night-too-long", $"A night of {night:0.##} min and {day:0.##} min for filling and draining the day fill are more than 24 h.");
        }

        if (regimen.DayFill is not { } dayFill)
        {
            return findings;
        }

        Solution(dayFill.Solution, findings);
        if (regimen.Settings.LargestFill is { } limit && dayFill.Volume > limit)
        {
            Error(findings, "day-fill-above-limit", $"A day fill of {dayFill.Volume.Milliliters:0} mL is above the largest fill of {limit.Milliliters:0} mL.");
        }

        return findings;
    }

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

    private static void Night(Regimen regimen, List<Finding> findings)
    {
        foreach (var solution in regimen.Night.Select(exchange => exchange.Solution).Distinct())
        {
            Solution(solution, findings);
        }

        var largest = regimen.Night.Max(exchange => exchange.Fill);
        if (regimen.Settings.LargestFill is { } limit && largest > limit)
        {
            Error(findings, "fill-above-limit", $"A volume per cycle of {largest.Milliliters:0} mL is above the largest fill of {limit.Milliliters:0} mL.");
        }

        Dwells(regimen, findings);
    }

    private static void Dwells(Regimen regimen, List<Finding> findings)
    {
        var night = regimen.NightLength.TotalMinutes;
        var busy = regimen.ExchangeMinutes;
        var given = regimen.Night.Sum(exchange => exchange.DwellTime?.TotalMinutes ?? 0);
        var sharing = regimen.Night.Count(exchange => exchange.DwellTime is null);
        if (sharing == 0)
        {
            if (Math.Abs(busy + given - night) > 0.01)
            {
                Error(
                    findings,
                    "night-not-filled",
                    $"The exchanges take {busy + given:0.##} min, the night has {night:0.##} min. An exchange without a dwell time takes what remains.");
            }
        }
        else if (regimen.SharedDwellMinutes <= 0)
        {
            Error(
                findings,
                "night-too-short",
                $"A night of {night:0.##} min is too short for {regimen.Cycles} cycles: fills and drains alone take {busy:0.##} min{Given(given)}. The shortest that works is {busy + given + sharing * Regimen.ShortDwell:0.##} min, with {Regimen.ShortDwell:0} min of dwell per cycle.");
            return;
        }

        var shortest = regimen.Night.Min(exchange => exchange.DwellTime?.TotalMinutes ?? regimen.SharedDwellMinutes);
        if (shortest < Regimen.ShortDwell)
        {
            findings.Add(new(
                Severity.Warning,
                "short-dwell",
                Text($"A dwell of {shortest:0.#} min is below {Regimen.ShortDwell:0} min: most of the night is filling and draining.")));
        }
    }

    private static string Given(double given) => given == 0 ? "" : Text($" and given dwells {given:0.##} min");

    private static void Solution(DialysisSolution solution, List<Finding> findings)
    {
        if (solution.Agent is not (OsmoticAgent.Glucose or OsmoticAgent.Icodextrin))
        {
            Error(findings, "solution-not-simulated", $"Only glucose and icodextrin solutions can be simulated, and {solution.Name} is neither.");
        }
    }

    private static void Error(List<Finding> findings, string code, FormattableString message) =>
        findings.Add(new(Severity.Error, code, Text(message)));

    private static string Text(FormattableString message) => message.ToString(CultureInfo.InvariantCulture);
}
