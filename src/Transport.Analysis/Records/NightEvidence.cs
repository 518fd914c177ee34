namespace Transport.Analysis;

/// <summary>What the nights add to the test about one parameter of the membrane.</summary>
/// <param name="Parameter">Which.</param>
/// <param name="TestLogDeviation">Standard deviation of its logarithm after the test.</param>
/// <param name="NightsLogDeviation">The same after the nights, which share their level with reasons that are not the membrane's.</param>
/// <param name="LogShift">Where the nights move its logarithm.</param>
public sealed record NightEvidence(MembraneParameter Parameter, double TestLogDeviation, double NightsLogDeviation, double LogShift);
