using MathNet.Numerics.Random;

namespace Transport.Analysis;

/// <summary>What a model's posterior would have measured: each draw's prediction with errors drawn as the measurement model has them.</summary>
internal sealed class ReplicatedData
{
    private static readonly (TimeSpan From, TimeSpan To) FirstHour = (TimeSpan.FromMinutes(45), TimeSpan.FromMinutes(75));
    private static readonly TimeSpan Start = TimeSpan.FromMinutes(5);

    private readonly EstimationProblem problem;
    private readonly IReadOnlyList<ComparedDatum> data;
    private readonly double[][] replicated;

    /// <param name="problem">Whose exchanges they are.</param>
    /// <param name="pointwise">The fitted observations and their errors.</param>
    /// <param name="predicted">Of each observation, over the draws.</param>
    /// <param name="seed">Seed of the errors.</param>
    public ReplicatedData(EstimationProblem problem, PointwiseDraws pointwise, double[][] predicted, int seed)
    {
        (this.problem, data) = (problem, pointwise.Data);
        replicated = [.. predicted.Select(each => new double[each.Length])];
        var random = new MersenneTwister(seed);
        for (var draw = 0; draw < predicted[0].Length; draw++)
        {
            var i = 0;
            foreach (var error in pointwise.Groups.SelectMany(group => group.Draw(random)))
            {
                replicated[i][draw] = data[i].Moved(predicted[i][draw], error);
                i++;
            }
        }
    }

    /// <summary>The checks of all observations, then of the falls of sodium.</summary>
    /// <param name="leftOut">What is predicted of each observation from all the others.</param>
    public IReadOnlyList<PredictiveCheck> Checks(IReadOnlyList<LeftOutDatum> leftOut) =>
    [
        .. data.Select((datum, i) => Of(datum.Exchange, datum.Name, datum.Observation.Quantity.Unit(), datum.Observation.Value, replicated[i], leftOut[i])),
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
        var name = FormattableString.Invariant($"fall of sodium from {data[start].Observation.Time.TotalMinutes:0} to {data[hour].Observation.Time.TotalMinutes:0} min");
        return Of(
            exchange,
            problem.Exchanges.Count == 1 ? name : FormattableString.Invariant($"{name}, exchange {exchange + 1}"),
            "mmol/L",
            plasma * (data[start].Observation.Value - data[hour].Observation.Value),
            [.. replicated[start].Zip(replicated[hour], (before, after) => plasma * (before - after))],
            null);

        int Place(Func<TimeSpan, bool> isThen) => data.Select((datum, i) => (datum, Place: i + 1)).FirstOrDefault(row =>
            row.datum.Exchange == exchange && row.datum.Observation.Quantity == ObservedQuantity.SodiumToPlasma && isThen(row.datum.Observation.Time)).Place - 1;
    }

    private static PredictiveCheck Of(int? exchange, string name, string unit, double observed, double[] replicated, LeftOutDatum? leftOut)
    {
        var below = replicated.Count(value => value <= observed) / (double)replicated.Length;
        return new()
        {
            Exchange = exchange,
            Name = name,
            Unit = unit,
            Observed = observed,
            Replicated = OutlookDraws.Band(replicated, Doubt.Parameters),
            TailProbability = Math.Min(1, 2 * Math.Min(below, 1 - below)),
            LeftOut = leftOut?.Interval,
            LeftOutTailProbability = leftOut?.TailProbability,
            LeftOutLogDensity = leftOut?.LogDensity,
        };
    }
}
