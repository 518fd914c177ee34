namespace Transport.Analysis;

/// <summary>What is estimated from what, where the membrane has pores.</summary>
/// <param name="Exchanges">What was observed.</param>
/// <param name="Membrane">What is free of the membrane, and its prior.</param>
/// <param name="UsesPrior">Whether that prior counts.</param>
/// <param name="StudentDegreesOfFreedom">Of the errors; null: Gaussian.</param>
internal sealed record ThreePoreProblem(
    IReadOnlyList<ObservedExchange> Exchanges, MembraneCoordinates Membrane, bool UsesPrior, double? StudentDegreesOfFreedom)
    : EstimationProblem(Exchanges, Membrane, UsesPrior, StudentDegreesOfFreedom);
