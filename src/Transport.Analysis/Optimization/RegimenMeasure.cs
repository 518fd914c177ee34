namespace Transport.Analysis;

/// <summary>What a regimen is judged by, each in 24 h or a week of such days.</summary>
public enum RegimenMeasure
{
    /// <summary>24-h ultrafiltration, mL, with the model's discrepancy. It has a floor and a ceiling and is never an objective.</summary>
    Ultrafiltration,

    /// <summary>Sodium removed by the peritoneum, mmol, centred on published series.</summary>
    SodiumRemoved,

    /// <summary>Weekly Kt/V of urea, kidneys included.</summary>
    UreaDose,

    /// <summary>Weekly creatinine clearance, kidneys included, L per 1.73 m².</summary>
    CreatinineClearance,

    /// <summary>Weekly peritoneal clearance of phosphate, L; the panel has to follow it.</summary>
    PhosphateClearance,

    /// <summary>Weekly peritoneal clearance of β2-microglobulin, L; the panel has to follow it.</summary>
    Beta2MicroglobulinClearance,

    /// <summary>Glucose absorbed, g anhydrous.</summary>
    GlucoseAbsorbed,

    /// <summary>Most volume in the cavity, mL.</summary>
    PeakVolume,

    /// <summary>Pressure at that moment, cmH2O, by <see cref="CavityPressure"/>.</summary>
    PeakPressure,

    /// <summary>Night length, h.</summary>
    NightLength,

    /// <summary>Fluid infused, L.</summary>
    FluidUsed,

    /// <summary>Exchanges with a strongest glucose (above 180 mmol/L).</summary>
    StrongestExchanges,

    /// <summary>Cycles of the night: the drain of each is a chance of an alarm and disturbs sleep.</summary>
    Cycles,

    /// <summary>Bags that are opened in 24 h, of the goals' shelf or the usual one.</summary>
    Bags,

    /// <summary>Fluid in these bags, L: what is infused and what is left over.</summary>
    FluidOpened,
}
