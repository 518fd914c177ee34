namespace Transport;

/// <summary>A computed solution that can be asked at any time within it.</summary>
internal sealed class Trajectory
{
    private readonly int dimension;
    private readonly double[] times;
    private readonly Real[] values;

    /// <param name="dimension">Components of the state.</param>
    /// <param name="times">Ends of the steps, min, the start first.</param>
    /// <param name="values">Per step: the state at its start, then its seven dense terms.</param>
    public Trajectory(int dimension, double[] times, Real[] values)
    {
        this.dimension = dimension;
        this.times = times;
        this.values = values;
    }

    /// <summary>End, min.</summary>
    public double End => times[^1];

    /// <summary>Steps that were taken.</summary>
    public int StepCount => times.Length - 1;

    /// <summary>One component.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The time is outside the solution.</exception>
    public double At(int component, double minutes)
    {
        Require.InRange(minutes, times[0], End, "min");
        var found = Array.BinarySearch(times, minutes);
        var step = Math.Clamp(found >= 0 ? found : ~found - 1, 0, StepCount - 1);
        var size = dimension * (1 + DenseStep<Real>.TermCount);
        var block = values.AsSpan(step * size, size);
        var fraction = (minutes - times[step]) / (times[step + 1] - times[step]);
        return DenseStep<Real>.Evaluate(block[dimension..], block[..dimension], component, fraction).Value;
    }
}
