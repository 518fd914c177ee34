using System.Collections.Immutable;

namespace Transport.Analysis;

/// <summary>Nights of any cycles: every cycle may have its own fill, dwell and solution, so that no grid can hold them.</summary>
public sealed record CycleMixSpace
{
    /// <summary>Fills.</summary>
    public required ImmutableArray<Volume> Fills { get; init => field = Require.Made(value, nameof(Fills)); }

    /// <summary>Dwells of a cycle.</summary>
    public ImmutableArray<TimeSpan> Dwells { get; init => field = Require.Made(value, nameof(Dwells)); } = [.. Enumerable.Range(0, 17).Select(i => TimeSpan.FromMinutes(20 + 10 * i))];

    /// <summary>Solutions of the night.</summary>
    public ImmutableArray<DialysisSolution> Solutions { get; init => field = Require.Made(value, nameof(Solutions)); } = [.. DialysisSolution.UsualGlucose];

    /// <summary>Night lengths.</summary>
    public ImmutableArray<TimeSpan> NightLengths { get; init => field = Require.Made(value, nameof(NightLengths)); } = [TimeSpan.FromHours(8), TimeSpan.FromHours(9), TimeSpan.FromHours(10)];

    /// <summary>Day fills; null in the list is a dry day.</summary>
    public ImmutableArray<DayFill?> DayFills { get; init => field = Require.Made(value, nameof(DayFills)); } = [null];

    /// <summary>Most cycles of a night.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not between 1 and 40.</exception>
    public int MostCycles { get; init => field = (int)Require.InRange(value, 1, 40, "cycles", nameof(MostCycles)); } = 12;

    /// <summary>Clock time of the first fill of the night.</summary>
    public TimeOnly NightStart { get; init; } = new(22, 0);

    /// <summary>Belly, catheter and machine.</summary>
    public RegimenSettings Settings { get; init; } = RegimenSettings.Default;

    /// <summary>How many kinds of cycle there are.</summary>
    public int Kinds => Fills.Length * Dwells.Length * Solutions.Length;

    /// <summary>How many nights and days can be made of them, whatever the order of the cycles; too many to be looked at one by one.</summary>
    public double Count
    {
        get
        {
            // Of k kinds, up to n at a time: (k + n)! / (k! n!).
            var nights = 1.0;
            for (var i = 1; i <= MostCycles; i++)
            {
                nights *= (double)(Kinds + i) / i;
            }

            return nights * NightLengths.Length * DayFills.Length;
        }
    }

    /// <summary>From 1.5 L in steps of 100 mL up to the largest fill; dwells of 20 to 180 min in steps of 10; the solutions and days of the usual space.</summary>
    public static CycleMixSpace Usual(Patient patient, RegimenGoals goals)
    {
        ArgumentNullException.ThrowIfNull(goals);
        var usual = RegimenSpace.OfShelf(patient, goals);
        var largest = goals.LargestFillOf(patient).Milliliters;
        var smallest = Math.Min(1500, 100 * Math.Floor(largest / 100));
        return new()
        {
            Fills = [.. Enumerable.Range(0, 1 + (int)((largest - smallest) / 100)).Select(i => Volume.FromMilliliters(smallest + 100 * i))],
            Solutions = usual.NightSolutions,
            NightLengths = [.. usual.NightLengths.Where(length => length <= goals.LongestNight)],
            DayFills = usual.DayFills,
            MostCycles = goals.MostCycles ?? 12,
            NightStart = usual.NightStart,
        };
    }
}
