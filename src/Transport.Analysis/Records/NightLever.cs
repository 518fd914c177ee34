namespace Transport.Analysis;

/// <summary>What a night's volumes are asked to answer to, one small change at a time.</summary>
internal enum NightLever
{
    /// <summary>Logarithm of A0/Δx.</summary>
    Area,

    /// <summary>Logarithm of the glucose scale.</summary>
    GlucoseScale,

    /// <summary>Logarithm of LpS.</summary>
    Conductance,

    /// <summary>Logarithm of F0.</summary>
    Transient,

    /// <summary>Fluid taken up by the lymphatics, mL/min.</summary>
    FluidLoss,

    /// <summary>Dwell time lost in the whole night to longer drains, min.</summary>
    LostDwell,

    /// <summary>Plasma glucose, mmol/L.</summary>
    PlasmaGlucose,

    /// <summary>Logarithm of the night's glucose strength.</summary>
    Strength,
}
