using MathNet.Numerics.Distributions;
using MathNet.Numerics.Statistics;

namespace Transport.Analysis;

/// <summary>Bands and probabilities of one regimen from its measures in every draw.</summary>
internal sealed class EnsembleBands
{
    // Members are repeated until this many draws carry the doubt that is not the membrane's: a median then stands to 1 % of the band's width.
    private const int LeastDraws = 8000;
    private const double Coverage = 0.90;

    private readonly double[] table;
    private readonly int members;
    private readonly double shift;
    private readonly double deviation;
    private readonly Doubt ofMean;

    /// <param name="table">Measures, draw after draw.</param>
    /// <param name="modelForm">What the model's discrepancy adds to the ultrafiltration, mL.</param>
    /// <param name="options">Which doubt is held.</param>
    public EnsembleBands(double[] table, (double Shift, double Deviation) modelForm, RegimenSearchOptions options)
    {
        this.table = table;
        members = table.Length / RegimenFigures.Count;
        (shift, deviation) = modelForm;
        ofMean = DailyDoubt.OfMean(options);
    }

    public Band<double> UreaDose => Bands(Column(RegimenMeasure.UreaDose), value => value, Doubt.Parameters);

    public Band<Mass> Glucose => Bands(Column(RegimenMeasure.GlucoseAbsorbed), Mass.FromGrams, Doubt.Parameters);

    public Band<Volume> MeanUltrafiltration => Bands(
        Spread(Column(RegimenMeasure.Ultrafiltration), (value, z) => value + shift + deviation * z), Volume.FromMilliliters, ofMean);

    public Band<Volume> UltrafiltrationOfOneDay => Bands(
        Spread(Column(RegimenMeasure.Ultrafiltration), (value, z) => value + shift + z * OfOneDay(value + shift)),
        Volume.FromMilliliters,
        ofMean | Doubt.NightToNight);

    /// <summary>Sodium with the doubt of its calibration; the measure holds its factor.</summary>
    public Band<AmountOfSubstance> Sodium(SodiumCalibration calibration) => Bands(
        Spread(Column(RegimenMeasure.SodiumRemoved), (value, z) => value * Math.Exp(calibration.DeviationOfLogFactor * z)),
        AmountOfSubstance.FromMillimoles,
        Doubt.Parameters | Doubt.ModelForm);

    public double ProbabilityOfMean(FluidTarget range) =>
        Column(RegimenMeasure.Ultrafiltration).Average(value => DailyDoubt.ShareInRange(value + shift, deviation, range));

    public double ProbabilityOfDay(FluidTarget range) =>
        Column(RegimenMeasure.Ultrafiltration).Average(value => DailyDoubt.ShareInRange(value + shift, OfOneDay(value + shift), range));

    private double OfOneDay(double mean)
    {
        var night = NightVariation.StartingMilliliters(mean);
        return Math.Sqrt(deviation * deviation + night * night);
    }

    private double[] Column(RegimenMeasure measure)
    {
        var column = new double[members];
        for (var draw = 0; draw < members; draw++)
        {
            column[draw] = table[draw * RegimenFigures.Count + (int)measure];
        }

        return column;
    }

    // Normal deviates on an even, irrational grid: no random numbers, the same for every regimen.
    private double[] Spread(double[] values, Func<double, double, double> draw)
    {
        var repeats = (LeastDraws + members - 1) / members;
        var spread = new double[members * repeats];
        for (var i = 0; i < spread.Length; i++)
        {
            var place = (i + 0.5) * 0.6180339887498949;
            spread[i] = draw(values[i / repeats], Normal.InvCDF(0, 1, place - Math.Floor(place)));
        }

        return spread;
    }

    private static Band<T> Bands<T>(double[] values, Func<double, T> quantity, Doubt doubt)
        where T : struct
    {
        var sorted = values.Order().ToArray();
        return new(At(0.5), At(0.5 * (1 - Coverage)), At(0.5 * (1 + Coverage)), Coverage, doubt);

        T At(double share) => quantity(SortedArrayStatistics.Quantile(sorted, share));
    }
}
