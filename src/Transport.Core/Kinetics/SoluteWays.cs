using System.Runtime.CompilerServices;

namespace Transport;

/// <summary>A solute's concentration on the blood side, mmol/L, and its ways through small and large pores.</summary>
/// <remarks>Seven lanes, one after the other.</remarks>
internal readonly record struct SoluteWays<T>(T Plasma, PorePassage<T> Small, PorePassage<T> Large)
    where T : struct, ILane<T>
{
    /// <summary>How many lanes.</summary>
    public const int Size = 7;

    /// <summary>
    /// Solute flux into the cavity through small and large pores, µmol/min: N = Σ [w (P + D)/2 + a PS y coth y (P − D)], w = J (1 − σ),
    /// y = w / (2 a PS). Exact for either direction of flow, without diffusion, and for any Pe.
    /// </summary>
    /// <param name="flow">J of the two, mL/min.</param>
    /// <param name="flowPerArea">J/a of the two.</param>
    /// <param name="area">a, by which diffusion exceeds PS at this moment.</param>
    /// <param name="dialysate">D, mmol/L.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public T Flux((T S, T L) flow, (T S, T L) flowPerArea, T area, T dialysate)
    {
        var w = T.MultiplyAdd(Small.Passed, flow.S, Large.Passed * flow.L);
        var gains = T.DiffusionGains(Small.PS, Small.HalfPeclet * flowPerArea.S, Large.PS, Large.HalfPeclet * flowPerArea.L);
        return T.MultiplyAdd(w, 0.5 * (Plasma + dialysate), gains * (area * (Plasma - dialysate)));
    }
}
