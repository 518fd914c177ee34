namespace Transport;

/// <summary>A computed solution that can be asked at any time within it.</summary>
internal sealed class Trajectory
{
    private readonly double[] times;
    private readonly Real[][] steps;

    /// <param name="times">Ends of the steps, min, the start first.</param>
    /// <param name="steps">Per step: the state at its start, then its seven dense terms.</param>
    public Trajectory(double[] times, Real[][] steps)
    {
        this.times = times;
        this.steps = steps;
    }

    /// <summary>Components of the state.</summary>
    public int Dimension => steps[0].Length / (1 + DenseStep<Real>.TermCount);

    /// <summary>Ends of the steps, min, the start first.</summary>
    public ReadOnlySpan<double> Times => times;

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
        var block = steps[step].AsSpan();
        var dimension = Dimension;
        var fraction = (minutes - times[step]) / (times[step + 1] - times[step]);
        return DenseStep<Real>.Evaluate(block[dimension..], block[..dimension], component, fraction).Value;
    }

    /// <summary>The whole state.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The time is outside the solution.</exception>
    public void At(double minutes, Span<Real> state)
    {
        for (var i = 0; i < state.Length; i++)
        {
            state[i] = Real.Of(At(i, minutes));
        }
    }

    /// <summary>One component over one step, which is exactly what <see cref="At(int, double)"/> gives there: see <see cref="Bernstein"/>.</summary>
    public double[] Polynomial(int component, int step)
    {
        var block = steps[step];
        var dimension = Dimension;
        Span<double> terms = stackalloc double[DenseStep<Real>.TermCount];
        for (var term = 0; term < terms.Length; term++)
        {
            terms[term] = block[(1 + term) * dimension + component].Value;
        }

        return Bernstein.Of(block[component].Value, terms);
    }

    /// <summary>Every time, in order and without the start, at which a polynomial of the solution changes its sign, min.</summary>
    /// <param name="polynomialOf">What to look at over a step.</param>
    public IEnumerable<double> Roots(Func<int, double[]> polynomialOf)
    {
        var before = 0;
        for (var step = 0; step < StepCount; step++)
        {
            var polynomial = polynomialOf(step);
            if (before * Bernstein.Sign(polynomial, fromEnd: false) < 0)
            {
                yield return times[step];
            }

            foreach (var root in Bernstein.Roots(polynomial))
            {
                yield return times[step] + root * (times[step + 1] - times[step]);
            }

            before = Bernstein.Sign(polynomial, fromEnd: true) is var sign and not 0 ? sign : before;
        }
    }
}
