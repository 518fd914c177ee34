using MathNet.Numerics.Distributions;
using MathNet.Numerics.Statistics;

namespace Transport.Analysis;

/// <summary>The draws of every figure of one regimen; draw i is of the same membrane and the same doubt for all regimens.</summary>
internal sealed class OutlookDraws
{
    private const double Coverage = 0.90;

    private readonly Dictionary<OutcomeMeasure, double[]?> values;
    private readonly DoubtLayers layers;

    /// <param name="days">The day of each draw.</param>
    /// <param name="layers">Which doubt they hold.</param>
    public OutlookDraws(IReadOnlyList<MeasuredDay> days, DoubtLayers layers)
    {
        this.layers = layers;
        values = OutcomeMeasures.All.ToDictionary(measure => measure, measure =>
        {
            if (!measure.IsKnownWith(days[0].Patient.ResidualFunction))
            {
                return null;
            }

            // A figure that some draws cannot give is none.
            var drawn = measure.Doubt == Doubt.None ? [measure.Read(days[0])] : days.Select(day => measure.Read(day)).ToArray();
            return drawn.Contains(null) ? null : drawn.Select(value => value!.Value).ToArray();
        });
    }

    public Band<double>? BandOf(OutcomeMeasure measure) => values[measure] is { } drawn ? Band(drawn, measure.HeldOf(layers)) : null;

    public Band<double>? BandOfDifference(OutcomeMeasure measure, OutlookDraws present) =>
        values[measure] is { } here && present.values[measure] is { } there ? Band([.. here.Zip(there, (one, other) => one - other)], measure.HeldOf(layers)) : null;

    public Probability? AtLeast(OutcomeMeasure measure, double least) => values[measure] is { } drawn
        ? new(drawn.Average(value => value >= least ? 1.0 : 0), measure.HeldOf(layers))
        : null;

    // Where the draws hold nights already, they are single days.
    public Probability? OfSingleDayAtLeast(OutcomeMeasure measure, double least) => (values[measure], measure.DayToDay) switch
    {
        (null, _) or (_, null) => null,
        _ when measure.HeldOf(layers).HasFlag(Doubt.NightToNight) => AtLeast(measure, least),
        ({ } drawn, { } scatter) => new(
            drawn.Average(value => Normal.CDF(least, scatter(value, layers.NightToNight), value)), measure.HeldOf(layers) | Doubt.NightToNight),
    };

    /// <summary>Median and band of draws.</summary>
    public static Band<double> Band(double[] drawn, Doubt doubt)
    {
        Array.Sort(drawn = [.. drawn]);
        return new(At(0.5), At(0.5 * (1 - Coverage)), At(0.5 * (1 + Coverage)), Coverage, doubt);

        double At(double share) => SortedArrayStatistics.Quantile(drawn, share);
    }
}
