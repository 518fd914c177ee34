namespace Transport;

/// <summary>Keeps the state of a dwell at each time at which an exchange of its group ends it, and the largest volume until then.</summary>
internal ref struct DwellEnds<T> : IStepObserver<T>
    where T : struct, ILane<T>
{
    // The top of a dwell is flat: eight looks in a step miss it by less than a mL.
    private const int Looks = 8;

    private readonly ReadOnlySpan<double> ends;
    private readonly Span<T> states;
    private readonly Span<T> peaks;
    private readonly int size;
    private readonly bool looksWithin;
    private T peak;
    private int next;

    /// <param name="ends">In order, min on the integration's clock.</param>
    /// <param name="states">Where the states go, one after the other.</param>
    /// <param name="peaks">Where the largest volumes go.</param>
    /// <param name="start">The state at the start.</param>
    /// <param name="looksWithin">Whether the top is looked for inside the steps.</param>
    public DwellEnds(ReadOnlySpan<double> ends, Span<T> states, Span<T> peaks, ReadOnlySpan<T> start, bool looksWithin)
    {
        this.ends = ends;
        this.states = states;
        this.peaks = peaks;
        this.looksWithin = looksWithin;
        size = start.Length;
        peak = start[0];
    }

    public readonly double Wanted(double from, double reach) => double.PositiveInfinity;

    public double Observe(ref DenseStep<T> step)
    {
        var look = 1;
        while (next < ends.Length && ends[next] <= step.End)
        {
            var end = ends[next];
            var state = states.Slice(next * size, size);
            if (end == step.End)
            {
                step.EndState.CopyTo(state);
            }
            else
            {
                step.State(end, state);
            }

            LookUntil(end, ref look, ref step);
            peak = T.Max(peak, state[0]);
            peaks[next] = peak;
            next++;
        }

        LookUntil(step.End, ref look, ref step);
        peak = T.Max(peak, step.EndState[0]);
        return double.NaN;
    }

    private void LookUntil(double time, ref int look, ref DenseStep<T> step)
    {
        while (looksWithin && look < Looks && step.Start + step.Length * look / Looks is var at && at < time)
        {
            peak = T.Max(peak, step.Component(0, at));
            look++;
        }
    }
}
