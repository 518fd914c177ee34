namespace Transport.Analysis;

/// <summary>The mean day of a simulated rhythm with one draw of what the model itself misses.</summary>
/// <param name="Rhythm">What is repeated.</param>
/// <param name="Options">What else a measure needs.</param>
/// <param name="NightShift">What to add to the night's ultrafiltration, mL.</param>
/// <param name="DayShift">The same of the day.</param>
/// <param name="SodiumFactor">What the model's sodium removal is multiplied by.</param>
/// <param name="PressureShift">How far this person's pressure is from the line, cmH2O.</param>
internal readonly record struct MeasuredDay(
    SimulatedRhythm Rhythm, OutlookOptions Options, double NightShift, double DayShift, double SodiumFactor, double PressureShift)
{
    public Patient Patient => Rhythm.Patient;

    /// <summary>Ultrafiltration of the night with what the model misses, mL.</summary>
    public double NightUltrafiltration => Rhythm.NightUltrafiltration + NightShift;

    /// <summary>That of the day.</summary>
    public double DayUltrafiltration => Rhythm.DayUltrafiltration + DayShift;

    /// <summary>Both.</summary>
    public double Ultrafiltration => NightUltrafiltration + DayUltrafiltration;

    /// <summary>Sodium removed by the peritoneum as the model has it, mmol.</summary>
    public double SodiumByModel => Rhythm.RemovedMillimoles(Solutes.Sodium)!.Value;

    /// <summary>The same, calibrated; a gain stays as it is.</summary>
    public double Sodium => SodiumByModel * (SodiumByModel > 0 ? SodiumFactor : 1);

    public double BodyWaterLiters => Options.BodyWaterLitersOf(Patient);
}
