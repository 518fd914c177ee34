using MathNet.Numerics.Statistics;

namespace Transport.Analysis;

/// <summary>The draws of every figure of one regimen; draw i is of the same membrane and the same doubt for all regimens.</summary>
internal sealed class OutlookDraws
{
    private const double Coverage = 0.90;

    private readonly Dictionary<OutcomeMeasure, double[]?> values;

    /// <param name="days">The day of each draw.</param>
    public OutlookDraws(IReadOnlyList<MeasuredDay> days)
    {
        values = OutcomeMeasures.All.ToDictionary(measure => measure, measure =>
        {
            // A figure that some draws cannot give is none.
            var drawn = measure.Doubt == Doubt.None ? [measure.Read(days[0])] : days.Select(day => measure.Read(day)).ToArray();
            return drawn.Contains(null) ? null : drawn.Select(value => value!.Value).ToArray();
        });
    }

    public Band<double>? BandOf(OutcomeMeasure measure) => values[measure] is { } drawn ? Band(drawn, measure.Doubt) : null;

    public Band<double>? BandOfDifference(OutcomeMeasure measure, OutlookDraws present) =>
        values[measure] is { } here && present.values[measure] is { } there ? Band([.. here.Zip(there, (one, other) => one - other)], measure.Doubt) : null;

    public double? ShareAtLeast(OutcomeMeasure measure, double least) => values[measure]?.Average(value => value >= least ? 1.0 : 0);

    /// <summary>Median and band of draws.</summary>
    public static Band<double> Band(double[] drawn, Doubt doubt)
    {
        Array.Sort(drawn = [.. drawn]);
        return new(At(0.5), At(0.5 * (1 - Coverage)), At(0.5 * (1 + Coverage)), Coverage, doubt);

        double At(double share) => SortedArrayStatistics.Quantile(drawn, share);
    }
}
