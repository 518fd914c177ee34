namespace Transport;

/// <summary>What has passed the three pore classes since the start of a dwell, blood to cavity.</summary>
/// <param name="Ultrasmall">Free water.</param>
/// <param name="Small">Small-pore fluid.</param>
/// <param name="Large">Large-pore fluid.</param>
public readonly record struct PoreVolumes(Volume Ultrasmall, Volume Small, Volume Large)
{
    /// <summary>All three: transcapillary ultrafiltration.</summary>
    public Volume Total => Ultrasmall + Small + Large;

    /// <summary>Free water over transcapillary ultrafiltration; null where nothing has come through.</summary>
    /// <remarks>40 to 45 % early at 3.86 % (Rippe, Nephrol Dial Transplant 2008;23:2147, memory).</remarks>
    public double? FreeWaterFraction => Total > default(Volume) ? Ultrasmall / Total : null;
}
