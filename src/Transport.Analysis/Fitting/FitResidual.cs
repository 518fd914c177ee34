namespace Transport.Analysis;

/// <summary>An observation beside what the fitted membrane gives for it.</summary>
/// <param name="Observation">What was observed.</param>
/// <param name="Predicted">What the fitted membrane gives, in the unit of the observation.</param>
public sealed record FitResidual(Observation Observation, double Predicted)
{
    /// <summary>(observed − predicted) / standard deviation of the observation's error.</summary>
    public double Standardized => (Observation.Value - Predicted) / Observation.Deviation;
}
