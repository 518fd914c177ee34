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
}
