namespace Transport;

/// <summary>The fullest moment of a dwell.</summary>
/// <param name="Time">When.</param>
/// <param name="NetUltrafiltration">Volume then, less that at the start.</param>
public readonly record struct VolumePeak(TimeSpan Time, Volume NetUltrafiltration)
{
    /// <summary>Intraperitoneal volume then.</summary>
    public Volume Volume { get; init; }

    /// <summary>Whether the dwell ended before the volume fell: the real peak is later and higher.</summary>
    public bool IsAtEnd { get; init; }
}
