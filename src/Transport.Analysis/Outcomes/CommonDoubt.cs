using MathNet.Numerics.Distributions;

namespace Transport.Analysis;

/// <summary>Draws of what the model misses, the same for every regimen that is laid beside another.</summary>
/// <remarks>
/// Exchanges of one strength err together, different strengths independently, and so do sodium and pressure: a normal deviate for each, on a grid of irrational
/// steps instead of random numbers.
/// </remarks>
internal sealed class CommonDoubt
{
    private readonly OutlookOptions options;
    private readonly double[] strengths;

    /// <param name="options">What was tested.</param>
    /// <param name="regimens">All that are laid beside each other.</param>
    public CommonDoubt(OutlookOptions options, IEnumerable<Regimen> regimens)
    {
        this.options = options;
        strengths = [.. regimens.SelectMany(regimen => regimen.Exchanges).Select(exchange => exchange.Solution.Glucose.MillimolesPerLiter).Distinct().Order()];
    }

    /// <summary>One simulated rhythm with one draw of the doubt.</summary>
    public MeasuredDay Of(SimulatedRhythm rhythm, int draw)
    {
        var sodium = rhythm.Days[0].Options.Sodium;
        var (night, day) = (0.0, 0.0);
        if (options.HoldsModelForm)
        {
            night = rhythm.Mean(one => Shift(one.Regimen.Night.Zip(one.Cycles), draw));
            day = rhythm.Mean(one => Shift(one.Regimen.Day.Zip(one.DayExchanges), draw));
        }

        var people = options.IsPressureMeasured ? 0 : PressureRisk.DeviationBetweenPeople;
        return new(rhythm, options, night, day, sodium.Factor * Math.Exp(sodium.DeviationOfLogFactor * Deviate(draw, 0)), people * Deviate(draw, 1));
    }

    private double Shift(IEnumerable<(Exchange Exchange, CycleOutcome Ran)> exchanges, int draw) => exchanges.Sum(pair =>
    {
        var (solution, ran) = (pair.Exchange.Solution, pair.Ran);
        var discrepancy = ModelDiscrepancy.Of(solution, options.Tested);
        var strength = Array.IndexOf(strengths, solution.Glucose.MillimolesPerLiter);
        return (discrepancy.Gain - 1) * ran.Ultrafiltration.Milliliters
            + discrepancy.GrowthAt(ran.DwellTime) * (discrepancy.Offset.Milliliters + discrepancy.Deviation.Milliliters * Deviate(draw, 2 + strength));
    });

    // Roots of prime numbers step through the unit interval evenly and without falling into step with each other.
    private static double Deviate(int draw, int dimension)
    {
        ReadOnlySpan<double> primes = [5, 2, 3, 7, 11, 13, 17, 19, 23, 29, 31, 37, 41, 43, 47, 53];
        var place = (draw + 0.5) * Math.Sqrt(primes[dimension % primes.Length]);
        return Normal.InvCDF(0, 1, Math.Clamp(place - Math.Floor(place), 1e-6, 1 - 1e-6));
    }
}
