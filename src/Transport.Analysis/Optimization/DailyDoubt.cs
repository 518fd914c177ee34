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

        var exchanges = outcome.Regimen.Exchanges
            .Zip(outcome.Cycles.Concat(outcome.DayExchanges), (exchange, ran) => (exchange.Solution, ran.Ultrafiltration, ran.DwellTime));

        // The same sums as in RingDoubt, where there is no outcome.
        double shift = 0, variance = 0;
        foreach (var strength in exchanges.GroupBy(exchange => exchange.Solution.Glucose))
        {
            var discrepancy = ModelDiscrepancy.Of(strength.First().Solution, options.Tested);
            var shares = strength.Sum(exchange => discrepancy.GrowthAt(exchange.DwellTime));
            shift += (discrepancy.Gain - 1) * strength.Sum(exchange => exchange.Ultrafiltration.Milliliters) + shares * discrepancy.Offset.Milliliters;
            variance += Math.Pow(shares * discrepancy.Deviation.Milliliters, 2);
        }

        return (shift, Math.Sqrt(variance));
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
