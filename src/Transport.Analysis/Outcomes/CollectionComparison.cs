using System.Collections.Immutable;
using static System.FormattableString;

namespace Transport.Analysis;

/// <summary>A 24-h collection beside the simulation of the regimen that was run on its day: what was measured, what was foretold, and whether the gap is more than the measurement's error.</summary>
/// <remarks>
/// How days differ in one person: Kt/V 4.0 % by the drains and 4.4 % in total, creatinine clearance 4.7 and 6.0 % (Virga et al., Nephrol Dial Transplant 2002, read);
/// ultrafiltration as nights do (<see cref="NightVariation"/>). Of sodium and glucose it is not known, and their error is that of assays and volumes alone.
/// </remarks>
public sealed class CollectionComparison
{
    private const double PeritonealUreaDose = 0.040;
    private const double PeritonealCreatinineClearance = 0.047;

    // From this share on the fluid that was infused is another regimen's (choice).
    private const double OtherFluid = 0.05;

    private CollectionComparison(CollectionIndices collection, RegimenOutlook outlook, ImmutableArray<CollectedFigure> figures) =>
        (Collection, Outlook, Figures) = (collection, outlook, figures);

    /// <summary>What was measured.</summary>
    public CollectionIndices Collection { get; }

    /// <summary>What was simulated.</summary>
    public RegimenOutlook Outlook { get; }

    /// <summary>Every figure that both have.</summary>
    public ImmutableArray<CollectedFigure> Figures { get; }

    /// <summary>Whether simulated clearances are over a blood of the collection's clock time, so that both err alike.</summary>
    public bool IsOverItsBlood => Collection.Collection.PlasmaClock is { } clock && Outlook.Plasma.Any(level => level.Time == clock);

    /// <summary>Gaps beyond the measurement's error, and whether the collection is of this regimen at all.</summary>
    public IReadOnlyList<Finding> Findings => OtherRegimen() is { } other ? [other] : [.. Figures.Where(figure => figure.IsBeyondError).Select(Differs)];

    /// <summary>A collection beside an outlook.</summary>
    /// <param name="collection">The collection's indices.</param>
    /// <param name="outlook">The regimen that was run, in the person of the collection; with plasma at the collection's clock time in it, clearances are over that.</param>
    public static CollectionComparison Of(CollectionIndices collection, RegimenOutlook outlook)
    {
        ArgumentNullException.ThrowIfNull(collection);
        ArgumentNullException.ThrowIfNull(outlook);
        var (urea, creatinine) = (RatioOf(Solutes.Urea), RatioOf(Solutes.Creatinine));

        var night = outlook.Options.Layers.NightToNight;
        return new(collection, outlook,
        [
            .. Figure(OutcomeMeasures.KtOverV, collection.WeeklyUreaDose.Total, value => OutcomeMeasures.UreaDoseOfOneDay * value, urea),
            .. Figure(OutcomeMeasures.PeritonealKtOverV, collection.WeeklyUreaDose.Peritoneal, value => PeritonealUreaDose * value, urea),
            .. Figure(OutcomeMeasures.CreatinineClearance, collection.WeeklyCreatinineClearance.Total, value => OutcomeMeasures.CreatinineClearanceOfOneDay * value, creatinine),
            .. Figure(OutcomeMeasures.PeritonealCreatinineClearance, collection.WeeklyCreatinineClearance.Peritoneal, value => PeritonealCreatinineClearance * value, creatinine),
            .. Figure(OutcomeMeasures.Ultrafiltration, collection.NetUltrafiltration, night.Milliliters, 1),
            .. Figure(OutcomeMeasures.SodiumRemoved, collection.SodiumRemoved.Peritoneal, _ => 0, 1),
            .. Figure(OutcomeMeasures.GlucoseAbsorbed, collection.GlucoseAbsorbedMass, _ => 0, 1),
        ]);

        double RatioOf(Solute solute) => outlook.Plasma
            .FirstOrDefault(level => level.Solute == solute && level.Time is not null && level.Time == collection.Collection.PlasmaClock)?.DoseRatio.Median ?? 1;

        IEnumerable<CollectedFigure> Figure(OutcomeMeasure measure, IndexValue? measured, Func<double, double> dayToDay, double ratio)
        {
            if (measured is { StandardDeviation: { } deviation } && outlook[measure].Value is { } band)
            {
                var day = dayToDay(measured.Value);
                yield return new(measure, measured, Math.Sqrt(deviation * deviation + day * day), new(ratio * band.Median, ratio * band.Low, ratio * band.High, band.Coverage, band.Doubt));
            }
        }
    }

    // Gaps between two regimens say nothing, one by one: they are counted.
    private Finding? OtherRegimen()
    {
        var drains = Collection.Collection.Drains;
        if (drains.Any(drain => drain.Fill is null) || Outlook[OutcomeMeasures.FluidUsed].Value is not { } used)
        {
            return null;
        }

        var infused = drains.Sum(drain => drain.Fill!.Value.Liters) * 24 / Collection.Collection.Duration.TotalHours;
        return Math.Abs(infused - used.Median) <= OtherFluid * used.Median ? null : new(
            Severity.Warning,
            "collection-of-another-regimen",
            Invariant($"In the collection {infused:0.0} L were filled in 24 h, in the regimen '{Outlook.Name}' {used.Median:0.0} L: they are not of one regimen. {Figures.Count(figure => figure.IsBeyondError)} of {Figures.Length} figures differ by more than the error of the measurement, which says nothing of the membrane; lay the collection beside the regimen that was run on its day."));
    }

    private static Finding Differs(CollectedFigure figure)
    {
        var digits = figure.Measure.Decimals;
        return new(
            Severity.Warning,
            "collection-differs",
            $"Of {figure.Measure.Name} the collection measured {Number(figure.Measured.Value)} {figure.Measure.Unit}, {Number(Math.Abs(figure.Difference))} {(figure.Difference < 0 ? "less" : "more")} than was simulated, where its own error is {Number(figure.Error)}. The simulation's band {(figure.IsWithinBand ? "holds it." : "does not hold it.")}")
        {
            Field = figure.Measure.Name,
            Expected = $"{Number(figure.Simulated.Median)} ({Number(figure.Simulated.Low)} to {Number(figure.Simulated.High)}) {figure.Measure.Unit}",
        };

        string Number(double value) => (Math.Round(value, digits) < 0 ? "−" : "") + Math.Abs(value).ToString("F" + digits, System.Globalization.CultureInfo.InvariantCulture);
    }
}
