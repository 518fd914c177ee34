namespace Transport.Analysis;

/// <summary>How far a measurement may be from the truth, one standard deviation.</summary>
/// <remarks>
/// Coefficients of variation of laboratories: creatinine 2 to 4 %, glucose 2 to 3 %, sodium 0.5 to 1 %, urea 2 to 3 % (memory). The drained
/// volume stands for the change of volume in the cavity, so its error holds the difference of two residual volumes as well.
/// </remarks>
public sealed record AssayErrors
{
    /// <summary>Creatinine, share of the value.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero, negative or not finite.</exception>
    public double CreatinineVariation
    {
        get;
        init => field = Require.Positive(value, "", nameof(CreatinineVariation));
    }
    = 0.03;

    /// <summary>Urea, share of the value.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero, negative or not finite.</exception>
    public double UreaVariation
    {
        get;
        init => field = Require.Positive(value, "", nameof(UreaVariation));
    }
    = 0.03;

    /// <summary>Glucose, share of the value.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero, negative or not finite.</exception>
    public double GlucoseVariation
    {
        get;
        init => field = Require.Positive(value, "", nameof(GlucoseVariation));
    }
    = 0.03;

    /// <summary>Sodium, share of the value.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero, negative or not finite.</exception>
    public double SodiumVariation
    {
        get;
        init => field = Require.Positive(value, "", nameof(SodiumVariation));
    }
    = 0.01;

    /// <summary>What creatinine is off by however little there is: the last digit and the blank of an assay (choice).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public Concentration CreatinineFloor
    {
        get;
        init => field = Require.ZeroOrMore(value, nameof(CreatinineFloor));
    }
    = Concentration.FromMillimolesPerLiter(0.004);

    /// <summary>The same of urea (choice).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public Concentration UreaFloor
    {
        get;
        init => field = Require.ZeroOrMore(value, nameof(UreaFloor));
    }
    = Concentration.FromMillimolesPerLiter(0.15);

    /// <summary>The same of glucose (choice).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public Concentration GlucoseFloor
    {
        get;
        init => field = Require.ZeroOrMore(value, nameof(GlucoseFloor));
    }
    = Concentration.FromMillimolesPerLiter(0.2);

    /// <summary>A protein in dialysate or plasma, share of the value (choice).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero, negative or not finite.</exception>
    public double ProteinVariation
    {
        get;
        init => field = Require.Positive(value, "", nameof(ProteinVariation));
    }
    = 0.05;

    /// <summary>What sampling, mixing and the shape of the model add to every dialysate ratio, share of the value.</summary>
    /// <remarks>
    /// A choice: D/P creatinine of one person varies by 5 to 8 % from test to test (memory); 5.2 % less the 4.2 % that two assays of 3 % make
    /// leaves 3 %. Without it the shape of the curves alone would seem to tell the ultrafiltration.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">Negative or not finite.</exception>
    public double SamplingVariation
    {
        get;
        init => field = Require.NotNegative(value, "", nameof(SamplingVariation));
    }
    = 0.03;

    /// <summary>Change of the intraperitoneal volume over the dwell.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero or negative.</exception>
    public Volume VolumeDeviation
    {
        get;
        init => field = Require.MoreThanZero(value, nameof(VolumeDeviation));
    }
    = Volume.FromMilliliters(60);

    /// <summary>Overfill of a bag whose label alone is known: bags of 2 L hold about 2.05 to 2.1 L (memory), so 75 mL.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public Volume UnknownOverfill
    {
        get;
        init => field = Require.ZeroOrMore(value, nameof(UnknownOverfill));
    }
    = Volume.FromMilliliters(75);

    /// <summary>Doubt about that.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public Volume UnknownOverfillDeviation
    {
        get;
        init => field = Require.ZeroOrMore(value, nameof(UnknownOverfillDeviation));
    }
    = Volume.FromMilliliters(40);

    /// <summary>The defaults.</summary>
    public static AssayErrors Default { get; } = new();
}
