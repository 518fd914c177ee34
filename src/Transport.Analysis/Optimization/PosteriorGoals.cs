using MathNet.Numerics.Distributions;

namespace Transport.Analysis;

/// <summary>The share of a bound's promise that one draw of the membrane keeps: 0 or 1, or between them where other doubt is spread over the draw.</summary>
/// <param name="goals">The bounds.</param>
/// <param name="simulation">How days are simulated.</param>
/// <param name="layers">Which doubt is held.</param>
/// <param name="members">Over how many draws.</param>
internal sealed class PosteriorGoals(RegimenGoals goals, RegimenOptions simulation, DoubtLayers layers, int members)
{
    /// <summary>How far maps err in the mean was measured over so many draws: of fewer nothing is claimed.</summary>
    public const int FewestInTheMean = 100;

    // Counts of shares add up exactly, in whatever order.
    private const double Unit = 1L << 30;

    // Of many draws together a map errs less than of one: a probability moved by 5.4e-4 at most in 4,365 bounds of 1,557 regimens over 100 draws each (measured), and a fifth of the
    // margin is two to six times that. It needs shares that do not jump: other doubt that spreads a draw over so many margins.
    private const double ShareInTheMean = 0.2;
    private const double Smooth = 10;

    private readonly double inTheMean = members < FewestInTheMean ? 1 : ShareInTheMean;
    private readonly double sodiumDeviation = simulation.Sodium.DeviationOfLogFactor;

    public IReadOnlyList<RegimenBound> Bounds { get; } = goals.Bounds;

    /// <summary>Which doubt the mean of many days holds.</summary>
    public Doubt DoubtOf(RegimenMeasure measure) => measure switch
    {
        RegimenMeasure.Ultrafiltration => DailyDoubt.OfMean(layers),
        RegimenMeasure.SodiumRemoved => layers.OfMembrane | Doubt.ModelForm,
        _ => layers.OfMembrane,
    };

    /// <summary>The share of a bound that a draw keeps, of the mean of many days or of a single day.</summary>
    /// <param name="bound">The bound.</param>
    /// <param name="figures">The measures in the draw, the ultrafiltration with the model's discrepancy.</param>
    /// <param name="modelForm">How sure that is, mL.</param>
    /// <param name="ofSingleDay">Of a single day.</param>
    public double Share(RegimenBound bound, ReadOnlySpan<double> figures, double modelForm, bool ofSingleDay)
    {
        var value = figures[(int)bound.Measure];
        switch (bound.Measure)
        {
            case RegimenMeasure.Ultrafiltration:
                return Normally(bound, value, Spread(bound.Measure, value, modelForm, ofSingleDay));
            case RegimenMeasure.SodiumRemoved when sodiumDeviation > 0 && value > 0:
                // The calibration's factor of a removal is log-normal around its center; a gain has none.
                return Below(bound.Ceiling, value) - Below(bound.Floor, value);
            default:
                return bound.Holds(value) ? 1 : 0;
        }
    }

    /// <summary>By how much the maps can be wrong in what a draw adds to a bound: its share, or its figure where the expected value is asked for.</summary>
    public double MapError(RegimenBound bound, ReadOnlySpan<double> figures, double modelForm)
    {
        var value = figures[(int)bound.Measure];
        var margin = CenterJudge.Margin(bound.Measure, value);
        if (bound.Probability is null)
        {
            return inTheMean * margin;
        }

        var spread = Spread(bound.Measure, value, modelForm, bound.IsOfSingleDay);
        return Math.Min(1, At(bound.Floor) + At(bound.Ceiling));

        double At(double limit)
        {
            var far = Math.Abs(limit - value);
            return !double.IsFinite(limit) ? 0
                : spread > Smooth * margin ? inTheMean * margin * Normal.PDF(0, spread, far)
                : spread > 0 ? Normal.CDF(0, spread, margin - far)
                : far <= margin ? 1 : 0;
        }
    }

    /// <summary>A share or a figure as a whole number of small units.</summary>
    public static long Units(double value) => (long)Math.Round(value * Unit);

    public static double FromUnits(long units) => units / Unit;

    // How far other doubt spreads a draw, as a standard deviation.
    private double Spread(RegimenMeasure measure, double value, double modelForm, bool ofSingleDay) => measure switch
    {
        RegimenMeasure.Ultrafiltration => double.Hypot(modelForm, ofSingleDay ? layers.NightToNight.Milliliters(value) : 0),
        RegimenMeasure.SodiumRemoved => sodiumDeviation * Math.Max(0, value),
        _ => 0,
    };

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
