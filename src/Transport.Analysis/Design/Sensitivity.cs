namespace Transport.Analysis;

/// <summary>What an observation of an exchange is predicted to be, and how it follows the coordinates.</summary>
/// <param name="Exchange">Index of the exchange.</param>
/// <param name="Observation">The observation.</param>
/// <param name="Predicted">In its unit.</param>
/// <param name="Slopes">Derivatives by all coordinates: of the logarithm of a ratio, of a volume in mL.</param>
internal sealed record Sensitivity(int Exchange, Observation Observation, double Predicted, double[] Slopes);
