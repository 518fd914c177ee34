namespace Transport.Analysis;

/// <summary>What is known of one barrier before any test: log-normal (the sieving coefficient by its log odds), independent, per 1.73 m².</summary>
/// <remarks>
/// Drawn from it, tests have the published mean and spread as those of <see cref="PopulationPrior"/> have, so that neither model starts nearer to people
/// than the other.
/// </remarks>
public sealed record LumpedPrior
{
    /// <summary>The membrane at the centre, per 1.73 m².</summary>
    public LumpedMembrane Center { get; init; } = LumpedMembrane.MeanIncidentAdult;

    /// <summary>
    /// Standard deviation of the logarithm of creatinine's mass transfer area coefficient: that of A0/Δx, to which it is proportional (249 people; Johansson and
    /// Haraldsson, Perit Dial Int 2006;26, read).
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero, negative or not finite.</exception>
    public double CreatinineTransferLogDeviation
    {
        get;
        init => field = Require.Positive(value, "", nameof(CreatinineTransferLogDeviation));
    }
    = 0.36;

    /// <summary>Standard deviation of the logarithm of glucose's coefficient over creatinine's (choice, the same as of the pores' glucose scale).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero, negative or not finite.</exception>
    public double GlucoseToCreatinineLogDeviation
    {
        get;
        init => field = Require.Positive(value, "", nameof(GlucoseToCreatinineLogDeviation));
    }
    = 0.2;

    /// <summary>Standard deviation of the logarithm of the osmotic conductance to glucose: 3.6 ± 1.2 µL/min/mmHg in paired tests (memory).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero, negative or not finite.</exception>
    public double OsmoticConductanceLogDeviation
    {
        get;
        init => field = Require.Positive(value, "", nameof(OsmoticConductanceLogDeviation));
    }
    = 0.32;

    /// <summary>Standard deviation of the log odds of the sieving coefficient: 0.5 to 0.6 (read) as one standard deviation to each side (choice).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero, negative or not finite.</exception>
    public double SievingLogDeviation
    {
        get;
        init => field = Require.Positive(value, "", nameof(SievingLogDeviation));
    }
    = 0.2;

    /// <summary>Standard deviation of the logarithm of sodium's mass transfer area coefficient (choice: 4 to 6 mL/min is memory).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero, negative or not finite.</exception>
    public double SodiumTransferLogDeviation
    {
        get;
        init => field = Require.Positive(value, "", nameof(SodiumTransferLogDeviation));
    }
    = 0.3;

    /// <summary>
    /// Standard deviation of the logarithm of the absorption (choice). The published 1.0 (Johansson and Haraldsson 2006, read) would spread ultrafiltration in 4 h
    /// by 800 mL, where 308 mL are in print; with 0.4 it is 370 mL (computed).
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero, negative or not finite.</exception>
    public double FluidAbsorptionLogDeviation
    {
        get;
        init => field = Require.Positive(value, "", nameof(FluidAbsorptionLogDeviation));
    }
    = 0.4;

    /// <summary>Adults near the start of dialysis.</summary>
    public static LumpedPrior IncidentAdults { get; } = new();
}
