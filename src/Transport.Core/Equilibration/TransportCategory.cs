namespace Transport;

/// <summary>How fast small solutes cross, in the four classes of 1987, slowest first.</summary>
public enum TransportCategory
{
    /// <summary>Slow (Low).</summary>
    Slow,

    /// <summary>Slow-average (Low-average).</summary>
    SlowAverage,

    /// <summary>Fast-average (High-average).</summary>
    FastAverage,

    /// <summary>Fast transfer (High).</summary>
    Fast,
}
