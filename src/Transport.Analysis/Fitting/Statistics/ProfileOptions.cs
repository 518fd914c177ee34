namespace Transport.Analysis;

/// <summary>How a profile is followed.</summary>
internal sealed record ProfileOptions
{
    /// <summary>Confidence of the interval.</summary>
    public double Confidence { get; init; } = 0.95;

    /// <summary>How far from the optimum an end is looked for, in units of the coordinate; an end beyond is open.</summary>
    public double Reach { get; init; } = 8;

    /// <summary>How exactly an end is found, in the square root of the deviance: 0.001 of a standard error.</summary>
    public double Tolerance { get; init; } = 1e-3;

    /// <summary>The defaults.</summary>
    public static ProfileOptions Default { get; } = new();
}
