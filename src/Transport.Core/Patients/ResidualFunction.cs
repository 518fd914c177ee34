namespace Transport;

/// <summary>What the patient's own kidneys still do.</summary>
/// <param name="UreaClearance">Renal urea clearance.</param>
/// <param name="CreatinineClearance">Renal creatinine clearance.</param>
/// <param name="UrineVolumePerDay">Urine in 24 hours.</param>
public sealed record ResidualFunction(Clearance UreaClearance, Clearance CreatinineClearance, Volume UrineVolumePerDay)
{
    /// <summary>No urine.</summary>
    public static ResidualFunction None { get; } = new(default, default, default);

    /// <summary>Mean of urea and creatinine clearance, the conventional estimate of the residual glomerular filtration rate.</summary>
    public Clearance FiltrationRate => (UreaClearance + CreatinineClearance) * 0.5;
}
