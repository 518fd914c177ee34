namespace Transport;

/// <summary>Writes the state at given times as the steps pass over them.</summary>
internal ref struct SampleObserver<T> : IStepObserver<T>
    where T : struct, ILane<T>
{
    // A step ends on a sample unless it would lose too much of its length, or there are too many for it (both tried on the dwells of docs/performance.md).
    private const double LeastOfReach = 0.2;
    private const int MostInReach = 2;

    private readonly ReadOnlySpan<double> times;
    private readonly Span<T> states;
    private readonly int dimension;
    private int next;

    /// <param name="times">When, min, in order.</param>
    /// <param name="states">Where: one state after the other.</param>
    /// <param name="start">The state at the start, for times that are not after it.</param>
    /// <param name="from">The start, min.</param>
    public SampleObserver(ReadOnlySpan<double> times, Span<T> states, ReadOnlySpan<T> start, double from)
    {
        this.times = times;
        this.states = states;
        dimension = start.Length;
        while (next < times.Length && times[next] <= from)
        {
            start.CopyTo(states.Slice(next * dimension, dimension));
            next++;
        }
    }

    public readonly double Wanted(double from, double reach)
    {
        var crowded = next + MostInReach < times.Length && times[next + MostInReach] <= reach;
        return next < times.Length && !crowded && times[next] >= from + LeastOfReach * (reach - from) ? times[next] : double.PositiveInfinity;
    }

    public double Observe(ref DenseStep<T> step)
    {
        for (; next < times.Length && times[next] <= step.End; next++)
        {
            var target = states.Slice(next * dimension, dimension);
            if (times[next] == step.End)
            {
                step.EndState.CopyTo(target);
            }
            else
            {
                step.State(times[next], target);
            }
        }

        return double.NaN;
    }
}
