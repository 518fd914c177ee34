using System.Collections.Immutable;

namespace Transport;

/// <summary>Adds the phases of a day up to its outcome.</summary>
internal sealed class RegimenTally
{
    private readonly Patient patient;
    private readonly ThreePoreMembrane membrane;
    private readonly RegimenOptions options;
    private readonly RegimenRing ring;
    private readonly SolutePanel panel;
    private readonly double[] level;
    private readonly BodyCondition[] conditions;
    private readonly TimeSpan?[] above;

    /// <param name="patient">Whose it is.</param>
    /// <param name="membrane">The membrane.</param>
    /// <param name="options">How it was simulated.</param>
    /// <param name="ring">What happened.</param>
    /// <param name="level">Plasma, mmol/L, of what has no pool.</param>
    /// <param name="conditions">The pools.</param>
    /// <param name="above">When each day first holds more than its limit.</param>
    public RegimenTally(
        Patient patient, ThreePoreMembrane membrane, RegimenOptions options, RegimenRing ring, double[] level, BodyCondition[] conditions, TimeSpan?[] above)
    {
        this.patient = patient;
        this.membrane = membrane;
        this.options = options;
        this.ring = ring;
        panel = options.Panel;
        this.level = level;
        this.conditions = conditions;
        this.above = above;
    }

    /// <summary>One day of the ring.</summary>
    public RegimenOutcome Of(int day, Regimen regimen, PlasmaRhythm? plasma, IReadOnlyList<TimelinePoint>? timeline)
    {
        var (first, last) = (First(day), First(day + 1));
        double ultrasmall = 0, small = 0, large = 0, open = 0, minimum = double.PositiveInfinity;
        var fullest = first;
        for (var k = first; k < last; k++)
        {
            ref readonly var phase = ref ring[k];
            ultrasmall += phase.Ultrasmall;
            small += phase.Small;
            large += phase.Large;
            open += phase.Open;
            minimum = Math.Min(minimum, phase.Minimum);
            fullest = phase.Peak > ring[fullest].Peak ? k : fullest;
        }

        var solutes = Solutes(first, last);
        var glucose = solutes[SolutePanel.Glucose];
        var stays = ring.StartOf(last)[1 + SolutePanel.Glucose] - ring.StartOf(first)[1 + SolutePanel.Glucose];
        return new()
        {
            Patient = patient,
            Membrane = membrane,
            Regimen = regimen,
            Options = options,
            Cycles = Exchanges(regimen.Night, day, RegimenPhase.Fill),
            DayExchanges = Exchanges(regimen.Day, day, RegimenPhase.DayFill),
            Drains = Drains(day, last),
            EveningDrain = EveningDrain(day),
            PoreVolumes = new(Volume.FromMilliliters(ultrasmall), Volume.FromMilliliters(small), Volume.FromMilliliters(large)),
            LymphaticRemoval = Volume.FromMilliliters(membrane.LymphaticRemoval.MillilitersPerMinute * open),
            VolumeChange = Volume.FromMilliliters(ring.StartOf(last)[0] - ring.StartOf(first)[0]),
            Solutes = solutes,
            PolymerUsed = Mass.FromGrams(1e-6 * PolymerOf(k => solutes[k].Infused!.Value.Micromoles)),
            PolymerAbsorbed = Mass.FromGrams(1e-6 * PolymerOf(k =>
                solutes[k].Infused!.Value.Micromoles - solutes[k].Drained!.Value.Micromoles - ring.StartOf(last)[1 + k] + ring.StartOf(first)[1 + k])),
            GlucoseUsed = Grams(glucose.Infused!.Value),
            GlucoseAbsorbed = Grams(glucose.Infused.Value - glucose.Drained!.Value - AmountOfSubstance.FromMicromoles(stays)),
            Peak = new(
                Volume.FromMilliliters(ring[fullest].Peak), FromNight(ring[fullest].PeakTime, day), ring.Plan[fullest].Kind),
            FirstAboveLimit = above[day],
            SmallestVolume = Volume.FromMilliliters(minimum),
            Plasma = plasma,
            Timeline = timeline is null ? [] : [.. timeline],
        };
    }

