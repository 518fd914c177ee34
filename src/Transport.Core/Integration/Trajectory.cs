namespace Transport;

/// <summary>A computed solution that can be asked at any time within it.</summary>
internal sealed class Trajectory
{
    private readonly int dimension;
    private readonly double[] times;
    private readonly double[] values;

    /// <param name="dimension">Components of the state.</param>
    /// <param name="times">Ends of the steps, min, the start first.</param>
    /// <param name="values">Per step: the state at its start, then its seven dense terms.</param>
    public Trajectory(int dimension, double[] times, double[] values)
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
        var block = values.AsSpan(step * dimension * (1 + DenseStep<Real>.TermCount), dimension * (1 + DenseStep<Real>.TermCount));
        var x = (minutes - times[step]) / (times[step + 1] - times[step]);
        var y = x * block[(DenseStep<Real>.TermCount * dimension) + component];
        for (var term = DenseStep<Real>.TermCount - 2; term >= 0; term--)
        {
            y = ((term & 1) == 0 ? x : 1 - x) * (y + block[((1 + term) * dimension) + component]);
        }

        return block[component] + y;
    }
}
