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

    /// <summary>
    /// Whether the kidneys' part of a Kt/V is known: their urea clearance was measured, or there is no urine. A volume of urine alone says nothing of what it clears; where this is
    /// false only the peritoneum's part is known, and a sum would be it under another name.
    /// </summary>
    public bool IsUreaClearanceKnown => IsKnown(UreaClearance);

    /// <summary>Whether both clearances are known in this sense, and with them <see cref="FiltrationRate"/>, the kidneys' part of a creatinine clearance.</summary>
    public bool IsClearanceKnown => IsKnown(UreaClearance) && IsKnown(CreatinineClearance);

    /// <summary>What to ask for where a clearance is not known: "urine" where nothing was stated, "renal clearance" where there is urine, or the other clearance.</summary>
    public string Missing => IsUrineStated || FiltrationRate > default(Clearance) ? "renal clearance" : "urine";

    /// <summary>No urine.</summary>
    public static ResidualFunction None { get; } = new(default, default, default);

    /// <summary>Nothing was said about urine: it counts as none, and results say so.</summary>
    public static ResidualFunction NotStated { get; } = None with { IsUrineStated = false };

    /// <summary>Mean of urea and creatinine clearance, the conventional estimate of the residual glomerular filtration rate.</summary>
    public Clearance FiltrationRate => (UreaClearance + CreatinineClearance) * 0.5;

    private bool IsKnown(Clearance clearance) => clearance > default(Clearance) || (IsUrineStated && UrineVolumePerDay == default);
}
