namespace Transport.Analysis;

/// <summary>How far a repeated measurement of the same sample spreads: a share of the value, but never less than a floor.</summary>
/// <param name="Relative">Standard deviation as a share of the value.</param>
/// <param name="FloorMillimolesPerLiter">Least standard deviation, mmol/L.</param>
public sealed record AssaySpread(double Relative, double FloorMillimolesPerLiter)
{
    /// <summary>Standard deviation at a value, mmol/L.</summary>
    public double StandardDeviationAt(Concentration value) =>
        Math.Max(FloorMillimolesPerLiter, Relative * Math.Abs(value.MillimolesPerLiter));
}
