using System.Collections.Immutable;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Random;

namespace Transport.Analysis;

/// <summary>What is known of a membrane before any test: log-normal, independent, per 1.73 m².</summary>
/// <remarks>
/// Spreads: A0/Δx 19,000 ± 7,100 cm and LpS 0.071 ± 0.032 mL/min/mmHg (249 people near the start; Johansson and Haraldsson, Perit Dial Int
/// 2006;26, read) as standard deviations of the logarithm; the glucose scale's is our choice. Centres: those papers' membranes answer another
/// model, so the centres are this model's mean incident adult (<see cref="ReferenceMembranes.MeanIncidentAdult"/>).
/// </remarks>
public sealed record PopulationPrior
{
    /// <summary>The membrane at the centre, per 1.73 m²; everything that is not free is taken from it.</summary>
    public required ThreePoreMembrane Center { get; init; }

    /// <summary>Standard deviation of ln A0/Δx.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero, negative or not finite.</exception>
    public double DiffusionAreaLogDeviation
    {
        get;
        init => field = Require.Positive(value, "", nameof(DiffusionAreaLogDeviation));
    }
    = 0.36;

    /// <summary>Standard deviation of the logarithm of the glucose scale (choice).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero, negative or not finite.</exception>
    public double GlucosePermeabilityLogDeviation
    {
        get;
        init => field = Require.Positive(value, "", nameof(GlucosePermeabilityLogDeviation));
    }
    = 0.2;

    /// <summary>Standard deviation of ln LpS.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero, negative or not finite.</exception>
    public double UltrafiltrationCoefficientLogDeviation
    {
        get;
        init => field = Require.Positive(value, "", nameof(UltrafiltrationCoefficientLogDeviation));
    }
    = 0.43;

    /// <summary>Standard deviation of ln F0 (choice: the published 0.6875 is known from memory alone, and people's spread not at all).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero, negative or not finite.</exception>
    public double TransientAmplitudeLogDeviation
    {
        get;
        init => field = Require.Positive(value, "", nameof(TransientAmplitudeLogDeviation));
    }
    = 0.5;

    /// <summary>Adults near the start of dialysis.</summary>
    public static PopulationPrior IncidentAdults(PlasmaLevel level = PlasmaLevel.AsMeasured) =>
        new() { Center = ReferenceMembranes.MeanIncidentAdult(level) };

    /// <summary>Standard deviation of a parameter's logarithm.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not one of the parameters.</exception>
    public double LogDeviation(MembraneParameter parameter) => parameter switch
    {
        MembraneParameter.DiffusionArea => DiffusionAreaLogDeviation,
        MembraneParameter.GlucosePermeabilityScale => GlucosePermeabilityLogDeviation,
        MembraneParameter.UltrafiltrationCoefficient => UltrafiltrationCoefficientLogDeviation,
        MembraneParameter.TransientAmplitude => TransientAmplitudeLogDeviation,
        _ => throw new ArgumentOutOfRangeException(nameof(parameter), parameter, "Expected a parameter that exists."),
    };

    /// <summary>Membranes of people of one size, drawn from the prior.</summary>
    /// <param name="bodySurface">Their size.</param>
    /// <param name="count">How many.</param>
    /// <param name="seed">Seed of the draw.</param>
    /// <exception cref="ArgumentOutOfRangeException">The surface is not positive, or the count less than 1.</exception>
    public MembraneEnsemble ToEnsemble(Area bodySurface, int count, int seed)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        var center = Center.ScaledTo(bodySurface);
        var random = new MersenneTwister(seed);
        return new(
            EnsembleSource.Prior,
            seed,
            center,
            Draw(center.UltrafiltrationCoefficient.MillilitersPerMinutePerMillimeterOfMercury, UltrafiltrationCoefficientLogDeviation),
            Draw(center.DiffusionArea.Centimeters, DiffusionAreaLogDeviation),
            Draw(center.GlucosePermeabilityScale, GlucosePermeabilityLogDeviation),
            Draw(center.TransientAmplitude, TransientAmplitudeLogDeviation));

        ImmutableArray<double> Draw(double median, double logDeviation)
        {
            var values = new double[count];
            Normal.Samples(random, values, 0, logDeviation);
            return [.. values.Select(value => median * Math.Exp(value))];
        }
    }
}
