namespace Transport;

/// <summary>Intraperitoneal volume that raises the pressure by 1 mmHg, by posture: for <see cref="ThreePoreMembrane.VolumePerPressure"/>.</summary>
/// <remarks>
/// Twardowski et al., Kidney Int 1983;23:64-70 (read): 2.0, 2.7 and 2.8 cmH2O per litre in 18 adults, 0 to 4 L; in mL/mmHg computed with 1 cmH2O =
/// 0.7356 mmHg. Absolute: scaling a membrane to a person scales them too, which is a choice. Posture also shifts the pressure itself and the area
/// in contact; neither is here.
/// </remarks>
public static class PressureSlopes
{
    /// <summary>Lying: 680 mL.</summary>
    public static Volume Supine { get; } = Volume.FromMilliliters(680);

    /// <summary>Standing: 503 mL.</summary>
    public static Volume Upright { get; } = Volume.FromMilliliters(503);

    /// <summary>Sitting: 486 mL.</summary>
    public static Volume Sitting { get; } = Volume.FromMilliliters(486);
}
