namespace Transport.Analysis;

/// <summary>The parameters that a fit frees.</summary>
public enum MembraneParameter
{
    /// <summary>A0/Δx, cm.</summary>
    DiffusionArea,

    /// <summary>Factor on glucose's permeability.</summary>
    GlucosePermeabilityScale,

    /// <summary>LpS, mL/min/mmHg.</summary>
    UltrafiltrationCoefficient,

    /// <summary>F0, by which diffusion is faster at the start of a dwell. A nuisance: its value is memory, so its doubt must be carried.</summary>
    TransientAmplitude,
}
