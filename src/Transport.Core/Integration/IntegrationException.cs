using System.Globalization;

namespace Transport;

/// <summary>An integration that could not be finished. A dwell cut off in the middle would be dangerous, so nothing is returned.</summary>
public sealed class IntegrationException : Exception
{
    internal IntegrationException(double minutes, string reason)
        : base(string.Create(CultureInfo.InvariantCulture, $"The dwell could not be integrated past {minutes:0.##} min: {reason}"))
    {
        Time = TimeSpan.FromMinutes(minutes);
    }

    /// <summary>How far it came.</summary>
    public TimeSpan Time { get; }
}
