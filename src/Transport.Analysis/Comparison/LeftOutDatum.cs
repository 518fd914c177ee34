namespace Transport.Analysis;

/// <summary>What is predicted of a datum from all the others.</summary>
/// <param name="LogDensity">ln p of what was observed.</param>
/// <param name="TailProbability">Two-sided probability of lying as far out as that.</param>
/// <param name="Interval">Median and 90 % interval.</param>
internal sealed record LeftOutDatum(double LogDensity, double TailProbability, Band<double> Interval)
{
    /// <summary>From draws of the posterior, each with its weight.</summary>
    /// <param name="datum">The datum.</param>
    /// <param name="given">What each draw says of it.</param>
    /// <param name="logWeights">Logarithms of weights whose sum is 1.</param>
    public static LeftOutDatum Of(ComparedDatum datum, DatumGiven[] given, IReadOnlyList<double> logWeights)
    {
        double[] weights = [.. logWeights.Select(Math.Exp)];
        var below = given.Zip(weights, (one, weight) => weight * one.Below).Sum();
        var again = given.Zip(weights, (one, weight) => (Value: datum.Moved(datum.Observation.Value, one.Shift), weight)).OrderBy(row => row.Value).ToArray();
        return new(
            ParetoSmoothing.LogSum([.. given.Zip(logWeights, (one, weight) => one.LogDensity + weight)]),
            Math.Min(1, 2 * Math.Min(below, 1 - below)),
            new(Quantile(0.5), Quantile(0.05), Quantile(0.95), 0.90, Doubt.Parameters));

        double Quantile(double share)
        {
            var sum = 0.0;
            foreach (var (value, weight) in again)
            {
                sum += weight;
                if (sum >= share)
                {
                    return value;
                }
            }

            return again[^1].Value;
        }
    }
}
