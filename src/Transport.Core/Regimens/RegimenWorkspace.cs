namespace Transport;

/// <summary>
/// Runs regimens one after another with the same integrator. One per thread: it keeps nothing between runs but memory and the
/// equations of the last membrane.
/// </summary>
/// <remarks>
/// The day is a ring of phases. They are run around until the cavity meets, at the start of a phase, what it was there one day earlier; from
/// there on every phase would repeat what is on record. Only the residual fluid is carried from cycle to cycle, a tenth of the
/// contents and half forgotten, so that a day and about six cycles suffice.
/// </remarks>
internal sealed class RegimenWorkspace
{
    private const double MinutesPerDay = 1440;
    private const double SteadyTolerance = 1e-9;
    private const int MostDays = 60;

    // Per 1.73 m²: a cavity with less is closed; a drain slower than this counts as done when little is left to drain.
    private const double ClosedVolume = 10;
    private const double SlowestDrain = 20;

    private SolutePanel panel = SolutePanel.Small;
    private PhaseRecord[] phases = new PhaseRecord[32];
    private double[] starts = new double[32 * 6];
    private DormandPrince853<Real, ThreePoreSystem<Real>>? integrator;
    private Real[] state = [];
    private int count;

    // What the equations on hand belong to.
    private PlasmaComposition? plasma;
    private ThreePoreMembrane? membrane;
    private Volume? supine;
    private PolymerDistribution? polymer;
    private ThreePoreSystem<Real> night;
    private ThreePoreSystem<Real> day;

    // The run.
    private Regimen regimen = null!;
    private RegimenOptions options = null!;
    private TimelineSampler? sampler;
    private double residual;
    private double closed;
    private double slowestDrain;
    private double sharedDwell;
    private double instilled;
    private double t;

    public RegimenOutcome Run(Patient patient, ThreePoreMembrane membrane, Regimen regimen, RegimenOptions options, RunControl control)
    {
        ArgumentNullException.ThrowIfNull(patient);
        ArgumentNullException.ThrowIfNull(membrane);
        ArgumentNullException.ThrowIfNull(regimen);
        if (!(patient.Plasma.Urea.MillimolesPerLiter > 0))
        {
            throw new ArgumentException("The patient has no plasma urea, over which no clearance can be formed.", nameof(patient));
        }

        this.regimen = regimen.OrThrow();
        this.options = options;
        Prepare(patient, membrane);
        Plan();

        // The step size looks at the fresh fluid, so the fluid of an earlier regimen must not be left: results are the same in any order.
        night.Fresh.Clear();
        day.Fresh.Clear();
        sampler = null;
        var first = options.FirstNight ?? ResidualFluid.Used(Volume.FromMilliliters(residual), patient.Plasma);
        DwellStart.Write<Real>(state, 0, night.Fresh, Real.Of(first.Volume.Milliliters), CavityContents.Of(first, panel));
        t = 0;
        if (options.FirstNight is null)
        {
            Settle(control);
            if (options.Timeline is not null)
            {
                Restart();
                OneDay(control, options.Timeline);
            }
        }
        else
        {
            OneDay(control, options.Timeline);
        }

        return RegimenTally.Of(patient, membrane, regimen, options, Phases, Starts, StateAtEnd(), sampler?.Points);
    }

    // Volume and amounts, which are carried from phase to phase.
    private int StateSize => 1 + panel.Count;

    private ReadOnlySpan<PhaseRecord> Phases => phases.AsSpan(0, count);

    private ReadOnlySpan<double> Starts => starts.AsSpan(0, count * (StateSize + 1));

    private void Prepare(Patient patient, ThreePoreMembrane membrane)
    {
        var scale = patient.SurfaceFactor;
        residual = regimen.ResidualFor(patient);
        closed = Math.Min(ClosedVolume * scale, 0.5 * residual);
        slowestDrain = SlowestDrain * scale;
        var supineHere = membrane.VolumePerPressure is null ? null : options.SupineVolumePerPressure * scale;
        if (integrator is not null && ReferenceEquals(this.membrane, membrane) && ReferenceEquals(plasma, patient.Plasma) && supine == supineHere && ReferenceEquals(polymer, regimen.Polymer))
        {
            return;
        }

        polymer = regimen.Polymer;
        panel = SolutePanel.Small.With(polymer);
        var level = CavityContents.Of(patient.Plasma, panel);
        var lying = supineHere is { } volume ? membrane with { VolumePerPressure = volume } : membrane;
        night = new(lying, FreeParameters<Real>.From(lying), panel, level) { CollectsDrain = true };
        day = new(membrane, FreeParameters<Real>.From(membrane), panel, level) { CollectsDrain = true };
        (this.membrane, plasma, supine) = (membrane, patient.Plasma, supineHere);
        if (integrator is null || state.Length != night.Dimension)
        {
            integrator = new(night);
            state = new Real[night.Dimension];
        }
    }

