namespace Transport.Analysis;

/// <summary>What draws from a posterior say of each fitted observation.</summary>
/// <remarks>
/// Samples of one ratio share an error, so an observation is judged given the others of its quantity: with e the residuals (predicted − observed, logarithms to the
/// scale of the observation for ratios), C their covariance and g = C⁻¹e, it is Gaussian with residual gᵢ/(C⁻¹)ᵢᵢ and variance 1/(C⁻¹)ᵢᵢ (Bürkner, Gabry and Vehtari,
/// Comput Stat 2021;36:1243; formulas read in the documentation of the R package loo).
/// </remarks>
internal sealed class PointwiseDraws
{
    private readonly ExchangeModel<Real>[] models;
    private readonly EstimationProblem problem;
    private readonly IntegrationOptions integration;

    public PointwiseDraws(EstimationProblem problem, IntegrationOptions integration)
    {
        (this.problem, this.integration) = (problem, integration);
        models = [.. problem.Exchanges.Select(exchange => new ExchangeModel<Real>(exchange, problem.Model))];
        Observations = [.. models.SelectMany((model, e) => model.Groups.SelectMany(group => group.Observations.Select(observation => (e, observation))))];
    }

    /// <summary>The fitted observations and their exchanges, in the order of the rows.</summary>
    public IReadOnlyList<(int Exchange, Observation Observation)> Observations { get; }

    /// <summary>Of each draw and observation: the prediction, and the residual given the other observations, in its own standard deviations.</summary>
    /// <param name="count">How many draws.</param>
    /// <param name="point">A draw's coordinate.</param>
    /// <param name="control">Stops the run.</param>
    public (double[][] Predicted, double[][] Given) Run(int count, Func<int, int, double> point, RunControl control)
    {
        double[][] predicted = [.. Observations.Select(_ => new double[count])];
        double[][] given = [.. Observations.Select(_ => new double[count])];
        var at = new Real[problem.Dimension];
        var whitened = new Real[Observations.Count];
        for (var draw = 0; draw < count; draw++)
        {
            control.Cancellation.ThrowIfCancellationRequested();
            for (var j = 0; j < at.Length; j++)
            {
                at[j] = Real.Of(point(draw, j));
            }

            var row = 0;
            for (var e = 0; e < models.Length; e++)
            {
                models[e].Run(at.AsSpan(0, problem.Model.Count), problem.ResidualVolumes[e].Value(at[problem.Model.Count + e]), integration);
                models[e].Whiten(whitened);
                var first = 0;
                foreach (var (observations, whitening) in models[e].Groups)
                {
                    for (var i = 0; i < observations.Length; i++, row++)
                    {
                        var (precision, pull) = (0.0, 0.0);
                        for (var k = i; k < observations.Length; k++)
                        {
                            precision += whitening[k, i] * whitening[k, i];
                            pull += whitening[k, i] * whitened[first + k].Value;
                        }

                        given[row][draw] = pull / Math.Sqrt(precision);
                        predicted[row][draw] = models[e].Predicted(observations[i]).Value;
                    }

                    first += observations.Length;
                }
            }
        }

        return (predicted, given);
    }

    /// <summary>Logarithm of the density of each observation given the others where its residual is zero.</summary>
    public IReadOnlyList<double> LogHeights() =>
    [
        .. models.SelectMany(model => model.Groups).SelectMany(group => group.Observations.Select((_, i) =>
            0.5 * Math.Log(Enumerable.Range(i, group.Observations.Length - i).Sum(k => group.Whitening[k, i] * group.Whitening[k, i]) / (2 * Math.PI)))),
    ];

    /// <summary>Logarithm of the density of all observations where every residual is zero.</summary>
    public double LogHeight() => models.SelectMany(model => model.Groups).Sum(group =>
        Enumerable.Range(0, group.Observations.Length).Sum(i => Math.Log(group.Whitening[i, i]) - 0.5 * Math.Log(2 * Math.PI)));
}
