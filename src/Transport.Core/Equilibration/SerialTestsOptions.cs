namespace Transport;

/// <summary>How far an index of one person varies from test to test although nothing changed, and the limits for findings.</summary>
/// <remarks>
/// No published table of repeated tests was found. 5 to 8 % for D/P, 8 to 13 % for mass transfer area coefficients and 100 to 200 mL for
/// ultrafiltration are memory of low confidence; the dip's 1.3 mmol/L is computed from the assay.
/// </remarks>
public sealed record SerialTestsOptions
{
    /// <summary>The choices as they ship.</summary>
    public static SerialTestsOptions Default { get; } = new();

    /// <summary>D/P of creatinine and urea, and D/D0 of glucose; 0.05.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero, negative or not finite.</exception>
    public double RatioDeviation { get; init => field = Require.Positive(value, ""); } = 0.05;

    /// <summary>Net ultrafiltration; 150 mL.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero or negative.</exception>
    public Volume UltrafiltrationDeviation { get; init => field = Require.MoreThanZero(value, nameof(UltrafiltrationDeviation)); } = Volume.FromMilliliters(150);

    /// <summary>Sodium dip, raw and corrected; 1.3 mmol/L.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero or negative.</exception>
    public Concentration SodiumDipDeviation { get; init => field = Require.MoreThanZero(value, nameof(SodiumDipDeviation)); } = Concentration.FromMillimolesPerLiter(1.3);

    /// <summary>Mass transfer area coefficients, share of the mean; 0.10.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero, negative or not finite.</exception>
    public double MassTransferVariation { get; init => field = Require.Positive(value, ""); } = 0.10;

    /// <summary>Limits.</summary>
    public MembraneThresholds Thresholds { get; init; } = MembraneThresholds.Default;
}
