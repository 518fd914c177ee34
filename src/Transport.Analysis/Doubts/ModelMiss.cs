namespace Transport.Analysis;

/// <summary>What the model's discrepancy adds to the ultrafiltration of a day, mL.</summary>
/// <param name="Offset">Whatever it drains: offsets by dwell and strength.</param>
/// <param name="Gained">In proportion to what the exchanges remove; of another membrane another.</param>
/// <param name="Deviation">How sure that is, a standard deviation.</param>
internal readonly record struct ModelMiss(double Offset, double Gained, double Deviation)
{
    public double Shift => Offset + Gained;
}
