namespace Transport.Analysis;

/// <summary>What a regimen is to do for a patient, and what it must not.</summary>
public sealed record RegimenGoals
{
    /// <summary>Goals around a fluid target.</summary>
    public RegimenGoals(FluidTarget fluid)
    {
        ArgumentNullException.ThrowIfNull(fluid);
        Fluid = fluid;
    }

    /// <summary>24-h ultrafiltration, day and night together.</summary>
    public FluidTarget Fluid { get; init; }

    /// <summary>Clearance; null: none is asked for.</summary>
    public ClearanceGoal? Clearance { get; init; } = ClearanceGoal.Usual;

    /// <summary>The longest night the patient wants.</summary>
    public TimeSpan LongestNight { get; init; } = TimeSpan.FromHours(10);

    /// <summary>
    /// Largest fill per m² of body surface, mL. Contact is complete at about 1400 mL/m² (Fischbach 2016, read); above, the model overstates ultrafiltration.
    /// </summary>
    public double LargestFillPerSquareMeter { get; init; } = 1400;

    /// <summary>The clinic's own largest fill; null: the surface alone decides.</summary>
    public Volume? LargestFill { get; init; }

    /// <summary>Most volume in the cavity; null: not limited.</summary>
    public Volume? LargestVolume { get; init; }

    /// <summary>How many exchanges in 24 h may have a strongest glucose (above 180 mmol/L); null: not limited.</summary>
    public int? MostStrongestExchanges { get; init; }

    /// <summary>The largest fill for a patient: the smaller of the two limits.</summary>
    public Volume LargestFillOf(Patient patient)
    {
        ArgumentNullException.ThrowIfNull(patient);
        var bySurface = Volume.FromMilliliters(LargestFillPerSquareMeter * patient.BodySurface.SquareMeters);
        return LargestFill is { } own && own < bySurface ? own : bySurface;
    }
}
