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
    public static ModelMiss ModelForm(RegimenOutcome outcome, DoubtLayers layers, DialysisSolution? tested)
    {
        if (!layers.HoldsModelForm)
        {
            return default;
        }

        // RingDoubt sums the same over rings, where there is no outcome.
        double offset = 0, gained = 0, variance = 0;
        foreach (var (_, miss) in ByStrength(Night(outcome).Concat(Day(outcome)), layers, tested))
        {
            offset += miss.Offset;
            gained += miss.Gained;
            variance += miss.Deviation * miss.Deviation;
        }

        return new(offset, gained, Math.Sqrt(variance));
    }

    /// <summary>The same of any exchanges, strength by strength, mL.</summary>
    public static IEnumerable<(DoubtDraws.Part Strength, ModelMiss Miss)> ByStrength(
        IEnumerable<(DialysisSolution Solution, CycleOutcome Ran, ExchangeMode Mode)> exchanges, DoubtLayers layers, DialysisSolution? tested)
    {
        foreach (var strength in exchanges.GroupBy(exchange => DoubtDraws.Of(exchange.Solution)))
        {
            var (offset, gained, deviation) = (0.0, 0.0, 0.0);
            foreach (var (solution, ran, mode) in strength)
            {
                var discrepancy = layers.Of(solution, tested, mode);
                offset += discrepancy.OffsetAt(ran.DwellTime);
                gained += discrepancy.GainedOf(ran.Ultrafiltration.Milliliters);
                deviation += discrepancy.DeviationAt(ran.DwellTime);
            }

            yield return (strength.Key, new(offset, gained, deviation));
        }
    }

    /// <summary>The exchanges of a night and how each was made.</summary>
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

    /// <summary>The share above the range.</summary>
    public static double ShareAbove(double mean, double deviation, FluidTarget range)
    {
        var high = range.Ceiling.Milliliters;
        return deviation > 0 ? 1 - Normal.CDF(mean, deviation, high) : mean > high ? 1 : 0;
    }
}
