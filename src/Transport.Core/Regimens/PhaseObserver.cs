namespace Transport;

/// <summary>Watches a phase: stops it where the volume has fallen to a target, keeps its extremes, samples it.</summary>
internal ref struct PhaseObserver : IStepObserver<Real>
{
    private readonly ref readonly BodySystem<Real> system;
    private readonly double target;
    private readonly double netInflow;
    private readonly TimelineSampler? sampler;
    private readonly PlasmaCourse? course;
    private double slope;

    /// <param name="system">The equations as they stand in this phase.</param>
    /// <param name="target">Volume at which to stop, from above, mL; negative: none.</param>
    /// <param name="netInflow">Inflow minus outflow, mL/min.</param>
    /// <param name="sampler">Takes samples; null: none are wanted.</param>
    /// <param name="course">Keeps the course of plasma; null: it is not wanted.</param>
    public PhaseObserver(ref readonly BodySystem<Real> system, double target, double netInflow, TimelineSampler? sampler, PlasmaCourse? course)
    {
        this.system = ref system;
        this.target = target;
        this.netInflow = netInflow;
        this.sampler = sampler;
        this.course = course;
        slope = double.NaN;
        Peak = double.NegativeInfinity;
        Minimum = double.PositiveInfinity;
    }

    /// <summary>Largest volume, mL.</summary>
    public double Peak { get; private set; }

    /// <summary>When it was largest, min.</summary>
    public double PeakTime { get; private set; }

    /// <summary>Smallest volume, mL.</summary>
    public double Minimum { get; private set; }

    public readonly double Wanted(double from, double reach) => double.PositiveInfinity;

    public double Observe(ref DenseStep<Real> step)
    {
        if (double.IsNaN(slope))
        {
            slope = Slope(step.StartState);
            Note(step.Start, step.StartState[0].Value);
        }

        var stop = step.EndState[0].Value <= target ? Crossing(ref step) : double.NaN;
        var end = double.IsNaN(stop) ? step.End : stop;
        var endSlope = Slope(step.EndState);
        if (slope > 0 && endSlope < 0)
        {
            Summit(ref step, end);
        }

        slope = endSlope;
        Note(end, double.IsNaN(stop) ? step.EndState[0].Value : target);
        sampler?.Take(ref step, end, system);
        course?.Take(ref step, system.PoolSlot);
        return stop;
    }

    private readonly double Slope(ReadOnlySpan<Real> state) => system.MembraneFlow(state).Value + netInflow;

    private void Note(double time, double volume)
    {
        if (volume > Peak)
        {
            (Peak, PeakTime) = (volume, time);
        }

        Minimum = Math.Min(Minimum, volume);
    }

    // Bisection on the dense volume; it falls through the target once.
    private readonly double Crossing(ref DenseStep<Real> step)
    {
        double low = step.Start, high = step.End;
        while (high - low > 1e-11)
        {
            var middle = 0.5 * (low + high);
            (low, high) = step.Component(0, middle).Value > target ? (middle, high) : (low, middle);
        }

        return high;
    }

    private void Summit(ref DenseStep<Real> step, double end)
    {
        const double golden = 0.6180339887498949;
        double low = step.Start, high = end;
        while (high - low > 1e-3)
        {
            var a = high - golden * (high - low);
            var b = low + golden * (high - low);
            (low, high) = step.Component(0, a).Value > step.Component(0, b).Value ? (low, b) : (a, high);
        }

        var time = 0.5 * (low + high);
        Note(time, step.Component(0, time).Value);
    }
}
