using System.Collections.Immutable;

namespace Transport.Analysis;

/// <summary>A result against dwell time, over an ensemble: its median and its central 90 % interval at each time.</summary>
/// <param name="Unit">Unit of the values.</param>
/// <param name="Median">Half of the ensemble is below; one value per time.</param>
/// <param name="Low">Lower end, 5 %.</param>
/// <param name="High">Upper end, 95 %.</param>
/// <param name="Doubt">Which layers of doubt the interval holds.</param>
public sealed record CurveBand(
    string Unit, ImmutableArray<double> Median, ImmutableArray<double> Low, ImmutableArray<double> High, Doubt Doubt);
