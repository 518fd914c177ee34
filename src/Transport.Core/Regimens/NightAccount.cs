using System.Collections.Immutable;

namespace Transport;

/// <summary>The volumes and times of one night as a record has them, and what they mean arithmetically.</summary>
/// <remarks>
/// <para>Of a simulated night (<see cref="Of(RegimenOutcome)"/>) it says what a record of that night would say, so that the two can be laid beside
/// each other; of a written night (<see cref="NightAccount(IEnumerable{CycleAccount})"/>) it does the sums. What was not written down is null, and
/// so is what would have to be computed from it.</para>
/// <para>Undrained fluid moves ultrafiltration from one cycle to the next; it cancels over the night but for what first and last cycle leave
/// different. 39 patients over seven nights had 230 mL less in the first and 277 mL more in the last cycle than in a middle one (read).</para>
/// </remarks>
public sealed record NightAccount
{
    /// <summary>A night of cycles.</summary>
    /// <exception cref="ArgumentException">There is none.</exception>
    public NightAccount(params IEnumerable<CycleAccount> cycles) => Cycles = [.. cycles];

    /// <summary>The cycles, in order; the last fill, which stays in for the day, is none.</summary>
    /// <exception cref="ArgumentException">There is none.</exception>
    public ImmutableArray<CycleAccount> Cycles
    {
        get;
        init => field = value.IsDefaultOrEmpty ? throw new ArgumentException("A night needs a cycle.", nameof(value)) : value;
    }

    /// <summary>
    /// What was drained before the first fill: the fluid of the day. Null: not known. After a dry day it is near zero, which is no incomplete drain.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public Volume? InitialDrain
    {
        get;
        init => field = value is { } volume ? Require.ZeroOrMore(volume, nameof(InitialDrain)) : null;
    }

    /// <summary>Everything that ran in on the day before, after its night; zero: a dry day.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public Volume DayFilled
    {
        get;
        init => field = Require.ZeroOrMore(value, nameof(DayFilled));
    }

    /// <summary>What was drained by day before the initial drain: midday exchanges.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public Volume DayDrained
    {
        get;
        init => field = Require.ZeroOrMore(value, nameof(DayDrained));
    }

    /// <summary>Filled over the cycles.</summary>
    public Volume NightFilled => Cycles.Aggregate(default(Volume), (sum, cycle) => sum + cycle.Filled);

    /// <summary>Drained over the cycles.</summary>
    public Volume NightDrained => Cycles.Aggregate(default(Volume), (sum, cycle) => sum + cycle.Drained);

    /// <summary>ΣD − ΣF over the cycles.</summary>
    public Volume NightUltrafiltration => NightDrained - NightFilled;

    /// <summary>Initial drain and drains of the day, less its fills. Negative where the day takes up fluid.</summary>
    public Volume? DayUltrafiltration => InitialDrain + DayDrained - DayFilled;

    /// <summary>Night and day.</summary>
    public Volume? Ultrafiltration => NightUltrafiltration + DayUltrafiltration;

    /// <summary>
    /// Initial drain over the day's last fluid, where one was left in and there was no midday exchange: below 1 where the day takes up fluid or the
    /// drain is incomplete.
    /// </summary>
    public double? InitialDrainShare => DayFilled > default(Volume) && DayDrained == default ? InitialDrain / DayFilled : null;

    /// <summary>Mean dwell time of the cycles; null unless each has one.</summary>
    public TimeSpan? AverageDwellTime => Sum(cycle => cycle.DwellTime) / Cycles.Length;

    /// <summary>Dwell time in all.</summary>
    public TimeSpan? DwellTime => Sum(cycle => cycle.DwellTime);

    /// <summary>Dwell time in all as it was planned.</summary>
    public TimeSpan? PlannedDwellTime => Sum(cycle => cycle.PlannedDwellTime);

    /// <summary>Dwell time in all less what was planned: negative where time was lost.</summary>
    public TimeSpan? DwellDeviation => DwellTime - PlannedDwellTime;

    /// <summary>Planned less actual dwell time, if more than zero: time that slow drains, alarms and breaks took.</summary>
    public TimeSpan? LostDwellTime => AtLeastZero(-DwellDeviation);

