using MathNet.Numerics.Distributions;
using MathNet.Numerics.Statistics;

namespace Transport.Analysis;

/// <summary>What one model's posterior says of each datum, on the way to a comparison.</summary>
internal sealed class ComparisonRun
{
    private readonly NamedFit fit;
    private readonly double waic;
    private readonly double atDraws;
    private readonly double largestShape;
    private readonly int drawnAnew;
    private readonly IReadOnlyList<PredictiveCheck> checks;

    private ComparisonRun(NamedFit fit, ModelComparisonOptions options, RunControl control)
    {
        this.fit = fit;
        var problem = fit.Fit.Estimation;
        var pointwise = new PointwiseDraws(problem, options.Sampling.Integration);
        var heights = pointwise.LogHeights();
        LogLikelihood = pointwise.LogHeight() - 0.5 * fit.Fit.Optimum.Residuals.Take(heights.Count).Sum(residual => residual * residual);
        var chains = MembraneSampling.Chains(problem, fit.Fit.Optimum, options.Sampling, control);
        var diagnostics = chains.Diagnostics();
        var count = Math.Min(options.Draws, ILogDensity.Lanes * chains.Count);
        var (predicted, given) = pointwise.Run(count, (draw, j) => chains.Even(draw, j, count), control);
        var leftOut = new double[heights.Count];
        var tails = new double[heights.Count];
        largestShape = double.NegativeInfinity;
        for (var i = 0; i < heights.Count; i++)
        {
            var density = PointwiseDensity.Of(LogDensities(given[i], heights[i]));
            atDraws += density.AtDraws;
            waic += density.WidelyApplicable;
            largestShape = Math.Max(largestShape, density.Weights.Shape);
            if (density.IsReliable)
            {
                leftOut[i] = density.LeftOut;
                tails[i] = TwoSided(given[i].Zip(density.Weights.LogWeights, (residual, weight) => Math.Exp(weight) * Below(residual)).Sum());
            }
            else
            {
                drawnAnew++;
                var anew = DrawnWithout(pointwise.Observations[i], pointwise, count, options, control)[i];
                leftOut[i] = ParetoSmoothing.LogMean(LogDensities(anew, heights[i]));
                tails[i] = TwoSided(anew.Average(Below));
            }
        }

        LeftOut = leftOut;
        checks = new ReplicatedData(problem, pointwise.Observations, predicted, options.Sampling.Seed).Checks([.. tails.Zip(leftOut)]);
        Findings = [.. diagnostics.All(one => one.IsConverged) ? [] : (Finding[])
        [
            new(Severity.Warning, "posterior-not-converged", FormattableString.Invariant(
                $"The four chains of \"{fit.Name}\" do not tell one story yet: R-hat {diagnostics.Max(one => one.RHat):0.000}, {diagnostics.Min(one => Math.Min(one.BulkEffectiveDraws, one.TailEffectiveDraws)):0} effective draws; expected under 1.01 and at least 400. Draw more.")),
        ]];
    }

    /// <summary>Of each datum: ln p(y | all others).</summary>
    public IReadOnlyList<double> LeftOut { get; }

    public IReadOnlyList<Finding> Findings { get; }

    private double LogLikelihood { get; }

    public static ComparisonRun Of(NamedFit fit, ModelComparisonOptions options, RunControl control) => new(fit, options, control);

    public ComparedModel ToModel(ComparisonRun best)
    {
        double[] differences = [.. LeftOut.Zip(best.LeftOut, (own, other) => own - other)];
        var (likelihood, criterion) = Akaike();
        return new()
        {
            Name = fit.Name,
            Fit = fit.Fit,
            LogLikelihood = LogLikelihood,
            LargestLogLikelihood = likelihood,
            ParameterCount = fit.Fit.Estimation.Dimension,
            CorrectedAkaike = criterion,
            WidelyApplicable = waic,
            LeaveOneOut = LeftOut.Sum(),
            LeaveOneOutError = Error(LeftOut),
            EffectiveParameters = atDraws - LeftOut.Sum(),
            Difference = differences.Sum(),
            DifferenceError = Error(differences),
            Verdict = this == best ? ModelVerdict.Best : Verdict(differences.Sum(), Error(differences)),
            LargestParetoShape = largestShape,
            DrawnAnew = drawnAnew,
            Checks = checks,
        };
    }

    /// <summary>AICc of a largest log likelihood; null where it is not defined.</summary>
    public static double? CorrectedAkaike(double logLikelihood, int parameters, int data) => data - parameters - 1 <= 0
        ? null
        : -2 * logLikelihood + 2 * parameters + 2.0 * parameters * (parameters + 1) / (data - parameters - 1);

    private static ModelVerdict Verdict(double difference, double error) => difference >= -ModelComparison.Alike ? ModelVerdict.NotTold
        : difference >= -2 * error ? ModelVerdict.Leaning
        : ModelVerdict.Told;

    // Standard error of a sum of so many data.
    private static double Error(IReadOnlyList<double> each) => each.Count > 1 ? Math.Sqrt(each.Count * each.Variance()) : 0;

    // What is known of a residual volume stays: it is a datum of its own.
    private (double? LogLikelihood, double? Criterion) Akaike()
    {
        var problem = fit.Fit.Estimation with { UsesPrior = false };
        var squares = new FitProblem(problem, MembraneFitOptions.Default.Integration);
        var (data, parameters) = (squares.RowCount, problem.Dimension);
        if (data - parameters - 1 <= 0
            || LeastSquares.Run(squares, [fit.Fit.Optimum.Coordinates]) is not { IsConverged: true } optimum)
        {
            return (null, null);
        }

        var likelihood = new PointwiseDraws(problem, MembraneFitOptions.Default.Integration).LogHeight()
            - 0.5 * (problem.Exchanges.Count * Math.Log(2 * Math.PI) + optimum.Deviance);
        return (likelihood, CorrectedAkaike(likelihood, parameters, data));
    }

    private double[][] DrawnWithout((int Exchange, Observation Observation) datum, PointwiseDraws pointwise, int count, ModelComparisonOptions options, RunControl control)
    {
        var problem = fit.Fit.Estimation with
        {
            Exchanges =
            [
                .. fit.Fit.Exchanges.Select((exchange, e) => e != datum.Exchange
                    ? exchange
                    : exchange with { Observations = [.. exchange.Observations.Where(observation => !ReferenceEquals(observation, datum.Observation))] }),
            ],
        };
        var optimum = LeastSquares.Run(new FitProblem(problem, MembraneFitOptions.Default.Integration), [fit.Fit.Optimum.Coordinates], control: control);
        var chains = MembraneSampling.Chains(problem, optimum, options.Sampling, control);
        return pointwise.Run(count, (draw, j) => chains.Even(draw, j, count), control).Given;
    }

    private static double[] LogDensities(double[] residuals, double height) => Array.ConvertAll(residuals, residual => height - 0.5 * residual * residual);

    // Probability that a replicated datum is at most the observed: residuals are predicted − observed.
    private static double Below(double residual) => Normal.CDF(0, 1, -residual);

    private static double TwoSided(double below) => Math.Min(1, 2 * Math.Min(below, 1 - below));
}
