using MathNet.Numerics.LinearAlgebra;

namespace Transport.Analysis;

/// <summary>Draws from a density that is near a Gaussian: four chains of Metropolis and Hastings, one for each lane of an evaluation.</summary>
/// <remarks>
/// Each step proposes, by a fixed chance, either an independent point of a multivariate t (accepted by the ratio of importance weights) or a step of a Gaussian random
/// walk of length 2.38/√dimension (accepted by the ratio of densities). Both leave the density as it is, so their mixture does. The t has the
/// optimum's covariance during warm-up and then, once and for all, center and covariance of the warm-up's own draws: nothing adapts while draws are kept.
/// A seed gives the same draws everywhere.
/// </remarks>
internal static class PosteriorSampler
{
    /// <summary>Runs four chains from around an optimum.</summary>
    /// <param name="density">What to draw from.</param>
    /// <param name="center">The optimum.</param>
    /// <param name="covariance">Covariance there.</param>
    /// <param name="options">How.</param>
    /// <param name="control">Watches and stops the run.</param>
    /// <exception cref="ArgumentOutOfRangeException">An option is out of its range, or the warm-up shorter than 20 draws for each coordinate.</exception>
    /// <exception cref="InvalidOperationException">The density is zero wherever the warm-up looked.</exception>
    /// <exception cref="OperationCanceledException">The run was stopped.</exception>
    public static Chains Run(
        ILogDensity density, Vector<double> center, Matrix<double> covariance, SamplerOptions? options = null, RunControl? control = null)
    {
        options ??= SamplerOptions.Default;
        control ??= RunControl.None;
        ArgumentOutOfRangeException.ThrowIfLessThan(options.Draws, 8);
        ArgumentOutOfRangeException.ThrowIfLessThan(options.WarmUp, 20 * density.Dimension);
        Require.InRange(options.IndependentShare, 0, 1, "");
        var walk = new ChainWalk(density, new(center, covariance, options.DegreesOfFreedom), options);
        var total = options.WarmUp + options.Draws;
        var warm = new Chains(density.Dimension, options.WarmUp);
        Step(warm, 0, 0);
        if (!walk.HasDensity)
        {
            throw new InvalidOperationException("The density is zero wherever the warm-up of a chain looked.");
        }

        var (ownCenter, ownCovariance) = MomentsOf(warm, options.WarmUp / 4);
        walk.Use(new(ownCenter, ownCovariance, options.DegreesOfFreedom));
        var before = walk.Accepted;
        var chains = new Chains(density.Dimension, options.Draws);
        Step(chains, 0, options.WarmUp);
        while (chains.Count + options.Draws <= options.MostDraws && !IsEnough())
        {
            var from = chains.Count;
            chains.Extend(options.Draws);
            Step(chains, from, options.WarmUp);
        }

        chains.AcceptedShare = (double)(walk.Accepted - before) / (ILogDensity.Lanes * chains.Count);
        chains.Evaluations = walk.Evaluations;
        return chains;

        bool IsEnough() => chains.Diagnostics().All(one => one.IsConverged
            && Math.Min(one.BulkEffectiveDraws, one.TailEffectiveDraws) >= options.EffectiveDraws);

        void Step(Chains into, int from, int done)
        {
            for (var i = from; i < into.Count; i++)
            {
                control.Cancellation.ThrowIfCancellationRequested();
                walk.Step();
                walk.RecordInto(into, i);
                if ((done + i) % 64 == 63)
                {
                    control.Progress?.Report(Math.Min(1, (done + i + 1.0) / total));
                }
            }
        }
    }

    private static (Vector<double> Center, Matrix<double> Covariance) MomentsOf(Chains chains, int skipped)
    {
        var rows = (chains.Count - skipped) * ILogDensity.Lanes;
        var points = Matrix<double>.Build.Dense(
            rows, chains.Dimension, (i, j) => chains[j][i % ILogDensity.Lanes][skipped + i / ILogDensity.Lanes]);
        var center = points.ColumnSums() / rows;
        points.MapIndexedInplace((_, j, value) => value - center[j], Zeros.Include);
        return (center, points.TransposeThisAndMultiply(points) / rows);
    }
}
