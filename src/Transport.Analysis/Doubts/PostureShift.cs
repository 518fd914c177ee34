using System.Collections.Immutable;

namespace Transport.Analysis;

/// <summary>How differently the membrane may work at night, lying, than in the test, which is done upright.</summary>
/// <remarks>
/// A0/Δx is between one and <paramref name="LargestAreaFactor"/> times as large, evenly on the scale of logarithms (choice): nothing was found in print about adults, and nobody's
/// own factor is known from a test. Whether water passes more easily too has not been measured: LpS grows with a power of that factor that is anywhere between none and the first
/// (choice). Ultrafiltration is lower in the one case and higher in the other.
/// </remarks>
/// <param name="LargestAreaFactor">The largest factor of A0/Δx.</param>
public sealed record PostureShift(double LargestAreaFactor)
{
    /// <summary>The largest factor of A0/Δx.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not between 1 and 3.</exception>
    public double LargestAreaFactor
    {
        get;
        init => field = Require.InRange(value, 1, 3, "");
    }
    = Require.InRange(LargestAreaFactor, 1, 3, "");

    /// <summary>Up to what was measured in six children: A0/Δx 29,400 cm/1.73 m² lying, 21,900 standing (read).</summary>
    public static PostureShift UpToThatOfChildren { get; } = new(29_400.0 / 21_900);

    internal MembraneEnsemble Of(MembraneEnsemble ensemble, int seed)
    {
        var draws = new DoubtDraws(DoubtLayers.Default with { PostureSeed = seed }, ensemble.Seed);
        ImmutableArray<double> areas = [.. Enumerable.Range(0, ensemble.Count).Select(member => Power(draws.Place(DoubtDraws.Part.LyingArea, member)))];
        ImmutableArray<double> conductances = [.. areas.Select((area, member) => Math.Pow(area, draws.Place(DoubtDraws.Part.LyingConductance, member)))];
        return ensemble.Lying(ensemble.Center with { LyingAreaFactor = Power(0.5), LyingConductanceFactor = Power(0.25) }, areas, conductances);
    }

    private double Power(double share) => Math.Pow(LargestAreaFactor, share);
}
