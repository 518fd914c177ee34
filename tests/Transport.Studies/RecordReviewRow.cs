namespace Transport.Studies;

/// <summary>What reviews of one virtual person's books found. Delays are in nights of the calendar; <see cref="RecordReviewStudy.NotFound"/>: not found.</summary>
public sealed record RecordReviewRow
{
    /// <summary>Which person.</summary>
    public required int Person { get; init; }

    /// <summary>True mean ultrafiltration of a night, mL.</summary>
    public required double NightMilliliters { get; init; }

    /// <summary>Signals in 365 nights in which nothing happens, SD 80 mL, all channels.</summary>
    public required int FalseQuiet { get; init; }

    /// <summary>The same at the larger of 150 mL and 25 %.</summary>
    public required int FalseUsual { get; init; }

    /// <summary>The same at 200 mL.</summary>
    public required int FalseLoud { get; init; }

    /// <summary>At the larger of 150 mL and 25 %, of a book with ultrafiltration alone.</summary>
    public required int FalseNightAlone { get; init; }

    /// <summary>Of a book with ultrafiltration and initial drain, SD 80 mL.</summary>
    public required int FalseInitialDrainQuiet { get; init; }

    /// <summary>The same at 150 mL.</summary>
    public required int FalseInitialDrainMiddle { get; init; }

    /// <summary>The same at 200 mL.</summary>
    public required int FalseInitialDrainLoud { get; init; }

    /// <summary>The same at the larger of 150 mL and 25 %.</summary>
    public required int FalseInitialDrainUsual { get; init; }

    /// <summary>Warnings of rules (drains, weight, dwell, bags) on the last page of the stable year.</summary>
    public required int RuleWarnings { get; init; }

    /// <summary>Nights from the crossing of 10 % to the signal, where 20 % is lost over 60 nights; SD 80 mL.</summary>
    public required int LossQuiet { get; init; }

    /// <summary>The same at the larger of 150 mL and 25 %.</summary>
    public required int LossUsual { get; init; }

    /// <summary>The same at 150 mL.</summary>
    public required int LossMiddle { get; init; }

    /// <summary>The same at 200 mL.</summary>
    public required int LossLoud { get; init; }

    /// <summary>
    /// An oracle's log likelihood ratio of a slow loss, its highest in 365 nights in which nothing happens, SD 80 mL. It knows the membrane, how nights differ, and of the loss
    /// cause and slope, not when it begins.
    /// </summary>
    public required double OracleStableQuiet { get; init; }

    /// <summary>The same at 150 mL.</summary>
    public required double OracleStableMiddle { get; init; }

    /// <summary>The same at 200 mL.</summary>
    public required double OracleStableLoud { get; init; }

    /// <summary>The same at the larger of 150 mL and 25 %.</summary>
    public required double OracleStableUsual { get; init; }

    /// <summary>The oracle's highest from the night on which the loss begins until 30 nights after a tenth is lost, SD 80 mL.</summary>
    public required double OracleLossQuiet { get; init; }

    /// <summary>The same at 150 mL.</summary>
    public required double OracleLossMiddle { get; init; }

    /// <summary>The same at 200 mL.</summary>
    public required double OracleLossLoud { get; init; }

    /// <summary>The same at the larger of 150 mL and 25 %.</summary>
    public required double OracleLossUsual { get; init; }

    /// <summary>
    /// The same oracle where beginnings weigh by the fourth power of their age: log likelihood ratio of a slow loss, its highest in 365 nights in which nothing happens, SD 80 mL.
    /// </summary>
    public required double AgedStableQuiet { get; init; }

    /// <summary>The same at 150 mL.</summary>
    public required double AgedStableMiddle { get; init; }

    /// <summary>The same at 200 mL.</summary>
    public required double AgedStableLoud { get; init; }

    /// <summary>The same at the larger of 150 mL and 25 %.</summary>
    public required double AgedStableUsual { get; init; }

    /// <summary>Its highest from the night on which the loss begins until 30 nights after a tenth is lost, SD 80 mL.</summary>
    public required double AgedLossQuiet { get; init; }

    /// <summary>The same at 150 mL.</summary>
    public required double AgedLossMiddle { get; init; }

    /// <summary>The same at 200 mL.</summary>
    public required double AgedLossLoud { get; init; }

    /// <summary>The same at the larger of 150 mL and 25 %.</summary>
    public required double AgedLossUsual { get; init; }

    /// <summary>
    /// The oracle's log likelihood ratio of a drain fault by initial drain and ultrafiltration, SD 150 mL: its highest in 365 nights in which nothing happens. It knows membrane, how nights
    /// differ and the fault's size, not when it begins.
    /// </summary>
    public required double OracleStableInitialDrain { get; init; }

