using System.Runtime.CompilerServices;

namespace Transport;

/// <summary>A solute's way through one pore class: how much of it the flow carries, and how well it diffuses.</summary>
internal readonly struct PorePassage<T>
    where T : struct, ILane<T>
{
    private readonly T halfPerPs;

    /// <param name="passed">1 − σ, the part of the solute that the flow carries along.</param>
    /// <param name="ps">PS, mL/min.</param>
    public PorePassage(double passed, T ps)
    {
        Passed = passed;

        // A vanishing PS meets a floor: y is then as large as need be, and PS y coth y is |w|/2, which leaves pure convection.
        PS = ps + T.Of(1e-30);
        halfPerPs = T.Of(0.5) / PS;
    }

    /// <summary>1 − σ.</summary>
    public double Passed { get; }

    /// <summary>Permeability-surface product, mL/min.</summary>
    public T PS { get; }

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
        var y = w * (perArea * halfPerPs);
        return w * (0.5 * (plasma + dialysate)) + PS * T.DiffusionGain(y * y) * (area * (plasma - dialysate));
    }
}
