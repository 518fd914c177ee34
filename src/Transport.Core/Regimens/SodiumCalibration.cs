namespace Transport;

/// <summary>What the model's sodium removal has to be multiplied by to meet published automated treatment: one factor for every mode.</summary>
/// <remarks>
/// Published series of automated treatment remove 18 to 51 mmol where the textbook membrane removes 65 to 75 mmol for nights of the same kind (J Nephrol
/// 2019, doi 10.1007/s40620-019-00646-7, medians 23 and 51 mmol/day without and with a day exchange; a cross-over series 18 and 32 mmol per night;
/// read). At equal ultrafiltration the modes do not differ beyond what is uncertain within one (docs/concepts/regimens.md). The truth is taken to lie between 0.3 and
/// 1.0 of the model, and the centre in its geometric middle (choice). A measured 24-h sodium replaces it. Those nights are of short cycles of glucose: for icodextrin no
/// factor is known, and the same is applied (choice), which pages say.
/// </remarks>
public sealed record SodiumCalibration
{
    private SodiumCalibration(double lowFactor, double highFactor)
    {
        LowFactor = lowFactor;
        HighFactor = highFactor;
    }

    /// <summary>Lower end of the 90 % band of the factor.</summary>
    public double LowFactor { get; }

    /// <summary>Upper end of the 90 % band of the factor.</summary>
    public double HighFactor { get; }

    /// <summary>The central factor, √(low · high).</summary>
    public double Factor => Math.Sqrt(LowFactor * HighFactor);

    /// <summary>Standard deviation of the factor's logarithm.</summary>
    public double DeviationOfLogFactor => Math.Log(HighFactor / LowFactor) / (2 * NormalDistribution.Quantile95);

    /// <summary>0.3 to 1.0: factor 0.55, log-SD 0.37.</summary>
    public static SodiumCalibration Published { get; } = FromBand(0.3, 1.0);

    /// <summary>The model as it is.</summary>
    public static SodiumCalibration None { get; } = new(1, 1);

    /// <summary>From a 90 % band.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not 0 &lt; low ≤ high.</exception>
    public static SodiumCalibration FromBand(double lowFactor, double highFactor)
    {
        Require.Positive(lowFactor, "");
        Require.InRange(highFactor, lowFactor, double.MaxValue, "");
        return new(lowFactor, highFactor);
    }

    /// <summary>The calibrated removal of a model's. A gain of sodium (negative) stays as it is: what was published is removal, and a smaller gain would reassure.</summary>
    public AmountOfSubstance Of(AmountOfSubstance model) => model * FactorFor(model.Millimoles);

    internal double FactorFor(double millimoles) => millimoles > 0 ? Factor : 1;
}
