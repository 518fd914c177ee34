using MathNet.Numerics.Distributions;
using MathNet.Numerics.Random;

namespace Transport.Analysis;

/// <summary>A population as papers print it: means and standard deviations, per 1.73 m². What is left out is the centre's for everybody.</summary>
/// <remarks>
/// Sizes that are positive are drawn log-normal and shares from a beta distribution, both with exactly the stated mean and standard deviation; independently, because
/// papers print no correlations.
/// </remarks>
public sealed record PublishedPopulation
{
    /// <summary>A population from print.</summary>
    /// <param name="source">Who printed it.</param>
    public PublishedPopulation(string source)
    {
        ArgumentNullException.ThrowIfNull(source);
        Source = source;
    }

    /// <summary>Who printed it.</summary>
    public string Source { get; }

    /// <summary>The membrane that everything not stated is taken from, per 1.73 m².</summary>
    public ThreePoreMembrane Center { get; init; } = ReferenceMembranes.MeanIncidentAdult();

    /// <summary>A0/Δx, cm.</summary>
    public PublishedSpread? DiffusionAreaCentimeters { get; init; }

    /// <summary>LpS, mL/min/mmHg.</summary>
    public PublishedSpread? UltrafiltrationCoefficientMillilitersPerMinutePerMillimeterOfMercury { get; init; }

    /// <summary>Factor on glucose's permeability.</summary>
    public PublishedSpread? GlucosePermeabilityScale { get; init; }

    /// <summary>F0, amplitude of the initial transient.</summary>
    public PublishedSpread? TransientAmplitude { get; init; }

    /// <summary>L, lymphatic removal, mL/min.</summary>
    public PublishedSpread? LymphaticRemovalMillilitersPerMinute { get; init; }

    /// <summary>α of the ultrasmall pores, a share of LpS.</summary>
    public PublishedSpread? UltrasmallFraction { get; init; }

    /// <summary>Permeability of sodium, mL/min.</summary>
    public PublishedSpread? SodiumPermeabilityMillilitersPerMinute { get; init; }

    /// <summary>Johansson and Haraldsson, Perit Dial Int 2006;26 (249 people near the start, read): A0/Δx 19,000 ± 7,100 cm, LpS 0.071 ± 0.032 mL/min/mmHg.</summary>
    /// <remarks>The paper's membranes answer another model, so fluid comes out lower here than with <see cref="PopulationPrior.IncidentAdults"/>.</remarks>
    public static PublishedPopulation JohanssonHaraldsson2006 { get; } = new("Johansson and Haraldsson, Perit Dial Int 2006;26")
    {
        DiffusionAreaCentimeters = new(19_000, 7_100),
        UltrafiltrationCoefficientMillilitersPerMinutePerMillimeterOfMercury = new(0.071, 0.032),
    };

    /// <summary>A membrane, at a size.</summary>
    internal ThreePoreMembrane Draw(Area bodySurface, int seed)
    {
        var random = new MersenneTwister(seed);
        var (area, water, glucose) = (
            Positive(DiffusionAreaCentimeters, Center.DiffusionArea.Centimeters),
            Positive(UltrafiltrationCoefficientMillilitersPerMinutePerMillimeterOfMercury, Center.UltrafiltrationCoefficient.MillilitersPerMinutePerMillimeterOfMercury),
            Positive(GlucosePermeabilityScale, Center.GlucosePermeabilityScale));
        var (transient, lymph) = (Positive(TransientAmplitude, Center.TransientAmplitude), Positive(LymphaticRemovalMillilitersPerMinute, Center.LymphaticRemoval.MillilitersPerMinute));
        var ultrasmall = Share(UltrasmallFraction, Center.Pores.UltrasmallFraction);
        var sodium = Positive(SodiumPermeabilityMillilitersPerMinute, Center.SodiumPermeability.MillilitersPerMinute);
        var drawn = Center with
        {
            DiffusionArea = DiffusionArea.FromCentimeters(area),
            UltrafiltrationCoefficient = HydraulicConductance.FromMillilitersPerMinutePerMillimeterOfMercury(water),
            GlucosePermeabilityScale = glucose,
            TransientAmplitude = transient,
            LymphaticRemoval = FlowRate.FromMillilitersPerMinute(lymph),
            Pores = Center.Pores.WithFractions(ultrasmall, Center.Pores.LargeFraction),
            SodiumPermeability = Clearance.FromMillilitersPerMinute(sodium),
        };
        return drawn.ScaledTo(bodySurface);

        // Moments of the log-normal distribution.
        double Positive(PublishedSpread? spread, double otherwise)
        {
            if (spread is not { StandardDeviation: > 0 } known)
            {
                return spread?.Mean ?? otherwise;
            }

            var variance = Math.Log(1 + Math.Pow(known.StandardDeviation / known.Mean, 2));
            return LogNormal.Sample(random, Math.Log(known.Mean) - variance / 2, Math.Sqrt(variance));
        }

        // Moments of the beta distribution.
        double Share(PublishedSpread? spread, double otherwise)
        {
            if (spread is not { StandardDeviation: > 0 } known)
            {
                return spread?.Mean ?? otherwise;
            }

            var size = known.Mean * (1 - known.Mean) / (known.StandardDeviation * known.StandardDeviation) - 1;
            return size > 0
                ? Beta.Sample(random, known.Mean * size, (1 - known.Mean) * size)
                : throw new InvalidOperationException(FormattableString.Invariant($"A share with mean {known.Mean} cannot have a standard deviation of {known.StandardDeviation}."));
        }
    }
}
