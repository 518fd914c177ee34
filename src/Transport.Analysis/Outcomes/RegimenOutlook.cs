using System.Collections.Immutable;

namespace Transport.Analysis;

/// <summary>What one regimen returns in a patient, every figure with its band. An estimate for licensed prescribers; local protocol rules.</summary>
public sealed class RegimenOutlook
{
    private readonly OutlookDraws draws;

    internal RegimenOutlook(
        string name, RegimenOutcome outcome, OutlookOptions options, RegimenChange? change, OutlookDraws draws, OutlookDraws? present)
    {
        (Name, Outcome, Options, Change) = (name, outcome, options, change);
        this.draws = draws;
        Measures =
        [
            .. OutcomeMeasures.All.Select(measure => new MeasuredOutcome(
                measure, draws.BandOf(measure), present is null ? null : draws.BandOfDifference(measure, present))),
        ];
    }

    /// <summary>What tables and charts call it.</summary>
    public string Name { get; }

    /// <summary>The regimen.</summary>
    public Regimen Regimen => Outcome.Regimen;

    /// <summary>Its day on the membrane at the ensemble's center.</summary>
    public RegimenOutcome Outcome { get; }

    /// <summary>How it was looked at.</summary>
    public OutlookOptions Options { get; }

    /// <summary>What changes from the present regimen; null where this is it.</summary>
    public RegimenChange? Change { get; }

    /// <summary>All figures, in the order of <see cref="OutcomeMeasures.All"/>.</summary>
    public ImmutableArray<MeasuredOutcome> Measures { get; }

    /// <summary>What to be careful about.</summary>
    public IReadOnlyList<Finding> Findings =>
        [.. PressureRisk.Of(this[OutcomeMeasures.LargestPressure].Value, Options.Pressure is not null).Concat(Outcome.Findings).OrderByDescending(finding => finding.Severity)];

    /// <summary>One figure.</summary>
    /// <exception cref="ArgumentException">It is none of <see cref="OutcomeMeasures.All"/>.</exception>
    public MeasuredOutcome this[OutcomeMeasure measure] => Measures.FirstOrDefault(one => one.Measure == measure)
        ?? throw new ArgumentException("Expected one of the measures.", nameof(measure));

    /// <summary>How probable it is that a figure is at least so large, in the mean of many days; null where it cannot be given.</summary>
    public Probability? ProbabilityAtLeast(OutcomeMeasure measure, double least) => draws.AtLeast(measure, least);

    /// <summary>The same of a single day; null where it cannot be given, or where it is not known how days differ.</summary>
    public Probability? ProbabilityOfSingleDayAtLeast(OutcomeMeasure measure, double least) => draws.OfSingleDayAtLeast(measure, least);
}