    /// <summary>The same, its highest in the first 14 nights of a drain fault.</summary>
    public required double OracleFaultInitialDrain { get; init; }

    /// <summary>Nights until a drain fault is signalled (a tenth of what is in stays behind), SD 150 mL: ultrafiltration of the night alone.</summary>
    public required int FaultNightAlone { get; init; }

    /// <summary>The same with night and day in one number.</summary>
    public required int FaultNightAndDay { get; init; }

    /// <summary>The same with the initial drain.</summary>
    public required int FaultInitialDrain { get; init; }

    /// <summary>The same without the chart of drains.</summary>
    public required int FaultInitialDrainUnaided { get; init; }

    /// <summary>With it, where half as much stays behind.</summary>
    public required int HalfFaultInitialDrain { get; init; }

    /// <summary>The same where twice as much stays behind.</summary>
    public required int DoubleFaultInitialDrain { get; init; }

    /// <summary>A tenth, with cycles and drain times.</summary>
    public required int FaultCycles { get; init; }

    /// <summary>Of people with a dry day, which takes up what stays behind: with the initial drain; null of others.</summary>
    public required int? FaultTakenUpInitialDrain { get; init; }

    /// <summary>The same with cycles and drain times.</summary>
    public required int? FaultTakenUpCycles { get; init; }

    /// <summary>For each story of a change, "first second" most compatible explanation at the first signal after it began; empty: not found within 120 nights.</summary>
    public required string FasterTransfer { get; init; }

    /// <summary>Of faster transfer: the change of a night's ultrafiltration that is told less the true one, as a share of that; null without a signal.</summary>
    public required double? FasterTransferMissed { get; init; }

    /// <summary>The same in the standard deviations that are told with it.</summary>
    public required double? FasterTransferErrors { get; init; }

    /// <inheritdoc cref="FasterTransfer"/>
    public required string LowerConductance { get; init; }

    /// <summary>Of lower conductance: the change of a night's ultrafiltration that is told less the true one, as a share of that; null without a signal.</summary>
    public required double? LowerConductanceMissed { get; init; }

    /// <summary>The same in the standard deviations that are told with it.</summary>
    public required double? LowerConductanceErrors { get; init; }

    /// <inheritdoc cref="FasterTransfer"/>
    public required string MoreFluidLoss { get; init; }

    /// <inheritdoc cref="FasterTransfer"/>
    public required string DrainFault { get; init; }

    /// <summary>Of a drain fault: the change of a night's ultrafiltration that is told less the true one, as a share of that; null without a signal.</summary>
    public required double? DrainFaultMissed { get; init; }

    /// <summary>The same in the standard deviations that are told with it.</summary>
    public required double? DrainFaultErrors { get; init; }

    /// <summary>The same of a book with initial drain and ultrafiltration alone.</summary>
    public required string DrainFaultNoCycles { get; init; }

    /// <summary>Of that book: the change of a night's ultrafiltration that is told less the true one, as a share of that; null without a signal.</summary>
    public required double? DrainFaultNoCyclesMissed { get; init; }

    /// <summary>The same in the standard deviations that are told with it.</summary>
    public required double? DrainFaultNoCyclesErrors { get; init; }

    /// <summary>Of that book: the change of the initial drain, likewise.</summary>
    public required double? DrainFaultInitialDrainMissed { get; init; }

    /// <summary>The same in the standard deviations that are told with it.</summary>
    public required double? DrainFaultInitialDrainErrors { get; init; }

    /// <summary>Where a dry day takes up what stays behind, of a book with cycles and drain times; empty without a signal, and of people with a wet day.</summary>
    public required string DrainFaultTakenUp { get; init; }

    /// <inheritdoc cref="FasterTransfer"/>
    public required string LostDwell { get; init; }

    /// <summary>The same of a book with initial drain and ultrafiltration, and nothing of the clock.</summary>
    public required string LostDwellNoClock { get; init; }

    /// <inheritdoc cref="FasterTransfer"/>
    public required string WeakerBags { get; init; }

    /// <summary>Of weaker bags: the change of a night's ultrafiltration that is told less the true one, as a share of that; null without a signal.</summary>
    public required double? WeakerBagsMissed { get; init; }

    /// <summary>The same in the standard deviations that are told with it.</summary>
    public required double? WeakerBagsErrors { get; init; }

    /// <summary>The same where half a litre less is filled for the day; empty without a wet day.</summary>
    public required string SmallerDay { get; init; }

    /// <inheritdoc cref="FasterTransfer"/>
    public required string HighPlasmaGlucose { get; init; }

    /// <inheritdoc cref="FasterTransfer"/>
    public required string CountsOtherwise { get; init; }
}
