using MathNet.Numerics.Distributions;

namespace Transport.Analysis;

/// <summary>What the ultrafiltration of a day differs by from the model's, beyond the membrane's parameters.</summary>
internal static class DailyDoubt
{
    /// <summary>The layers that a mean over many days holds.</summary>
    public static Doubt OfMean(DoubtLayers layers) => layers.Holds & ~Doubt.NightToNight;

    /// <summary>Those that a single day holds: also how nights differ.</summary>
    public static Doubt OfSingle(DoubtLayers layers) => layers.Holds | Doubt.NightToNight;

    /// <summary>
    /// What to add to the model's 24-h ultrafiltration of a regimen, and how sure that is, mL: the discrepancy of each strength that the test did
    /// not use, of icodextrin, and of a night of cycles.
    /// </summary>
    /// <remarks>
    /// Gains act on the ultrafiltration of the exchanges; offsets and deviations, known at 4 h, grow in proportion to the dwell until then
    /// (choice). Exchanges of one strength err together, different strengths independently.
    /// </remarks>
    public static (double Shift, double Deviation) ModelForm(RegimenOutcome outcome, DoubtLayers layers, DialysisSolution? tested)
    {
        if (!layers.HoldsModelForm)
        {
            return (0, 0);
        }

        // The same sums as in RingDoubt, where there is no outcome.
        var shift = 0.0;
        var deviations = new Dictionary<DoubtDraws.Part, double>();
        foreach (var (solution, ran, mode) in Exchanges(outcome))
        {
            var discrepancy = layers.Of(solution, tested, mode);
            var share = discrepancy.GrowthAt(ran.DwellTime);
            shift += (discrepancy.Gain - 1) * ran.Ultrafiltration.Milliliters + share * discrepancy.Offset.Milliliters;
            var part = DoubtDraws.Of(solution);
            deviations[part] = deviations.GetValueOrDefault(part) + share * discrepancy.Deviation.Milliliters;
        }

        return (shift, Math.Sqrt(deviations.Values.Sum(deviation => deviation * deviation)));
    }

    /// <summary>The exchanges of 24 h, the night's first, and how each was made.</summary>
    public static IEnumerable<(DialysisSolution Solution, CycleOutcome Ran, ExchangeMode Mode)> Exchanges(RegimenOutcome outcome) =>
        Night(outcome).Concat(Day(outcome));

    /// <summary>Those of the night.</summary>
    public static IEnumerable<(DialysisSolution Solution, CycleOutcome Ran, ExchangeMode Mode)> Night(RegimenOutcome outcome) =>
        outcome.Regimen.Night.Zip(outcome.Cycles, (exchange, ran) => (exchange.Solution, ran, ModeOf(outcome.Regimen.Night.Length)));

    /// <summary>Those of the day.</summary>
    public static IEnumerable<(DialysisSolution Solution, CycleOutcome Ran, ExchangeMode Mode)> Day(RegimenOutcome outcome) =>
        outcome.Regimen.Day.Zip(outcome.DayExchanges, (exchange, ran) => (exchange.Solution, ran, ExchangeMode.Alone));

    /// <summary>How the exchanges of a night are made.</summary>
    public static ExchangeMode ModeOf(int exchangesOfNight) => exchangesOfNight > 1 ? ExchangeMode.Cycle : ExchangeMode.Alone;

    /// <summary>Share of a normal distribution that lies in a range; of a point, 0 or 1.</summary>
    public static double ShareInRange(double mean, double deviation, FluidTarget range)
    {
        var (low, high) = (range.Floor.Milliliters, range.Ceiling.Milliliters);
        return deviation > 0
            ? Normal.CDF(mean, deviation, high) - Normal.CDF(mean, deviation, low)
            : mean >= low && mean <= high ? 1 : 0;
    }
}