    private void Plan()
    {
        count = 0;
        Array.Resize(ref starts, Math.Max(starts.Length, phases.Length * (StateSize + 1)));
        sharedDwell = regimen.SharedDwellMinutes;
        for (var cycle = 0; cycle < regimen.Night.Length; cycle++)
        {
            Add(RegimenPhase.Fill, cycle);
            Add(RegimenPhase.Dwell, cycle);
            Add(RegimenPhase.Drain, cycle);
        }

        if (regimen.DayFill is not null)
        {
            Add(RegimenPhase.DayFill, 0);
        }

        Add(RegimenPhase.Day, 0);
        Add(RegimenPhase.EveningDrain, 0);
    }

    private void Add(RegimenPhase kind, int cycle)
    {
        if (count == phases.Length)
        {
            Array.Resize(ref phases, 2 * count);
            Array.Resize(ref starts, 2 * count * (StateSize + 1));
        }

        phases[count++] = new() { Kind = kind, Cycle = cycle };
    }

    // Around the ring until it closes.
    private void Settle(RunControl control)
    {
        for (var days = 0; days < MostDays; days++)
        {
            control.Cancellation.ThrowIfCancellationRequested();
            for (var k = 0; k < count; k++)
            {
                if (days > 0 && RepeatsItself(k))
                {
                    Recall(0);
                    return;
                }

                RunPhase(k);
            }

            t -= MinutesPerDay;
        }

        throw new IntegrationException(t, $"the rhythm of the day did not settle in {MostDays} days.");
    }

    private void OneDay(RunControl control, TimeSpan? interval)
    {
        control.Cancellation.ThrowIfCancellationRequested();
        sampler = interval is { } time ? new(time.TotalMinutes) : null;
        for (var k = 0; k < count; k++)
        {
            RunPhase(k);
        }

        sampler?.End(t, state);
    }

    private void Restart()
    {
        t = starts[0];
        Recall(0);
    }

    private Span<double> StartOf(int phase) => starts.AsSpan(phase * (StateSize + 1), StateSize + 1);

    private bool RepeatsItself(int phase)
    {
        var before = StartOf(phase);
        for (var i = 0; i < StateSize; i++)
        {
            var (now, then) = (state[i].Value, before[1 + i]);
            if (Math.Abs(now - then) > SteadyTolerance * Math.Max(Math.Abs(then), 1e-3))
            {
                return false;
            }
        }

        return Math.Abs(t - before[0]) <= SteadyTolerance * MinutesPerDay;
    }

    private void Remember(int phase)
    {
        var here = StartOf(phase);
        here[0] = t;
        for (var i = 0; i < StateSize; i++)
        {
            here[1 + i] = state[i].Value;
        }
    }

    private void Recall(int phase)
    {
        var here = StartOf(phase);
        for (var i = 0; i < StateSize; i++)
        {
            state[i] = Real.Of(here[1 + i]);
        }
    }

    private ReadOnlySpan<double> StateAtEnd()
    {
        var end = new double[StateSize];
        for (var i = 0; i < StateSize; i++)
        {
            end[i] = state[i].Value;
        }

        return end;
    }

    private void RunPhase(int k)
    {
        Remember(k);
        ref var phase = ref phases[k];
        phase = new()
        {
            Kind = phase.Kind,
            Cycle = phase.Cycle,
            Start = t,
            Peak = state[0].Value,
            PeakTime = t,
            Minimum = state[0].Value,
        };
        state.AsSpan(StateSize).Clear();
        ref var system = ref integrator!.System;
        system = phase.Kind is RegimenPhase.Fill or RegimenPhase.Dwell or RegimenPhase.Drain ? night : day;
        system.HasTransient = options.Transient == TransientUse.EveryFill
            || (options.Transient == TransientUse.FirstFill && phase.Cycle == 0 && phase.Kind <= RegimenPhase.Drain);
        sampler?.Begin(phase.Kind, t, state);
        switch (phase.Kind)
        {
            case RegimenPhase.Fill:
                instilled = t;
                Fill(ref phase, regimen.Night[phase.Cycle].Solution, regimen.Night[phase.Cycle].Fill);
                break;
            case RegimenPhase.DayFill:
                instilled = t;
                Fill(ref phase, regimen.DayFill!.Solution, regimen.DayFill.Volume);
                break;
            case RegimenPhase.Dwell:
                Dwell(ref phase, DrainPlannedAt(phase.Cycle));
                break;
            case RegimenPhase.Day:
                Dwell(ref phase, MinutesPerDay - (regimen.DayFill is { } fill ? regimen.DrainMinutes(fill.Volume.Milliliters) : 0));
                break;
            default:
                Drain(ref phase);
                break;
        }

        phase.End = t;
        var slot = integrator.System.DrainSlot;
        phase.DrainedUrea = state[slot].Value;
        phase.DrainedCreatinine = state[slot + 1].Value;
        phase.DrainedGlucose = state[slot + 2].Value;
        phase.DrainedSodium = state[slot + 3].Value;
        for (var i = panel.PolymerStart; i < panel.Count; i++)
        {
            phase.DrainedPolymer += state[slot + i].Value * panel.Solutes[i].MolarMassGramsPerMole;
        }

        var pore = integrator.System.PoreSlot;
        phase.Ultrasmall = state[pore].Value;
        phase.Small = state[pore + 1].Value;
        phase.Large = state[pore + 2].Value;
    }

