using C = Transport.DormandPrince853Coefficients;

namespace Transport;

/// <summary>
/// Adaptive explicit Runge-Kutta integration of order 8 with dense output; the coefficients' file names the source. One instance is
/// one workspace: reuse it, and nothing is allocated per integration.
/// </summary>
/// <remarks>
/// The step size is controlled in the norm max(1, n)^−½ ‖err / (atol + rtol |y|)‖₂ of the combined estimate of orders 5 and 3 (Hairer,
/// Nørsett and Wanner, II.10). Where a lane carries derivatives they ride along: the step is chosen by the values alone, so that
/// the derivatives are exactly those of the computed solution.
/// </remarks>
internal sealed class DormandPrince853<T, TSystem> : IDenseSource<T>
    where T : struct, ILane<T>
    where TSystem : IOdeSystem<T>
{
    private const double Safety = 0.9;
    private const double SmallestFactor = 0.2;
    private const double LargestFactor = 8.0;
    private const double ErrorExponent = -1.0 / 8.0;

    private readonly int n;
    private readonly T[][] stage = new T[C.ExtendedStageCount][];
    private readonly T[] start;
    private readonly T[] end;
    private readonly T[] trial;
    private readonly T[] dense;
    private readonly double[] scale;
    private TSystem system;

    public DormandPrince853(TSystem system)
    {
        this.system = system;
        n = system.Dimension;
        for (var i = 0; i < stage.Length; i++)
        {
            stage[i] = new T[n];
        }

        start = new T[n];
        end = new T[n];
        trial = new T[n];
        dense = new T[DenseStep<T>.TermCount * n];
        scale = new double[n];
    }

    /// <summary>The system, so that its inputs can change between integrations.</summary>
    public ref TSystem System => ref system;

    /// <summary>Evaluations of the right-hand side since the workspace was made.</summary>
    public long Evaluations { get; private set; }

    public ReadOnlySpan<T> DenseTerms => dense;

    /// <summary>Integrates from one time to another, or to where the observer stops.</summary>
    /// <param name="from">Start, min.</param>
    /// <param name="to">End, min, not before the start.</param>
    /// <param name="state">The state at the start; afterwards at the time returned.</param>
    /// <param name="options">Tolerance and step limit.</param>
    /// <param name="observer">Sees each step.</param>
    /// <returns>The time reached, min.</returns>
    /// <exception cref="IntegrationException">The step became too small, or too many steps were needed.</exception>
    public double Run<TObserver>(double from, double to, Span<T> state, IntegrationOptions options, ref TObserver observer)
        where TObserver : IStepObserver<T>, allows ref struct
    {
        if (to <= from)
        {
            return from;
        }

        state.CopyTo(start);
        system.AbsoluteScale(scale);
        Evaluate(from, start, stage[0]);
        var t = from;
        var h = FirstStep(to - from, options.RelativeTolerance);
        var rejectedBefore = false;
        for (var steps = 0; steps < options.MaximumSteps; steps++)
        {
            var last = t + h >= to - 1e-12 * Math.Max(1, Math.Abs(to));
            h = last ? to - t : h;
            if (!(h > 1e-12 * Math.Max(1, Math.Abs(t))))
            {
                throw new IntegrationException(t, "the step size became too small; the cavity may have run empty.");
            }

            Step(t, h);
            var error = ErrorNorm(h, options.RelativeTolerance);
            if (!double.IsFinite(error) || error > 1)
            {
                rejectedBefore = true;
                h *= double.IsFinite(error) ? Math.Max(SmallestFactor, Safety * Math.Pow(error, ErrorExponent)) : SmallestFactor;
                continue;
            }

            Evaluate(t + h, end, stage[C.StageCount]);
            var step = new DenseStep<T>(this, t, last ? to : t + h, h, start, end);
            var stop = observer.Observe(ref step);
            if (!double.IsNaN(stop))
            {
                step.State(stop, state);
                return stop;
            }

            if (last)
            {
                end.AsSpan().CopyTo(state);
                return to;
            }

            t += h;
            end.AsSpan().CopyTo(start);
            (stage[0], stage[C.StageCount]) = (stage[C.StageCount], stage[0]);
            var growth = error == 0 ? LargestFactor : Math.Min(LargestFactor, Safety * Math.Pow(error, ErrorExponent));
            h *= rejectedBefore ? Math.Min(1, growth) : Math.Max(SmallestFactor, growth);
            rejectedBefore = false;
        }

        throw new IntegrationException(t, $"more than {options.MaximumSteps} steps were needed.");
    }

    public void PrepareDense(double from, double length)
    {
        for (var i = C.StageCount + 1; i < C.ExtendedStageCount; i++)
        {
            Combine(C.Stages[i], length, start, trial);
            Evaluate(from + C.Nodes[i] * length, trial, stage[i]);
        }

        for (var i = 0; i < n; i++)
        {
            var difference = end[i] - start[i];
            var atStart = length * stage[0][i];
            dense[i] = difference;
            dense[n + i] = atStart - difference;
            dense[2 * n + i] = 2.0 * difference - (length * stage[C.StageCount][i] + atStart);
        }

        for (var term = 0; term < C.Dense.Length; term++)
        {
            Weigh(C.Dense[term], length, dense.AsSpan((3 + term) * n, n));
        }
    }

    // Stages 1 to 11 and the end of the step.
    private void Step(double from, double length)
    {
        for (var i = 1; i < C.StageCount; i++)
        {
            Combine(C.Stages[i], length, start, trial);
            Evaluate(from + C.Nodes[i] * length, trial, stage[i]);
        }

        Combine(C.Stages[C.StageCount], length, start, end);
    }

    private void Evaluate(double minutes, T[] state, T[] rates)
    {
        Evaluations++;
        system.Derivatives(minutes, state, rates);
    }

    private double ErrorNorm(double length, double tolerance)
    {
        double error5 = 0, error3 = 0;
        for (var i = 0; i < n; i++)
        {
            var size = tolerance * (scale[i] + Math.Max(Magnitude(start[i]), Magnitude(end[i])));
            var e5 = T.Largest(T.Abs(Weighted(C.Error5, i))) / size;
            var e3 = T.Largest(T.Abs(Weighted(C.Error3, i))) / size;
            error5 += e5 * e5;
            error3 += e3 * e3;
        }

        var denominator = error5 + 0.01 * error3;
        return denominator == 0 ? 0 : length * error5 / Math.Sqrt(denominator * n);
    }

    // The time in which the state would change by its own size, times tolerance^(1/8); the control does the rest.
    private double FirstStep(double span, double tolerance)
    {
        double size = 0, slope = 0;
        for (var i = 0; i < n; i++)
        {
            var unit = scale[i] + Magnitude(start[i]);
            size += Square(Magnitude(start[i]) / unit);
            slope += Square(Magnitude(stage[0][i]) / unit);
        }

        var guess = slope == 0 ? span : Math.Sqrt(size / slope) * Math.Pow(tolerance, 1.0 / 8.0);
        return Math.Min(span, Math.Max(guess, 1e-6 * span));
    }

    private T Weighted((int Stage, double Weight)[] weights, int component)
    {
        var sum = weights[0].Weight * stage[weights[0].Stage][component];
        for (var j = 1; j < weights.Length; j++)
        {
            sum += weights[j].Weight * stage[weights[j].Stage][component];
        }

        return sum;
    }

    // target = from + length Σ weight stage
    private void Combine((int Stage, double Weight)[] weights, double length, T[] from, T[] target)
    {
        Weigh(weights, length, target);
        for (var i = 0; i < n; i++)
        {
            target[i] += from[i];
        }
    }

    private void Weigh((int Stage, double Weight)[] weights, double length, Span<T> target)
    {
        target.Fill(T.Of(0));
        foreach (var (index, weight) in weights)
        {
            var factor = length * weight;
            var values = stage[index].AsSpan(0, target.Length);
            for (var i = 0; i < target.Length; i++)
            {
                target[i] += factor * values[i];
            }
        }
    }

    private static double Magnitude(T x) => T.Largest(T.Abs(x));

    private static double Square(double x) => x * x;
}
