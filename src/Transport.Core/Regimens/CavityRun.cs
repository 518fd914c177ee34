using System.Diagnostics;

namespace Transport;

/// <summary>Integrates cavity and body through one phase after another, each event where it lies.</summary>
/// <remarks>One per thread: between runs it keeps nothing but memory and the equations of the last membrane.</remarks>
internal sealed class CavityRun
{
    /// <summary>A cavity with less is closed, mL per 1.73 m².</summary>
    internal const double ClosedVolume = 10;

    /// <summary>No drain at one rate is slower, mL/min per 1.73 m²: where little is left to drain it is done sooner.</summary>
    internal const double SlowestDrain = 20;

    private DormandPrince853<Real, BodySystem<Real>>? integrator;
    private BodySystem<Real> night;
    private BodySystem<Real> day;

    // What the equations on hand belong to.
    private SolutePanel? panel;
    private PlasmaComposition? plasma;
    private ThreePoreMembrane? membrane;
    private Volume? supine;
    private BodyPool[] pools = [];

    private Patient patient = null!;
    private RegimenOptions options = null!;
    private IntegrationOptions integration = null!;
    private RegimenSettings settings = null!;
    private double residual;
    private double closed;
    private double slowestDrain;
    private double instilled;

    /// <summary>Volume, amounts, ∫J of the pores, drained amounts, pools, exposures.</summary>
    public Real[] State { get; private set; } = [];

    /// <summary>Now, min from the start of the first night.</summary>
    public double Time { get; set; }

    /// <summary>To what the phases are integrated.</summary>
    public double RelativeTolerance => integration.RelativeTolerance;

    /// <summary>Volume and amounts: what the cavity is.</summary>
    public int CavitySize { get; private set; }

    /// <summary>Where the body begins in the state.</summary>
    public int PoolSlot => night.PoolSlot;

    /// <summary>The pools, whose generation may be written between rounds.</summary>
    public Span<BodyPool> Pools => pools;

    /// <summary>Whether plasma stays as it is although there are pools.</summary>
    public bool HoldsPools { get; set; }

    /// <summary>Takes samples of the cavity; null: none are wanted.</summary>
    public TimelineSampler? Sampler { get; set; }

    /// <summary>Keeps the course of plasma; null: it is not wanted.</summary>
    public PlasmaCourse? Course { get; set; }

    /// <summary>Gets ready for a patient with a membrane; nothing of an earlier regimen is left in what decides step sizes.</summary>
    /// <param name="patient">Whose size and plasma.</param>
    /// <param name="membrane">The membrane, at the patient's size.</param>
    /// <param name="options">How to simulate.</param>
    /// <param name="level">Plasma of each solute, mmol/L.</param>
    /// <param name="body">The pools.</param>
    public void Prepare(Patient patient, ThreePoreMembrane membrane, RegimenOptions options, ReadOnlySpan<double> level, BodyPool[] body)
    {
        (this.patient, this.options) = (patient, options);
        integration = body.Length == 0 || options.Integration.RelativeTolerance <= BodyRhythm.Tolerance
            ? options.Integration
            : options.Integration with { RelativeTolerance = BodyRhythm.Tolerance };
        var scale = patient.SurfaceFactor;
        slowestDrain = SlowestDrain * scale;
        var lying = options.SupineVolumePerPressure * scale;
        var isReady = integrator is not null && body.Length == 0 && pools.Length == 0 && ReferenceEquals(panel, options.Panel)
            && ReferenceEquals(this.membrane, membrane) && ReferenceEquals(plasma, patient.Plasma) && supine == lying;
        if (!isReady)
        {
            night = Equations(membrane.Lying(lying), options.Panel, level, body);
            day = Equations(membrane, options.Panel, level, body);
            (panel, this.membrane, plasma, supine, pools) = (options.Panel, membrane, patient.Plasma, lying, body);
            if (integrator is null || State.Length != night.Dimension)
            {
                integrator = new(night);
                State = new Real[night.Dimension];
                CavitySize = 1 + options.Panel.Count;
            }
        }

        night.Cavity.Fresh.Clear();
        day.Cavity.Fresh.Clear();
        (Sampler, Course, HoldsPools, Time) = (null, null, false, 0);
    }

    /// <summary>The period before is over: the same moment, one period earlier on the clock.</summary>
    public void TurnBack(double minutes)
    {
        Time -= minutes;
        instilled -= minutes;
    }

    /// <summary>Takes the last sample.</summary>
    public void EndSampling() => Sampler?.End(Time, State, integrator!.System);

    /// <summary>Runs one phase.</summary>
    /// <param name="plan">The phase.</param>
    /// <param name="regimen">Whose settings hold: the day's own regimen, or the rhythm's first on a day without any.</param>
    /// <param name="record">What it did.</param>
    /// <param name="drained">What it drained of each solute, µmol.</param>
    public void Run(in PlannedPhase plan, Regimen regimen, out PhaseRecord record, Span<double> drained)
    {
        settings = regimen.Settings;
        residual = regimen.ResidualFor(patient);
        closed = Math.Min(ClosedVolume * patient.SurfaceFactor, 0.5 * residual);
        drained.Clear();
        record = new() { Start = Time, Peak = State[0].Value, PeakTime = Time, Minimum = State[0].Value };
        State.AsSpan(CavitySize, PoolSlot - CavitySize).Clear();
        ref var system = ref integrator!.System;
        system = plan.IsNight ? night : day;
        system.HoldsPools = HoldsPools;
        system.Cavity.HasTransient = options.Transient == TransientUse.EveryFill
            ? plan.Regimen is not null
            : options.Transient == TransientUse.FirstFill && plan.Index == 0 && plan.Exchange is not null
                && plan.IsNight != plan.Regimen!.Night.IsEmpty;
        Sampler?.Begin(plan.Kind, Time, State, system);
        if (plan.IsFill)
        {
            Fill(ref record, plan.Exchange!, drained);
        }
        else if (plan.IsDrain)
        {
            Drain(ref record, plan.Kind == RegimenPhase.EveningDrain ? null : plan.Exchange?.PartialDrain);
        }
        else
        {
            Dwell(ref record, plan.End);
        }

        record.End = Time;
        var (drain, pore) = (system.Cavity.DrainSlot, system.Cavity.PoreSlot);
        for (var i = 0; i < drained.Length; i++)
        {
            drained[i] += State[drain + i].Value;
        }

        (record.Ultrasmall, record.Small, record.Large) = (State[pore].Value, State[pore + 1].Value, State[pore + 2].Value);
    }

