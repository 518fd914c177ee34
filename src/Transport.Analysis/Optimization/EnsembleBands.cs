using MathNet.Numerics.Statistics;

namespace Transport.Analysis;

/// <summary>Bands and probabilities of one regimen from its measures in every draw.</summary>
internal sealed class EnsembleBands
{
    private const double Coverage = 0.90;

    private readonly double[] table;
    private readonly int members;
    private readonly double shift;
    private readonly double deviation;
    private readonly DoubtLayers layers;
    private readonly DoubtDraws doubt;

    /// <param name="table">Measures, draw after draw.</param>
    /// <param name="modelForm">What the model's discrepancy adds to the ultrafiltration, mL.</param>
    /// <param name="layers">Which doubt is held.</param>
    public EnsembleBands(double[] table, (double Shift, double Deviation) modelForm, DoubtLayers layers)
    {
        this.table = table;
        members = table.Length / RegimenFigures.Count;
        (shift, deviation) = modelForm;
        this.layers = layers;
        doubt = new(layers, 0);
    }

    public Band<double> UreaDose => Bands(Column(RegimenMeasure.UreaDose), value => value, layers.OfMembrane);

    public Band<Mass> Glucose => Bands(Column(RegimenMeasure.GlucoseAbsorbed), Mass.FromGrams, layers.OfMembrane);

    public Band<Volume> MeanUltrafiltration => Bands(
        Spread(Column(RegimenMeasure.Ultrafiltration), (value, draw) => value + shift + Missed(draw)), Volume.FromMilliliters, DailyDoubt.OfMean(layers));

    public Band<Volume> UltrafiltrationOfOneDay => Bands(
        Spread(Column(RegimenMeasure.Ultrafiltration), (value, draw) =>
        {
            var mean = value + shift + Missed(draw);
            return mean + layers.NightToNight.Milliliters(mean) * doubt[DoubtDraws.Part.Night, draw];
        }),
        Volume.FromMilliliters,
        DailyDoubt.OfSingle(layers));

    /// <summary>Sodium with the doubt of its calibration; the measure holds its factor.</summary>
    public Band<AmountOfSubstance> Sodium(SodiumCalibration calibration) => Bands(
        Spread(Column(RegimenMeasure.SodiumRemoved), (value, draw) => value * Math.Exp(calibration.DeviationOfLogFactor * doubt[DoubtDraws.Part.Sodium, draw])),
        AmountOfSubstance.FromMillimoles,
        layers.OfMembrane | Doubt.ModelForm);

    public Probability ProbabilityOfMean(FluidTarget range) => new(
        Column(RegimenMeasure.Ultrafiltration).Average(value => DailyDoubt.ShareInRange(value + shift, deviation, range)), DailyDoubt.OfMean(layers));

    public Probability ProbabilityOfDay(FluidTarget range) => new(
        Column(RegimenMeasure.Ultrafiltration).Average(value => DailyDoubt.ShareInRange(value + shift, OfOneDay(value + shift), range)), DailyDoubt.OfSingle(layers));

    private double OfOneDay(double mean) => double.Hypot(deviation, layers.NightToNight.Milliliters(mean));

    // Of a regimen's strengths together; the strongest's stream stands for them.
    private double Missed(int draw) => deviation * doubt[DoubtDraws.Part.Strong, draw];

    private double[] Column(RegimenMeasure measure)
    {
        var column = new double[members];
        for (var draw = 0; draw < members; draw++)
        {
            column[draw] = table[draw * RegimenFigures.Count + (int)measure];
        }

        return column;
    }

    // Draws are the same for every regimen.
    private double[] Spread(double[] values, Func<double, int, double> draw)
    {
        var repeats = DoubtDraws.PerMember(members);
        return [.. Enumerable.Range(0, members * repeats).Select(i => draw(values[i / repeats], i))];
    }

    private static Band<T> Bands<T>(double[] values, Func<double, T> quantity, Doubt doubt)
        where T : struct
    {
        var sorted = values.Order().ToArray();
        return new(At(0.5), At(0.5 * (1 - Coverage)), At(0.5 * (1 + Coverage)), Coverage, doubt);

        T At(double share) => quantity(SortedArrayStatistics.Quantile(sorted, share));
    }
}
