namespace Transport.Analysis;

/// <summary>What of a night is compared with what was to be expected.</summary>
public enum NightChannel
{
    /// <summary>What was drained before the first fill.</summary>
    InitialDrain,

    /// <summary>Ultrafiltration of the first cycle less that of the middle ones: fluid carried in and left behind.</summary>
    FirstCycle,

    /// <summary>Ultrafiltration of the night; with the day where the book has them together and cannot part them.</summary>
    Ultrafiltration,

    /// <summary>Mean time of a drain.</summary>
    DrainTime,

    /// <summary>Mean dwell time of the cycles.</summary>
    AverageDwell,
}