    /// <summary>The bags of several phases, solute by solute.</summary>
    public ImmutableArray<SoluteRemoval> Solutes(int first, int last)
    {
        Span<double> infused = stackalloc double[panel.Count];
        Span<double> drained = stackalloc double[panel.Count];
        for (var k = first; k < last; k++)
        {
            if (ring.Plan[k] is { IsFill: true, Exchange: { } exchange })
            {
                Add(infused, CavityContents.Of(exchange.Solution, panel), exchange.Fill.Milliliters);
            }

            Add(drained, ring.DrainedBy(k), 1);
        }

        var minutes = Minutes(first, last);
        var removals = ImmutableArray.CreateBuilder<SoluteRemoval>(panel.Count);
        for (var i = 0; i < panel.Count; i++)
        {
            var pool = Array.FindIndex(conditions, condition => panel.IndexOf(condition.Pool.Solute) == i);
            var mean = pool < 0 ? level[i] : Exposure(pool, first, last) / minutes;
            var isRelative = pool < 0 && Transport.Solutes.IsProtein(panel.Solutes[i]);
            removals.Add(new(
                panel.Solutes[i],
                isRelative ? null : AmountOfSubstance.FromMicromoles(infused[i]),
                isRelative ? null : AmountOfSubstance.FromMicromoles(drained[i]),
                mean > 0 ? Clearance.FromMillilitersPerMinute((drained[i] - infused[i]) / mean / minutes) : null));
        }

        return removals.MoveToImmutable();
    }

    /// <summary>Plasma of the whole ring.</summary>
    public PlasmaRhythm Plasma(ReadOnlySpan<BodyPool> pools, int poolSlot, PlasmaCourse course, TimeOnly nightStart)
    {
        var found = ImmutableArray.CreateBuilder<PoolLevel>(pools.Length);
        for (var k = 0; k < pools.Length; k++)
        {
            var (condition, end) = (conditions[k], ring.Plan.Count);
            found.Add(new(
                condition.Pool,
                condition.Volume,
                pools[k].Generation,
                condition.Renal,
                condition.Other,
                Exposure(k, 0, end),
                ring.StartOf(end)[poolSlot + k] - ring.StartOf(0)[poolSlot + k]));
        }

        return new(found.MoveToImmutable(), course, nightStart, ring.Plan.Days);
    }

    /// <summary>What is drained at the end of a day, before the next night's first fill.</summary>
    public Volume EveningDrain(int day) => Volume.FromMilliliters(ring[First(day + 1) - 1].Drained);

    /// <summary>What the days without treatment add to the books.</summary>
    public RestFluid Rest(RegimenWeek week)
    {
        double drained = 0, ultrasmall = 0, small = 0, large = 0, open = 0;
        for (var k = 0; k < ring.Plan.Count; k++)
        {
            if (week.Days[ring.Plan[k].Day] is null)
            {
                ref readonly var phase = ref ring[k];
                drained += phase.Drained;
                ultrasmall += phase.Ultrasmall;
                small += phase.Small;
                large += phase.Large;
                open += phase.Open;
            }
        }

        return new(
            PerWeek(drained),
            new(PerWeek(ultrasmall), PerWeek(small), PerWeek(large)),
            PerWeek(membrane.LymphaticRemoval.MillilitersPerMinute * open));

        Volume PerWeek(double milliliters) => Volume.FromMilliliters(milliliters / week.Weeks);
    }

    /// <summary>What the body took up of glucose and polymer in a ring that ends as it began, per week of so many.</summary>
    public (Mass Glucose, Mass Polymer) Absorbed(int weeks)
    {
        var solutes = Solutes(0, ring.Plan.Count);
        AmountOfSubstance Kept(int k) => (solutes[k].Infused!.Value - solutes[k].Drained!.Value) * (1.0 / weeks);
        return (Grams(Kept(SolutePanel.Glucose)), Mass.FromGrams(1e-6 * PolymerOf(k => Kept(k).Micromoles)));
    }

    // A day of a week is told from the start of its own night.
    private static TimeSpan FromNight(double minutes, int day) => TimeSpan.FromMinutes(minutes - day * RegimenSchedule.MinutesPerDay);

    /// <summary>Where a day begins in the ring.</summary>
    private int First(int day)
    {
        var k = 0;
        while (k < ring.Plan.Count && ring.Plan[k].Day < day)
        {
            k++;
        }

        return k;
    }

    private static void Add(Span<double> sums, ReadOnlySpan<double> concentrations, double volume)
    {
        for (var i = 0; i < sums.Length; i++)
        {
            sums[i] += volume * concentrations[i];
        }
    }

