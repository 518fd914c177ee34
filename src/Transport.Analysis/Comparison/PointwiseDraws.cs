using MathNet.Numerics.Random;

namespace Transport.Analysis;

/// <summary>What draws from a posterior say of each fitted observation.</summary>
internal sealed class PointwiseDraws
{
    private readonly ExchangeModel<Real>[] models;
    private readonly EstimationProblem problem;
    private readonly IntegrationOptions integration;

    public PointwiseDraws(EstimationProblem problem, IntegrationOptions integration)
    {
        (this.problem, this.integration) = (problem, integration);
        models = [.. problem.Exchanges.Select(exchange => new ExchangeModel<Real>(exchange, problem.Model))];
        Groups = [.. models.SelectMany(model => model.Groups).Select(group => Of(group.Whitening)), .. problem.Nights is { } nights ? [Of(nights.Whitening)] : Array.Empty<JointErrors>()];
        Data =
        [
            .. models.SelectMany((model, e) => model.Groups.SelectMany(group => group.Observations.Select(observation => new ComparedDatum(
                e, observation, models.Length == 1 ? observation.Words() : FormattableString.Invariant($"{observation.Words()}, exchange {e + 1}"))))),
            .. problem.Nights?.Nights.Means.Select((mean, i) => new ComparedDatum(null, mean.Observation, FormattableString.Invariant(
                $"{mean.Observation.Words()} ({mean.Nights} nights{(problem.Nights.Nights.Means.Select(other => other.Regimen).Distinct().Count() > 1 ? FormattableString.Invariant($", mean {i + 1}") : "")})"))) ?? [],
        ];

        JointErrors Of(double[,] whitening) => new(whitening, problem.StudentDegreesOfFreedom);
    }

    /// <summary>The fitted observations, in the order of the rows: those of the exchanges, then the means of nights.</summary>
    public IReadOnlyList<ComparedDatum> Data { get; }

    /// <summary>The errors of those that go together, in the same order.</summary>
    public IReadOnlyList<JointErrors> Groups { get; }

    /// <summary>Logarithm of the density of all observations where every residual is zero.</summary>
    public double LogHeight => Groups.Sum(group => group.LogHeight);

    /// <summary>Of each observation and draw: the prediction, and what it says of the observation given the others.</summary>
    /// <param name="count">How many draws.</param>
    /// <param name="point">A draw's coordinate.</param>
    /// <param name="seed">Seed of the observations measured again.</param>
    /// <param name="control">Stops the run.</param>
    public (double[][] Predicted, DatumGiven[][] Given) Run(int count, Func<int, int, double> point, int seed, RunControl control)
    {
        double[][] predicted = [.. Data.Select(_ => new double[count])];
        DatumGiven[][] given = [.. Data.Select(_ => new DatumGiven[count])];
        var random = new MersenneTwister(seed);
        var at = new Real[problem.Dimension];
        var rows = new Real[Data.Count];
        var whitened = new double[Data.Count];
        for (var draw = 0; draw < count; draw++)
        {
            control.Cancellation.ThrowIfCancellationRequested();
            for (var j = 0; j < at.Length; j++)
            {
                at[j] = Real.Of(point(draw, j));
            }

            Predict(at, rows, predicted, draw);
            for (var row = 0; row < rows.Length; row++)
            {
                whitened[row] = rows[row].Value;
            }

            var first = 0;
            foreach (var group in Groups)
            {
                for (var i = 0; i < group.Count; i++)
                {
                    given[first + i][draw] = group.Given(whitened.AsSpan(first, group.Count), i, random.NextDouble());
                }

                first += group.Count;
            }
        }

        return (predicted, given);
    }

    private void Predict(Real[] at, Span<Real> whitened, double[][] predicted, int draw)
    {
        var membrane = at.AsSpan(0, problem.Model.Count);
        var row = 0;
        for (var e = 0; e < models.Length; e++)
        {
            models[e].Run(membrane, problem.ResidualVolumes[e].Value(at[problem.Model.Count + e]), integration);
            models[e].Whiten(whitened[row..]);
            for (var end = row + models[e].FittedCount; row < end; row++)
            {
                predicted[row][draw] = models[e].Predicted(Data[row].Observation).Value;
            }
        }

        if (problem.Nights is { } nights)
        {
            nights.Whiten<Real>(membrane, whitened[row..]);
            for (var i = 0; i < nights.Count; i++)
            {
                predicted[row + i][draw] = nights.Predicted<Real>(i, membrane).Value;
            }
        }
    }
}
