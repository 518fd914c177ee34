using System.Runtime.CompilerServices;

namespace Transport;

/// <summary>A solute's way through one pore class: how much of it the flow carries, and how well it diffuses.</summary>
/// <param name="Passed">1 − σ, the part of the solute that the flow carries along.</param>
/// <param name="PS">Permeability-surface product, mL/min.</param>
/// <param name="HalfPeclet">y = Pe/2 for each mL/min of flow: (1 − σ) / (2 PS), kept because a division costs as much as the rest.</param>
internal readonly record struct PorePassage<T>(T Passed, T PS, T HalfPeclet)
    where T : struct, ILane<T>
{
    /// <summary>A passage with 1 − σ and PS, mL/min.</summary>
    public static PorePassage<T> Of(T passed, T permeability)
    {
        // A vanishing PS meets a floor: y is then as large as need be, and PS y coth y is |w|/2, which leaves pure convection.
        var ps = permeability + T.Of(1e-30);
        return new(passed, ps, 0.5 * (passed / ps));
    }

    /// <summary>
    /// Solute flux into the cavity through small and large pores, µmol/min: N = Σ [w (P + D)/2 + a PS y coth y (P − D)], w = J (1 − σ),
    /// y = w / (2 a PS). Exact for either direction of flow, without diffusion, and for any Pe.
    /// </summary>
    /// <param name="small">The way through the small pores.</param>
    /// <param name="large">The way through the large pores.</param>
    /// <param name="flow">J of the two, mL/min.</param>
    /// <param name="flowPerArea">J/a of the two.</param>
    /// <param name="area">a, by which diffusion exceeds PS at this moment.</param>
    /// <param name="plasma">P, mmol/L.</param>
    /// <param name="dialysate">D, mmol/L.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static T Flux(
        in PorePassage<T> small, in PorePassage<T> large, (T S, T L) flow, (T S, T L) flowPerArea, T area, T plasma, T dialysate)
    {
        var w = T.MultiplyAdd(small.Passed, flow.S, large.Passed * flow.L);
        var gains = T.DiffusionGains(small.PS, small.HalfPeclet * flowPerArea.S, large.PS, large.HalfPeclet * flowPerArea.L);
        return T.MultiplyAdd(w, 0.5 * (plasma + dialysate), gains * (area * (plasma - dialysate)));
    }
}
