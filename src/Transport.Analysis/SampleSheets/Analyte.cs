namespace Transport.Analysis;

/// <summary>What a row of measurements reports.</summary>
public enum Analyte
{
    /// <summary>Creatinine, as measured.</summary>
    Creatinine,

    /// <summary>Urea, the whole molecule.</summary>
    Urea,

    /// <summary>The nitrogen of urea alone: 1 mg/dL of it is 0.357 mmol/L of urea (2.14 mg/dL).</summary>
    UreaNitrogen,

    /// <summary>Glucose, anhydrous.</summary>
    Glucose,

    /// <summary>Sodium.</summary>
    Sodium,

    /// <summary>Potassium.</summary>
    Potassium,

    /// <summary>Total protein.</summary>
    TotalProtein,

    /// <summary>Albumin.</summary>
    Albumin,

    /// <summary>β2-microglobulin.</summary>
    Beta2Microglobulin,

    /// <summary>Immunoglobulin G.</summary>
    ImmunoglobulinG,

    /// <summary>α2-macroglobulin.</summary>
    Alpha2Macroglobulin,

    /// <summary>Macromolecular volume marker, such as dextran.</summary>
    Marker,
}
