using MathNet.Numerics.Distributions;

namespace Transport.Analysis;

/// <summary>What the ultrafiltration of a day differs by from the model's, beyond the membrane's parameters.</summary>
internal static class DailyDoubt
{
    private const double LeastNightToNight = 150;
    private const double NightToNightShare = 0.2;

    /// <summary>The layers that a single day's ultrafiltration holds.</summary>
    public static Doubt OfOneDay => Doubt.Parameters | Doubt.NightToNight;

    /// <summary>The layers that a mean over many days holds.</summary>
    public static Doubt OfMean => Doubt.Parameters;

    /// <summary>
    /// What to add to the model's 24-h ultrafiltration of a regimen, and how sure that is, mL. Nothing yet: the one place where the model's
    /// discrepancy at a strength and mode comes in, as a shift and a deviation.
    /// </summary>
    public static (double Shift, double Deviation) ModelForm(Regimen regimen)
    {
        ArgumentNullException.ThrowIfNull(regimen);
        return (0, 0);
    }

    /// <summary>
    /// Standard deviation from night to night, mL: 150 mL or 20 % of the mean, whichever is larger. Not found in print (memory, choice); a patient's own
    /// replaces it after 14 nights.
    /// </summary>
    public static double NightToNight(double mean) => Math.Max(LeastNightToNight, NightToNightShare * Math.Abs(mean));

    /// <summary>Share of a normal distribution that lies in a range; of a point, 0 or 1.</summary>
    public static double ShareInRange(double mean, double deviation, FluidTarget range)
    {
        var (low, high) = (range.Floor.Milliliters, range.Ceiling.Milliliters);
        return deviation > 0
            ? Normal.CDF(mean, deviation, high) - Normal.CDF(mean, deviation, low)
            : mean >= low && mean <= high ? 1 : 0;
    }
}
