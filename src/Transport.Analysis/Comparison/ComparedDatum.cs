namespace Transport.Analysis;

/// <summary>A fitted observation as a comparison names it.</summary>
/// <param name="Exchange">Which of the exchanges, from 0; null: a mean of nights.</param>
/// <param name="Observation">The observation.</param>
/// <param name="Name">"D/P sodium at 60 min".</param>
internal sealed record ComparedDatum(int? Exchange, Observation Observation, string Name)
{
    /// <summary>Whether its error is one of its logarithm: that of a ratio.</summary>
    private bool IsRatio => Observation.Quantity.Unit().Length == 0;

    /// <summary>What would be read where the error moves a value, in the scale of the residuals.</summary>
    public double Moved(double value, double error) => IsRatio ? value * Math.Exp(error / Observation.Value) : value + error;
}
