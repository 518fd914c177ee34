using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Transport;

/// <summary>dM/dt of solutes with derivatives: values as one patient's, to the bit; slopes by partial derivatives of the flux, each argument's slopes met once.</summary>
/// <remarks>
/// Operator by operator, derivatives would be carried through every intermediate number of the flux. Its partial derivatives are plain numbers, four solutes to
/// a vector. It belongs to one thread.
/// </remarks>
internal sealed class SoluteChainRule(int solutes)
{
    private const int Four = Lanes4.Width;

    private readonly SoluteTable<Real> plain = new(solutes);
    private readonly LaneMemory<Lanes4> partials = new(Argument.Count);
    private readonly LaneMemory<Dual> now = new(Unsafe.SizeOf<SoluteMoment<Dual>>() / Unsafe.SizeOf<Dual>());

    /// <summary>What is the same for all solutes, to be written first. It lies on cache lines, where the stack would not.</summary>
    public ref SoluteMoment<Dual> Now => ref Unsafe.As<Dual, SoluteMoment<Dual>>(ref now.Start);

    /// <summary>Takes a solute's ways.</summary>
    public void Set(int solute, in SoluteWays<Dual> ways) =>
        plain[solute] = new(Plain(ways.Plasma), Plain(ways.Small), Plain(ways.Large));

    /// <summary>Writes flux less what leaves with the fluid: <see cref="SoluteWays{T}.Flux"/> − outward M/V.</summary>
    /// <param name="way">The first solute's ways, the others' following.</param>
    /// <param name="amount">M of the first.</param>
    /// <param name="rate">Where to.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Write(ref SoluteWays<Dual> way, ref Dual amount, ref Dual rate)
    {
        ref var ways = ref plain.First<Lanes4>();
        ref var now = ref Now;
        for (var first = 0; first < solutes; first += Four)
        {
            ref var m = ref Unsafe.Add(ref amount, first);
            var values = Differentiate(
                Unsafe.Add(ref ways, first / Four),
                now,
                new(Vector256.Create(m.Value, Unsafe.Add(ref m, 1).Value, Unsafe.Add(ref m, 2).Value, Unsafe.Add(ref m, 3).Value)));
            for (var i = first; i < Math.Min(first + Four, solutes); i++)
            {
                Unsafe.Add(ref rate, i) = new(values[i - first], Slopes(i - first, Unsafe.Add(ref way, i), now, Unsafe.Add(ref amount, i)));
            }
        }
    }

    // The rates of four solutes, and their partial derivatives.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private Lanes4 Differentiate(in SoluteWays<Lanes4> way, in SoluteMoment<Dual> now, Lanes4 amount)
    {
        var (flow_S, flow_L) = (Spread(now.Flow_S), Spread(now.Flow_L));
        var (perArea_S, perArea_L) = (Spread(now.FlowPerArea_S), Spread(now.FlowPerArea_L));
        var (area, perVolume, outward) = (Spread(now.Area), Spread(now.PerVolume), Spread(now.Outward));
        var d = amount * perVolume;
        var rate = way.Flux((flow_S, flow_L), (perArea_S, perArea_L), area, d) - outward * d;

        var mean = 0.5 * (way.Plasma + d);
        var gradient = way.Plasma - d;
        var drive = area * gradient;
        var gains = Through(Argument.Small, way.Small, flow_S, perArea_S, mean, drive) + Through(Argument.Large, way.Large, flow_L, perArea_L, mean, drive);
        var half = 0.5 * Lanes4.MultiplyAdd(way.Small.Passed, flow_S, way.Large.Passed * flow_L);
        var steepness = gains * area;
        var byDialysate = half - steepness - outward;
        partials[Argument.Area] = gains * gradient;
        partials[Argument.Plasma] = half + steepness;
        partials[Argument.Amount] = byDialysate * perVolume;
        partials[Argument.PerVolume] = byDialysate * amount;
        partials[Argument.Outward] = -1.0 * d;
        return rate;
    }

    // What one pore class adds to PS y coth y, and the partial derivatives of w (P + D)/2 + a PS y coth y (P − D) by all that is its own.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private Lanes4 Through(int first, in PorePassage<Lanes4> way, Lanes4 flow, Lanes4 flowPerArea, Lanes4 mean, Lanes4 drive)
    {
        var y = way.HalfPeclet * flowPerArea;
        var (gain, slope) = DiffusionGain.WithSlope(y);
        var steeper = drive * way.PS * slope;
        partials[first + Argument.Flow] = mean * way.Passed;
        partials[first + Argument.Passed] = mean * flow;
        partials[first + Argument.FlowPerArea] = steeper * way.HalfPeclet;
        partials[first + Argument.HalfPeclet] = steeper * flowPerArea;
        partials[first + Argument.PS] = drive * gain;
        return way.PS * gain;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private Vector512<double> Slopes(int lane, in SoluteWays<Dual> way, in SoluteMoment<Dual> now, in Dual amount)
    {
        ref var by = ref Unsafe.Add(ref Unsafe.As<Lanes4, double>(ref partials.Start), lane);

        // Seven lanes in memory; as properties they would be copied.
        ref var ways = ref Unsafe.As<SoluteWays<Dual>, Dual>(ref Unsafe.AsRef(in way));
        var slopes = amount.Slopes * Partial(ref by, Argument.Amount);
        var others = now.PerVolume.Slopes * Partial(ref by, Argument.PerVolume);
        slopes = Dual.Add(slopes, now.Outward, Partial(ref by, Argument.Outward));
        others = Dual.Add(others, now.Area, Partial(ref by, Argument.Area));
        slopes = Dual.Add(slopes, now.Flow_S, Partial(ref by, Argument.Small + Argument.Flow));
        others = Dual.Add(others, now.Flow_L, Partial(ref by, Argument.Large + Argument.Flow));
        slopes = Dual.Add(slopes, now.FlowPerArea_S, Partial(ref by, Argument.Small + Argument.FlowPerArea));
        others = Dual.Add(others, now.FlowPerArea_L, Partial(ref by, Argument.Large + Argument.FlowPerArea));
        slopes = Dual.Add(slopes, ways, Partial(ref by, Argument.Plasma));
        for (var i = Argument.Passed; i <= Argument.HalfPeclet; i++)
        {
            slopes = Dual.Add(slopes, Unsafe.Add(ref ways, 1 + i), Partial(ref by, Argument.Small + i));
            others = Dual.Add(others, Unsafe.Add(ref ways, 4 + i), Partial(ref by, Argument.Large + i));
        }

        return slopes + others;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static double Partial(ref double by, int argument) => Unsafe.Add(ref by, Four * argument);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Lanes4 Spread(in Dual x) => Lanes4.Of(x.Value);

    private static Real Plain(Dual x) => new(x.Value);

    private static PorePassage<Real> Plain(PorePassage<Dual> way) => new(Plain(way.Passed), Plain(way.PS), Plain(way.HalfPeclet));

    // Places of the partial derivatives; a pore class' own follow one another, the first three as in its passage.
    private static class Argument
    {
        public const int Passed = 0;
        public const int PS = 1;
        public const int HalfPeclet = 2;
        public const int Flow = 3;
        public const int FlowPerArea = 4;
        public const int Small = 0;
        public const int Large = 5;
        public const int Plasma = 10;
        public const int Area = 11;
        public const int Amount = 12;
        public const int PerVolume = 13;
        public const int Outward = 14;
        public const int Count = 15;
    }
}
