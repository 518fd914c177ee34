namespace Transport;

/// <summary>What one worker of a batch works in: a lane of dwells side by side, and a place for one alone.</summary>
internal sealed class DwellBatchWorkspace<T>
    where T : struct, ILane<T>
{
    // A dwell that cannot be simulated stands behind all others.
    private const double NotPossible = double.PositiveInfinity;

    private readonly DwellSamples into;
    private readonly IntegrationOptions options;
    private readonly DwellLoader loader;
    private readonly Simulation<T> together;
    private readonly Simulation<Real> alone;
    private readonly double[] likeness;
    private readonly int[] order;

    // Of each dwell at a time: its start and its fresh fluid.
    private readonly Real[] starts;
    private readonly double[] fresh;

    public DwellBatchWorkspace(DwellSamples into, IntegrationOptions options)
    {
        this.into = into;
        this.options = options;
        loader = new(into.Panel, into.Minutes[^1]);
        together = new(into, loader);
        alone = new(into, loader);
        var most = Math.Min(DwellBatch.ShareSize, into.Count);
        likeness = new double[most];
        order = new int[most];
        starts = new Real[most * together.Dimension];
        fresh = new double[most * into.Panel.Count];
    }

    /// <summary>Simulates some dwells that follow each other in the list. Those share a lane who are alike.</summary>
    public void Run(IReadOnlyList<DwellCase> dwells, int first, int count)
    {
        var width = LaneOf.Width<T>();
        for (var i = 0; i < count; i++)
        {
            order[i] = i;
            likeness[i] = Fill(dwells[first + i], i);
        }

        for (var i = 0; i < count; i += width)
        {
            Compare(dwells, first, order.AsSpan(i, Math.Min(width, count - i)));
        }

        Array.Sort(likeness, order, 0, count);
        for (var i = 0; i < count; i += width)
        {
            RunLane(dwells, first, order.AsSpan(i, Math.Min(width, count - i)));
        }
    }

    // Keeps a dwell's start. Zero, or that it cannot be simulated.
    private double Fill(in DwellCase dwell, int i)
    {
        try
        {
            loader.Fill(dwell);
        }
        catch (ArgumentException)
        {
            return NotPossible;
        }

        loader.Start.CopyTo(StartOf(i));
        loader.Fresh.CopyTo(FreshOf(i));
        return 0;
    }

    // Says how alike dwells are: one law of area beside the other, and within it by when the small pores' flow turns.
    private void Compare(IReadOnlyList<DwellCase> dwells, int first, ReadOnlySpan<int> which)
    {
        const double never = 1e6;
        if (!Put(dwells, first, which))
        {
            return;
        }

        var turn = together.TurnGuess();
        for (var lane = 0; lane < which.Length; lane++)
        {
            var own = LaneOf.Read(turn, lane);
            likeness[which[lane]] = (int)dwells[first + which[lane]].Membrane.AreaLaw * 2 * never + (own < never ? own : never);
        }
    }

    private void RunLane(IReadOnlyList<DwellCase> dwells, int first, ReadOnlySpan<int> which)
    {
        try
        {
            if (Put(dwells, first, which) && together.HasOneLaw)
            {
                together.Run(options);
                for (var lane = 0; lane < which.Length; lane++)
                {
                    together.Write(first + which[lane], lane);
                }

                return;
            }
        }
        catch (IntegrationException)
        {
            // One of them: they are simulated each alone.
        }

        foreach (var one in which)
        {
            RunAlone(dwells, first, one);
        }
    }

    // Puts dwells side by side; lanes that are left over repeat the first. Not if one of them cannot be simulated.
    private bool Put(IReadOnlyList<DwellCase> dwells, int first, ReadOnlySpan<int> which)
    {
        for (var lane = 0; lane < LaneOf.Width<T>(); lane++)
        {
            var one = which[lane < which.Length ? lane : 0];
            if (double.IsPositiveInfinity(likeness[one]))
            {
                return false;
            }

            together.Put(lane, dwells[first + one], StartOf(one), FreshOf(one));
        }

        together.SetEquations();
        return true;
    }

    private void RunAlone(IReadOnlyList<DwellCase> dwells, int first, int one)
    {
        var i = first + one;
        try
        {
            loader.Fill(dwells[i]);
            alone.Put(0, dwells[i], loader.Start, loader.Fresh);
            alone.SetEquations();
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

    private Span<Real> StartOf(int one) => starts.AsSpan(one * together.Dimension, together.Dimension);

    private Span<double> FreshOf(int one) => fresh.AsSpan(one * into.Panel.Count, into.Panel.Count);

    private sealed class Simulation<TLane>
        where TLane : struct, ILane<TLane>
    {
        private readonly DwellSamples into;
        private readonly DwellLoader loader;
        private readonly DormandPrince853<TLane, ThreePoreSystem<TLane>> integrator;
        private readonly DwellCase[] dwells = new DwellCase[LaneOf.Width<TLane>()];
        private readonly TLane[] start;
        private readonly TLane[] state;
        private readonly TLane[] states;

        public Simulation(DwellSamples into, DwellLoader loader)
        {
            this.into = into;
            this.loader = loader;
            integrator = new(new(into.Panel));
            Dimension = integrator.System.Dimension;
            start = new TLane[Dimension];
            state = new TLane[Dimension];
            states = new TLane[Dimension * into.Minutes.Length];
        }

        public int Dimension { get; }

        public bool HasOneLaw
        {
            get
            {
                foreach (ref readonly var dwell in dwells.AsSpan())
                {
                    if (dwell.Membrane.AreaLaw != dwells[0].Membrane.AreaLaw)
                    {
                        return false;
                    }
                }

                return true;
            }
        }

        public void Put(int lane, in DwellCase dwell, ReadOnlySpan<Real> ofStart, ReadOnlySpan<double> ofFresh)
        {
            dwells[lane] = dwell;
            LaneOf.Write(start.AsSpan(), lane, ofStart);
            integrator.System.Bathe(lane, ofFresh);
        }

        public void SetEquations() => loader.Set(dwells, ref integrator.System);

        public TLane TurnGuess() => integrator.System.TurnGuess(start);

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
                into.Write<TLane>(dwell, sample, states.AsSpan(sample * Dimension, Dimension), lane);
            }
        }
    }
}
