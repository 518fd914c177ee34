using System.Collections.Immutable;

namespace Transport.Analysis;

/// <summary>What each kind of cycle and each day gives and takes at the ensemble's center, as the columns of a programme.</summary>
internal sealed class CycleYields
{
    // What a litre and a cycle cost in g of glucose, so that of mixes alike the one with less fluid and disturbance is taken (choice).
    private const double GramsPerLiter = 0.5;
    private const double GramsPerCycle = 0.5;
    private const double UnusedMinutes = 10;

    private readonly Patient patient;
    private readonly RegimenGoals goals;
    private readonly CycleMixSpace space;
    private readonly List<(Exchange Exchange, double Minutes)> kinds = [];
    private readonly double[][] figures;
    private readonly Dictionary<(TimeSpan, int), double[]?> days = [];
    private readonly double renalUreaDose;

    public CycleYields(Patient patient, ThreePoreMembrane center, RegimenGoals goals, CycleMixSpace space, RegimenSearchOptions options)
    {
        this.patient = patient;
        this.goals = goals;
        this.space = space;
        renalUreaDose = patient.ResidualFunction.UreaClearance.LitersPerWeek / patient.BodyWater.Liters;
        var largest = goals.LargestFillOf(patient);
        var sample = new Regimen(TimeSpan.FromHours(9), [new Exchange(DialysisSolution.Glucose136, Volume.FromLiters(1))], (DayFill?)null, space.Settings);
        var residual = sample.ResidualFor(patient);
        var everyFill = options.Simulation.Transient == TransientUse.EveryFill;
        var catalog = new RingCatalog(patient, options.Screening, sample, goals.Pressure);
        List<int[]> rings = [];
        foreach (var solution in space.Solutions.Distinct().Where(solution => solution.Polymer is null && (goals.Shelf?.Glucose.Intersect(solution.Bags.Select(bag => bag.Solution)).Count() ?? 1) > 0))
        {
            foreach (var fill in space.Fills.Distinct().Where(fill => fill <= largest))
            {
                foreach (var dwell in space.Dwells.Distinct())
                {
                    var drain = space.Settings.DrainOf(fill.Milliliters + residual, residual, residual).Minutes;
                    kinds.Add((new(solution, fill, dwell), sample.FillMinutes(fill.Milliliters) + dwell.TotalMinutes + drain));
                    rings.Add(Ring([new CycleKind(solution, fill.Milliliters, dwell.TotalMinutes, drain, true, everyFill)]));
                }
            }
        }

        if (kinds.Count == 0)
        {
            throw new ArgumentException("The space holds no cycle that the limits allow.", nameof(space));
        }

        // A day is told by what it adds to a cycle that goes around with it, the first of the night, in which diffusion may start faster.
        var beside = kinds.Count / 2;
        var (reference, _) = kinds[beside];
        var kindOfReference = new CycleKind(reference.Solution, reference.Fill.Milliliters, reference.DwellTime!.Value.TotalMinutes, space.Settings.DrainOf(reference.Fill.Milliliters + residual, residual, residual).Minutes, true, options.Simulation.Transient is TransientUse.EveryFill or TransientUse.FirstFill);
        List<(TimeSpan Length, int Day, int[] Ring)> withDays = [];
        foreach (var length in space.NightLengths.Distinct())
        {
            var rest = RegimenSchedule.MinutesPerDay - length.TotalMinutes;
            for (var day = 0; day < space.DayFills.Length; day++)
            {
                if (space.DayFills[day] is not { } fill)
                {
                    withDays.Add((length, day, Ring([kindOfReference with { Start = CycleStart.Nothing }, new CycleKind(null, 0, rest, 0, false, false)])));
                }
                else if (fill.Solution.Polymer is null && fill.Volume <= largest && !goals.IsDayDry)
                {
                    var drain = space.Settings.DrainOf(fill.Volume.Milliliters + residual, residual, residual).Minutes;
                    var stays = rest - sample.FillMinutes(fill.Volume.Milliliters) - drain;
                    withDays.Add((length, day, Ring([kindOfReference, new CycleKind(fill.Solution, fill.Volume.Milliliters, stays, drain, false, everyFill)])));
                }
            }
        }

        catalog.Complete(options);
        var library = catalog.ToLibrary(seesPeak: false);
        library.Prepare(center);
        figures = [.. rings.Select(ring => Read(ring) ?? throw new ArgumentException("A cycle could not be simulated.", nameof(space)))];
        foreach (var (length, day, ring) in withDays)
        {
            var whole = Read(ring);
            days[(length, day)] = whole is null ? null : [.. whole.Zip(figures[beside], (both, one) => both - one)];
            if (days[(length, day)] is { } own)
            {
                own[(int)RegimenMeasure.FluidUsed] = space.DayFills[day]?.Volume.Liters ?? 0;
            }
        }

        Glucose = [.. figures.Select(one => one[(int)RegimenMeasure.GlucoseAbsorbed])];
        Cost = [.. kinds.Select((kind, k) => Glucose[k] + GramsPerLiter * kind.Exchange.Fill.Liters + GramsPerCycle)];

        int[] Ring(CycleKind[] ring)
        {
            var places = new int[ring.Length];
            catalog.Add(ring, places);
            return places;
        }

        // The kidneys' share is of the day and not of a cycle.
        double[]? Read(int[] ring)
        {
            var sums = new double[library.SumCount];
            double[] drained = new double[ring.Length], late = new double[ring.Length], infused = new double[catalog.InfusedCount];
            if (!library.TryRun(ring, sums, drained, late))
            {
                return null;
            }

            catalog.Infused(ring, infused);
            var into = new double[RegimenFigures.Count];
            catalog.Figures.Read(sums, infused, into, hasPeak: false);
            into[(int)RegimenMeasure.Ultrafiltration] += catalog.Doubt.Of(ring, drained, late).Shift;
            into[(int)RegimenMeasure.UreaDose] -= renalUreaDose;
            return into;
        }
    }

