namespace Transport.Analysis;

/// <summary>Bands and probabilities of one regimen from its simulated day with every member: the same days and the same draws of what the model misses as in a
/// <see cref="RegimenComparison"/>, so that both say the same of it.</summary>
internal sealed class EnsembleBands
{
    private readonly SimulatedRhythm[] members;
    private readonly double[] table;
    private readonly (double Shift, double Deviation) modelForm;
    private readonly RegimenSearchOptions options;

    /// <param name="days">Its day with each member.</param>
    /// <param name="table">The measures of those, member after member.</param>
    /// <param name="modelForm">What the model's discrepancy adds to the ultrafiltration, mL.</param>
    /// <param name="options">What was tested, and which doubt is held.</param>
    public EnsembleBands(IEnumerable<RegimenOutcome> days, double[] table, (double Shift, double Deviation) modelForm, RegimenSearchOptions options)
    {
        members = [.. days.Select(SimulatedRhythm.Of)];
        this.table = table;
        this.modelForm = modelForm;
        this.options = options;
    }

    public Band<double> UreaDose => Band(OutcomeMeasures.KtOverV, DailyDoubt.OfMean(options.Layers), value => value);

    public Band<Mass> Glucose => Band(OutcomeMeasures.GlucoseAbsorbed, DailyDoubt.OfMean(options.Layers), Mass.FromGrams);

    public Band<Volume> MeanUltrafiltration => Band(OutcomeMeasures.Ultrafiltration, DailyDoubt.OfMean(options.Layers), Volume.FromMilliliters);

    public Band<Volume> UltrafiltrationOfOneDay => Band(OutcomeMeasures.Ultrafiltration, DailyDoubt.OfSingle(options.Layers), Volume.FromMilliliters);

    /// <summary>Sodium with the doubt of its calibration; the measure holds its factor.</summary>
    public Band<AmountOfSubstance> Sodium => Band(OutcomeMeasures.SodiumRemoved, DailyDoubt.OfMean(options.Layers), AmountOfSubstance.FromMillimoles);

    public Probability ProbabilityOfMean(FluidTarget range) => new(
        Means.Average(mean => DailyDoubt.ShareInRange(mean, modelForm.Deviation, range)), DailyDoubt.OfMean(options.Layers));

    public Probability ProbabilityOfDay(FluidTarget range) => new(
        Means.Average(mean => DailyDoubt.ShareInRange(mean, OfOneDay(mean), range)), DailyDoubt.OfSingle(options.Layers));

    /// <summary>The share of days above the ceiling of a range.</summary>
    public double ShareOfDaysAbove(FluidTarget range) => Means.Average(mean => DailyDoubt.ShareAbove(mean, OfOneDay(mean), range));

    // Ultrafiltration of each member, with the model's discrepancy.
    private IEnumerable<double> Means => Enumerable.Range(0, members.Length)
        .Select(member => table[member * RegimenFigures.Count + (int)RegimenMeasure.Ultrafiltration] + modelForm.Shift);

    private double OfOneDay(double mean) => double.Hypot(modelForm.Deviation, options.Layers.NightToNight.Milliliters(mean));

    private Band<T> Band<T>(OutcomeMeasure measure, Doubt holds, Func<double, T> quantity)
        where T : struct
    {
        var layers = options.Layers with { Holds = holds };
        var doubt = new CommonDoubt(new() { Tested = options.Tested, Layers = layers }, 0);
        var repeats = DoubtDraws.PerMember(members.Length);
        double[] drawn = [.. Enumerable.Range(0, members.Length * repeats).Select(draw => measure.Read(doubt.Of(members[draw / repeats], draw))!.Value)];
        var band = OutlookDraws.Band(drawn, measure.HeldOf(layers));
        return new(quantity(band.Median), quantity(band.Low), quantity(band.High), band.Coverage, band.Doubt);
    }
}
