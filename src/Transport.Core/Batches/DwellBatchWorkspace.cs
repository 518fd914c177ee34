namespace Transport;

/// <summary>What one worker of a batch works in: a lane of dwells side by side, and a place for one alone.</summary>
internal sealed class DwellBatchWorkspace<T>
    where T : struct, ILane<T>
{
    private readonly DwellSamples into;
    private readonly IntegrationOptions options;
    private readonly DwellLoader loader;
    private readonly Simulation<T> together;
    private readonly Simulation<Real> alone;
    private readonly double[] likeness = new double[DwellBatch.ShareSize];
    private readonly int[] order = new int[DwellBatch.ShareSize];

    public DwellBatchWorkspace(DwellSamples into, IntegrationOptions options)
    {
        this.into = into;
        this.options = options;
        loader = new(into.Panel, into.Minutes[^1]);
        together = new(into);
        alone = new(into);
    }

    /// <summary>Simulates some dwells that follow each other in the list. Those share a lane who are alike.</summary>
    public void Run(IReadOnlyList<DwellCase> dwells, int first, int count)
    {
        for (var i = 0; i < count; i++)
        {
            order[i] = first + i;
            likeness[i] = Likeness(dwells[first + i]);
        }

        Array.Sort(likeness, order, 0, count);
        var width = LaneOf.Width<T>();
        for (var i = 0; i < count; i += width)
        {
            RunLane(dwells, order.AsSpan(i, Math.Min(width, count - i)));
        }
    }

    // One law of area beside the other, and within it by when the small pores' flow turns; who cannot be simulated stands at the end.
    private double Likeness(in DwellCase dwell)
    {
        const double never = 1e6;
        try
        {
            loader.Load(dwell);
            var turn = loader.System.TurnGuess(loader.Start).Value;
            return (int)dwell.Membrane.AreaLaw * 2 * never + (turn < never ? turn : never);
        }
        catch (ArgumentException)
        {
            return double.PositiveInfinity;
        }
    }

    private void RunLane(IReadOnlyList<DwellCase> dwells, ReadOnlySpan<int> which)
    {
        try
        {
            var law = dwells[which[0]].Membrane.AreaLaw;
            for (var lane = 0; lane < LaneOf.Width<T>(); lane++)
            {
                // Lanes that are left over repeat the first dwell.
                var dwell = dwells[which[lane < which.Length ? lane : 0]];
                if (dwell.Membrane.AreaLaw != law)
                {
                    RunEach(dwells, which);
                    return;
                }

                loader.Load(dwell);
                together.Put(lane, loader);
            }

            together.Run(options);
        }
        catch (Exception failure) when (failure is IntegrationException or ArgumentException)
        {
            RunEach(dwells, which);
            return;
        }

        for (var lane = 0; lane < which.Length; lane++)
        {
            together.Write(which[lane], lane);
        }
    }

    private void RunEach(IReadOnlyList<DwellCase> dwells, ReadOnlySpan<int> which)
    {
        foreach (var i in which)
        {
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
