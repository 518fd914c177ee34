namespace Transport;

/// <summary>Pressure in the cavity of a patient who lies, linear in the volume.</summary>
/// <remarks>
/// Measured in 61 adults at 2 L, lying: 13.5 ± 3.3 cmH2O (Nephrol Dial Transplant 2007;22:1437, read), linear in the volume; 2.0 cmH2O per litre (Twardowski et al.,
/// Kidney Int 1983;23:64, read). Between patients it differs so much that the patient's own measurement should take its place.
/// </remarks>
public sealed record CavityPressure
{
    /// <summary>A measured pressure.</summary>
    /// <param name="pressure">What was measured.</param>
    /// <param name="volume">With how much in the cavity.</param>
    /// <exception cref="ArgumentOutOfRangeException">The volume is not positive.</exception>
    public CavityPressure(Pressure pressure, Volume volume)
    {
        Pressure = pressure;
        Volume = Require.MoreThanZero(volume, nameof(volume));
    }

    /// <summary>What was measured.</summary>
    public Pressure Pressure { get; }

    /// <summary>With how much in the cavity.</summary>
    public Volume Volume { get; }

    /// <summary>Rise per litre, cmH2O.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not between 0.5 and 10.</exception>
    public double CentimetersOfWaterPerLiter
    {
        get;
        init => field = Require.InRange(value, 0.5, 10, "cmH2O/L", nameof(CentimetersOfWaterPerLiter));
    }
    = 2.0;

    /// <summary>13.5 cmH2O at 2 L: a population's, not this patient's.</summary>
    public static CavityPressure Population { get; } = new(Pressure.FromCentimetersOfWater(13.5), Volume.FromLiters(2));

    /// <summary>The pressure at a volume.</summary>
    public Pressure At(Volume volume) =>
        Pressure.FromCentimetersOfWater(Pressure.CentimetersOfWater + CentimetersOfWaterPerLiter * (volume - Volume).Liters);
}
