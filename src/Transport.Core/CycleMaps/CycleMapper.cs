namespace Transport;

/// <summary>Finds the maps of exchanges: the usual start and small steps from it run side by side, with the same steps of the integrator, so that their
/// differences are smooth. One per thread.</summary>
internal sealed class CycleMapper<T> : ICycleMapper
    where T : struct, ILane<T>
{
    // How far the side runs start from the usual one: min, mL, and a share of each amount.
    private const double LateStep = 0.1;
    private const double VolumeStep = 2;
    private const double AmountStep = 0.05;

    // Drains are much alike: at 1e-4 half to two thirds is a step that is not rejected (280,000 drains, measured), the rest another; looking for the step took more.
    private const double MostOfDrain = 0.6;

    // µmol per mL: no drain leaves more glucose behind than the strongest bag has in it.
    private static readonly double MostGlucose = DialysisSolution.Glucose386.Glucose.MillimolesPerLiter;

    private readonly Patient patient;
    private readonly RegimenOptions options;
    private readonly Regimen sample;
    private readonly RegimenSettings settings;
    private readonly double residual;
    private readonly double closed;
    private readonly double slowestDrain;
    private readonly double[] plasma;
    private readonly double[] used;
    private readonly double[] fresh;
    private readonly double[] found;
    private readonly double[] values;
    private readonly double[] slopes;
    private readonly double[] rich;
    private readonly double[] steps;
    private readonly int n;
    private readonly int rows;
    private readonly bool seesPeak;
    private readonly IntegrationOptions integration;
    private readonly DormandPrince853<T, UnkinkedSystem<T>> open;
    private readonly DormandPrince853<T, DrainSystem<T>> draining;
    private readonly CavityRun dry = new();
    private readonly T[] state;
    private readonly T[] rates;
    private readonly T[] drainState;
    private readonly T[] outcome;
    private ThreePoreSystem<T> night;
    private ThreePoreSystem<T> day;
    private ThreePoreMembrane membrane = null!;
    private PoreCoefficients? pores;

    /// <param name="patient">Whose plasma and size.</param>
    /// <param name="options">How to simulate; the panel holds the polymer where there is one.</param>
    /// <param name="sample">A regimen with the settings that all have.</param>
    /// <param name="seesPeak">Whether the fullest moment inside a dwell is looked for.</param>
    public CycleMapper(Patient patient, RegimenOptions options, Regimen sample, bool seesPeak)
    {
        this.patient = patient;
        this.options = options;
        this.sample = sample;
        this.seesPeak = seesPeak;
        settings = sample.Settings;
        integration = options.Integration;
        residual = sample.ResidualFor(patient);
        closed = Math.Min(CavityRun.ClosedVolume * patient.SurfaceFactor, 0.5 * residual);
        slowestDrain = CavityRun.SlowestDrain * patient.SurfaceFactor;
        n = options.Panel.Count;
        rows = CycleMap.RowsOf(n);
        plasma = CavityContents.Of(patient.Plasma, options.Panel);
        used = CavityContents.Of(ResidualFluid.Used(Volume.FromMilliliters(residual), patient.Plasma), options.Panel);
        fresh = new double[n];
        found = new double[2 + n];
        values = new double[rows];
        slopes = new double[(2 + n) * rows];
        rich = new double[rows];
        steps = new double[2 + n];
        night = new(options.Panel) { CollectsDrain = false };
        day = new(options.Panel) { CollectsDrain = false };
        open = new(new(night));
        var collecting = new ThreePoreSystem<T>(options.Panel) { CollectsDrain = true };
        draining = new(new(collecting));
        state = new T[open.System.Dimension];
        rates = new T[open.System.Dimension];
        drainState = new T[draining.System.Dimension];
        outcome = new T[rows];
    }

    /// <summary>What a mapper starts from where nothing better is known: used fluid, in time.</summary>
    public void UsualStart(Span<double> carried)
    {
        (carried[0], carried[1]) = (0, residual);
        for (var i = 0; i < n; i++)
        {
            carried[2 + i] = residual * used[i];
        }
    }

    /// <summary>Gets ready for a membrane.</summary>
    public void Prepare(ThreePoreMembrane of)
    {
        membrane = of;
        var lying = of.Lying(options.SupineVolumePerPressure * patient.SurfaceFactor);
        pores = PoreCoefficients.Of(lying, options.Panel, pores);
        night.Set(lying, FreeParameters<T>.From(lying), pores, options.Panel, plasma);
        pores = PoreCoefficients.Of(of, options.Panel, pores);
        day.Set(of, FreeParameters<T>.From(of), pores, options.Panel, plasma);
    }

    /// <summary>Fill and dwell of the exchanges of a group.</summary>
    public CycleDwells Dwell(CycleGroup group, CycleDwells? into)
    {
        var dwells = into as CycleDwells<T> ?? new CycleDwells<T>(group, PassCount, state.Length);
        Array.Fill(dwells.Holds, true);
        if (group.Head.IsDry)
        {
            return dwells;
        }

        Begin(group.Head);
        for (var pass = 0; pass < PassCount; pass++)
        {
            Dwell(dwells, pass);
        }

        return dwells;
    }

    /// <summary>The map of an exchange, from the dwells of its group.</summary>
    public void Map(in CycleKind kind, CycleDwells dwells, int member, CycleMap into)
    {
        (into.Holds, into.Left) = (false, CycleMap.AnyVolume);
        Begin(dwells.Group.Head);
        try
        {
            if (kind.IsDry || !dwells.Holds[member] || !TryMap(kind, (CycleDwells<T>)dwells, member, into))
            {
                MapAlone(kind, into);
            }
        }
        catch (IntegrationException)
        {
            into.Holds = false;
        }
    }

    private bool TryMap(in CycleKind kind, CycleDwells<T> dwells, int member, CycleMap into)
    {
        for (var pass = 0; pass < PassCount; pass++)
        {
            dwells.States(pass).Slice(member * state.Length, state.Length).CopyTo(state);
            var peak = dwells.Peaks(pass)[member];
            if (pass == 0)
            {
                ComeLate(kind, ref peak);
            }

            if (!Drain(kind, peak))
            {
                return false;
            }

            var first = pass * StepsPerPass;
            var count = Math.Min(StepsPerPass, found.Length - first);
            for (var row = 0; row < rows; row++)
            {
                values[row] = LaneOf.Read(outcome[row], 0);
                for (var k = 0; k < count; k++)
                {
                    slopes[(first + k) * rows + row] = (LaneOf.Read(outcome[row], 1 + k) - values[row]) / steps[first + k];
                }
            }
        }

        into.Set(found, values, slopes);
        return true;
    }

    // The usual start in the first place, and beside it steps from it.
    private static int StepsPerPass => LaneOf.Width<T>() - 1;

    private int PassCount => (found.Length + StepsPerPass - 1) / StepsPerPass;

    // What is usually found, and steps from it. It does not depend on how long the exchange stays.
    private void Begin(in CycleKind kind)
    {
        UsualStart(found);
        if (kind.Start == CycleStart.Nothing)
        {
            found[1] = closed;
            for (var i = 0; i < n; i++)
            {
                found[2 + i] = closed * plasma[i];
            }
        }
        else if (kind.Start == CycleStart.HalfResidual)
        {
            for (var i = 1; i < found.Length; i++)
            {
                found[i] *= 0.5;
            }
        }

        Array.Clear(fresh);
        if (kind.Solution is { } solution)
        {
            CavityContents.Write(solution, options.Panel, fresh);
            if (kind.Start == CycleStart.Residual)
            {
                // As after about two hours of the same strength.
                var (inPlasma, inFluid) = (plasma[SolutePanel.Glucose], fresh[SolutePanel.Glucose]);
                found[2 + SolutePanel.Glucose] = residual * (inPlasma + 0.5 * (inFluid - inPlasma));
            }
        }

        (steps[0], steps[1]) = (LateStep, VolumeStep);
        for (var i = 0; i < n; i++)
        {
            steps[2 + i] = Math.Max(AmountStep * found[2 + i], 1e-3 * Math.Max(plasma[i], fresh[i]) * residual);
            steps[2 + i] = steps[2 + i] > 0 ? steps[2 + i] : 1e-3 * residual;
        }
    }

    private void Dwell(CycleDwells<T> dwells, int pass)
    {
        var head = dwells.Group.Head;
        ref var system = ref open.System.Cavity;
        system = head.IsNight ? night : day;
        system.HasTransient = head.HasTransient;
        system.Instilled = 0;
        fresh.CopyTo(system.Fresh);
        for (var i = 0; i < state.Length; i++)
        {
            state[i] = T.Of(i <= n ? found[1 + i] : 0);
        }

        var first = pass * StepsPerPass;
        for (var k = 0; k < StepsPerPass && first + k < found.Length; k++)
        {
            // Lateness comes in at the drain.
            if (first + k > 0)
            {
                LaneOf.Set(ref state[first + k - 1], 1 + k, found[first + k] + steps[first + k]);
            }
        }

        var flow = settings.FillFlow.MillilitersPerMinute;
        var filled = head.Fill / flow;
        system.Inflow = flow;
        var nobody = default(Unwatched<T>);
        try
        {
            open.Run(0, filled, state, integration, ref nobody);
        }
        catch (IntegrationException)
        {
            Array.Clear(dwells.Holds);
            return;
        }

        system.Inflow = 0;
        Span<double> ends = stackalloc double[dwells.Group.Dwells.Length];
        for (var member = 0; member < ends.Length; member++)
        {
            ends[member] = filled + dwells.Group.Dwells[member];
        }

        try
        {
            var watch = new DwellEnds<T>(ends, dwells.States(pass), dwells.Peaks(pass), state, seesPeak);
            open.Run(filled, ends[^1], state, integration, ref watch);
        }
        catch (IntegrationException)
        {
            // The longest ran empty; which others did is told by trying each.
            DwellOneByOne(dwells, pass, filled, ends);
        }

        for (var member = 0; member < ends.Length; member++)
        {
            dwells.Holds[member] &= ends[member] > filled && T.AllPositive(dwells.States(pass)[member * state.Length] - T.Of(closed));
        }
    }

    private void DwellOneByOne(CycleDwells<T> dwells, int pass, double filled, ReadOnlySpan<double> ends)
    {
        T[] start = [.. state];
        for (var member = 0; member < ends.Length; member++)
        {
            try
            {
                start.CopyTo(state, 0);
                var watch = new DwellEnds<T>(
                    ends.Slice(member, 1), dwells.States(pass)[(member * state.Length)..], dwells.Peaks(pass)[member..], state, seesPeak);
                open.Run(filled, ends[member], state, integration, ref watch);
            }
            catch (IntegrationException)
            {
                dwells.Holds[member] = false;
            }
        }
    }

    // Who comes late drains at the same time all the same: its dwell is so much shorter.
    private void ComeLate(in CycleKind kind, ref T peak)
    {
        ref var cavity = ref open.System.Cavity;
        cavity = kind.IsNight ? night : day;
        cavity.HasTransient = kind.HasTransient;
        cavity.Instilled = 0;
        cavity.Derivatives(kind.Fill / settings.FillFlow.MillilitersPerMinute + kind.Dwell, state, rates);
        var isPeak = LaneOf.Read(peak, 0) <= LaneOf.Read(state[0], 0);
        for (var i = 0; i < state.Length; i++)
        {
            LaneOf.Set(ref state[i], 1, LaneOf.Read(state[i], 0) - steps[0] * LaneOf.Read(rates[i], 0));
        }

        if (isPeak)
        {
            LaneOf.Set(ref peak, 1, LaneOf.Read(state[0], 1));
        }
    }

    private bool Drain(in CycleKind kind, T peak)
    {
        ref var system = ref draining.System;
        var start = kind.Fill / settings.FillFlow.MillilitersPerMinute + kind.Dwell;
        var cavity = kind.IsNight ? night : day;
        cavity.HasTransient = kind.HasTransient;
        cavity.Instilled = 0;
        fresh.CopyTo(cavity.Fresh);
        cavity.CollectsDrain = true;
        system.Cavity = cavity;
        for (var i = 0; i < drainState.Length; i++)
        {
            drainState[i] = i < state.Length ? state[i] : T.Of(0);
        }

        drainState[system.TimeSlot] = T.Of(start);
        var full = drainState[0];
        var drained = T.Of(0);
        if (settings.Drain.WholeDrain is { } time)
        {
            var flow = T.Max(1 / time.TotalMinutes * (full - T.Of(residual)), T.Of(slowestDrain));
            if (!DrainTo(T.Of(residual), flow, ref drained))
            {
                return false;
            }
        }
        else
        {
            var broken = T.Max(
                settings.Drain.TransitionVolume is { } transition ? T.AtMost(full, T.Of(transition.Milliliters)) : (1 - settings.Drain.BreakShare) * full,
                T.Of(residual));
            if (T.AllPositive(full - broken) && !DrainTo(broken, T.Of(settings.Drain.Fast.MillilitersPerMinute), ref drained))
            {
                return false;
            }

            if (T.AllPositive(drainState[0] - T.Of(residual * (1 + 1e-12)))
                && !DrainTo(T.Of(residual), T.Of(settings.Drain.Slow.MillilitersPerMinute), ref drained))
            {
                return false;
            }
        }

        outcome[0] = drainState[system.TimeSlot] - T.Of(start + kind.Drain);
        for (var i = 0; i <= n; i++)
        {
            outcome[1 + i] = drainState[i];
        }

        var row = 2 + n;
        outcome[row++] = drained;
        for (var i = 0; i < n; i++)
        {
            outcome[row++] = drainState[system.Cavity.DrainSlot + i];
        }

        outcome[row++] = peak;
        outcome.AsSpan(row).Clear();
        return true;
    }

    private bool DrainTo(T target, T flow, ref T drained)
    {
        ref var system = ref draining.System;
        var fall = target - drainState[0];
        if (T.AnyAbove(fall, 0))
        {
            return false;
        }

        (system.Outflow, system.Fall) = (flow, fall);
        var before = drainState[system.TimeSlot];
        var nobody = default(Unwatched<T>);
        draining.Run(0, 1, drainState, integration, ref nobody, MostOfDrain);
        drainState[0] = target;
        drained += flow * (drainState[system.TimeSlot] - before);
        return true;
    }

    // One run after another: where a cavity empties, and whether it drains, is a matter of each. It is a map where all do alike.
    private void MapAlone(in CycleKind kind, CycleMap into)
    {
        dry.Prepare(patient, membrane, options, plasma, []);
        var course = Alone(kind, values);
        if (course == Course.Empties && !kind.IsDry && !EmptiesWhateverItFinds(kind))
        {
            return;
        }

        // A cavity that has emptied holds next to nothing, whatever it held before. A complete drain leaves always the same volume, and a dry time begins when it ends.
        Array.Clear(slopes);
        for (var column = kind.IsDry ? 2 : 0; column < found.Length && course != Course.Empties; column++)
        {
            var slope = slopes.AsSpan(column * rows, rows);
            found[column] += steps[column];
            var own = Alone(kind, slope);
            found[column] -= steps[column];
            if (own != course)
            {
                return;
            }

            for (var row = 0; row < rows; row++)
            {
                slope[row] = (slope[row] - values[row]) / steps[column];
            }
        }

        into.Set(found, values, slopes);
        into.Left = kind.IsDry || course == Course.Drains ? CycleMap.AnyVolume : course == Course.Stays ? (closed, residual) : (0, closed * (1 + 1e-9));
    }

    private bool EmptiesWhateverItFinds(in CycleKind kind)
    {
        ref var glucose = ref found[2 + SolutePanel.Glucose];
        var usual = glucose;
        glucose = Math.Max(usual, residual * MostGlucose);
        var course = Alone(kind, rich);
        glucose = usual;
        return course == Course.Empties;
    }

    private Course Alone(in CycleKind kind, Span<double> into)
    {
        into.Clear();
        for (var i = 0; i < dry.State.Length; i++)
        {
            dry.State[i] = Real.Of(i <= n ? found[1 + i] : 0);
        }

        dry.Time = kind.IsDry ? 0 : found[0];
        Span<double> drained = stackalloc double[n];
        var exchange = kind.Solution is { } solution ? new Exchange(solution, Volume.FromMilliliters(kind.Fill)) : null;
        var index = kind.HasTransient ? 0 : 1;
        var (peak, start) = (0.0, 0.0);
        if (exchange is not null)
        {
            start = kind.Fill / settings.FillFlow.MillilitersPerMinute;
            Go(kind.IsNight ? RegimenPhase.Fill : RegimenPhase.DayFill, 0, drained);
        }

        var planned = start + kind.Dwell;
        Go(kind.IsNight && exchange is not null ? RegimenPhase.Dwell : RegimenPhase.Day, planned, drained);
        var left = dry.State[0].Value;
        var record = Go(exchange is null ? RegimenPhase.EveningDrain : kind.IsNight ? RegimenPhase.Drain : RegimenPhase.DayDrain, 0, drained);
        into[0] = dry.Time - planned - kind.Drain;
        for (var i = 0; i <= n; i++)
        {
            into[1 + i] = dry.State[i].Value;
        }

        into[2 + n] = record.Drained;
        drained.CopyTo(into[(3 + n)..]);
        into[3 + 2 * n] = peak;
        return left <= closed * (1 + 1e-9) ? Course.Empties : record.Drained > 0 ? Course.Drains : Course.Stays;

        PhaseRecord Go(RegimenPhase phase, double end, Span<double> drained)
        {
            dry.Run(new(phase, 0, sample, index, exchange, end, 0), sample, out var record, drained);
            peak = Math.Max(peak, record.Peak);
            return record;
        }
    }

    // What becomes of the fluid.
    private enum Course
    {
        Drains,
        Stays,
        Empties,
    }
}
