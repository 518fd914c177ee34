namespace Transport.Analysis;

/// <summary>How precise the target and each parameter are expected to be with some samples.</summary>
/// <param name="Samples">The samples, in the order in which they were chosen; empty: what is known now.</param>
/// <param name="Target">Standard deviation of the target, in its unit.</param>
/// <param name="Parameters">Standard deviation of each free parameter's logarithm (log odds of a share).</param>
public sealed record ExpectedPrecision(
    IReadOnlyList<PlannedSample> Samples, double Target, IReadOnlyDictionary<MembraneParameter, double> Parameters);
