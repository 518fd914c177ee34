namespace Transport.Analysis;

/// <summary>The numbers of a membrane that a fit may free.</summary>
public enum MembraneParameter
{
    /// <summary>A0/Δx, cm.</summary>
    DiffusionArea,

    /// <summary>Factor on glucose's permeability.</summary>
    GlucosePermeabilityScale,

    /// <summary>LpS Σ α σ(glucose), µL/min/mmHg: what ultrafiltration by glucose tells, whatever the share of the ultrasmall pores.</summary>
    OsmoticConductance,

    /// <summary>F0, by which diffusion is faster at the start of a dwell. A nuisance: its value is memory, so its doubt must be carried.</summary>
    TransientAmplitude,

    /// <summary>L, mL/min. No single test tells it from the conductance.</summary>
    LymphaticRemoval,

    /// <summary>α of the ultrasmall pores, of which sodium's dip tells.</summary>
    UltrasmallFraction,

    /// <summary>Permeability of sodium, mL/min.</summary>
    SodiumPermeability,

    /// <summary>α of the large pores, of which protein tells.</summary>
    LargePoreFraction,
}
