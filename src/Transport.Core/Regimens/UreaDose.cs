namespace Transport;

/// <summary>Weekly Kt/V of urea, dimensionless.</summary>
/// <param name="Peritoneal">By the drains.</param>
/// <param name="Renal">By the kidneys.</param>
public readonly record struct UreaDose(double Peritoneal, double Renal)
{
    /// <summary>Both.</summary>
    public double Total => Peritoneal + Renal;
}
