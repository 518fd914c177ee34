namespace Transport;

/// <summary>What a written total of ultrafiltration counts. Books and programmes differ: ask once, and test it against the volumes.</summary>
public enum UltrafiltrationCount
{
    /// <summary>The night's cycles: drained minus filled, without initial drain and day.</summary>
    Night,

    /// <summary>Night and day: initial drain + drains − fills, the fills of the day before among them.</summary>
    NightAndDay,

    /// <summary>The night's cycles and the whole initial drain, from which no day fill was taken away: after a wet day too large by that fill.</summary>
    NightAndInitialDrain,
}
