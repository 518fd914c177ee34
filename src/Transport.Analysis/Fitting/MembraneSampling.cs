namespace Transport.Analysis;

/// <summary>Draws from the posterior of a fitted membrane: four chains, one for each lane of the kinetics.</summary>
/// <remarks>How, and why this way: docs/decisions/0007. What R-hat and effective draws are: docs/concepts/estimation.md.</remarks>
public static class MembraneSampling
{
    /// <summary>Draws, started from a fit's optimum with its covariance.</summary>
    /// <param name="fit">The fit; its exchanges, prior and free parameters are the posterior's.</param>
    /// <param name="options">How many, and which.</param>
    /// <param name="control">Watches and stops.</param>
    /// <exception cref="InvalidOperationException">The fit found no optimum to start from, or there is no density around it.</exception>
    /// <exception cref="OperationCanceledException">The run was stopped.</exception>
    public static MembranePosterior Run(FittedMembrane fit, PosteriorOptions? options = null, RunControl? control = null)
    {
        ArgumentNullException.ThrowIfNull(fit);
        options ??= PosteriorOptions.Default;
        return new(fit, Chains(fit.Estimation, fit.Optimum, options, control), options.Seed);
    }

    /// <summary>The chains, whatever the model.</summary>
    internal static Chains Chains(EstimationProblem problem, LeastSquaresResult optimum, PosteriorOptions options, RunControl? control)
    {
        var density = new PosteriorDensity(problem, options.Integration);
        return PosteriorSampler.Run(
            density,
            optimum.Coordinates,
            optimum.Covariance(),
            new()
            {
                Draws = options.DrawsPerChain,
                EffectiveDraws = options.EffectiveDraws,
                MostDraws = options.MostDrawsPerChain,
                WarmUp = Math.Max(500, 40 * density.Dimension),
                Seed = options.Seed,
            },
            control);
    }
}
