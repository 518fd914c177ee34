using MathNet.Numerics.Random;

namespace Transport.Studies;

/// <summary>A person who does not exist, the membrane that nobody can see, and the sheet that a clinic would write of it: with errors.</summary>
/// <param name="Membrane">The truth.</param>
/// <param name="Test">What is written down.</param>
/// <param name="ResidualVolume">The residual volume that nobody measured.</param>
/// <param name="Random">The person's own stream, for what is drawn after the test.</param>
public sealed record VirtualTest(ThreePoreMembrane Membrane, EquilibrationTest Test, Volume ResidualVolume, RandomSource Random)
{
    /// <summary>Person number <paramref name="index"/> of a study: the same whatever other persons are asked for.</summary>
    /// <param name="seed">The study's seed.</param>
    /// <param name="index">Which person.</param>
    /// <param name="solution">The solution of the test.</param>
    /// <param name="world">How the world differs from the model that will be fitted.</param>
    public static VirtualTest Of(int seed, int index, DialysisSolution solution, World world)
    {
        var random = new MersenneTwister(unchecked(seed * 1_000_003 + index));
        var patient = Patient.Example;
        var prior = PopulationPrior.IncidentAdults();
        var drawn = prior.ToEnsemble(patient.BodySurface, 1, unchecked(seed * 1_000_003 + index) ^ 0x7E57)[0];
        var membrane = world == World.FasterLymph ? drawn with { LymphaticRemoval = FlowRate.FromMillilitersPerMinute(1) } : drawn;
        var (test, residual) = SimulatedTest.Run(patient, membrane, random, new()
        {
            Solution = solution,
            TailDegreesOfFreedom = world == World.HeavyTails ? 3 : null,
        });
        return new(membrane, test, residual, random);
    }
}
