namespace Transport;

/// <summary>Runs regimens one after another with the same integrator. One per thread.</summary>
internal sealed class RegimenWorkspace
{
    private readonly CavityRun run = new();
    private (SolutePanel? Panel, PolymerDistribution? Polymer, SolutePanel Extended) withPolymer;

    /// <summary>Whether the moment is looked for at which a day first holds more than its limit; it takes another day of simulation where one does.</summary>
    public bool SeesLimit { get; init; } = true;

    public RegimenOutcome Run(Patient patient, ThreePoreMembrane membrane, Regimen regimen, RegimenOptions options, RunControl control)
    {
        ArgumentNullException.ThrowIfNull(regimen);
        var (tally, _, plasma, timeline) = Go(patient, membrane, [regimen], regimen, options, control);
        return tally.Of(0, regimen, plasma, timeline);
    }

    public WeekOutcome Run(Patient patient, ThreePoreMembrane membrane, RegimenWeek week, RegimenOptions options, RunControl control)
    {
        ArgumentNullException.ThrowIfNull(week);
        var first = week.Days.OfType<Regimen>().First();
        var (tally, ring, plasma, timeline) = Go(patient, membrane, week.Days.AsSpan(), first, options, control);
        var glucose = tally.Absorbed(week.Weeks);
        return new()
        {
            Week = week,
            Days = [.. week.Days.Select((regimen, day) => regimen is null ? null : tally.Of(day, regimen, null, null))],
            Solutes = [.. tally.Solutes(0, ring.Plan.Count).Select(solute => solute.Over(week.Weeks))],
            Rest = tally.Rest(week),
            GlucoseAbsorbed = glucose.Glucose,
            PolymerAbsorbed = glucose.Polymer,
            Timeline = timeline is null ? [] : [.. timeline],
            EveningDrains = [.. Enumerable.Range(0, week.Days.Length).Select(tally.EveningDrain)],
            Plasma = plasma,
            Patient = patient,
            Options = options,
        };
    }

    private (RegimenTally Tally, RegimenRing Ring, PlasmaRhythm? Plasma, IReadOnlyList<TimelinePoint>? Timeline) Go(
        Patient patient, ThreePoreMembrane membrane, ReadOnlySpan<Regimen?> days, Regimen first, RegimenOptions options, RunControl control)
    {
        ArgumentNullException.ThrowIfNull(patient);
        ArgumentNullException.ThrowIfNull(membrane);
        if (!(patient.Plasma.Urea.MillimolesPerLiter > 0))
        {
            throw new ArgumentException("The patient has no plasma urea, over which no clearance can be formed.", nameof(patient));
        }

        options = options with { Panel = PanelWith(options.Panel, days) };
        var residual = first.ResidualFor(patient);
        foreach (var regimen in days)
        {
            regimen?.OrThrow(residual);
        }

        var panel = options.Panel;
        var conditions = options.Body is { } body ? BodyCondition.Of(patient, body, panel, first.NightStart, days.Length) : [];
        BodyPool[] pools = [.. conditions.Select(condition => condition.Behind(membrane, panel))];
        var level = CavityContents.Of(patient.Plasma, panel);
        foreach (var pool in pools)
        {
            level[pool.Solute] = pool.UsualLevel;
        }

        run.Prepare(patient, membrane, options, level, pools);
        Begin(patient, residual, panel, pools, options.FirstNight);
        var ring = new RegimenRing(run, new(days, residual), first, panel.Count);
        if (options.FirstNight is null)
        {
            run.HoldsPools = true;
            ring.Settle(control);
            if (pools.Length > 0)
            {
                BodyRhythm.Settle(run, ring, conditions, control);
            }
        }
        else if (conditions.Any(condition => condition.FindsGeneration))
        {
            throw new ArgumentException("A single night has no rhythm from which a generation could be found; it has to be given.", nameof(options));
        }

        PlasmaCourse? course = null;
        if (options.FirstNight is not null || options.Timeline is not null || pools.Length > 0)
        {
            run.Sampler = options.Timeline is { } interval ? new(interval.TotalMinutes, panel, options.Pressure ?? CavityPressure.Population, run.State.Length) : null;
            run.Course = course = pools.Length > 0 ? new([.. pools.Select(pool => pool.Volume)], run.Time, ring.Period) : null;
            ring.Once(control);
        }

        var points = run.Sampler?.Points;
        var above = SeesLimit ? FirstAbove.Of(run, ring, days, panel, control) : new TimeSpan?[days.Length];
        var tally = new RegimenTally(patient, membrane, options, ring, level, conditions, above);
        return (tally, ring, course is null ? null : tally.Plasma(pools, run.PoolSlot, course, first.NightStart), points);
    }

    // The same panel for the same polymer, so that equations on hand are known again.
    private SolutePanel PanelWith(SolutePanel panel, ReadOnlySpan<Regimen?> days)
    {
        PolymerDistribution? polymer = null;
        foreach (var regimen in days)
        {
            polymer ??= regimen?.Polymer;
        }

        if (!ReferenceEquals(withPolymer.Panel, panel) || !ReferenceEquals(withPolymer.Polymer, polymer))
        {
            withPolymer = (panel, polymer, panel.With(polymer));
        }

        return withPolymer.Extended;
    }

    // The fluid before the first fill, and the pools at their levels.
    private void Begin(Patient patient, double residual, SolutePanel panel, BodyPool[] pools, ResidualFluid? given)
    {
        var first = given ?? ResidualFluid.Used(Volume.FromMilliliters(residual), patient.Plasma);
        var concentrations = CavityContents.Of(first, panel);
        foreach (var pool in pools)
        {
            if (Solutes.IsProtein(panel.Solutes[pool.Solute]))
            {
                concentrations[pool.Solute] *= pool.UsualLevel;
            }
        }

        DwellStart.Write<Real>(run.State, 0, new double[panel.Count], Real.Of(first.Volume.Milliliters), concentrations);
        for (var k = 0; k < pools.Length; k++)
        {
            run.State[run.PoolSlot + k] = Real.Of(pools[k].UsualLevel * pools[k].Volume);
        }
    }
}
