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

    public ComparisonRun(NamedFit fit, ModelComparisonOptions options, RunControl control)
    {
        this.fit = fit;
        var problem = fit.Fit.Estimation;
        var pointwise = new PointwiseDraws(problem, options.Sampling.Integration);
        var data = pointwise.Data;
        LogLikelihood = pointwise.LogHeight - 0.5 * fit.Fit.Optimum.Residuals.Take(data.Count).Sum(residual => residual * residual);
        var chains = MembraneSampling.Chains(problem, fit.Fit.Optimum, options.Sampling, control);
        var diagnostics = chains.Diagnostics();
        var count = Math.Min(options.Draws, ILogDensity.Lanes * chains.Count);
        var (predicted, given) = pointwise.Run(count, (draw, j) => chains.Even(draw, j, count), options.Sampling.Seed, control);
        var leftOut = new LeftOutDatum[data.Count];
        largestShape = double.NegativeInfinity;
        for (var i = 0; i < data.Count; i++)
        {
            var density = PointwiseDensity.Of(Array.ConvertAll(given[i], one => one.LogDensity), Array.ConvertAll(given[i], one => one.LogWeight));
            atDraws += density.AtDraws;
            waic += density.WidelyApplicable;
            largestShape = Math.Max(largestShape, density.Weights.Shape);

            // A mean of nights halves what a test leaves open: too much for weights, and there are few.
            if (density.IsReliable && data[i].Exchange is not null)
            {
                leftOut[i] = LeftOutDatum.Of(data[i], given[i], density.Weights.LogWeights);
            }
            else
            {
                drawnAnew++;
                var anew = DrawnWithout(data[i], count, options, control)[i];
                leftOut[i] = LeftOutDatum.Of(data[i], anew, Enumerable.Repeat(-Math.Log(count), count).ToArray());
            }
        }

        LeftOut = [.. leftOut.Select(datum => datum.LogDensity)];
        checks = new ReplicatedData(problem, pointwise, predicted, options.Sampling.Seed).Checks(leftOut);
        Findings =
        [
            .. Chains.NotConverged(diagnostics, $" of \"{fit.Name}\"") is { } apart ? [apart] : Array.Empty<Finding>(),
            .. problem.Nights?.OffSimulation(chains) is { } off ? [off] : Array.Empty<Finding>(),
        ];
    }

    /// <summary>Of each datum: ln p(y | all others).</summary>
    public IReadOnlyList<double> LeftOut { get; }

    public IReadOnlyList<Finding> Findings { get; }

    private double LogLikelihood { get; }

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
            || LeastSquares.Run(squares, [fit.Fit.Optimum.Coordinates]) is not { IsConverged: true } optimum
            || problem.Nights?.IsOff(optimum.Coordinates) == true)
        {
            return (null, null);
        }

        var likelihood = new PointwiseDraws(problem, MembraneFitOptions.Default.Integration).LogHeight
            - 0.5 * (problem.Exchanges.Count * Math.Log(2 * Math.PI) + optimum.Deviance);
        return (likelihood, CorrectedAkaike(likelihood, parameters, data));
    }

    // As if it had never been observed: fitted and drawn from the others alone. Of nights the expected means are made anew around that optimum.
    private DatumGiven[][] DrawnWithout(ComparedDatum datum, int count, ModelComparisonOptions options, RunControl control)
    {
        var whole = fit.Fit.Estimation;
        var problem = whole with
        {
            Exchanges =
            [
                .. whole.Exchanges.Select((exchange, e) => e != datum.Exchange
                    ? exchange
                    : exchange with { Observations = [.. exchange.Observations.Where(observation => !ReferenceEquals(observation, datum.Observation))] }),
            ],
            Nights = null,
        };
        var nights = whole.Nights?.Nights;
        NightMean[] left = [.. nights?.Means.Where(mean => !ReferenceEquals(mean.Observation, datum.Observation)) ?? []];
        LeastSquaresResult optimum;
        if (left.Length > 0)
        {
            var again = MembraneFit.Again((ThreePoreProblem)problem, nights! with { Means = left }, control);
            (problem, optimum) = (again.Problem, again.Optimum);
        }
        else
        {
            optimum = LeastSquares.Run(new FitProblem(problem, MembraneFitOptions.Default.Integration), [fit.Fit.Optimum.Coordinates], control: control);
        }

        if (nights is not null)
        {
            whole = whole with { Nights = NightSurface.Around(nights, ((ThreePoreProblem)problem).Membrane, optimum.Coordinates, optimum.Covariance()) };
        }

        var chains = MembraneSampling.Chains(problem, optimum, options.Sampling, control);
        return new PointwiseDraws(whole, options.Sampling.Integration).Run(count, (draw, j) => chains.Even(draw, j, count), options.Sampling.Seed, control).Given;
    }
}
