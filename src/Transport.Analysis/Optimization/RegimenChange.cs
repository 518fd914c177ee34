using System.Globalization;

namespace Transport.Analysis;

/// <summary>What becomes different when one regimen takes the place of another.</summary>
/// <param name="Count">How many things change.</param>
/// <param name="Text">What they are: "one cycle fewer; day fill glucose 2.27 % instead of glucose 1.36 %".</param>
public sealed record RegimenChange(int Count, string Text)
{
    private const double MaterialMinutes = 15;

    /// <summary>What they are.</summary>
    public override string ToString() => Text;

    /// <summary>From one regimen to another.</summary>
    public static RegimenChange Between(Regimen present, Regimen other)
    {
        ArgumentNullException.ThrowIfNull(present);
        ArgumentNullException.ThrowIfNull(other);
        List<string> changes = [];
        if (present.IsByHand || other.IsByHand)
        {
            ByHand(present, other, changes);
        }
        else
        {
            Night(present, other, changes);
        }

        if (present.Day.Length > 1 || other.Day.Length > 1)
        {
            if (!present.Day.SequenceEqual(other.Day))
            {
                changes.Add($"by day {RegimenWords.OfDay(other)} instead of {RegimenWords.OfDay(present)}");
            }
        }
        else
        {
            Day(present.DayFill, other.DayFill, changes);
        }

        return new(changes.Count, changes.Count == 0 ? "as now" : string.Join("; ", changes));
    }

    /// <summary>From one week to another.</summary>
    public static RegimenChange Between(RegimenWeek present, RegimenWeek other)
    {
        ArgumentNullException.ThrowIfNull(present);
        ArgumentNullException.ThrowIfNull(other);
        if (present.Equals(other))
        {
            return new(0, "as now");
        }

        // One regimen on some days each: what becomes of the regimen, and on how many days.
        if (present.Days.OfType<Regimen>().Distinct().ToList() is [var before] && other.Days.OfType<Regimen>().Distinct().ToList() is [var after])
        {
            var (change, days, daysNow) = (Between(before, after), DaysPerWeek(other), DaysPerWeek(present));
            return days == daysNow ? change : new(
                change.Count + 1,
                (change.Count > 0 ? change.Text + "; " : "") + Words($"{days:0.#} days a week instead of {daysNow:0.#}"));
        }

        return new(1, $"another week: {other.Describe()}");

        static double DaysPerWeek(RegimenWeek week) => (double)week.Nights / week.Weeks;
    }

    // Cycles and volumes per cycle are words of a machine's night. The clock of a hand is not a machine's: a quarter of an hour is nothing (choice).
    private static void ByHand(Regimen present, Regimen other, List<string> changes)
    {
        if (present.IsByHand != other.IsByHand)
        {
            changes.Add(other.IsByHand ? "exchanges by hand instead of cycles at night" : "cycles at night instead of exchanges by hand");
        }

        // One bag for another is a change of its own; cycles for a bag change the volume anyway, so that between them only fluids are compared.
        var (night, nightNow) = present.IsByHand && other.IsByHand
            ? (RegimenWords.OvernightByHand(other), RegimenWords.OvernightByHand(present))
            : (OvernightFluid(other), OvernightFluid(present));
        if (night != nightNow)
        {
            changes.Add($"overnight {night} instead of {nightNow}");
        }

        // Of a night that becomes dry, or no longer is, the length says nothing that the day does not.
        if (present.Night.IsEmpty == other.Night.IsEmpty && (other.NightLength - present.NightLength).TotalMinutes is var minutes && Math.Abs(minutes) >= MaterialMinutes)
        {
            changes.Add(Words($"{(other.Night.IsEmpty ? "dry" : "overnight")} {Math.Abs(minutes):0} min {(minutes > 0 ? "longer" : "shorter")}"));
        }
    }

    private static string OvernightFluid(Regimen regimen) => regimen.Night.IsEmpty ? "dry" : Fluid(regimen);

    private static void Night(Regimen present, Regimen other, List<string> changes)
    {
        var minutes = (other.NightLength - present.NightLength).TotalMinutes;
        if (Math.Abs(minutes) >= 0.5)
        {
            changes.Add(Words($"night {Math.Abs(minutes):0} min {(minutes > 0 ? "longer" : "shorter")}"));
        }

        var cycles = other.Cycles - present.Cycles;
        if (cycles != 0)
        {
            var number = Math.Abs(cycles) == 1 ? "one cycle" : Words($"{Math.Abs(cycles)} cycles");
            changes.Add($"{number} {(cycles > 0 ? "more" : "fewer")}");
        }

        var (before, after) = (Mean(present), Mean(other));
        if (Math.Abs(after - before) >= 0.5)
        {
            changes.Add(Words($"{Math.Abs(after - before):0} mL {(after > before ? "more" : "less")} per cycle"));
        }

        var (fluid, otherFluid) = (Fluid(present), Fluid(other));
        if (fluid != otherFluid)
        {
            changes.Add($"at night {otherFluid} instead of {fluid}");
        }

        if (!Partial(present).SequenceEqual(Partial(other)))
        {
            changes.Add(Partial(other).Any() ? $"tidal drains{(Partial(present).Any() ? " of another size" : "")}" : "complete drains");
        }
    }

    private static void Day(DayFill? present, DayFill? other, List<string> changes)
    {
        switch (present, other)
        {
            case (null, null):
                return;
            case ({ } gone, null):
                changes.Add($"no day fill instead of {gone.Volume.Liters.ToString("0.0##", CultureInfo.InvariantCulture)} L");
                return;
            case (null, { } added):
                changes.Add($"a day fill of {added.Volume.Liters.ToString("0.0##", CultureInfo.InvariantCulture)} L {added.Solution.Name}");
                return;
        }

        var milliliters = (other!.Volume - present!.Volume).Milliliters;
        if (Math.Abs(milliliters) >= 0.5)
        {
            changes.Add(Words($"{Math.Abs(milliliters):0} mL {(milliliters > 0 ? "more" : "less")} day fill"));
        }

        if (other.Solution != present.Solution)
        {
            changes.Add($"day fill {other.Solution.Name} instead of {present.Solution.Name}");
        }
    }

    private static IEnumerable<PartialDrain> Partial(Regimen regimen) => regimen.Night.Select(exchange => exchange.PartialDrain).OfType<PartialDrain>().Distinct();

    private static double Mean(Regimen regimen) => regimen.Night.Select(exchange => exchange.Fill.Milliliters).DefaultIfEmpty().Average();

    // Runs of one solution, the last without its length: a cycle more at the end is no change of fluid.
    private static string Fluid(Regimen regimen)
    {
        List<(string Name, int Count)> runs = [];
        foreach (var exchange in regimen.Night)
        {
            if (runs.Count > 0 && runs[^1].Name == exchange.Solution.Name)
            {
                runs[^1] = (runs[^1].Name, runs[^1].Count + 1);
            }
            else
            {
                runs.Add((exchange.Solution.Name, 1));
            }
        }

        return string.Join(", then ", runs.Select((run, i) => i == runs.Count - 1 ? run.Name : Words($"{run.Count} × {run.Name}")));
    }

    private static string Words(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
