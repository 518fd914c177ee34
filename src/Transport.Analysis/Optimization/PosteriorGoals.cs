using MathNet.Numerics.Distributions;

namespace Transport.Analysis;

/// <summary>The share of a bound's promise that one draw of the membrane keeps: 0 or 1, or between them where other doubt is spread over the draw.</summary>
internal sealed class PosteriorGoals(RegimenGoals goals, RegimenOptions simulation, DoubtLayers layers)
{
    // Counts of shares add up exactly, in whatever order.
    private const double Unit = 1L << 30;

    private readonly double sodiumDeviation = simulation.Sodium.DeviationOfLogFactor;

    public IReadOnlyList<RegimenBound> Bounds { get; } = goals.Bounds;

    /// <summary>Which doubt the mean of many days holds.</summary>
    public Doubt DoubtOf(RegimenMeasure measure) => measure switch
    {
        RegimenMeasure.Ultrafiltration => DailyDoubt.OfMean(layers),
        RegimenMeasure.SodiumRemoved => layers.OfMembrane | Doubt.ModelForm,
        _ => layers.OfMembrane,
    };

    /// <summary>The measure in one draw, with the model's discrepancy.</summary>
    public static double Value(RegimenMeasure measure, ReadOnlySpan<double> figures, double shift) =>
        figures[(int)measure] + (measure == RegimenMeasure.Ultrafiltration ? shift : 0);

    /// <summary>The share of a bound that a draw keeps, of the mean of many days or of a single day.</summary>
    public double Share(RegimenBound bound, ReadOnlySpan<double> figures, (double Shift, double Deviation) modelForm, bool ofSingleDay)
    {
        var value = Value(bound.Measure, figures, modelForm.Shift);
        switch (bound.Measure)
        {
            case RegimenMeasure.Ultrafiltration:
                var night = ofSingleDay ? layers.NightToNight.Milliliters(value) : 0;
                return Normally(bound, value, Math.Sqrt(modelForm.Deviation * modelForm.Deviation + night * night));
            case RegimenMeasure.SodiumRemoved when sodiumDeviation > 0 && value != 0:
                // The calibration's factor is log-normal around its center.
                var (low, high) = (Below(bound.Floor, value), Below(bound.Ceiling, value));
                return value > 0 ? high - low : low - high;
            default:
                return bound.Holds(value) ? 1 : 0;
        }
    }

    /// <summary>A share or a figure as a whole number of small units.</summary>
    public static long Units(double value) => (long)Math.Round(value * Unit);

    public static double FromUnits(long units) => units / Unit;

    private static double Normally(RegimenBound bound, double mean, double deviation) => deviation > 0
        ? (double.IsFinite(bound.Ceiling) ? Normal.CDF(mean, deviation, bound.Ceiling) : 1)
            - (double.IsFinite(bound.Floor) ? Normal.CDF(mean, deviation, bound.Floor) : 0)
        : bound.Holds(mean) ? 1 : 0;

    // Probability that value · factor / center lies toward zero from a limit.
    private double Below(double limit, double value)
    {
        if (!double.IsFinite(limit))
        {
            return limit > 0 == value > 0 ? 1 : 0;
        }

        return limit / value > 0 ? Normal.CDF(0, sodiumDeviation, Math.Log(limit / value)) : 0;
    }
}
