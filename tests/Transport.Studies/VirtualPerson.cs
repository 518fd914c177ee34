using MathNet.Numerics.Distributions;
using MathNet.Numerics.Random;

namespace Transport.Studies;

/// <summary>A person who does not exist, the membrane that nobody can see, and what a fit makes of it: wrong by a posterior draw.</summary>
/// <param name="Patient">Size and plasma.</param>
/// <param name="Truth">The membrane.</param>
/// <param name="Fitted">What is believed of it.</param>
public sealed record VirtualPerson(Patient Patient, ThreePoreMembrane Truth, MembraneEnsemble Fitted)
{
    private const int Draws = 200;

    // Of people (read and choice, as in PopulationPrior), and of what one test leaves open (docs/studies/recovery.md, root mean square errors of the logarithms):
    // A0/Δx, glucose scale, LpS, F0. Numbers of their own, so that a study of nights does not change with every change of the fit.
    private static readonly double[] People = [0.36, 0.2, 0.43, 0.5];
    private static readonly double[] AfterTest = [0.117, 0.103, 0.275, 0.400];

    /// <summary>Person number <paramref name="index"/>: the same whatever other persons are asked for.</summary>
    /// <param name="seed">The study's seed.</param>
    /// <param name="index">Which person.</param>
    public static VirtualPerson Of(int seed, int index)
    {
        var random = new MersenneTwister(unchecked(seed * 1_000_003 + index));
        var patient = Patient.Example;
        var truth = Moved(ReferenceMembranes.MeanIncidentAdult().ScaledTo(patient.BodySurface), People);
        var center = Moved(truth, AfterTest);
        var members = Enumerable.Range(0, Draws).Select(_ => Moved(center, AfterTest)).ToArray();
        return new(patient, truth, new(
            EnsembleSource.Posterior,
            seed,
            center,
            [.. members.Select(member => member.UltrafiltrationCoefficient.MillilitersPerMinutePerMillimeterOfMercury)],
            [.. members.Select(member => member.DiffusionArea.Centimeters)],
            [.. members.Select(member => member.GlucosePermeabilityScale)],
            [.. members.Select(member => member.TransientAmplitude)]));

        ThreePoreMembrane Moved(ThreePoreMembrane origin, double[] deviations) => origin with
        {
            DiffusionArea = origin.DiffusionArea * Factor(deviations[0]),
            GlucosePermeabilityScale = origin.GlucosePermeabilityScale * Factor(deviations[1]),
            UltrafiltrationCoefficient = origin.UltrafiltrationCoefficient * Factor(deviations[2]),
            TransientAmplitude = origin.TransientAmplitude * Factor(deviations[3]),
        };

        double Factor(double deviation) => Math.Exp(Normal.Sample(random, 0, deviation));
    }

    /// <summary>What somebody believes who knows a membrane: it, and nothing else.</summary>
    public static MembraneEnsemble Known(ThreePoreMembrane membrane) => new(
        EnsembleSource.Posterior, 0, membrane, [membrane.UltrafiltrationCoefficient.MillilitersPerMinutePerMillimeterOfMercury], [membrane.DiffusionArea.Centimeters],
        [membrane.GlucosePermeabilityScale], [membrane.TransientAmplitude]);
}
