namespace Transport.Analysis;

/// <summary>A published mean of net ultrafiltration at one time of a dwell.</summary>
/// <param name="Time">From the end of the fill.</param>
/// <param name="Mean">Mean of the series.</param>
/// <param name="Deviation">Standard deviation between its people.</param>
/// <param name="Count">How many they are.</param>
public sealed record VolumeTarget(TimeSpan Time, Volume Mean, Volume Deviation, int Count)
{
    /// <summary>Standard error of the mean.</summary>
    public Volume StandardError => Deviation * (1 / Math.Sqrt(Count));
}