    private static BodySystem<Real> Equations(ThreePoreMembrane membrane, SolutePanel panel, ReadOnlySpan<double> level, BodyPool[] body) =>
        new(new(membrane, FreeParameters<Real>.From(membrane), panel, level) { CollectsDrain = true }, body);

    private void Fill(ref PhaseRecord record, Exchange exchange, Span<double> drained)
    {
        instilled = Time;
        var fresh = integrator!.System.Cavity.Fresh;
        var flow = settings.FillFlow.MillilitersPerMinute;
        var (fill, line) = (exchange.Fill.Milliliters, Math.Min(settings.LineVolume.Milliliters, exchange.Fill.Milliliters));
        var solution = CavityContents.Of(exchange.Solution, options.Panel);
        if (line > 0)
        {
            // What the last drain left in the line comes back; as much fresh fluid stays in it and is drained without having been in.
            for (var i = 0; i < fresh.Length; i++)
            {
                fresh[i] = State[0].Value > 0 ? State[1 + i].Value / State[0].Value : 0;
                drained[i] = line * (solution[i] - fresh[i]);
            }

            Integrate(ref record, Time + line / flow, flow, 0, target: -1);
        }

        solution.CopyTo(fresh);
        if (fill > line)
        {
            Integrate(ref record, Time + (fill - line) / flow, flow, 0, target: -1);
        }
    }

    private void Dwell(ref PhaseRecord record, double end)
    {
        if (Time >= end)
        {
            return;
        }

        // A cavity that has emptied is closed for the rest of the phase; the body goes on.
        if (State[0].Value > closed)
        {
            Integrate(ref record, end, 0, 0, closed);
        }

        if (Time < end && pools.Length > 0)
        {
            var open = record.Open;
            integrator!.System.IsClosed = true;
            Integrate(ref record, end, 0, 0, target: -1);
            integrator.System.IsClosed = false;
            record.Open = open;
        }

        Time = end;
    }

    private void Drain(ref PhaseRecord record, PartialDrain? partial)
    {
        var start = State[0].Value;
        var most = partial?.Total.Milliliters ?? double.PositiveInfinity;
        if (start <= residual || most <= 0)
        {
            return;
        }

        var deadline = settings.LongestDrain is { } longest ? Time + longest.TotalMinutes : double.PositiveInfinity;
        if (settings.Drain.WholeDrain is { } time)
        {
            DrainTo(ref record, residual, Math.Max((start - residual) / time.TotalMinutes, slowestDrain), most, deadline);
            return;
        }

        var broken = settings.Drain.BreakVolume(start);
        if (broken < start)
        {
            DrainTo(ref record, Math.Max(broken, residual), settings.Drain.Fast.MillilitersPerMinute, most, deadline);
        }

        if (Time < deadline && State[0].Value > residual * (1 + 1e-12) && record.Drained < most * (1 - 1e-12))
        {
            DrainTo(ref record, residual, settings.Drain.Slow.MillilitersPerMinute, most - record.Drained, deadline);
        }
    }

    // Down to a volume, or until so much has run out, or until the time is up.
    private void DrainTo(ref PhaseRecord record, double target, double flow, double most, double deadline)
    {
        var start = Time;
        var limit = Time + 10 * (State[0].Value - target) / flow + 60;
        var done = Math.Min(Time + most / flow, deadline);
        Integrate(ref record, Math.Min(limit, done), 0, flow, target);
        if (Time >= limit)
        {
            throw new IntegrationException(Time, $"a drain of {flow:0} mL/min did not empty the cavity.");
        }

        record.Drained += flow * (Time - start);
        if (Time < done)
        {
            State[0] = Real.Of(target);
        }
    }

    private void Integrate(ref PhaseRecord record, double end, double inflow, double outflow, double target)
    {
        Debug.Assert(integrator is not null, "Prepare comes first.");
        ref var system = ref integrator.System;
        system.Cavity.Inflow = inflow;
        system.Cavity.Outflow = outflow;
        system.Cavity.Instilled = instilled;

        // What is drained is followed only while there is a drain; with pools, which stand behind it in the state, always.
        system.Cavity.CollectsDrain = outflow > 0 || pools.Length > 0;
        var observer = new PhaseObserver(ref system, target, inflow - outflow, Sampler, Course);
        var start = Time;
        Time = integrator.Run(Time, end, State.AsSpan(0, system.Dimension), integration, ref observer);
        record.Open += Time - start;
        if (observer.Peak > record.Peak)
        {
            (record.Peak, record.PeakTime) = (observer.Peak, observer.PeakTime);
        }

        record.Minimum = Math.Min(record.Minimum, observer.Minimum);
    }
}
