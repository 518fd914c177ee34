using System.Runtime.InteropServices;

namespace Transport;

/// <summary>A membrane's numbers that belong to no solute, over a lane: mL, min, mmHg.</summary>
/// <remarks>Nothing but lanes, one after the other: one patient's can be written into his place among several.</remarks>
[StructLayout(LayoutKind.Sequential)]
internal struct FluidTerms<T>
    where T : struct, ILane<T>
{
    /// <summary>α_k LpS of the ultrasmall, small and large pores.</summary>
    public T Lp_C, Lp_S, Lp_L;

    /// <summary>σ_k ΔΠ of protein.</summary>
    public T Oncotic_C, Oncotic_S, Oncotic_L;

    /// <summary>L.</summary>
    public T Lymph;

    /// <summary>Fluid lost into tissue: per mL above a volume, and that volume; infinite where there is no such loss.</summary>
    public T LossPerVolume, LossVolume;

    /// <summary>K of a polymer into tissue.</summary>
    public T TissueUptake;

    /// <summary>ΔP of the empty cavity, and by how much each mL lowers it.</summary>
    public T PressureEmpty, PressurePerVolume;

    /// <summary>The volumes to which the area refers and above which it is all in contact.</summary>
    public T ReferenceVolume, FullContactVolume;

    /// <summary>Half the Péclet number of the solute that turns most sharply with the small pores' flow, for each mL/min of it.</summary>
    public T SharpestTurn;

    /// <summary>F0, and 1/τ.</summary>
    public T TransientAmplitude, TransientRate;

    /// <summary>Writes one patient's numbers into his lane.</summary>
    public void WriteLane(int lane, FluidTerms<Real> one) => LaneOf.Write(Span(ref this), lane, FluidTerms<Real>.Span(ref one));

    private static Span<T> Span(ref FluidTerms<T> terms) =>
        MemoryMarshal.Cast<FluidTerms<T>, T>(MemoryMarshal.CreateSpan(ref terms, 1));
}
