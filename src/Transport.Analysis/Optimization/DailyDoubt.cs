using MathNet.Numerics.Distributions;

namespace Transport.Analysis;

/// <summary>What the ultrafiltration of a day differs by from the model's, beyond the membrane's parameters.</summary>
internal static class DailyDoubt
{
    /// <summary>The layers that a mean over many days holds; that of a single day also holds how nights differ.</summary>
    public static Doubt OfMean(RegimenSearchOptions options) => options.HoldsModelForm ? Doubt.Parameters | Doubt.ModelForm : Doubt.Parameters;

    /// <summary>
    /// What to add to the model's 24-h ultrafiltration of a regimen, and how sure that is, mL: the discrepancy of each strength that the test did
    /// not use, and of icodextrin.
    /// </summary>
    /// <remarks>
    /// Gains act on the ultrafiltration of the exchanges; offsets and deviations, known at 4 h, grow in proportion to the dwell until then
    /// (choice). Exchanges of one strength err together, different strengths independently.
    /// </remarks>
    public static (double Shift, double Deviation) ModelForm(RegimenOutcome outcome, RegimenSearchOptions options)
    {
        if (!options.HoldsModelForm)
        {
            return (0, 0);
        }

        // The same sums as in RingDoubt, where there is no outcome.
        double shift = 0, variance = 0;
        foreach (var (_, strengthShift, deviation) in ByStrength(outcome.Regimen.Exchanges, outcome.Cycles.Concat(outcome.DayExchanges), options.Tested))
        {
            shift += strengthShift;
            variance += deviation * deviation;
        }

        return (shift, Math.Sqrt(variance));
    }

    /// <summary>The same of any exchanges, strength by strength, mL.</summary>
    public static IEnumerable<(Concentration Glucose, double Shift, double Deviation)> ByStrength(
        IEnumerable<Exchange> exchanges, IEnumerable<CycleOutcome> ran, DialysisSolution? tested)
    {
        foreach (var strength in exchanges.Zip(ran).GroupBy(pair => pair.First.Solution.Glucose))
        {
            var discrepancy = ModelDiscrepancy.Of(strength.First().First.Solution, tested);
            var shares = strength.Sum(pair => discrepancy.GrowthAt(pair.Second.DwellTime));
            yield return (
                strength.Key,
                (discrepancy.Gain - 1) * strength.Sum(pair => pair.Second.Ultrafiltration.Milliliters) + shares * discrepancy.Offset.Milliliters,
                shares * discrepancy.Deviation.Milliliters);
        }
    }

    /// <summary>Share of a normal distribution that lies in a range; of a point, 0 or 1.</summary>
    public static double ShareInRange(double mean, double deviation, FluidTarget range)
    {
        var (low, high) = (range.Floor.Milliliters, range.Ceiling.Milliliters);
        return deviation > 0
            ? Normal.CDF(mean, deviation, high) - Normal.CDF(mean, deviation, low)
            : mean >= low && mean <= high ? 1 : 0;
    }
}
