namespace Transport.Analysis;

/// <summary>Draws of what the model misses and of how days differ, the same for every regimen that is laid beside another.</summary>
/// <remarks>Exchanges of one strength err together, different strengths independently, and so do sodium, pressure and nights.</remarks>
internal sealed class CommonDoubt
{
    private readonly OutlookOptions options;
    private readonly DoubtDraws draws;

    /// <param name="options">What was tested, and which layers are held.</param>
    /// <param name="seed">The ensemble's.</param>
    public CommonDoubt(OutlookOptions options, int seed)
    {
        this.options = options;
        draws = new(options.Layers, seed);
    }

    /// <summary>One simulated day with one draw of the doubt.</summary>
    public MeasuredDay Of(RegimenOutcome outcome, int draw)
    {
        var sodium = outcome.Options.Sodium;
        var night = Shift(DailyDoubt.Night(outcome), draw);
        var day = Shift(DailyDoubt.Day(outcome), draw);
        if (options.Layers.HoldsNightToNight)
        {
            night += draws[DoubtDraws.Part.Night, draw] * options.Layers.NightToNight.Milliliters(outcome.Ultrafiltration.Milliliters + night + day);
        }

        var people = options.Pressure is null ? PressureRisk.DeviationBetweenPeople : 0;
        return new(
            outcome,
            options,
            night,
            day,
            sodium.Factor * Math.Exp(sodium.DeviationOfLogFactor * draws[DoubtDraws.Part.Sodium, draw]),
            people * draws[DoubtDraws.Part.Pressure, draw]);
    }

    private double Shift(IEnumerable<(DialysisSolution Solution, CycleOutcome Ran, ExchangeMode Mode)> exchanges, int draw) => exchanges.Sum(one =>
    {
        var discrepancy = options.Layers.Of(one.Solution, options.Tested, one.Mode);
        return (discrepancy.Gain - 1) * one.Ran.Ultrafiltration.Milliliters
            + discrepancy.GrowthAt(one.Ran.DwellTime)
                * (discrepancy.Offset.Milliliters + discrepancy.Deviation.Milliliters * draws[DoubtDraws.Of(one.Solution), draw]);
    });
}
