namespace Transport;

/// <summary>What one worker of a batch works in: a lane of dwells side by side, and a place for one alone.</summary>
internal sealed class DwellBatchWorkspace<T>
    where T : struct, ILane<T>
{
    private readonly DwellSamples into;
    private readonly IntegrationOptions options;
    private readonly DwellLoader loader;
    private readonly Group[] loaded;
    private readonly Simulation<T> together;
    private readonly Simulation<Real> alone;
    private readonly T[] scratch;
    private readonly double[] likeness = new double[DwellBatch.ShareSize];
    private readonly int[] order = new int[DwellBatch.ShareSize];

    public DwellBatchWorkspace(DwellSamples into, IntegrationOptions options)
    {
        this.into = into;
        this.options = options;
        loader = new(into.Panel, into.Minutes[^1]);
        together = new(into);
        alone = new(into);
        loaded = [.. Enumerable.Range(0, DwellBatch.ShareSize / LaneOf.Width<T>()).Select(_ => new Group(into.Panel))];
        scratch = new T[3 * loaded[0].Start.Length];
    }

    /// <summary>Simulates some dwells that follow each other in the list. Those share a lane who are alike.</summary>
    public void Run(IReadOnlyList<DwellCase> dwells, int first, int count)
    {
        var width = LaneOf.Width<T>();
        for (var i = 0; i < count; i += width)
        {
            Load(dwells, first, i, Math.Min(i + width, count));
        }

        Array.Sort(likeness, order, 0, count);
        for (var i = 0; i < count; i += width)
        {
            RunLane(dwells, first, order.AsSpan(i, Math.Min(width, count - i)));
        }
    }

    // Loads dwells side by side and says how alike they are: one law of area beside the other, and within it by when the small pores' flow turns; who cannot
    // be simulated stands at the end.
    private void Load(IReadOnlyList<DwellCase> dwells, int first, int from, int to)
    {
        const double never = 1e6;
        var group = loaded[from / LaneOf.Width<T>()];
        for (var i = from; i < to; i++)
        {
            order[i] = i;
            try
            {
                loader.Load(dwells[first + i]);
                group.Put(i - from, loader);
                likeness[i] = (int)dwells[first + i].Membrane.AreaLaw * 2 * never;
            }
            catch (ArgumentException)
            {
                likeness[i] = double.PositiveInfinity;
            }
        }

        var turn = group.System.TurnGuess(group.Start, scratch);
        for (var i = from; i < to; i++)
        {
            var own = LaneOf.Read(turn, i - from);
            likeness[i] += own < never ? own : never;
        }
    }

    private void RunLane(IReadOnlyList<DwellCase> dwells, int first, ReadOnlySpan<int> which)
    {
        // Lanes that are left over repeat the first dwell.
        var law = dwells[first + which[0]].Membrane.AreaLaw;
        for (var lane = 0; lane < LaneOf.Width<T>(); lane++)
        {
            var one = which[lane < which.Length ? lane : 0];
            if (double.IsPositiveInfinity(likeness[one]) || dwells[first + one].Membrane.AreaLaw != law)
            {
                RunEach(dwells, first, which);
                return;
            }

            together.Put(lane, loaded[one / LaneOf.Width<T>()], one % LaneOf.Width<T>(), law);
        }

        try
        {
            together.Run(options);
        }
        catch (IntegrationException)
        {
            RunEach(dwells, first, which);
            return;
        }

        for (var lane = 0; lane < which.Length; lane++)
        {
            together.Write(first + which[lane], lane);
        }
    }

    private void RunEach(IReadOnlyList<DwellCase> dwells, int first, ReadOnlySpan<int> which)
    {
        foreach (var one in which)
        {
            var i = first + one;
            try
            {
                loader.Load(dwells[i]);
                alone.Put(0, loader);
                alone.Run(options);
                alone.Write(i, 0);
            }
            catch (IntegrationException failure)
            {
                into.Fail(i, new(Severity.Error, "dwell-not-integrated", failure.Message));
            }
            catch (ArgumentException failure)
            {
                into.Fail(i, new(Severity.Error, "dwell-not-possible", failure.Message));
            }
        }
    }

    // Equations and starts of dwells that stand side by side in the list.
    private sealed class Group(SolutePanel panel)
    {
        private readonly double[] fresh = new double[LaneOf.Width<T>() * panel.Count];
        private ThreePoreSystem<T> system = new(panel);

        public ref readonly ThreePoreSystem<T> System => ref system;

        public T[] Start { get; } = new T[4 + panel.Count];

        public void Put(int lane, DwellLoader dwell)
        {
            system.WriteLane(lane, dwell.System);
            LaneOf.Write<T>(Start, lane, dwell.Start);
            dwell.System.Fresh.CopyTo(fresh.AsSpan(lane * panel.Count));
        }

        public ReadOnlySpan<double> Fresh(int lane) => fresh.AsSpan(lane * panel.Count, panel.Count);
    }

    private sealed class Simulation<TLane>
        where TLane : struct, ILane<TLane>
    {
        private readonly DwellSamples into;
        private readonly DormandPrince853<TLane, ThreePoreSystem<TLane>> integrator;
        private readonly TLane[] start;
        private readonly TLane[] state;
        private readonly TLane[] states;

        public Simulation(DwellSamples into)
        {
            this.into = into;
            var system = new ThreePoreSystem<TLane>(into.Panel);
            integrator = new(system);
            start = new TLane[system.Dimension];
            state = new TLane[system.Dimension];
            states = new TLane[system.Dimension * into.Minutes.Length];
        }

        public void Put(int lane, DwellLoader dwell)
        {
            integrator.System.WriteLane(lane, dwell.System);
            LaneOf.Write<TLane>(start, lane, dwell.Start);
        }

        public void Put(int lane, DwellBatchWorkspace<TLane>.Group group, int one, AreaLaw law)
        {
            ref var system = ref integrator.System;
            system.WriteLane(lane, group.System, one, law);
            system.Bathe(lane, group.Fresh(one));
            LaneOf.Write(start.AsSpan(), lane, group.Start, one);
        }

        public void Run(IntegrationOptions options)
        {
            start.CopyTo(state, 0);
            var observer = new SampleObserver<TLane>(into.Minutes, states, state, 0);
            integrator.Run(0, into.Minutes[^1], state, options, ref observer);
        }

        public void Write(int dwell, int lane)
        {
            for (var sample = 0; sample < into.Minutes.Length; sample++)
            {
                into.Write<TLane>(dwell, sample, states.AsSpan(sample * start.Length, start.Length), lane);
            }
        }
    }
}
