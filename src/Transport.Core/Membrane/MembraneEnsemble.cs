using System.Collections.Immutable;

namespace Transport;

/// <summary>Many membranes that share everything but what was drawn: what a batch eats.</summary>
/// <remarks>
/// Member i is the same membrane wherever the ensemble is used, so differences between two results over one ensemble pair member by
/// member and common doubt cancels.
/// </remarks>
public sealed class MembraneEnsemble
{
    /// <summary>An ensemble. What is left out is the centre's for every member.</summary>
    /// <param name="source">Where the members come from.</param>
    /// <param name="seed">Seed of the draw, so that it can be repeated.</param>
    /// <param name="center">The membrane that everything not drawn is taken from, and that stands for the ensemble as a point.</param>
    /// <param name="ultrafiltrationCoefficients">LpS of each member, mL/min/mmHg.</param>
    /// <param name="diffusionAreas">A0/Δx of each member, cm.</param>
    /// <param name="glucosePermeabilityScales">Glucose permeability scale of each member.</param>
    /// <param name="transientAmplitudes">F0 of each member.</param>
    /// <param name="lymphaticRemovals">L of each member, mL/min.</param>
    /// <param name="ultrasmallFractions">α of the ultrasmall pores of each member.</param>
    /// <param name="largeFractions">α of the large pores of each member.</param>
    /// <param name="sodiumPermeabilities">Permeability of sodium of each member, mL/min.</param>
    /// <param name="lyingAreaFactors">A0/Δx at night, lying, over that of the test, of each member.</param>
    /// <param name="lyingConductanceFactors">The same of LpS.</param>
    /// <exception cref="ArgumentException">The lists are empty or of different length, a value is not positive, or the fractions leave no small pores.</exception>
    public MembraneEnsemble(
        EnsembleSource source,
        int seed,
        ThreePoreMembrane center,
        ImmutableArray<double> ultrafiltrationCoefficients,
        ImmutableArray<double> diffusionAreas,
        ImmutableArray<double> glucosePermeabilityScales,
        ImmutableArray<double> transientAmplitudes = default,
        ImmutableArray<double> lymphaticRemovals = default,
        ImmutableArray<double> ultrasmallFractions = default,
        ImmutableArray<double> largeFractions = default,
        ImmutableArray<double> sodiumPermeabilities = default,
        ImmutableArray<double> lyingAreaFactors = default,
        ImmutableArray<double> lyingConductanceFactors = default)
    {
        ArgumentNullException.ThrowIfNull(center);
        var count = ultrafiltrationCoefficients.Length;
        Source = source;
        Seed = seed;
        Center = center;
        UltrafiltrationCoefficients = ultrafiltrationCoefficients;
        DiffusionAreas = diffusionAreas;
        GlucosePermeabilityScales = glucosePermeabilityScales;
        TransientAmplitudes = Or(transientAmplitudes, center.TransientAmplitude);
        LymphaticRemovals = Or(lymphaticRemovals, center.LymphaticRemoval.MillilitersPerMinute);
        UltrasmallFractions = Or(ultrasmallFractions, center.Pores.UltrasmallFraction);
        LargeFractions = Or(largeFractions, center.Pores.LargeFraction);
        SodiumPermeabilities = Or(sodiumPermeabilities, center.SodiumPermeability.MillilitersPerMinute);
        LyingAreaFactors = Or(lyingAreaFactors, center.LyingAreaFactor);
        LyingConductanceFactors = Or(lyingConductanceFactors, center.LyingConductanceFactor);
        ImmutableArray<double>[] positive = [UltrafiltrationCoefficients, DiffusionAreas, GlucosePermeabilityScales, LyingAreaFactors, LyingConductanceFactors];
        ImmutableArray<double>[] notNegative = [TransientAmplitudes, LymphaticRemovals, UltrasmallFractions, LargeFractions, SodiumPermeabilities];
        int[] lengths = [.. positive.Concat(notNegative).Select(values => values.Length)];
        if (count == 0 || lengths.Distinct().Count() > 1)
        {
            throw new ArgumentException($"Expected lists of one length, at least 1; found lengths {string.Join(", ", lengths)}.");
        }

        if (positive.Any(values => values.Any(value => !(value > 0 && double.IsFinite(value))))
            || notNegative.Any(values => values.Any(value => !(value >= 0 && double.IsFinite(value)))))
        {
            throw new ArgumentException("Expected every drawn value to be positive (of the later lists, zero at least) and finite.");
        }

        if (UltrasmallFractions.Zip(LargeFractions).Any(pair => pair.First + pair.Second > 1))
        {
            throw new ArgumentException("Expected fractions that leave room for small pores.");
        }

        ImmutableArray<double> Or(ImmutableArray<double> values, double all) => values.IsDefault ? [.. Enumerable.Repeat(all, count)] : values;
    }

