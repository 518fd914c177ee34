using System.Runtime.InteropServices;

namespace Transport;

/// <summary>The membrane's numbers that a fit may free, over a lane; everything else comes from the membrane record.</summary>
/// <remarks>Units: mL/min/mmHg, cm, none, mL/min, none; shares of LpS; mL/min. Nothing but lanes, one after the other.</remarks>
[StructLayout(LayoutKind.Sequential)]
internal struct FreeParameters<T>
    where T : struct, ILane<T>
{
    public required T UltrafiltrationCoefficient { readonly get; init; }

    public required T DiffusionArea { readonly get; init; }

    public required T GlucosePermeabilityScale { readonly get; init; }

    public required T LymphaticRemoval { readonly get; init; }

    public required T TransientAmplitude { readonly get; init; }

    /// <summary>α of the ultrasmall pores; the small ones have what the others leave.</summary>
    public required T UltrasmallFraction { readonly get; init; }

    /// <summary>α of the large pores.</summary>
    public required T LargeFraction { readonly get; init; }

    public required T SodiumPermeability { readonly get; init; }

    public static FreeParameters<T> From(ThreePoreMembrane membrane) => new()
    {
        UltrafiltrationCoefficient = T.Of(membrane.UltrafiltrationCoefficient.MillilitersPerMinutePerMillimeterOfMercury),
        DiffusionArea = T.Of(membrane.DiffusionArea.Centimeters),
        GlucosePermeabilityScale = T.Of(membrane.GlucosePermeabilityScale),
        LymphaticRemoval = T.Of(membrane.LymphaticRemoval.MillilitersPerMinute),
        TransientAmplitude = T.Of(membrane.TransientAmplitude),
        UltrasmallFraction = T.Of(membrane.Pores.UltrasmallFraction),
        LargeFraction = T.Of(membrane.Pores.LargeFraction),
        SodiumPermeability = T.Of(membrane.SodiumPermeability.MillilitersPerMinute),
    };

    /// <summary>What was drawn of a member.</summary>
    public static FreeParameters<T> From(MembraneEnsemble ensemble, int member) => new()
    {
        UltrafiltrationCoefficient = T.Of(ensemble.UltrafiltrationCoefficients[member]),
        DiffusionArea = T.Of(ensemble.DiffusionAreas[member]),
        GlucosePermeabilityScale = T.Of(ensemble.GlucosePermeabilityScales[member]),
        LymphaticRemoval = T.Of(ensemble.LymphaticRemovals[member]),
        TransientAmplitude = T.Of(ensemble.TransientAmplitudes[member]),
        UltrasmallFraction = T.Of(ensemble.UltrasmallFractions[member]),
        LargeFraction = T.Of(ensemble.LargeFractions[member]),
        SodiumPermeability = T.Of(ensemble.SodiumPermeabilities[member]),
    };

    /// <summary>Writes one patient's numbers into his lane.</summary>
    public void WriteLane(int lane, FreeParameters<Real> one) => LaneOf.Write(
        MemoryMarshal.Cast<FreeParameters<T>, T>(MemoryMarshal.CreateSpan(ref this, 1)),
        lane,
        MemoryMarshal.Cast<FreeParameters<Real>, Real>(MemoryMarshal.CreateSpan(ref one, 1)));
}
