namespace Transport;

/// <summary>The pressure in the belly, lying, against the volume in it: a line, through a patient's own measurement or a population's.</summary>
/// <remarks>
/// P(V) = P₀ + s (V − V₀), s = 2.0 cmH2O per litre lying (18 adults, Kidney Int 1983;23:64-70, read). Posture shifts the pressure itself; only lying is
/// here. It changes no simulation: what pressure does to ultrafiltration belongs to the membrane, which underrates it.
/// </remarks>
public sealed record PressureLine
{
    private const double SlopePerLiter = 2.0;

    private PressureLine(Pressure pressure, Volume volume, Pressure deviation, bool isMeasured) =>
        (ReferencePressure, ReferenceVolume, Deviation, IsMeasured) = (pressure, volume, deviation, isMeasured);

    /// <summary>Pressure at the reference volume.</summary>
    public Pressure ReferencePressure { get; }

    /// <summary>Volume in the belly at which it was measured.</summary>
    public Volume ReferenceVolume { get; }

    /// <summary>Standard deviation between people; zero where the patient's own was measured.</summary>
    public Pressure Deviation { get; }

    /// <summary>Whether it is the patient's own.</summary>
    public bool IsMeasured { get; }

    /// <summary>Sixteen cmH2O: prescriptions are usually kept below (read).</summary>
    public static Pressure Caution { get; } = Pressure.FromCentimetersOfWater(16);

    /// <summary>Eighteen cmH2O: never above, for the usual guidance of adults (read) and, from memory, children.</summary>
    public static Pressure Limit { get; } = Pressure.FromCentimetersOfWater(18);

    /// <summary>
    /// 13.5 ± 3.3 cmH2O at 2 L, lying, 61 adults (Nephrol Dial Transplant 2007;22:1437, read; it goes with body mass index only). A second series has 18.0 ± 4.4.
    /// </summary>
    public static PressureLine Population { get; } =
        new(Pressure.FromCentimetersOfWater(13.5), Volume.FromLiters(2), Pressure.FromCentimetersOfWater(3.3), false);

    /// <summary>Through a patient's own measurement, lying.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The volume is not positive, or the pressure not between 0 and 60 cmH2O.</exception>
    public static PressureLine Measured(Pressure pressure, Volume volume)
    {
        Require.InRange(pressure.CentimetersOfWater, 0, 60, "cmH2O", nameof(pressure));
        return new(pressure, Require.MoreThanZero(volume, nameof(volume)), default, true);
    }

    /// <summary>The pressure, lying, at a volume in the belly.</summary>
    public Pressure At(Volume volume) => ReferencePressure + Pressure.FromCentimetersOfWater(SlopePerLiter * (volume - ReferenceVolume).Liters);

    /// <summary>The volume at which a pressure is reached.</summary>
    public Volume VolumeAt(Pressure pressure) =>
        ReferenceVolume + Volume.FromLiters((pressure - ReferencePressure).CentimetersOfWater / SlopePerLiter);
}