    // µg over the fractions of a polymer.
    private double PolymerOf(Func<int, double> micromoles)
    {
        var sum = 0.0;
        for (var k = panel.PolymerStart; k < panel.Count; k++)
        {
            sum += micromoles(k) * panel.Solutes[k].MolarMassGramsPerMole;
        }

        return sum;
    }

    private static Mass Grams(AmountOfSubstance glucose) => Mass.FromGrams(glucose.Millimoles * 1e-3 * Transport.Solutes.Glucose.MolarMassGramsPerMole);

    // With constant plasma the day is the clock's; with a body it is what went by, of which the exposure was taken.
    private double Minutes(int first, int last) => conditions.Length == 0
        ? (ring.Plan[last - 1].Day - ring.Plan[first].Day + 1) * RegimenSchedule.MinutesPerDay
        : ring.TimeOf(last) - ring.TimeOf(first);

    private double Exposure(int pool, int first, int last)
    {
        var slot = ring.StartOf(0).Length - conditions.Length + pool;
        return ring.StartOf(last)[slot] - ring.StartOf(first)[slot];
    }

    private ImmutableArray<DrainedFluid> Drains(int day, int last)
    {
        var first = First(day);
        var drains = ImmutableArray.CreateBuilder<DrainedFluid>();
        for (var k = first; k < last; k++)
        {
            if (ring.Plan[k].IsDrain)
            {
                drains.Add(new(
                    FromNight(ring[k].Start, day),
                    ring.Plan[k].Kind,
                    Volume.FromMilliliters(ring[k].Drained),
                    panel,
                    InTheBag(k, first)));
            }
        }

        return drains.DrainToImmutable();
    }

    // A drain, and what the line held back or brought when the fluid ran in.
    private ImmutableArray<double> InTheBag(int drain, int first)
    {
        var amounts = ring.DrainedBy(drain).ToArray();
        for (var k = drain - 1; k >= first && !ring.Plan[k].IsDrain; k--)
        {
            Add(amounts, ring.DrainedBy(k), 1);
        }

        return [.. amounts];
    }

    // An exchange is a fill, a dwell and a drain in a row.
    private ImmutableArray<CycleOutcome> Exchanges(ImmutableArray<Exchange> exchanges, int day, RegimenPhase fill)
    {
        var outcomes = ImmutableArray.CreateBuilder<CycleOutcome>(exchanges.Length);
        for (var k = First(day); outcomes.Count < exchanges.Length; k++)
        {
            if (ring.Plan[k].Kind == fill)
            {
                var (dwell, drain) = (ring[k + 1], ring[k + 2]);
                outcomes.Add(new(
                    exchanges[outcomes.Count].Fill,
                    Volume.FromMilliliters(drain.Drained),
                    FromNight(ring[k].Start, day),
                    TimeSpan.FromMinutes(ring.Plan[k + 1].Length),
                    TimeSpan.FromMinutes(dwell.End - dwell.Start),
                    TimeSpan.FromMinutes(drain.End - drain.Start),
                    Carried(ring.StartOf(k)),
                    Volume.FromMilliliters(ring.StartOf(k + 3)[0])));
            }
        }

        return outcomes.MoveToImmutable();
    }

    private ResidualFluid Carried(ReadOnlySpan<double> state)
    {
        var volume = state[0];
        return new()
        {
            Volume = Volume.FromMilliliters(volume),
            Urea = Concentration.FromMillimolesPerLiter(state[1 + SolutePanel.Urea] / volume),
            Creatinine = Concentration.FromMillimolesPerLiter(state[1 + SolutePanel.Creatinine] / volume),
            Glucose = Concentration.FromMillimolesPerLiter(state[1 + SolutePanel.Glucose] / volume),
            Sodium = Concentration.FromMillimolesPerLiter(state[1 + SolutePanel.Sodium] / volume),
            Others = Others(state),
        };
    }

    private ImmutableDictionary<Solute, Concentration> Others(ReadOnlySpan<double> state)
    {
        var others = OtherSolutes.None;
        for (var i = SolutePanel.Sodium + 1; i < panel.Count; i++)
        {
            if (!Transport.Solutes.IsProtein(panel.Solutes[i]))
            {
                others = others.Add(panel.Solutes[i], Concentration.FromMillimolesPerLiter(state[1 + i] / state[0]));
            }
        }

        return others;
    }
}