    // The plan is made once for the night: exchange after exchange, drains as if nothing crossed the membrane.
    private double DrainPlannedAt(int cycle)
    {
        var time = 0.0;
        for (var i = 0; ; i++)
        {
            var exchange = regimen.Night[i];
            time += regimen.FillMinutes(exchange.Fill.Milliliters) + (exchange.DwellTime?.TotalMinutes ?? sharedDwell);
            if (i == cycle)
            {
                return time;
            }

            time += regimen.DrainMinutes(exchange.Fill.Milliliters);
        }
    }

    private void Fill(ref PhaseRecord phase, DialysisSolution solution, Volume volume)
    {
        ref var system = ref integrator!.System;
        system.Fresh[SolutePanel.Urea] = 0;
        system.Fresh[SolutePanel.Creatinine] = 0;
        system.Fresh[SolutePanel.Glucose] = solution.Glucose.MillimolesPerLiter;
        system.Fresh[SolutePanel.Sodium] = solution.Sodium.MillimolesPerLiter;
        for (var i = panel.PolymerStart; i < panel.Count; i++)
        {
            system.Fresh[i] = CavityContents.OfPolymer(solution, panel.Solutes[i]).MillimolesPerLiter;
        }

        Integrate(ref phase, t + regimen.FillMinutes(volume.Milliliters), regimen.Settings.FillFlow.MillilitersPerMinute, 0, target: -1);
    }

    private void Dwell(ref PhaseRecord phase, double end)
    {
        if (t >= end)
        {
            return;
        }

        // A cavity that has emptied is closed for the rest of the phase.
        if (state[0].Value > closed)
        {
            Integrate(ref phase, end, 0, 0, closed);
        }

        t = end;
    }

    private void Drain(ref PhaseRecord phase)
    {
        var start = state[0].Value;
        if (start <= residual)
        {
            return;
        }

        if (regimen.Settings.Drain.WholeDrain is { } time)
        {
            DrainTo(ref phase, residual, Math.Max((start - residual) / time.TotalMinutes, slowestDrain));
            return;
        }

        var broken = regimen.Settings.Drain.BreakVolume(start);
        if (broken < start)
        {
            DrainTo(ref phase, Math.Max(broken, residual), regimen.Settings.Drain.Fast.MillilitersPerMinute);
        }

        if (state[0].Value > residual * (1 + 1e-12))
        {
            DrainTo(ref phase, residual, regimen.Settings.Drain.Slow.MillilitersPerMinute);
        }
    }

    private void DrainTo(ref PhaseRecord phase, double target, double flow)
    {
        var start = t;
        var limit = t + 10 * (state[0].Value - target) / flow + 60;
        Integrate(ref phase, limit, 0, flow, target);
        if (t >= limit)
        {
            throw new IntegrationException(t, $"a drain of {flow:0} mL/min did not empty the cavity.");
        }

        phase.Drained += flow * (t - start);
        state[0] = Real.Of(target);
    }

    private void Integrate(ref PhaseRecord phase, double end, double inflow, double outflow, double target)
    {
        ref var system = ref integrator!.System;
        system.Inflow = inflow;
        system.Outflow = outflow;
        system.Instilled = instilled;
        var observer = new PhaseObserver(ref system, target, inflow - outflow, sampler);
        var start = t;
        t = integrator.Run(t, end, state, options.Integration, ref observer);
        phase.Open += t - start;
        if (observer.Peak > phase.Peak)
        {
            (phase.Peak, phase.PeakTime) = (observer.Peak, observer.PeakTime);
        }

        phase.Minimum = Math.Min(phase.Minimum, observer.Minimum);
    }
}
