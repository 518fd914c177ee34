using System.Runtime.CompilerServices;

namespace Transport;

/// <content>A coarse look ahead.</content>
internal partial struct ThreePoreSystem<T>
{
    private const int LookSteps = 8;

    /// <summary>
    /// When the small pores' flow turns, to a few minutes: patients who are alike in this take their steps alike. Eight steps of the midpoint rule to 4 h, for
    /// fluid and what draws it; what turns later is told from the last step. Left out is what matters little to the time: the law of area, the large
    /// pores' solutes, what flow adds to diffusion, and how a polymer's pull changes.
    /// </summary>
    /// <param name="start">The state at the start.</param>
    public readonly T TurnGuess(ReadOnlySpan<T> start)
    {
        var constant = (C: -1.0 * fluid.Oncotic_C, S: -1.0 * fluid.Oncotic_S, L: -1.0 * fluid.Oncotic_L);
        for (var i = polymer; i < solutes; i++)
        {
            constant = Pull(constant, i, start[1 + i] / start[0]);
        }

        var state = new Draw(start[0], start[1 + SolutePanel.Urea], start[1 + SolutePanel.Glucose], start[1 + SolutePanel.Sodium]);
        var time = 0.0;
        var before = Look(constant, time, state, out var rates);
        var turn = T.WhereAbove(before, 0, T.Of(-1), T.Of(0));
        var slope = T.Of(0);
        for (var k = 1; k <= LookSteps; k++)
        {
            // Short steps first, when glucose falls fastest.
            var next = 240 * Math.Pow((double)k / LookSteps, 1.5);
            var length = next - time;
            Look(constant, time + 0.5 * length, state.After(0.5 * length, rates), out rates);
            state = state.After(length, rates);
            var after = Look(constant, next, state, out rates);
            slope = 1 / length * (before - after);
            var crossing = T.Of(time) + before / slope;
            turn = T.WhereAbove(turn, -0.5, turn, T.WhereAbove(after, 0, turn, crossing));
            (before, time) = (after, next);
        }

        // A flow that does not fall never turns.
        return T.WhereAbove(turn, -0.5, turn, T.WhereAbove(slope, 1e-9, T.Of(time) + before / slope, T.Of(1e6)));
    }

    // The small pores' flow, and the rates. Constant is what protein and polymer do to the three pores' drives, mmHg.
    private readonly T Look(in (T C, T S, T L) constant, double minutes, in Draw at, out Draw rates)
    {
        var perVolume = T.Of(1) / at.Volume;
        var (urea, glucose, sodium) = (at.Urea * perVolume, at.Glucose * perVolume, at.Sodium * perVolume);
        var pressure = fluid.PressureEmpty - fluid.PressurePerVolume * at.Volume;
        var drives = (C: pressure + constant.C, S: pressure + constant.S, L: pressure + constant.L);
        drives = Pull(Pull(Pull(drives, SolutePanel.Urea, urea), SolutePanel.Glucose, glucose), SolutePanel.Sodium, sodium);
        var flow = fluid.Lp_S * drives.S;
        var diffusion = Transient(minutes);
        rates = new(
            T.MultiplyAdd(fluid.Lp_C, drives.C, T.MultiplyAdd(fluid.Lp_L, drives.L, flow - fluid.Lymph)),
            Crude(SolutePanel.Urea, urea, flow, diffusion),
            Crude(SolutePanel.Glucose, glucose, flow, diffusion),
            Crude(SolutePanel.Sodium, sodium, flow, diffusion));
        return flow;
    }

    // A solute's rate by convection, diffusion and lymph.
    private readonly T Crude(int solute, T dialysate, T flow, T diffusion)
    {
        ref var way = ref Unsafe.Add(ref ways.First<T>(), solute);
        var mean = 0.5 * (way.Plasma + dialysate);
        return way.Small.Passed * flow * mean + way.Small.PS * diffusion * (way.Plasma - dialysate) - fluid.Lymph * dialysate;
    }

    // Volume and the amounts that draw it, or their rates.
    private readonly record struct Draw(T Volume, T Urea, T Glucose, T Sodium)
    {
        public Draw After(double minutes, in Draw rates) => new(
            Volume + minutes * rates.Volume, Urea + minutes * rates.Urea, Glucose + minutes * rates.Glucose, Sodium + minutes * rates.Sodium);
    }
}
