namespace Transport.Analysis;

/// <summary>How a sum of squares is made least.</summary>
internal sealed record LeastSquaresOptions
{
    /// <summary>Distance from the optimum that counts as none, standard errors of whitened residuals.</summary>
    /// <value>The default is 1e-6. With 0 the search goes on to the rounding of the deviance: for residuals of unknown scale.</value>
    public double Tolerance { get; init; } = 1e-6;

    /// <summary>Accepted steps allowed from each start.</summary>
    public int MaximumIterations { get; init; } = 100;

    /// <summary>Damping of the first step, as a share of the largest curvature.</summary>
    /// <value>
    /// The default is 1e-6, all but Gauss-Newton: a step that is too long is refused and costs one evaluation. The minimizer's own default of
    /// 1e-3 damps the directions with little curvature (those of the prior) for as long as it takes to decay, threefold at a step.
    /// </value>
    public double InitialDamping { get; init; } = 1e-6;

    /// <summary>Starts that have to end at one optimum, the best so far, before the remaining ones are left out.</summary>
    public int AgreeingStarts { get; init; } = 2;

    /// <summary>Distance from an optimum already found at which a later start counts as having reached it, standard errors.</summary>
    public double JoinDistance { get; init; } = 0.1;

    /// <summary>The defaults.</summary>
    public static LeastSquaresOptions Default { get; } = new();
}
