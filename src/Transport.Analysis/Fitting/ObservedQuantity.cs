namespace Transport.Analysis;

/// <summary>What an observation of an exchange is of.</summary>
public enum ObservedQuantity
{
    /// <summary>D/P creatinine, corrected for glucose where the assay asks for it.</summary>
    CreatinineToPlasma,

    /// <summary>D/P urea.</summary>
    UreaToPlasma,

    /// <summary>D/D0 glucose over the measured sample at time zero.</summary>
    GlucoseToInitial,

    /// <summary>Glucose over that of the fresh solution, where no sample was taken at time zero.</summary>
    GlucoseToFresh,

    /// <summary>D/P sodium.</summary>
    SodiumToPlasma,

    /// <summary>Change of the intraperitoneal volume, mL: net ultrafiltration.</summary>
    NetUltrafiltrationMilliliters,

    /// <summary>D/P albumin.</summary>
    AlbuminToPlasma,

    /// <summary>D/P immunoglobulin G.</summary>
    ImmunoglobulinGToPlasma,

    /// <summary>Mean ultrafiltration of many nights with one regimen, the day not counted, mL.</summary>
    MeanNightUltrafiltrationMilliliters,

    /// <summary>Mean of what is drained before the first fill, after days with one fill, mL.</summary>
    MeanInitialDrainMilliliters,

    /// <summary>Mean ultrafiltration of night and day where a book has them as one number, mL.</summary>
    MeanNightAndDayUltrafiltrationMilliliters,
}
