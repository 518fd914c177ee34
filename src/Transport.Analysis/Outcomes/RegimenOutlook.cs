using System.Collections.Immutable;

namespace Transport.Analysis;

/// <summary>What one regimen returns in a patient, every figure with its band. An estimate for licensed prescribers; local protocol rules.</summary>
/// <remarks>Of a week, amounts are means per day, days without treatment included, and clearances are over the mean plasma level of the week.</remarks>
public sealed class RegimenOutlook
{
    private readonly OutlookDraws draws;
    private readonly SimulatedRhythm center;

    internal RegimenOutlook(
        string name,
        SimulatedRhythm center,
        OutlookOptions options,
        RegimenChange? change,
        OutlookDraws draws,
        OutlookDraws? present,
        ImmutableArray<PlasmaOutlook> plasma)
    {
        (Name, Options, Change, Plasma) = (name, options, change, plasma);
        this.draws = draws;
        this.center = center;
        Measures =
        [
            .. OutcomeMeasures.All.Select(measure => new MeasuredOutcome(
                measure, draws.BandOf(measure), present is null ? null : draws.BandOfDifference(measure, present))),
        ];
    }

    /// <summary>What tables and charts call it.</summary>
    public string Name { get; }

    /// <summary>The regimen; in a week that of its first day with treatment.</summary>
    public Regimen Regimen => Outcome.Regimen;

    /// <summary>Its day on the membrane at the ensemble's center; in a week the first day with treatment.</summary>
    public RegimenOutcome Outcome => center.Days[0];

    /// <summary>Its week on the membrane at the ensemble's center; null where every day is the same.</summary>
    public WeekOutcome? Week => center.Week;

    /// <summary>The cavity against time, through a day or a week; empty unless <see cref="RegimenOptions.Timeline"/> asked for it.</summary>
    public IEnumerable<TimelinePoint> Timeline => center.Timeline;

    /// <summary>Plasma levels: the mean and at the clock times of <see cref="OutlookOptions.SampleTimes"/>; none where plasma was constant.</summary>
    public ImmutableArray<PlasmaOutlook> Plasma { get; }

    /// <summary>How it was looked at.</summary>
    public OutlookOptions Options { get; }

    /// <summary>What changes from the present regimen; null where this is it.</summary>
    public RegimenChange? Change { get; }

    /// <summary>All figures, in the order of <see cref="OutcomeMeasures.All"/>.</summary>
    public ImmutableArray<MeasuredOutcome> Measures { get; }

    /// <summary>What to be careful about: fluid by the middle of its bands, the fill and posture that were not tested, whether a range was given at all.</summary>
    public IReadOnlyList<Finding> Findings => OutlookFindings.Of(this, center.Days.DistinctBy(day => day.Regimen));

    /// <summary>What is done, in words.</summary>
    public string Describe() => Week?.Week.Describe() ?? Regimen.Describe();

    internal IEnumerable<Regimen> Regimens => center.Days.Select(day => day.Regimen).Distinct();

    /// <summary>One figure.</summary>
    /// <exception cref="ArgumentException">It is none of <see cref="OutcomeMeasures.All"/>.</exception>
    public MeasuredOutcome this[OutcomeMeasure measure] => Measures.FirstOrDefault(one => one.Measure == measure)
        ?? throw new ArgumentException("Expected one of the measures.", nameof(measure));

    /// <summary>On how many single days ultrafiltration lies in the range, as a sentence with frequencies; empty without a range.</summary>
    public string SingleDay
    {
        get
        {
            if (Options.Fluid is not { } range)
            {
                return "";
            }

            var (reaches, above) = (OfSingleDay(range.Floor), OfSingleDay(range.Ceiling).Value);
            return OptionWords.SingleDay(reaches with { Value = reaches.Value - above }, above, range);
        }
    }

    private Probability OfSingleDay(Volume least) => draws.OfSingleDayAtLeast(OutcomeMeasures.Ultrafiltration, least.Milliliters)!.Value;

    /// <summary>How probable it is that a figure is at least so large, in the mean of many days; null where it cannot be given.</summary>
    public Probability? ProbabilityAtLeast(OutcomeMeasure measure, double least) => draws.AtLeast(measure, least);

    /// <summary>The same of a single day; null where it cannot be given, or where it is not known how days differ.</summary>
    public Probability? ProbabilityOfSingleDayAtLeast(OutcomeMeasure measure, double least) => draws.OfSingleDayAtLeast(measure, least);
}
