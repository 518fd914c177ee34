using MathNet.Numerics.Distributions;
using MathNet.Numerics.Random;
using MathNet.Numerics.Statistics;

namespace Transport.Analysis;

/// <summary>What a model's posterior would have measured: each draw's prediction with errors drawn as the measurement model has them.</summary>
internal sealed class ReplicatedData
{
    private static readonly (TimeSpan From, TimeSpan To) FirstHour = (TimeSpan.FromMinutes(45), TimeSpan.FromMinutes(75));
    private static readonly TimeSpan Start = TimeSpan.FromMinutes(5);

    private readonly EstimationProblem problem;
    private readonly IReadOnlyList<(int Exchange, Observation Observation)> data;
    private readonly double[][] replicated;

    /// <param name="problem">Whose exchanges they are.</param>
    /// <param name="data">The fitted observations.</param>
    /// <param name="predicted">Of each observation, over the draws.</param>
    /// <param name="seed">Seed of the errors.</param>
    public ReplicatedData(EstimationProblem problem, IReadOnlyList<(int Exchange, Observation Observation)> data, double[][] predicted, int seed)
    {
        (this.problem, this.data) = (problem, data);
        replicated = [.. predicted.Select(each => new double[each.Length])];
        var random = new MersenneTwister(seed);
        for (var draw = 0; draw < predicted[0].Length; draw++)
        {
            // The samples of one quantity in one exchange share an error.
            var shared = new Dictionary<(int, ObservedQuantity), double>();
            for (var i = 0; i < data.Count; i++)
            {
                var (exchange, observation) = data[i];
                if (!shared.TryGetValue((exchange, observation.Quantity), out var common))
                {
                    shared[(exchange, observation.Quantity)] = common = Normal.Sample(random, 0, 1);
                }

                var error = observation.OwnDeviation * Normal.Sample(random, 0, 1) + observation.SharedDeviation * common;
                replicated[i][draw] = observation.Quantity == ObservedQuantity.NetUltrafiltrationMilliliters
                    ? predicted[i][draw] + error
                    : predicted[i][draw] * Math.Exp(error / observation.Value);
            }
        }
    }

    /// <summary>The checks of all observations, then of the falls of sodium.</summary>
    /// <param name="leftOut">Tail probability and log density of each observation from all the others.</param>
    public IReadOnlyList<PredictiveCheck> Checks(IReadOnlyList<(double Tail, double LogDensity)> leftOut) =>
    [
        .. data.Select((datum, i) => Of(
            datum.Exchange, datum.Observation.Words(), datum.Observation.Quantity.Unit(), datum.Observation.Value, replicated[i], leftOut[i])),
        .. Enumerable.Range(0, problem.Exchanges.Count).Select(FallOfSodium).OfType<PredictiveCheck>(),
    ];

    private PredictiveCheck? FallOfSodium(int exchange)
    {
        var start = Place(time => time <= Start);
        var hour = Place(time => time >= FirstHour.From && time <= FirstHour.To);
        if (start < 0 || hour < 0)
        {
            return null;
        }

        var plasma = problem.Exchanges[exchange].Patient.Plasma.Sodium.MillimolesPerLiter;
        return Of(
            exchange,
            FormattableString.Invariant($"fall of sodium from {data[start].Observation.Time.TotalMinutes:0} to {data[hour].Observation.Time.TotalMinutes:0} min"),
            "mmol/L",
            plasma * (data[start].Observation.Value - data[hour].Observation.Value),
            [.. replicated[start].Zip(replicated[hour], (before, after) => plasma * (before - after))],
            null);

        int Place(Func<TimeSpan, bool> isThen)
        {
            var place = data.Select((datum, i) => (datum, i)).FirstOrDefault(row =>
                row.datum.Exchange == exchange && row.datum.Observation.Quantity == ObservedQuantity.SodiumToPlasma && isThen(row.datum.Observation.Time));
            return place.datum.Observation is null ? -1 : place.i;
        }
    }

    private PredictiveCheck Of(int exchange, string name, string unit, double observed, double[] replicated, (double Tail, double LogDensity)? leftOut)
    {
        var below = replicated.Count(value => value <= observed) / (double)replicated.Length;
        double[] ordered = [.. replicated.Order()];
        return new()
        {
            Exchange = exchange,
            Name = problem.Exchanges.Count == 1 ? name : FormattableString.Invariant($"{name}, exchange {exchange + 1}"),
            Unit = unit,
            Observed = observed,
            Replicated = new(
                SortedArrayStatistics.Quantile(ordered, 0.5), SortedArrayStatistics.Quantile(ordered, 0.05), SortedArrayStatistics.Quantile(ordered, 0.95), 0.90, Doubt.Parameters),
            TailProbability = Math.Min(1, 2 * Math.Min(below, 1 - below)),
            LeftOutTailProbability = leftOut?.Tail,
            LeftOutLogDensity = leftOut?.LogDensity,
        };
    }
}
