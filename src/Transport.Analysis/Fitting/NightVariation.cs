namespace Transport.Analysis;

/// <summary>How much the ultrafiltration of one night, or of one day, differs from the next in the same person on the same regimen.</summary>
public static class NightVariation
{
    private const double LeastMilliliters = 150;
    private const double ShareOfMean = 0.2;

    /// <summary>
    /// Standard deviation to start with: 150 mL or 20 % of the mean, whichever is larger. Not found in print (memory, choice); a patient's own
    /// replaces it after 14 nights.
    /// </summary>
    /// <param name="mean">Mean ultrafiltration.</param>
    public static Volume Starting(Volume mean) => Volume.FromMilliliters(StartingMilliliters(mean.Milliliters));

    /// <summary>Share of it within one dwell: in proportion to time up to 4 h (choice).</summary>
    internal static double GrowthAt(TimeSpan dwell) => Math.Min(1, dwell.TotalHours / 4);

    internal static double StartingMilliliters(double mean) => Math.Max(LeastMilliliters, ShareOfMean * Math.Abs(mean));
}
