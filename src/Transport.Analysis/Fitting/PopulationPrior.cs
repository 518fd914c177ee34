using MathNet.Numerics.Distributions;
using MathNet.Numerics.Random;

namespace Transport.Analysis;

/// <summary>What is known of a membrane before any test: log-normal, independent, per 1.73 m².</summary>
/// <remarks>
/// Spreads: A0/Δx 19,000 ± 7,100 cm and LpS 0.071 ± 0.032 mL/min/mmHg (249 people near the start; Johansson and Haraldsson, Perit Dial Int
/// 2006;26, read) as standard deviations of the logarithm; the others' say where they come from. Centres: those papers' membranes answer another
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

    /// <summary>
    /// Standard deviation of the logarithm of the osmotic conductance to glucose (computed): what the share of the ultrasmall pores leaves of LpS's 0.43 (read), so that LpS
    /// as it follows from both has the published spread.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero, negative or not finite.</exception>
    public double OsmoticConductanceLogDeviation
    {
        get;
        init => field = Require.Positive(value, "", nameof(OsmoticConductanceLogDeviation));
    }
    = 0.38;

    /// <summary>Standard deviation of ln F0 (choice: the published 0.6875 is known from memory alone, and people's spread not at all).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero, negative or not finite.</exception>
    public double TransientAmplitudeLogDeviation
    {
        get;
        init => field = Require.Positive(value, "", nameof(TransientAmplitudeLogDeviation));
    }
    = 0.5;

    /// <summary>
    /// Standard deviation of ln L, calibrated (computed) on how much people differ in ultrafiltration of icodextrin in 16 h, where lymph counts most: SD 337 mL (n 20, read).
    /// 0.25 returns it with the other spreads, 0.57 lies one standard error above; between them, 0.4. The published spread of total absorption, 1.0, is of another
    /// quantity, which holds capillary reabsorption, and would make it more than 500 mL.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero, negative or not finite.</exception>
    public double LymphaticRemovalLogDeviation
    {
        get;
        init => field = Require.Positive(value, "", nameof(LymphaticRemovalLogDeviation));
    }
    = 0.4;

    /// <summary>Standard deviation of the log odds of the ultrasmall pores' share (choice: nothing in print).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero, negative or not finite.</exception>
    public double UltrasmallFractionLogDeviation
    {
        get;
        init => field = Require.Positive(value, "", nameof(UltrasmallFractionLogDeviation));
    }
    = 0.5;

    /// <summary>Standard deviation of the logarithm of sodium's permeability (choice: 4 to 6 mL/min is memory).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero, negative or not finite.</exception>
    public double SodiumPermeabilityLogDeviation
    {
        get;
        init => field = Require.Positive(value, "", nameof(SodiumPermeabilityLogDeviation));
    }
    = 0.3;

    /// <summary>
    /// Standard deviation of the log odds of the large pores' share: that of large-pore flow, 0.112 ± 0.052 mL/min (the same 249 people, read).
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero, negative or not finite.</exception>
    public double LargePoreFractionLogDeviation
    {
        get;
        init => field = Require.Positive(value, "", nameof(LargePoreFractionLogDeviation));
    }
    = 0.44;

    /// <summary>Adults near the start of dialysis.</summary>
    public static PopulationPrior IncidentAdults(PlasmaLevel level = PlasmaLevel.AsMeasured) =>
        new() { Center = ReferenceMembranes.MeanIncidentAdult(level) };

    /// <summary>
    /// The same people with a membrane that has no ultrasmall pores: a parameter set to compare with. The osmotic conductance to glucose stays, so LpS is larger.
    /// </summary>
    public PopulationPrior WithoutUltrasmallPores()
    {
        var without = Center with { Pores = Center.Pores.WithFractions(0, Center.Pores.LargeFraction) };
        var conductance = Center.OsmoticConductanceToGlucose / without.OsmoticConductanceToGlucose;
        return this with { Center = without with { UltrafiltrationCoefficient = Center.UltrafiltrationCoefficient * conductance } };
    }

    /// <summary>Standard deviation of a parameter's logarithm (log odds of a share).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not one of the parameters.</exception>
    public double LogDeviation(MembraneParameter parameter) => parameter switch
    {
        MembraneParameter.DiffusionArea => DiffusionAreaLogDeviation,
        MembraneParameter.GlucosePermeabilityScale => GlucosePermeabilityLogDeviation,
        MembraneParameter.OsmoticConductance => OsmoticConductanceLogDeviation,
        MembraneParameter.TransientAmplitude => TransientAmplitudeLogDeviation,
        MembraneParameter.LymphaticRemoval => LymphaticRemovalLogDeviation,
        MembraneParameter.UltrasmallFraction => UltrasmallFractionLogDeviation,
        MembraneParameter.SodiumPermeability => SodiumPermeabilityLogDeviation,
        MembraneParameter.LargePoreFraction => LargePoreFractionLogDeviation,
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
        var draws = DrawOrder.Select(_ =>
        {
            var column = new double[count];
            Normal.Samples(random, column, 0, 1);
            return column;
        }).ToArray();

        // Pores that the center lacks have no share to draw.
        int[] there = [.. Enumerable.Range(0, DrawOrder.Length).Where(j => !MembraneCoordinates.IsShare(DrawOrder[j]) || MembraneCoordinates.Of(center, DrawOrder[j]) > 0)];
        return new MembraneCoordinates(center, this, [.. there.Select(j => DrawOrder[j])]).Ensemble(EnsembleSource.Prior, seed, center, count, (i, j) => draws[there[j]][i]);
    }

    // What joins later is drawn later, so that earlier draws stay what they were.
    private static MembraneParameter[] DrawOrder =>
    [
        MembraneParameter.OsmoticConductance,
        MembraneParameter.DiffusionArea,
        MembraneParameter.GlucosePermeabilityScale,
        MembraneParameter.TransientAmplitude,
        MembraneParameter.LymphaticRemoval,
        MembraneParameter.UltrasmallFraction,
        MembraneParameter.SodiumPermeability,
        MembraneParameter.LargePoreFraction,
    ];
}
