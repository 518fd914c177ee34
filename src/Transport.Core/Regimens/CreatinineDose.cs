namespace Transport;

/// <summary>Creatinine clearance per 1.73 m².</summary>
/// <param name="Peritoneal">By the drains.</param>
/// <param name="Renal">By the kidneys: the mean of their urea and creatinine clearance.</param>
public readonly record struct CreatinineDose(Clearance Peritoneal, Clearance Renal)
{
    /// <summary>Both.</summary>
    public Clearance Total => Peritoneal + Renal;
}
