using System.Runtime.CompilerServices;

namespace Transport;

/// <summary>A solute's way through one pore class: how much of it the flow carries, and how well it diffuses.</summary>
/// <param name="Passed">1 − σ, the part of the solute that the flow carries along.</param>
/// <param name="PS">Permeability-surface product, mL/min.</param>
/// <param name="HalfPerPS">1 / (2 PS), kept because a division costs as much as the rest.</param>
internal readonly record struct PorePassage<T>(T Passed, T PS, T HalfPerPS)
    where T : struct, ILane<T>
{
    /// <summary>A passage with 1 − σ and PS, mL/min.</summary>
    public static PorePassage<T> Of(T passed, T permeability)
    {
        // A vanishing PS meets a floor: y is then as large as need be, and PS y coth y is |w|/2, which leaves pure convection.
        var ps = permeability + T.Of(1e-30);
        return new(passed, ps, T.Of(0.5) / ps);
    }

    /// <summary>
    /// Solute flux into the cavity, µmol/min: N = w (P + D)/2 + a PS y coth y (P − D), w = J (1 − σ), y = w / (2 a PS). Exact for either direction of
    /// flow, without diffusion, and for any Pe.
    /// </summary>
    /// <param name="flow">J of the pore class, mL/min.</param>
    /// <param name="area">a, by which diffusion exceeds PS at this moment.</param>
    /// <param name="perArea">1/a.</param>
    /// <param name="plasma">P, mmol/L.</param>
    /// <param name="dialysate">D, mmol/L.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public T Flux(T flow, T area, T perArea, T plasma, T dialysate)
    {
        var w = Passed * flow;
        var y = w * (perArea * HalfPerPS);
        return T.MultiplyAdd(w, 0.5 * (plasma + dialysate), PS * T.DiffusionGain(y * y) * (area * (plasma - dialysate)));
    }
}