    /// <summary>Where the members come from.</summary>
    public EnsembleSource Source { get; }

    /// <summary>Seed of the draw.</summary>
    public int Seed { get; }

    /// <summary>The membrane that stands for the ensemble as a point.</summary>
    public ThreePoreMembrane Center { get; }

    /// <summary>LpS of each member, mL/min/mmHg.</summary>
    public ImmutableArray<double> UltrafiltrationCoefficients { get; }

    /// <summary>A0/Δx of each member, cm.</summary>
    public ImmutableArray<double> DiffusionAreas { get; }

    /// <summary>Glucose permeability scale of each member.</summary>
    public ImmutableArray<double> GlucosePermeabilityScales { get; }

    /// <summary>Amplitude of the initial transient of each member.</summary>
    public ImmutableArray<double> TransientAmplitudes { get; }

    /// <summary>L of each member, mL/min.</summary>
    public ImmutableArray<double> LymphaticRemovals { get; }

    /// <summary>α of the ultrasmall pores of each member.</summary>
    public ImmutableArray<double> UltrasmallFractions { get; }

    /// <summary>α of the large pores of each member.</summary>
    public ImmutableArray<double> LargeFractions { get; }

    /// <summary>Permeability of sodium of each member, mL/min.</summary>
    public ImmutableArray<double> SodiumPermeabilities { get; }

    /// <summary>A0/Δx at night, lying, over that of the test, of each member.</summary>
    public ImmutableArray<double> LyingAreaFactors { get; }

    /// <summary>The same of LpS.</summary>
    public ImmutableArray<double> LyingConductanceFactors { get; }

    /// <summary>How many members.</summary>
    public int Count => UltrafiltrationCoefficients.Length;

    /// <summary>One member as a membrane.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The index is outside 0 to Count − 1.</exception>
    public ThreePoreMembrane this[int index] => Center with
    {
        UltrafiltrationCoefficient = HydraulicConductance.FromMillilitersPerMinutePerMillimeterOfMercury(UltrafiltrationCoefficients[index]),
        DiffusionArea = DiffusionArea.FromCentimeters(DiffusionAreas[index]),
        GlucosePermeabilityScale = GlucosePermeabilityScales[index],
        TransientAmplitude = TransientAmplitudes[index],
        LymphaticRemoval = FlowRate.FromMillilitersPerMinute(LymphaticRemovals[index]),
        Pores = Center.Pores.WithFractions(UltrasmallFractions[index], LargeFractions[index]),
        SodiumPermeability = Clearance.FromMillilitersPerMinute(SodiumPermeabilities[index]),
        LyingAreaFactor = LyingAreaFactors[index],
        LyingConductanceFactor = LyingConductanceFactors[index],
    };

    /// <summary>The ensemble of one membrane.</summary>
    public static MembraneEnsemble Of(ThreePoreMembrane membrane)
    {
        ArgumentNullException.ThrowIfNull(membrane);
        return new(
            EnsembleSource.Point,
            0,
            membrane,
            [membrane.UltrafiltrationCoefficient.MillilitersPerMinutePerMillimeterOfMercury],
            [membrane.DiffusionArea.Centimeters],
            [membrane.GlucosePermeabilityScale]);
    }

    /// <summary>The first members, for a stage that needs fewer.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than 1 or more than there are.</exception>
    public MembraneEnsemble First(int count)
    {
        Require.InRange(count, 1, Count, "");
        return new(
            Source,
            Seed,
            Center,
            UltrafiltrationCoefficients[..count],
            DiffusionAreas[..count],
            GlucosePermeabilityScales[..count],
            TransientAmplitudes[..count],
            LymphaticRemovals[..count],
            UltrasmallFractions[..count],
            LargeFractions[..count],
            SodiumPermeabilities[..count],
            LyingAreaFactors[..count],
            LyingConductanceFactors[..count]);
    }

    /// <summary>The same members, each as it lies at night.</summary>
    /// <param name="center">The membrane that stands for all.</param>
    /// <param name="areaFactors">A0/Δx lying over that of the test, of each member.</param>
    /// <param name="conductanceFactors">The same of LpS.</param>
    /// <exception cref="ArgumentException">There are not as many factors as members, or one is not positive.</exception>
    internal MembraneEnsemble Lying(ThreePoreMembrane center, ImmutableArray<double> areaFactors, ImmutableArray<double> conductanceFactors) => new(
        Source,
        Seed,
        center,
        UltrafiltrationCoefficients,
        DiffusionAreas,
        GlucosePermeabilityScales,
        TransientAmplitudes,
        LymphaticRemovals,
        UltrasmallFractions,
        LargeFractions,
        SodiumPermeabilities,
        areaFactors,
        conductanceFactors);
}
