namespace Transport.Analysis;

/// <summary>Bands and probabilities of one regimen from its simulated day with every member: the same days and the same draws of what the model misses as in a
/// <see cref="RegimenComparison"/>, so that both say the same of it.</summary>
internal sealed class EnsembleBands
{
    private readonly double[] table;
    private readonly double modelForm;
    private readonly RegimenSearchOptions options;

    /// <param name="days">Its day with each member.</param>
    /// <param name="table">The measures of those, member after member, the ultrafiltration with the model's discrepancy.</param>
    /// <param name="modelForm">How sure that is, mL.</param>
    /// <param name="options">What was tested, and which doubt is held.</param>
    public EnsembleBands(IEnumerable<RegimenOutcome> days, double[] table, double modelForm, RegimenSearchOptions options)
    {
        (this.table, this.modelForm, this.options) = (table, modelForm, options);
        SimulatedRhythm[] members = [.. days.Select(SimulatedRhythm.Of)];
        var mean = DaysWith(members, DailyDoubt.OfMean(options.Layers));
        UreaDose = Band(mean, OutcomeMeasures.KtOverV, value => value);
        Glucose = Band(mean, OutcomeMeasures.GlucoseAbsorbed, Mass.FromGrams);
        MeanUltrafiltration = Band(mean, OutcomeMeasures.Ultrafiltration, Volume.FromMilliliters);
        Sodium = Band(mean, OutcomeMeasures.SodiumRemoved, AmountOfSubstance.FromMillimoles);
        UltrafiltrationOfOneDay = Band(DaysWith(members, DailyDoubt.OfSingle(options.Layers)), OutcomeMeasures.Ultrafiltration, Volume.FromMilliliters);
    }

    public Band<double> UreaDose { get; }

    public Band<Mass> Glucose { get; }

    public Band<Volume> MeanUltrafiltration { get; }

    public Band<Volume> UltrafiltrationOfOneDay { get; }

    /// <summary>Sodium with the doubt of its calibration; the measure holds its factor.</summary>
    public Band<AmountOfSubstance> Sodium { get; }

    public Probability ProbabilityOfMean(FluidTarget range) => new(
        Means.Average(mean => DailyDoubt.ShareInRange(mean, modelForm, range)), DailyDoubt.OfMean(options.Layers));

    public Probability ProbabilityOfDay(FluidTarget range) => new(
        Means.Average(mean => DailyDoubt.ShareInRange(mean, OfOneDay(mean), range)), DailyDoubt.OfSingle(options.Layers));

    /// <summary>The share of days above the ceiling of a range.</summary>
    public double ShareOfDaysAbove(FluidTarget range) => Means.Average(mean => DailyDoubt.ShareAbove(mean, OfOneDay(mean), range));

    // Ultrafiltration of each member.
    private IEnumerable<double> Means => Enumerable.Range(0, table.Length / RegimenFigures.Count)
        .Select(member => table[member * RegimenFigures.Count + (int)RegimenMeasure.Ultrafiltration]);

    private double OfOneDay(double mean) => double.Hypot(modelForm, options.Layers.NightToNight.Milliliters(mean));

    private (MeasuredDay[] Draws, DoubtLayers Layers) DaysWith(SimulatedRhythm[] members, Doubt holds)
    {
        var layers = options.Layers with { Holds = holds };
        return (new CommonDoubt(new() { Tested = options.Tested, Layers = layers }, 0).Of(members), layers);
    }

    private static Band<T> Band<T>((MeasuredDay[] Draws, DoubtLayers Layers) days, OutcomeMeasure measure, Func<double, T> quantity)
        where T : struct
    {
        var band = OutlookDraws.Band([.. days.Draws.Select(day => measure.Read(day)!.Value)], measure.HeldOf(days.Layers));
        return new(quantity(band.Median), quantity(band.Low), quantity(band.High), band.Coverage, band.Doubt);
    }
}
