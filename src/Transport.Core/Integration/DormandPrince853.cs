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
    private const double Stretch = 1.1;

    // How wide a bend is, and how far a step may take it: y coth y has its poles at ±iπ.
    private const double BendWidth = 3;
    private const double BendStep = 4;

    // Vectors that go together in a combination of stages.
    private const int Block = 4;

    private readonly LaneMemory<T> stages;
    private readonly LaneMemory<T> nothing;
    private readonly LaneMemory<T> start;
    private readonly LaneMemory<T> end;
    private readonly LaneMemory<T> trial;
    private readonly LaneMemory<T> trial3;
    private readonly LaneMemory<T> dense;
    private readonly double[] scale;
    private TSystem system;

    // Components of the state that is integrated, and of a row in memory.
    private int n;
    private int stride;

    /// <param name="system">The equations, while their dimension is the largest.</param>
    public DormandPrince853(TSystem system)
    {
        this.system = system;
        n = system.Dimension;
        stride = Stride(n);
        stages = new(C.ExtendedStageCount * stride);
        nothing = new(stride);
        start = new(stride);
        end = new(stride);
        trial = new(stride);
        trial3 = new(stride);
        dense = new(DenseStep<T>.TermCount * n);
        scale = new double[n];
    }

    /// <summary>The system, so that its inputs can change between integrations.</summary>
    public ref TSystem System => ref system;

    /// <summary>Evaluations of the right-hand side since the workspace was made.</summary>
    public long Evaluations { get; private set; }

    public ReadOnlySpan<T> DenseTerms => dense.Span;

    /// <summary>Integrates from one time to another, or to where the observer stops.</summary>
    /// <param name="from">Start, min.</param>
    /// <param name="to">End, min, not before the start.</param>
    /// <param name="state">The state at the start, as long as the system's dimension now; afterwards at the time returned.</param>
    /// <param name="options">Tolerance and step limit.</param>
    /// <param name="observer">Sees each step.</param>
    /// <param name="firstStep">The first step, in the unit of start and end, where it is known from many alike; then no bend is looked for in it. NaN: it is found.</param>
    /// <returns>The time reached, min.</returns>
    /// <exception cref="IntegrationException">The step became too small, or too many steps were needed.</exception>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public double Run<TObserver>(double from, double to, Span<T> state, IntegrationOptions options, ref TObserver observer, double firstStep = double.NaN)
        where TObserver : IStepObserver<T>, allows ref struct
    {
        if (to <= from)
        {
            return from;
        }

        n = state.Length;
        stride = Stride(n);
        state.CopyTo(start.Span);
        system.AbsoluteScale(scale.AsSpan(0, n));
        Evaluate(from, start.Span[..n], Stage(0));
        var t = from;
        var h = firstStep;
        var bend = system.Bend(Stage(0));
        var bending = T.Of(0);
        if (double.IsNaN(firstStep))
        {
            h = FirstStep(from, to - from, options.RelativeTolerance, out var soon);
            bending = (1 / soon) * (system.Bend(Stage(1)) - bend);
        }

        var beforeKink = double.NaN;
        var rejectedBefore = false;
        for (var steps = 0; steps < options.MaximumSteps; steps++)
        {
            h = Math.Min(h, LongestAround(bend, bending));

            // A step to where one has to end may be a little longer, within what the safety factor holds back, rather than leave a crumb; but not over a kink.
            var reach = t + (double.IsNaN(beforeKink) ? Stretch : 1) * h;
            var wanted = Math.Min(to, observer.Wanted(t, reach));
            h = wanted <= reach ? wanted - t : h;
            var next = wanted <= reach ? wanted : t + h;
            var last = next == to;
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

            Evaluate(next, end.Span[..n], Stage(C.StageCount));
            if (system.KinkCount > 0 && ToKink(t, h, options.RelativeTolerance) is var shorter && shorter < h)
            {
                beforeKink = double.IsNaN(beforeKink) ? h : beforeKink;
                h = shorter;
                continue;
            }

            var step = new DenseStep<T>(this, t, next, h, start.Span[..n], end.Span[..n]);
            var stop = observer.Observe(ref step);
            if (!double.IsNaN(stop))
            {
                step.State(stop, state);
                return stop;
            }

            if (last)
            {
                end.Span[..n].CopyTo(state);
                return to;
            }

            var bendBefore = bend;
            bend = system.Bend(Stage(C.StageCount));
            bending = (1 / h) * (bend - bendBefore);
            t = next;
            end.Span.CopyTo(start.Span);
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
            Evaluate(from + C.Nodes[i] * length, trial.Span[..n], Stage(i));
        }

        for (var i = 0; i < n; i++)
        {
            var difference = end[i] - start[i];
            var atStart = length * stages[i];
            dense[i] = difference;
            dense[n + i] = atStart - difference;
            dense[2 * n + i] = 2.0 * difference - (length * stages[C.StageCount * stride + i] + atStart);
        }

        for (var term = 0; term < C.Dense.Length; term++)
        {
            Combine(C.Dense[term], length, nothing, trial);
            trial.Span[..n].CopyTo(dense.Span[((3 + term) * n)..]);
        }
    }

    // Stages 1 to 11 and the end of the step.
    private void Step(double from, double length)
    {
        for (var i = 1; i < C.StageCount; i++)
        {
            Combine(C.Stages[i], length, start, trial);
            Evaluate(from + C.Nodes[i] * length, trial.Span[..n], Stage(i));
        }

        Combine(C.Stages[C.StageCount], length, start, end);
    }

    private void Evaluate(double minutes, ReadOnlySpan<T> state, Span<T> rates)
    {
        Evaluations++;
        system.Derivatives(minutes, state, rates);
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private double ErrorNorm(double length, double tolerance)
    {
        Combine(C.Error5, length / tolerance, nothing, trial);
        Combine(C.Error3, length / tolerance, nothing, trial3);
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
        // Components that are not followed now are without error: what is chosen for the others does not depend on them.
        return Math.Max(Math.Sqrt(squared / scale.Length), Floor * tolerance * T.Largest(error3) / scale.Length);
    }

    // The length at which the step just crosses a kink; its own where it crosses none by more than the tolerance can tell. The polynomial that is
    // asked here has seen the far side, so its crossing is only near: the shortened step is looked at again, with a polynomial that has not.
    private double ToKink(double from, double length, double tolerance)
    {
        var near = Math.Max(1e-2 * tolerance, 1e-12);
        if (FarthestPastKink(end.Span) <= near)
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
                trial[i] = DenseStep<T>.Evaluate(dense.Span, start.Span[..n], i, middle);
            }

            (low, high) = FarthestPastKink(trial.Span) > 0.5 * near ? (low, middle) : (middle, high);
        }

        // A step that starts on the kink to the last digit is on its far side throughout.
        return high * length > 1e-10 * Math.Max(1, Math.Abs(from)) ? high * length : length;
    }

    // The longest step that takes no patient's bend, going on as it did, further than to its zero or by so much; without limit where it is far and leaving.
    private static double LongestAround(T bend, T bending)
    {
        var far = T.Abs(bend);
        var leaving = T.WhereAbove(far, BendWidth, T.Of(double.MaxValue), T.Of(BendStep));
        var most = T.WhereAbove(-1.0 * (bend * bending), 0, T.Max(far, T.Of(BendStep)), leaving);
        return 1 / T.Largest(T.Abs(bending) / most);
    }

    // How far a state lies beyond the kinks that part it from the start of the step, of several patients the farthest; zero where none does.
    private double FarthestPastKink(ReadOnlySpan<T> state)
    {
        var farthest = 0.0;
        for (var kink = 0; kink < system.KinkCount; kink++)
        {
            var before = system.Kink(kink, start.Span);
            var past = T.PositivePart(-1.0 * (before * system.Kink(kink, state))) / (T.Abs(before) + T.Of(1e-300));
            farthest = Math.Max(farthest, T.Largest(past));
        }

        return farthest;
    }

    // The time in which the rates would change by their own size, times 1.5 tolerance^(1/8); the control does the rest. It takes one evaluation to
    // see how the rates change, a little later. The rates alone tell nothing: what starts from nothing changes by its own size at once.
    private double FirstStep(double from, double span, double tolerance, out double soon)
    {
        soon = Math.Min(span, 1e-3 * span + 1e-6);
        for (var i = 0; i < n; i++)
        {
            trial[i] = start[i] + soon * stages[i];
        }

        Evaluate(from + soon, trial.Span[..n], Stage(1));
        double slope = 0, bend = 0;
        for (var i = 0; i < n; i++)
        {
            var unit = scale[i] + Magnitude(start[i]);
            slope += Square(Magnitude(stages[i]) / unit);
            bend += Square(Magnitude(stages[stride + i] - stages[i]) / (unit * soon));
        }

        var guess = 1.5 * Math.Sqrt(slope / bend) * Math.Pow(tolerance, 1.0 / 8.0);
        return guess < span ? Math.Max(guess, 1e-6 * span) : bend > 0 || slope == 0 ? span : 1e-6 * span;
    }

    // target = from + length Σ weight stage. Whatever a lane is made of (one patient, eight, a value and its derivatives), it is doubles side by side and
    // the combination is linear: so it runs over all of them alike.
    private void Combine((int Stage, double Weight)[] weights, double length, LaneMemory<T> from, LaneMemory<T> target)
    {
        if (Vector512.IsHardwareAccelerated && stride * LaneOf.Width<T>() % (Block * Lanes8.Width) == 0)
        {
            Combine<Lanes8>(weights, length, from, target);
        }
        else
        {
            Combine<Lanes4>(weights, length, from, target);
        }
    }

    // Four vectors together, and two sums of each, so that none waits for the one before.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Combine<TVector>((int Stage, double Weight)[] weights, double length, LaneMemory<T> from, LaneMemory<T> target)
        where TVector : struct, ILane<TVector>
    {
        ref var stage = ref Vectors<TVector>(stages);
        ref var origin = ref Vectors<TVector>(from);
        ref var sum = ref Vectors<TVector>(target);
        nint row = stride * LaneOf.Width<T>() / LaneOf.Width<TVector>();
        var factor = TVector.Of(length);
        for (nint i = 0; i < row; i += Block)
        {
            TVector a = TVector.Of(0), b = a, c = a, d = a, e = a, f = a, g = a, h = a;
            ref var column = ref Unsafe.Add(ref stage, i);
            ref var pair = ref MemoryMarshal.GetArrayDataReference(weights);
            for (var left = weights.Length; left > 1; left -= 2)
            {
                ref var one = ref Unsafe.Add(ref column, pair.Stage * row);
                var by = TVector.Of(pair.Weight);
                pair = ref Unsafe.Add(ref pair, 1);
                ref var other = ref Unsafe.Add(ref column, pair.Stage * row);
                var otherBy = TVector.Of(pair.Weight);
                pair = ref Unsafe.Add(ref pair, 1);
                a = TVector.MultiplyAdd(one, by, a);
                b = TVector.MultiplyAdd(Unsafe.Add(ref one, 1), by, b);
                c = TVector.MultiplyAdd(Unsafe.Add(ref one, 2), by, c);
                d = TVector.MultiplyAdd(Unsafe.Add(ref one, 3), by, d);
                e = TVector.MultiplyAdd(other, otherBy, e);
                f = TVector.MultiplyAdd(Unsafe.Add(ref other, 1), otherBy, f);
                g = TVector.MultiplyAdd(Unsafe.Add(ref other, 2), otherBy, g);
                h = TVector.MultiplyAdd(Unsafe.Add(ref other, 3), otherBy, h);
            }

            if ((weights.Length & 1) != 0)
            {
                ref var one = ref Unsafe.Add(ref column, pair.Stage * row);
                var by = TVector.Of(pair.Weight);
                a = TVector.MultiplyAdd(one, by, a);
                b = TVector.MultiplyAdd(Unsafe.Add(ref one, 1), by, b);
                c = TVector.MultiplyAdd(Unsafe.Add(ref one, 2), by, c);
                d = TVector.MultiplyAdd(Unsafe.Add(ref one, 3), by, d);
            }

            Unsafe.Add(ref sum, i) = TVector.MultiplyAdd(a + e, factor, Unsafe.Add(ref origin, i));
            Unsafe.Add(ref sum, i + 1) = TVector.MultiplyAdd(b + f, factor, Unsafe.Add(ref origin, i + 1));
            Unsafe.Add(ref sum, i + 2) = TVector.MultiplyAdd(c + g, factor, Unsafe.Add(ref origin, i + 2));
            Unsafe.Add(ref sum, i + 3) = TVector.MultiplyAdd(d + h, factor, Unsafe.Add(ref origin, i + 3));
        }
    }

    private static ref TVector Vectors<TVector>(LaneMemory<T> numbers) => ref Unsafe.As<T, TVector>(ref numbers.Start);

    // Rows are padded so that they are whole blocks.
    private static int Stride(int n)
    {
        while (n * LaneOf.Width<T>() % (Block * Lanes4.Width) != 0)
        {
            n++;
        }

        return n;
    }

    private Span<T> Stage(int index) => stages.Span.Slice(index * stride, n);

    private static double Magnitude(T x) => T.Largest(T.Abs(x));

    private static double Square(double x) => x * x;
}
