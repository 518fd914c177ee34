namespace Transport;

/// <summary>The choices inside <see cref="EquilibrationIndices.Of(EquilibrationTest, EquilibrationIndicesOptions)"/>.</summary>
public sealed record EquilibrationIndicesOptions
{
    /// <summary>The choices as they ship.</summary>
    public static EquilibrationIndicesOptions Default { get; } = new();

    /// <summary>Borders of D/P creatinine; null takes those of 1987 for adults, those of 1996 for children.</summary>
    public CategoryCuts? Cuts { get; init; }

    /// <summary>Borders of D/D0 glucose at 2.27 %; null takes those of 1987 for adults, those of 1996 for children.</summary>
    public CategoryCuts? GlucoseCuts { get; init; }

    /// <summary>Series for z-score and percentile; null takes that of the age group and the strength, see <see cref="ReferencePopulations.For"/>.</summary>
    public ReferencePopulation? Population { get; init; }

    /// <summary>Limits for findings.</summary>
    public MembraneThresholds Thresholds { get; init; } = MembraneThresholds.Default;

    /// <summary>Choices inside the mass transfer area coefficients.</summary>
    public MassTransferOptions MassTransfer { get; init; } = MassTransferOptions.Default;

    /// <summary>
    /// Standard deviation of D/P creatinine within one person, for the class probabilities. Within-person variation is about 5 to
    /// 8 % (memory); 0.05 is this project's choice, assay error (0.03 at D/P 0.70) included.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero, negative or not finite.</exception>
    public double WithinPersonStandardDeviation { get; init => field = Require.Positive(value, ""); } = 0.05;

    /// <summary>Assay coefficient of variation of creatinine, urea and glucose; 0.03 each (choice).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative or not finite.</exception>
    public double AssayVariation { get; init => field = Require.NotNegative(value, ""); } = 0.03;

    /// <summary>Assay coefficient of variation of sodium; 0.007 (choice), which makes the SD of a dip about 1.3 mmol/L.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative or not finite.</exception>
    public double SodiumAssayVariation { get; init => field = Require.NotNegative(value, ""); } = 0.007;

    /// <summary>Standard deviation of one weighed volume; 25 mL (choice).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public Volume VolumeDeviation { get; init => field = Require.ZeroOrMore(value, nameof(VolumeDeviation)); } = Volume.FromMilliliters(25);

    /// <summary>
    /// Diffusive permeability to sodium for the corrected dip; null takes half the patient's mass transfer area coefficient of
    /// creatinine, or 6 mL/min where that is not known. It cannot be measured with usual fluids; 4 to 8 mL/min is memory.
    /// </summary>
    public Clearance? SodiumPermeability { get; init; }

    /// <summary>
    /// Residual volume where it was not measured, for an estimated D0 and for the corrected dip only; null takes
    /// <see cref="ResidualFluid.UsualVolume"/> for the patient's surface, as a fit does. ± 100 mL (choice).
    /// </summary>
    public Volume? AssumedResidualVolume { get; init; }

    /// <summary>Glucose of the residual volume, for an estimated D0 only; 35 ± 20 mmol/L (choice).</summary>
    public Concentration AssumedResidualGlucose { get; init; } = Concentration.FromMillimolesPerLiter(35);
}
