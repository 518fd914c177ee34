namespace Transport;

/// <summary>What the patient's own kidneys still do.</summary>
/// <param name="UreaClearance">Renal urea clearance.</param>
/// <param name="CreatinineClearance">Renal creatinine clearance.</param>
/// <param name="UrineVolumePerDay">Urine in 24 hours.</param>
public sealed record ResidualFunction(Clearance UreaClearance, Clearance CreatinineClearance, Volume UrineVolumePerDay)
{
    /// <summary>Renal urea clearance.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public Clearance UreaClearance
    {
        get;
        init => field = Require.ZeroOrMore(value, nameof(UreaClearance));
    }
    = Require.ZeroOrMore(UreaClearance, nameof(UreaClearance));

    /// <summary>Renal creatinine clearance.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public Clearance CreatinineClearance
    {
        get;
        init => field = Require.ZeroOrMore(value, nameof(CreatinineClearance));
    }
    = Require.ZeroOrMore(CreatinineClearance, nameof(CreatinineClearance));

    /// <summary>Urine in 24 hours.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public Volume UrineVolumePerDay
    {
        get;
        init => field = Require.ZeroOrMore(value, nameof(UrineVolumePerDay));
    }
    = Require.ZeroOrMore(UrineVolumePerDay, nameof(UrineVolumePerDay));

    /// <summary>Whether anybody said how much urine there is; false: zero stands for what is not known.</summary>
    public bool IsUrineStated { get; init; } = true;

    /// <summary>Whether anything is known of what the kidneys clear; false: what is cleared in all is not known, only what the peritoneum clears.</summary>
    public bool IsClearanceKnown => IsUrineStated || UreaClearance > default(Clearance) || CreatinineClearance > default(Clearance);

    /// <summary>No urine.</summary>
    public static ResidualFunction None { get; } = new(default, default, default);

    /// <summary>Nothing was said about urine: it counts as none, and results say so.</summary>
    public static ResidualFunction NotStated { get; } = None with { IsUrineStated = false };

    /// <summary>Mean of urea and creatinine clearance, the conventional estimate of the residual glomerular filtration rate.</summary>
    public Clearance FiltrationRate => (UreaClearance + CreatinineClearance) * 0.5;
}
