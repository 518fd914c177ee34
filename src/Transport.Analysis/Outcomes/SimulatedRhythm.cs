using System.Collections.Immutable;

namespace Transport.Analysis;

/// <summary>What is repeated, a day or a week, as one membrane has it: amounts are means per day, clearances those of the whole rhythm.</summary>
/// <remarks>What the days without treatment add is in the means.</remarks>
internal sealed class SimulatedRhythm
{
    private readonly int length;
    private readonly ImmutableArray<SoluteRemoval> solutes;
    private readonly double daysOfSolutes;
    private readonly double drainedAtRest;

    private SimulatedRhythm(ImmutableArray<RegimenOutcome> days, int length, ImmutableArray<SoluteRemoval> solutes, double daysOfSolutes)
    {
        (Days, this.length, this.solutes, this.daysOfSolutes) = (days, length, solutes, daysOfSolutes);
        GlucoseAbsorbedGrams = Mean(day => day.GlucoseAbsorbed.Grams);
        PolymerAbsorbedGrams = Mean(day => day.PolymerAbsorbed.Grams);
        Plasma = days[0].Plasma;
    }

    private SimulatedRhythm(WeekOutcome week)
        : this([.. week.Days.OfType<RegimenOutcome>()], week.Days.Length, week.Solutes, 7)
    {
        Week = week;
        drainedAtRest = week.Rest.Drained.Milliliters / 7;
        GlucoseAbsorbedGrams = week.GlucoseAbsorbed.Grams / 7;
        PolymerAbsorbedGrams = week.PolymerAbsorbed.Grams / 7;
        Plasma = week.Plasma;
    }

    /// <summary>A day that is repeated.</summary>
    public static SimulatedRhythm Of(RegimenOutcome day) => new([day], 1, day.Solutes, 1);

    /// <summary>A week, or several that alternate.</summary>
    public static SimulatedRhythm Of(WeekOutcome week) => new(week);

    /// <summary>The week; null where a day is repeated.</summary>
    public WeekOutcome? Week { get; }

    /// <summary>The days with treatment.</summary>
    public ImmutableArray<RegimenOutcome> Days { get; }

    public Patient Patient => Days[0].Patient;

    public PlasmaRhythm? Plasma { get; }

    public double GlucoseAbsorbedGrams { get; }

    public double PolymerAbsorbedGrams { get; }

    public double NightUltrafiltration => Mean(day => day.NightUltrafiltration.Milliliters);

    public double DayUltrafiltration => Mean(day => day.DayUltrafiltration.Milliliters) + drainedAtRest;

    public double Cycles => Mean(day => day.Cycles.Length);

    public double LargestVolume => Days.Max(day => day.Peak.Volume.Milliliters);

    public IEnumerable<TimelinePoint> Timeline => Week?.Timeline ?? Days[0].Timeline;

    /// <summary>A figure of the days with treatment as the mean of all days.</summary>
    public double Mean(Func<RegimenOutcome, double> read) => Days.Sum(read) / length;

    /// <summary>Clearance of a solute, or null where it was not followed or plasma holds none.</summary>
    public Clearance? ClearanceOf(Solute solute) => Find(solute)?.Clearance;

    /// <summary>Removal per day, or null where it is not known.</summary>
    public double? RemovedMillimoles(Solute solute) => Find(solute)?.Removed?.Millimoles / daysOfSolutes;

    private SoluteRemoval? Find(Solute solute)
    {
        foreach (var removal in solutes)
        {
            if (removal.Solute == solute)
            {
                return removal;
            }
        }

        return null;
    }
}
