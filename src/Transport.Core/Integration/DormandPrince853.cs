using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using C = Transport.DormandPrince853Coefficients;

namespace Transport;

/// <summary>
/// Adaptive explicit Runge-Kutta integration of order 8 with dense output; the coefficients' file names the source. One instance is
/// one workspace: reuse it, and nothing is allocated per integration.
/// </summary>
/// <remarks>
/// The step size is controlled in the norm max(1, n)^−½ ‖err / (atol + rtol |y|)‖₂ of the combined estimate of orders 5 and 3 (Hairer,
/// Nørsett and Wanner, II.10), and no less than a fifth of the estimate of order 3 squared: of the same power h⁸ of the step, it is there where the
/// combined one passes through zero (the floor is ours). Where a lane carries derivatives they ride along: the step is chosen by the values alone, so that
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
    private const double Floor = 0.2;

    private readonly int n;
    private readonly T[] stages;
    private readonly T[] start;
    private readonly T[] end;
    private readonly T[] trial;
    private readonly T[] trial3;
    private readonly T[] dense;
    private readonly double[] scale;
    private TSystem system;

    public DormandPrince853(TSystem system)
    {
        this.system = system;
        n = system.Dimension;
        stages = new T[C.ExtendedStageCount * n];
        start = new T[n];
        end = new T[n];
        trial = new T[n];
        trial3 = new T[n];
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
        Evaluate(from, start, Stage(0));
        var t = from;
        var h = FirstStep(to - from, options.RelativeTolerance);
        var beforeKink = double.NaN;
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

            Evaluate(t + h, end, Stage(C.StageCount));
            if (system.KinkCount > 0 && ToKink(t, h, options.RelativeTolerance) is var shorter && shorter < h)
            {
                beforeKink = double.IsNaN(beforeKink) ? h : beforeKink;
                h = shorter;
                continue;
            }

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
            Stage(C.StageCount).CopyTo(Stage(0));
            if (!double.IsNaN(beforeKink))
            {
                (h, beforeKink, rejectedBefore) = (beforeKink, double.NaN, false);
                continue;
            }

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
            Evaluate(from + C.Nodes[i] * length, trial, Stage(i));
        }

        for (var i = 0; i < n; i++)
        {
            var difference = end[i] - start[i];
            var atStart = length * stages[i];
            dense[i] = difference;
            dense[n + i] = atStart - difference;
            dense[2 * n + i] = 2.0 * difference - (length * stages[C.StageCount * n + i] + atStart);
        }

        for (var term = 0; term < C.Dense.Length; term++)
        {
            Combine(C.Dense[term], length, [], dense.AsSpan((3 + term) * n, n));
        }
    }

    // Stages 1 to 11 and the end of the step.
    private void Step(double from, double length)
    {
        for (var i = 1; i < C.StageCount; i++)
        {
            Combine(C.Stages[i], length, start, trial);
            Evaluate(from + C.Nodes[i] * length, trial, Stage(i));
        }

        Combine(C.Stages[C.StageCount], length, start, end);
    }

    private void Evaluate(double minutes, ReadOnlySpan<T> state, Span<T> rates)
    {
        Evaluations++;
        system.Derivatives(minutes, state, rates);
    }

    private double ErrorNorm(double length, double tolerance)
    {
        Combine(C.Error5, length / tolerance, [], trial);
        Combine(C.Error3, length / tolerance, [], trial3);
        T error5 = T.Of(0), error3 = T.Of(0);
        for (var i = 0; i < n; i++)
        {
            var perSize = T.Of(1) / (T.Of(scale[i]) + T.Max(T.Abs(start[i]), T.Abs(end[i])));
            var e5 = trial[i] * perSize;
            var e3 = trial3[i] * perSize;
            error5 += e5 * e5;
            error3 += e3 * e3;
        }

        // error5 / √(error5 + 0.01 error3), squared; the tiny number keeps an exact step from dividing by zero.
        var squared = T.Largest(error5 * error5 / (error5 + 0.01 * error3 + T.Of(1e-300)));
        return Math.Max(Math.Sqrt(squared / n), Floor * tolerance * T.Largest(error3) / n);
    }

    // The length at which the step just crosses a kink; its own where it crosses none by more than the tolerance can tell. The polynomial that is
    // asked here has seen the far side, so its crossing is only near: the shortened step is looked at again, with a polynomial that has not.
    private double ToKink(double from, double length, double tolerance)
    {
        var near = Math.Max(1e-2 * tolerance, 1e-12);
        if (FarthestPastKink(end) <= near)
        {
            return length;
        }

        PrepareDense(from, length);
        double low = 0, high = 1;
        while (high - low > 1e-15)
        {
            var middle = 0.5 * (low + high);
            for (var i = 0; i < n; i++)
            {
                trial[i] = DenseStep<T>.Evaluate(dense, start, i, middle);
            }

            (low, high) = FarthestPastKink(trial) > 0.5 * near ? (low, middle) : (middle, high);
        }

        // A step that starts on the kink to the last digit is on its far side throughout.
        return high * length > 1e-10 * Math.Max(1, Math.Abs(from)) ? high * length : length;
    }

    // How far a state lies beyond the kinks that part it from the start of the step, of several patients the farthest; zero where none does.
    private double FarthestPastKink(ReadOnlySpan<T> state)
    {
        var farthest = 0.0;
        for (var kink = 0; kink < system.KinkCount; kink++)
        {
            var before = system.Kink(kink, start);
            var past = T.PositivePart(-1.0 * (before * system.Kink(kink, state))) / (T.Abs(before) + T.Of(1e-300));
            farthest = Math.Max(farthest, T.Largest(past));
        }

        return farthest;
    }

    // The time in which the state would change by its own size, times tolerance^(1/8); the control does the rest.
    private double FirstStep(double span, double tolerance)
    {
        double size = 0, slope = 0;
        for (var i = 0; i < n; i++)
        {
            var unit = scale[i] + Magnitude(start[i]);
            size += Square(Magnitude(start[i]) / unit);
            slope += Square(Magnitude(stages[i]) / unit);
        }

        var guess = slope == 0 ? span : Math.Sqrt(size / slope) * Math.Pow(tolerance, 1.0 / 8.0);
        return Math.Min(span, Math.Max(guess, 1e-6 * span));
    }

    // target = from + length Σ weight stage, from nothing where it is empty. Whatever a lane is made of (one patient, four, a value and its
    // derivatives), it is doubles side by side and the combination is linear: so it runs over all of them alike, four at a time.
    private void Combine((int Stage, double Weight)[] weights, double length, ReadOnlySpan<T> from, Span<T> target)
    {
        ref var stage = ref MemoryMarshal.GetReference(MemoryMarshal.Cast<T, double>(stages));
        var origin = MemoryMarshal.Cast<T, double>(from);
        var sum = MemoryMarshal.Cast<T, double>(target);
        var stride = (nuint)sum.Length;
        var i = 0;
        for (; i <= sum.Length - Vector256<double>.Count; i += Vector256<double>.Count)
        {
            var at = (nuint)i;
            var total = Vector256<double>.Zero;
            foreach (var (index, weight) in weights)
            {
                total += Vector256.LoadUnsafe(ref stage, (nuint)index * stride + at) * weight;
            }

            total *= length;
            (origin.IsEmpty ? total : total + Vector256.LoadUnsafe(ref MemoryMarshal.GetReference(origin), at)).StoreUnsafe(ref MemoryMarshal.GetReference(sum), at);
        }

        for (; i < sum.Length; i++)
        {
            var total = 0.0;
            foreach (var (index, weight) in weights)
            {
                total += Unsafe.Add(ref stage, index * sum.Length + i) * weight;
            }

            sum[i] = total * length + (origin.IsEmpty ? 0 : origin[i]);
        }
    }

    private Span<T> Stage(int index) => stages.AsSpan(index * n, n);

    private static double Magnitude(T x) => T.Largest(T.Abs(x));

    private static double Square(double x) => x * x;
}
