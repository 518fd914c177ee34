namespace Transport;

/// <summary>What has passed the three pore classes since the start of a dwell, blood to cavity.</summary>
/// <param name="Ultrasmall">Free water.</param>
/// <param name="Small">Small-pore fluid.</param>
/// <param name="Large">Large-pore fluid.</param>
public readonly record struct PoreVolumes(Volume Ultrasmall, Volume Small, Volume Large)
{
    /// <summary>All three: transcapillary ultrafiltration.</summary>
    public Volume Total => Ultrasmall + Small + Large;
}
