namespace Transport.Analysis;

/// <summary>What one draw says of an observation, given the others whose errors go with its own.</summary>
/// <param name="LogDensity">ln p of it.</param>
/// <param name="LogWeight">Logarithm of the weight that leaves it out of the posterior, up to a constant.</param>
/// <param name="Below">Probability that it is measured again at most as large as it was.</param>
/// <param name="Shift">It measured again, less what was observed, in the scale of the residuals.</param>
internal readonly record struct DatumGiven(double LogDensity, double LogWeight, double Below, double Shift);
