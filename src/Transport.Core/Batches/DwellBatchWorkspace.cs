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

    public DwellBatchWorkspace(DwellSamples into, IntegrationOptions options)
    {
        this.into = into;
        this.options = options;
        loader = new(into.Panel, into.Minutes[^1]);
        together = new(into);
        alone = new(into);
    }

    /// <summary>Simulates some dwells that follow each other.</summary>
    public void Run(IReadOnlyList<DwellCase> dwells, int first, int count)
    {
        var width = LaneOf.Width<T>();
        for (var i = 0; i < count; i += width)
        {
            RunLane(dwells, first + i, Math.Min(width, count - i));
        }
    }

    private void RunLane(IReadOnlyList<DwellCase> dwells, int first, int count)
    {
        try
        {
            var law = dwells[first].Membrane.AreaLaw;
            for (var lane = 0; lane < LaneOf.Width<T>(); lane++)
            {
                // Lanes that are left over repeat the first dwell.
                var dwell = dwells[first + (lane < count ? lane : 0)];
                if (dwell.Membrane.AreaLaw != law)
                {
                    RunEach(dwells, first, count);
                    return;
                }

                loader.Load(dwell);
                together.Put(lane, loader);
            }

            together.Run(options);
        }
        catch (Exception failure) when (failure is IntegrationException or ArgumentException)
        {
            RunEach(dwells, first, count);
            return;
        }

        for (var lane = 0; lane < count; lane++)
        {
            together.Write(first + lane, lane);
        }
    }

    private void RunEach(IReadOnlyList<DwellCase> dwells, int first, int count)
    {
        for (var i = first; i < first + count; i++)
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