    public int Count => kinds.Count;

    /// <summary>Glucose of each kind, g.</summary>
    public double[] Glucose { get; }

    /// <summary>Glucose with a little for litres and disturbance, g.</summary>
    public double[] Cost { get; }

    /// <summary>The limits of a night with a day; null where the day cannot be.</summary>
    /// <param name="length">Length of the night.</param>
    /// <param name="day">Place among the days.</param>
    /// <param name="place">How far inside the fluid range, 0 (at the floor) to 1 (at the ceiling).</param>
    public MixProgramme? Programme(TimeSpan length, int day, double place)
    {
        if (days.GetValueOrDefault((length, day)) is not { } own)
        {
            return null;
        }

        var (floor, ceiling) = (goals.Fluid.Floor.Milliliters, goals.Fluid.Ceiling.Milliliters);
        var programme = new MixProgramme(Count, Math.Min(space.MostCycles, goals.MostCycles ?? int.MaxValue));
        Add(RegimenMeasure.Ultrafiltration, floor + place * (ceiling - floor), ceiling);
        if (goals.Clearance is { } goal)
        {
            // Aimed a little above, by what carried-over fluid may take.
            Add(RegimenMeasure.UreaDose, goal.Least * (place > 0 ? 1.02 : 1) - renalUreaDose, double.PositiveInfinity);
        }

        // The night is used up but for a step of dwells, so that the last dwell is hardly longer than its kind's.
        programme.Add([.. kinds.Select(kind => kind.Minutes)], length.TotalMinutes - UnusedMinutes, length.TotalMinutes);
        programme.Add([.. kinds.Select(kind => RegimenFindings.IsStrongest(kind.Exchange.Solution) ? 1.0 : 0)], 0, Math.Max(0, (goals.MostStrongestExchanges ?? 1000) - (space.DayFills[day] is { } fill && RegimenFindings.IsStrongest(fill.Solution) ? 1 : 0)));
        if (goals.MostFluid is { } most)
        {
            programme.Add([.. kinds.Select(kind => kind.Exchange.Fill.Liters)], 0, Math.Max(0, most.Liters - own[(int)RegimenMeasure.FluidUsed]));
        }

        return programme;

        void Add(RegimenMeasure measure, double least, double limit) =>
            programme.Add([.. figures.Select(one => one[(int)measure])], least - own[(int)measure], limit - own[(int)measure]);
    }

    public double GlucoseOf(ImmutableArray<double> numbers, TimeSpan length, int day) =>
        numbers.Zip(Glucose, (number, grams) => number * grams).Sum() + days[(length, day)]![(int)RegimenMeasure.GlucoseAbsorbed];

    /// <summary>What a sum of the columns is, for comparison with a simulation.</summary>
    public double SumOf(RegimenMeasure measure, ImmutableArray<double> numbers, TimeSpan length, int day) =>
        numbers.Select((number, k) => number * figures[k][(int)measure]).Sum() + days[(length, day)]![(int)measure] + (measure == RegimenMeasure.UreaDose ? renalUreaDose : 0);

    /// <summary>The regimen: strong and short before weak and long, what is left of the night to the last dwell; null: no cycle, or it cannot be carried out.</summary>
    public Regimen? ToRegimen(ImmutableArray<double> numbers, TimeSpan length, int day)
    {
        List<Exchange> cycles = [.. numbers.SelectMany((number, k) => Enumerable.Repeat(kinds[k].Exchange, (int)number))
            .OrderByDescending(cycle => cycle.Solution.Glucose).ThenBy(cycle => cycle.DwellTime).ThenBy(cycle => cycle.Fill)];
        if (cycles.Count == 0)
        {
            return null;
        }

        cycles[^1] = cycles[^1] with { DwellTime = null };
        try
        {
            return new Regimen(length, cycles, space.DayFills[day], space.Settings) { NightStart = space.NightStart };
        }
        catch (RegimenException)
        {
            return null;
        }
    }
}
