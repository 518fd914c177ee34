namespace Transport;

/// <summary>What a plasma concentration is taken to be on the blood side of the membrane.</summary>
/// <remarks>Estimation at <see cref="PlasmaWater"/> lowers A0/Δx by about 15 % at the same D/P creatinine, so results always state it.</remarks>
public enum PlasmaLevel
{
    /// <summary>The plasma concentration as the laboratory gives it.</summary>
    AsMeasured,

    /// <summary>Urea, creatinine, glucose and other solutes without charge divided by the water fraction of plasma, 0.93; ions as measured.</summary>
    PlasmaWater,

    /// <summary>
    /// Everything but protein divided by 0.93, ions also times 0.95 to the power of their charge: sodium 1.0215 times the measured one, an
    /// anion of charge one 1.13 times (memory; the ratio within its remembered range is a choice).
    /// </summary>
    /// <remarks>No membrane has been fitted to a mean test at this level. Sodium's anion keeps sodium's course.</remarks>
    PlasmaWaterDonnan,
}
