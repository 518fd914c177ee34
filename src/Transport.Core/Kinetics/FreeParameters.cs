namespace Transport;

/// <summary>The membrane's numbers that a fit may free, over a lane; everything else comes from the membrane record.</summary>
/// <remarks>Units: mL/min/mmHg, cm, none, mL/min, none; shares of LpS; mL/min.</remarks>
internal readonly struct FreeParameters<T>
    where T : struct, ILane<T>
{
    public required T UltrafiltrationCoefficient { get; init; }

    public required T DiffusionArea { get; init; }

    public required T GlucosePermeabilityScale { get; init; }

    public required T LymphaticRemoval { get; init; }

    public required T TransientAmplitude { get; init; }

    /// <summary>α of the ultrasmall pores; the small ones have what the others leave.</summary>
    public required T UltrasmallFraction { get; init; }

    /// <summary>α of the large pores.</summary>
    public required T LargeFraction { get; init; }

    public required T SodiumPermeability { get; init; }

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
}
