namespace Transport.Analysis;

/// <summary>How much the ultrafiltration of one night, or of one day, differs from the next in the same person on the same regimen.</summary>
public sealed record NightVariation
{
    private NightVariation(Volume least, double shareOfMean) => (Least, ShareOfMean) = (least, shareOfMean);

    /// <summary>Standard deviation, where a share of the mean is not more.</summary>
    public Volume Least { get; }

    /// <summary>Standard deviation over the mean, where that is more.</summary>
    public double ShareOfMean { get; }

    /// <summary>
    /// What to start with: 150 mL or 20 % of the mean, whichever is larger. Not found in print (memory, choice); a patient's own
    /// replaces it after 14 nights.
    /// </summary>
    public static NightVariation Starting { get; } = new(Volume.FromMilliliters(150), 0.2);

    /// <summary>A patient's own: <see cref="RecordReview.NightDeviation"/> of a book.</summary>
    /// <param name="deviation">Standard deviation of single nights.</param>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public static NightVariation OfPatient(Volume deviation) => new(Require.ZeroOrMore(deviation, nameof(deviation)), 0);

    /// <summary>Standard deviation of a single night around a mean.</summary>
    public Volume DeviationOf(Volume mean) => Volume.FromMilliliters(Milliliters(mean.Milliliters));

    internal double Milliliters(double mean) => Math.Max(Least.Milliliters, ShareOfMean * Math.Abs(mean));

    /// <summary>Share of it within one dwell: in proportion to time up to 4 h (choice).</summary>
    internal static double GrowthAt(TimeSpan dwell) => Math.Min(1, dwell.TotalHours / 4);
}
