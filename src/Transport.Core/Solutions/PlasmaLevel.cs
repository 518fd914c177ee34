namespace Transport;

/// <summary>What a plasma concentration is taken to be on the blood side of the membrane.</summary>
/// <remarks>Estimation at <see cref="PlasmaWater"/> lowers A0/Δx by about 15 % at the same D/P creatinine, so results always state it.</remarks>
public enum PlasmaLevel
{
    /// <summary>The plasma concentration as the laboratory gives it.</summary>
    AsMeasured,

    /// <summary>Urea, creatinine and glucose divided by the water fraction of plasma, 0.93; sodium as measured.</summary>
    PlasmaWater,
}
