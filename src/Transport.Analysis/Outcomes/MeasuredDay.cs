namespace Transport.Analysis;

/// <summary>One simulated day with one draw of what the model itself misses.</summary>
/// <param name="Outcome">The day.</param>
/// <param name="Options">What else a measure needs.</param>
/// <param name="NightShift">What to add to the night's ultrafiltration, mL.</param>
/// <param name="DayShift">The same of the day.</param>
/// <param name="SodiumFactor">What the model's sodium removal is multiplied by.</param>
/// <param name="PressureShift">How far this person's pressure is from the line, cmH2O.</param>
internal readonly record struct MeasuredDay(
    RegimenOutcome Outcome, OutlookOptions Options, double NightShift, double DayShift, double SodiumFactor, double PressureShift)
{
    public Patient Patient => Outcome.Patient;

    /// <summary>24-h ultrafiltration with what the model misses, mL.</summary>
    public double Ultrafiltration => Outcome.Ultrafiltration.Milliliters + NightShift + DayShift;

    public double BodyWaterLiters => Options.BodyWaterLitersOf(Patient);

    /// <summary>Clearance of a solute, or null where it was not followed or plasma holds none.</summary>
    public Clearance? ClearanceOf(Solute solute) => Find(solute)?.Clearance;

    public double? RemovedMillimoles(Solute solute) => Find(solute)?.Removed?.Millimoles;

    private SoluteRemoval? Find(Solute solute)
    {
        foreach (var removal in Outcome.Solutes)
        {
            if (removal.Solute == solute)
            {
                return removal;
            }
        }

        return null;
    }
}
