namespace Transport.Analysis;

/// <summary>Which curves to draw.</summary>
public sealed record DwellCurveOptions
{
    /// <summary>Glucose solutions, and icodextrin, whose usual dwell is longer than <see cref="Longest"/> is by default: 8 to 16 h.</summary>
    public IReadOnlyList<DialysisSolution> Solutions { get; init; } = DialysisSolution.UsualGlucose;

    /// <summary>Volume instilled.</summary>
    public Volume Fill { get; init; } = Volume.FromLiters(2);

    /// <summary>The longest dwell.</summary>
    /// <value>The default is 10 h. Range 1 to 24 h.</value>
    public TimeSpan Longest
    {
        get;
        init => field = value >= TimeSpan.FromHours(1) && value <= TimeSpan.FromHours(24)
            ? value
            : throw new ArgumentOutOfRangeException(nameof(value), value, "Expected 1 to 24 h.");
    }
    = TimeSpan.FromHours(10);

    /// <summary>The strength that the patient's test used; null where the ensemble comes from no test.</summary>
    public DialysisSolution? Tested { get; init; }

    /// <summary>Which doubt ultrafiltration holds: by default that of parameters and, at untested strengths, the model's own.</summary>
    public DoubtLayers Layers { get; init; } = DoubtLayers.Default;

    /// <summary>The defaults.</summary>
    public static DwellCurveOptions Default { get; } = new();
}
