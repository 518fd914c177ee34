namespace Transport;

/// <summary>Writes the state at given times as the steps pass over them.</summary>
internal ref struct SampleObserver<T> : IStepObserver<T>
    where T : struct, ILane<T>
{
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