    /// <summary>Actual less planned dwell time, if more than zero: fast drains whose time was shared out.</summary>
    public TimeSpan? AddedDwellTime => AtLeastZero(DwellDeviation);

    /// <summary>Time of all drains; a lost dwell mostly appears here.</summary>
    public TimeSpan? DrainTime => Sum(cycle => cycle.DrainTime);

    /// <summary>
    /// What ran in and has not come out after each cycle: Σ(F − D) from the start of the night. A climb is fluid that stays in, on top of what crosses
    /// the membrane meanwhile.
    /// </summary>
    public ImmutableArray<Volume> NotYetDrained
    {
        get
        {
            var (sums, sum) = (ImmutableArray.CreateBuilder<Volume>(Cycles.Length), default(Volume));
            foreach (var cycle in Cycles)
            {
                sums.Add(sum -= cycle.Ultrafiltration);
            }

            return sums.MoveToImmutable();
        }
    }

    /// <summary>The total as a book may count it; null where the initial drain is needed and not known.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such count.</exception>
    public Volume? UltrafiltrationCountedAs(UltrafiltrationCount count) => count switch
    {
        UltrafiltrationCount.Night => NightUltrafiltration,
        UltrafiltrationCount.NightAndDay => Ultrafiltration,
        UltrafiltrationCount.NightAndInitialDrain => NightUltrafiltration + InitialDrain,
        _ => throw new ArgumentOutOfRangeException(nameof(count), count, null),
    };

    /// <summary>What a record of a simulated night would say.</summary>
    /// <remarks>In the steady rhythm the day before is the day itself. Of a single night (<see cref="RegimenOptions.FirstNight"/>) nothing is known before.</remarks>
    public static NightAccount Of(RegimenOutcome outcome)
    {
        ArgumentNullException.ThrowIfNull(outcome);
        return outcome.Options.FirstNight is null
            ? After(outcome, outcome.EveningDrain, outcome.DayExchanges, outcome.Drains)
            : new(outcome.Cycles.Select(CycleAccount.Of));
    }

    /// <summary>What the records of a simulated week would say, night by night; null on a day without treatment.</summary>
    /// <remarks>The initial drain of a night is that of the day before, the one of the first night that of the last day.</remarks>
    public static ImmutableArray<NightAccount?> Of(WeekOutcome week)
    {
        ArgumentNullException.ThrowIfNull(week);
        return [.. week.Days.Select((day, i) =>
        {
            var before = (i + week.Days.Length - 1) % week.Days.Length;
            return day is null ? null : After(day, week.EveningDrains[before], week.Days[before]?.DayExchanges ?? [], week.Days[before]?.Drains ?? []);
        })];
    }

    /// <summary>Equal if all of it is, cycle by cycle.</summary>
    public bool Equals(NightAccount? other) =>
        other is not null && Cycles.SequenceEqual(other.Cycles) && InitialDrain == other.InitialDrain && DayFilled == other.DayFilled
        && DayDrained == other.DayDrained;

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Cycles.Length, Cycles[0], InitialDrain, DayFilled);

    private static NightAccount After(
        RegimenOutcome night, Volume initial, ImmutableArray<CycleOutcome> dayBefore, ImmutableArray<DrainedFluid> drainsBefore) =>
        new(night.Cycles.Select(CycleAccount.Of))
        {
            InitialDrain = initial,
            DayFilled = dayBefore.Aggregate(default(Volume), (sum, exchange) => sum + exchange.Filled),
            DayDrained = drainsBefore.Where(drain => drain.Phase == RegimenPhase.DayDrain).Aggregate(default(Volume), (sum, drain) => sum + drain.Volume),
        };

    private static TimeSpan? AtLeastZero(TimeSpan? time) => time < TimeSpan.Zero ? TimeSpan.Zero : time;

    private TimeSpan? Sum(Func<CycleAccount, TimeSpan?> time) =>
        Cycles.Aggregate((TimeSpan?)TimeSpan.Zero, (sum, cycle) => sum + time(cycle));
}
