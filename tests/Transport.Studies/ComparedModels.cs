using MathNet.Numerics.Distributions;
using MathNet.Numerics.Random;

namespace Transport.Studies;

/// <summary>Three models that are compared on one test, and the tests they are compared on: of the study, and of the tests of the comparison.</summary>
public static class ComparedModels
{
    /// <summary>Pores of three sizes.</summary>
    public const string Pores = "three pores";

    /// <summary>The same without those that let water alone pass.</summary>
    public const string WithoutUltrasmall = "no ultrasmall pores";

    /// <summary>One barrier with one sieving coefficient.</summary>
    public const string OneBarrier = "one barrier";

    /// <summary>A short run of chains: sums of logarithms are good to 0.3 (seeds compared), where the verdict asks for 4.</summary>
    public static ModelComparisonOptions Quick { get; } = new() { Draws = 1000, Sampling = new() { DrawsPerChain = 500, EffectiveDraws = 0 } };

    /// <summary>Each fitted to a test.</summary>
    public static NamedFit[] Fits(EquilibrationTest test) =>
    [
        new(Pores, MembraneFit.Run(test)),
        new(WithoutUltrasmall, MembraneFit.Run(test, new() { Prior = PopulationPrior.IncidentAdults().WithoutUltrasmallPores() })),
        new(OneBarrier, LumpedFit.Run(test)),
    ];

    /// <summary>A test of a known membrane at 0, 1, 2 and 4 h with errors; without sodium it has the same errors in all else.</summary>
    public static EquilibrationTest Test(IMembrane truth, int seed, bool hasSodium)
    {
        var test = SimulatedTest.Run(
            Patient.Example, truth, seed, new() { SampleTimes = [TimeSpan.Zero, TimeSpan.FromHours(1), TimeSpan.FromHours(2), TimeSpan.FromHours(4)] });
        return hasSodium ? test : test with
        {
            Plasma = [.. test.Plasma.Select(sample => sample with { Sodium = null })],
            Dialysate = [.. test.Dialysate.Select(sample => sample with { Sodium = null })],
        };
    }

    /// <summary>A barrier drawn from its prior.</summary>
    public static LumpedMembrane DrawnBarrier(int seed)
    {
        var random = new MersenneTwister(seed);
        var barrier = new LumpedCoordinates(LumpedMembrane.MeanIncidentAdult.ScaledTo(Patient.Example.BodySurface), LumpedPrior.IncidentAdults);
        return barrier.Membrane([.. Enumerable.Range(0, barrier.Count).Select(_ => Normal.Sample(random, 0, 1))]);
    }
}
