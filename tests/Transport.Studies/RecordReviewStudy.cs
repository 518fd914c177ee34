using System.Globalization;
using System.Text;
using MathNet.Numerics.Statistics;

namespace Transport.Studies;

/// <summary>What a review of nights finds, how soon, and how often it cries wolf: virtual people whose fit is wrong by a posterior draw.</summary>
public sealed class RecordReviewStudy : Study<RecordReviewRow>
{
    private const int Seed = 20261127;
    private const int Learning = 90;
    private const int Year = 365;
    private const int Begins = 150;
    private const double Fault = 0.1;
    private const double Loss = 0.2;

    private const double LostMinutes = 90;
    private const double LessOfDay = 500;
    private const int LossNights = 60;

    private const string TakenUpByDay = "drain fault, what stays behind is taken up by the dry day";

    /// <summary>A delay of what was not found.</summary>
    public const int NotFound = -1000;

    private static readonly DialysisSolution Tested = DialysisSolution.Glucose227;
    private static readonly DialysisSolution[] NightFluids = [DialysisSolution.Glucose136, DialysisSolution.Glucose227, DialysisSolution.OfGlucose(100.75)];

    private static readonly (string Name, Func<RecordReviewRow, string> Read, ChangeCause Truth)[] Stories =
    [
        ("faster transfer", row => row.FasterTransfer, ChangeCause.FasterTransfer),
        ("lower conductance", row => row.LowerConductance, ChangeCause.LowerConductance),
        ("more fluid loss", row => row.MoreFluidLoss, ChangeCause.MoreFluidLoss),
        ("drain fault", row => row.DrainFault, ChangeCause.DrainTrouble),
        ("drain fault, initial drain and no cycles in the book", row => row.DrainFaultNoCycles, ChangeCause.DrainTrouble),
        (TakenUpByDay, row => row.DrainFaultTakenUp, ChangeCause.DrainTrouble),
        ("lost dwell", row => row.LostDwell, ChangeCause.LostDwell),
        ("lost dwell, no average dwell or drain times in the book", row => row.LostDwellNoClock, ChangeCause.LostDwell),
        ("weaker bags", row => row.WeakerBags, ChangeCause.RunDiffers),
        ("half a litre less filled for the day, of people with a wet day", row => row.SmallerDay, ChangeCause.DayDiffers),
        ("high plasma glucose", row => row.HighPlasmaGlucose, ChangeCause.HighPlasmaGlucose),
        ("book counts otherwise", row => row.CountsOtherwise, ChangeCause.BookCountsOtherwise),
    ];

    /// <inheritdoc/>
    public override string Name => "record-review";

    /// <inheritdoc/>
    public override int Count => 1000;

    /// <inheritdoc/>
    public override RecordReviewRow Row(int number)
    {
        // Every other person has a dry day; strengths in turn, of which the test has met one.
        var (patient, truth, fitted) = VirtualPerson.Of(Seed, number);
        var isDry = number % 2 == 0;
        var regimen = Regimen.Cycling(
            TimeSpan.FromHours(9), 5, Volume.FromLiters(2), NightFluids[number % 3], isDry ? null : new(Tested, Volume.FromLiters(1.5)));
        var writer = new VirtualBook(patient, truth, regimen);
        var usual = Math.Max(150, 0.25 * writer.NightMilliliters);
        var seed = unchecked(31 * Seed + number);
        var slow = number % 4 < 2 ? BookStory.FasterTransfer : BookStory.LowerConductance;
        var stable = Stable(BookKind.WithCycles, usual);
        var losses = LikelihoodChart.Watch.SlowLoss(slow == BookStory.FasterTransfer ? ChangeCause.FasterTransfer : ChangeCause.LowerConductance);
        var aged = losses with { WeightPower = 4 };
        var (faster, conductance, weaker) = (Told(BookStory.FasterTransfer, 0.4, LossNights), Told(BookStory.LowerConductance, 0.4, LossNights), Told(BookStory.WeakerBags, 1, 0));
        var (drains, drainsAlone) = (Told(BookStory.DrainFault, Fault, 0), Told(BookStory.DrainFault, Fault, 0, BookKind.WithInitialDrain));
        return new()
        {
            Person = number,
            NightMilliliters = Math.Round(writer.NightMilliliters, 1),
            FalseQuiet = Signals(Stable(BookKind.WithCycles, 80)),
            FalseUsual = Signals(stable),
            FalseLoud = Signals(Stable(BookKind.WithCycles, 200)),
            FalseNightAlone = Signals(Stable(BookKind.NightAlone, usual)),
            FalseInitialDrainQuiet = Signals(Stable(BookKind.WithInitialDrain, 80)),
            FalseInitialDrainMiddle = Signals(Stable(BookKind.WithInitialDrain, 150)),
            FalseInitialDrainLoud = Signals(Stable(BookKind.WithInitialDrain, 200)),
            FalseInitialDrainUsual = Signals(Stable(BookKind.WithInitialDrain, usual)),
            RuleWarnings = stable.Findings.Count(finding => finding.Severity == Severity.Warning && finding.Code != "record-change-found"),
            LossQuiet = LossFound(80),
            LossUsual = LossFound(usual),
            LossMiddle = LossFound(150),
            LossLoud = LossFound(200),
            OracleStableQuiet = OracleStable(80, losses),
            OracleStableMiddle = OracleStable(150, losses),
            OracleStableLoud = OracleStable(200, losses),
            OracleStableUsual = OracleStable(usual, losses),
            OracleLossQuiet = OracleLoss(80, losses),
            OracleLossMiddle = OracleLoss(150, losses),
            OracleLossLoud = OracleLoss(200, losses),
            OracleLossUsual = OracleLoss(usual, losses),
            AgedStableQuiet = OracleStable(80, aged),
            AgedStableMiddle = OracleStable(150, aged),
            AgedStableLoud = OracleStable(200, aged),
            AgedStableUsual = OracleStable(usual, aged),
            AgedLossQuiet = OracleLoss(80, aged),
            AgedLossMiddle = OracleLoss(150, aged),
            AgedLossLoud = OracleLoss(200, aged),
            AgedLossUsual = OracleLoss(usual, aged),
            OracleStableInitialDrain = DrainOracle(BookStory.Stable, Learning, Learning + Year),
            OracleFaultInitialDrain = DrainOracle(BookStory.DrainFault, Begins, Begins + 14),
            FaultNightAlone = FaultFound(BookKind.NightAlone),
            FaultNightAndDay = FaultFound(BookKind.NightAndDayAlone),
            FaultInitialDrain = FaultFound(BookKind.WithInitialDrain),
            FaultInitialDrainUnaided = FaultFound(BookKind.WithInitialDrain, limits: new() { Charts = new() { DrainFaultLogRatio = 50 } }),
            HalfFaultInitialDrain = FaultFound(BookKind.WithInitialDrain, 0.5 * Fault),
            DoubleFaultInitialDrain = FaultFound(BookKind.WithInitialDrain, 2 * Fault),
            FaultCycles = FaultFound(BookKind.WithCycles),
            FaultTakenUpInitialDrain = isDry ? FaultFound(BookKind.WithInitialDrain, story: BookStory.DrainFaultTakenUp) : null,
            FaultTakenUpCycles = isDry ? FaultFound(BookKind.WithCycles, story: BookStory.DrainFaultTakenUp) : null,
            FasterTransfer = faster.Causes,
            FasterTransferMissed = faster.Night?.Missed,
            FasterTransferErrors = faster.Night?.Errors,
            LowerConductance = conductance.Causes,
            LowerConductanceMissed = conductance.Night?.Missed,
            LowerConductanceErrors = conductance.Night?.Errors,
            MoreFluidLoss = Told(BookStory.MoreFluidLoss, 0.4, LossNights).Causes,
            DrainFault = drains.Causes,
            DrainFaultMissed = drains.Night?.Missed,
            DrainFaultErrors = drains.Night?.Errors,
            DrainFaultNoCycles = drainsAlone.Causes,
            DrainFaultNoCyclesMissed = drainsAlone.Night?.Missed,
            DrainFaultNoCyclesErrors = drainsAlone.Night?.Errors,
            DrainFaultInitialDrainMissed = drainsAlone.InitialDrain?.Missed,
            DrainFaultInitialDrainErrors = drainsAlone.InitialDrain?.Errors,
            DrainFaultTakenUp = isDry ? Told(BookStory.DrainFaultTakenUp, Fault, 0).Causes : "",
            LostDwell = Told(BookStory.LostDwell, LostMinutes, 0).Causes,
            LostDwellNoClock = Told(BookStory.LostDwell, LostMinutes, 0, BookKind.WithInitialDrain).Causes,
            WeakerBags = weaker.Causes,
            WeakerBagsMissed = weaker.Night?.Missed,
            WeakerBagsErrors = weaker.Night?.Errors,
            SmallerDay = isDry ? "" : Told(BookStory.SmallerDay, LessOfDay, 0).Causes,
            HighPlasmaGlucose = Told(BookStory.HighPlasmaGlucose, 12, 0).Causes,
            CountsOtherwise = Told(BookStory.CountsOtherwise, 1, 0).Causes,
        };

        RecordReview Stable(BookKind kind, double deviation) => Review(writer.Write(seed, Learning + Year, deviation, kind));

        RecordReview Review(IReadOnlyList<NightRecord> nights, ReviewLimits? limits = null) =>
            RecordReview.Run(patient, fitted, RecordBook.From(nights, "virtual"), new() { Tested = Tested, Limits = limits ?? ReviewLimits.Default });

        int Signals(RecordReview review) => review.Changes.Count(change => NightOf(change) >= Learning);

        int LossFound(double deviation)
        {
            var review = Review(writer.Write(seed, Begins + LossNights + 90, deviation, BookKind.WithCycles, slow, Begins, Loss, LossNights));
            return First(review, Begins) is { } change ? NightOf(change) - (Begins + LossNights / 2) : NotFound;
        }

        double OracleStable(double deviation, LikelihoodChart.Watch watch) => Oracle(writer.Write(seed, Learning + Year, deviation, BookKind.WithCycles), deviation, watch, Learning, Learning + Year);

        double OracleLoss(double deviation, LikelihoodChart.Watch watch) => Oracle(
            writer.Write(seed, Begins + LossNights + 1, deviation, BookKind.WithCycles, slow, Begins, Loss, LossNights), deviation, watch, Begins, Begins + LossNights / 2 + 30);

        double DrainOracle(BookStory story, int from, int to) =>
            Oracle(writer.Write(seed, to + (story == BookStory.Stable ? 0 : 1), 150, BookKind.WithInitialDrain, story, Begins, Fault), 150, LikelihoodChart.Watch.Drains, from, to);

        double Oracle(IReadOnlyList<NightRecord> nights, double deviation, LikelihoodChart.Watch watch, int from, int to)
        {
            var review = RecordReview.Run(patient, VirtualPerson.Known(truth), RecordBook.From(nights, "virtual"), new()
            {
                Tested = NightFluids[number % 3],
                Noise = VirtualBook.NoiseOf(patient, deviation),
                Limits = new() { Charts = new() { SlowLossLogRatio = 50, QuietSlowLossLogRatio = 50, DrainFaultLogRatio = 50, SuddenUltrafiltration = new(3, 50), SlowRise = new(1, 10), Drains = new(3, 50) } },
                Losses = watch,
            });
            return Math.Round(review.Nights.Where(night => Day(night.Record.Date) >= from && Day(night.Record.Date) <= to).Max(night => night.LossLogRatio ?? -100), 3);
        }

        int FaultFound(BookKind kind, double share = Fault, ReviewLimits? limits = null, BookStory story = BookStory.DrainFault)
        {
            var review = Review(writer.Write(seed, Begins + 90, 150, kind, story, Begins, share), limits);
            return First(review, Begins) is { } change ? NightOf(change) - Begins : NotFound;
        }

        (string Causes, (double Missed, double Errors)? Night, (double Missed, double Errors)? InitialDrain) Told(BookStory story, double size, int over, BookKind kind = BookKind.WithCycles)
        {
            var review = Review(writer.Write(seed, Begins + 120, usual, kind, story, Begins, size, over));
            if (review.Findings.Any(finding => finding.Code == "record-uf-counts-otherwise"))
            {
                return ($"{ChangeCause.BookCountsOtherwise} {ChangeCause.BookCountsOtherwise}", null, null);
            }

            if (First(review, Begins) is not { } change)
            {
                return ("", null, null);
            }

            var (night, initialDrain) = writer.ChangeMilliliters(story, size, over == 0 ? 1 : Math.Clamp((Day(change.LookedAtUntil) - Begins) / (double)over, 0, 1));
            return ($"{change.Explanations[0].Cause} {change.Explanations[1].Cause}", Beside(change.Size, night), Beside(change.InitialDrainSize, initialDrain));
        }

        // The size that is told beside the true one of the night it is told of: as a share of that, and in its own standard deviations.
        static (double Missed, double Errors)? Beside(Band<Volume>? told, double truly) => told is not { } size ? null : (
            Math.Round((size.Median.Milliliters - truly) / Math.Abs(truly), 3),
            Math.Round((size.Median.Milliliters - truly) / ((size.High - size.Low).Milliliters / (2 * 1.6449)), 2));
    }

    private static int NightOf(ChangeFound change) => Day(change.SignalledOn);

    private static int Day(DateOnly date) => date.DayNumber - new DateOnly(2025, 1, 1).DayNumber;

    private static ChangeFound? First(RecordReview review, int from) => review.Changes.FirstOrDefault(change => NightOf(change) >= from);

    /// <inheritdoc/>
    protected override string Page(IReadOnlyList<RecordReviewRow> rows)
    {
        var page = new StringBuilder();
        page.Append(CultureInfo.InvariantCulture, $"""
            # What a review of nights finds: {rows.Count} virtual people

            Made by `dotnet run -c Release --project tests/Transport.Studies -- {Name}`; seed {Seed}; the rows are in `{Name}.csv`.
            Each person's membrane is drawn as people differ, and what the review believes of it is wrong by a draw of what one test at 2.27 % leaves open
            (`VirtualPerson`). Every other person has a dry day; nights are 5 × 2 L in 9 h at 1.36 %, 2.27 % or a mixture, in turn. How nights are made, and what the review does not
            know of it, stands at `VirtualBook`: heavy tails, a slow wander, skewed residual volumes, conservation of volume from drain to drain, an offset of
            the person, lost dwell, one night in ten missing. All charts of a book count together.

            ## Nothing happens: signals in a year, after {Learning} nights of learning

            | night-to-night SD | book | signals a patient-year | dry day | wet day | people without one |
            |---|---|---|---|---|---|
            {False("80 mL", "with cycles", row => row.FalseQuiet)}
            {False("the larger of 150 mL and 25 %", "with cycles", row => row.FalseUsual)}
            {False("200 mL", "with cycles", row => row.FalseLoud)}
            {False("the larger of 150 mL and 25 %", "ultrafiltration alone", row => row.FalseNightAlone)}
            {False("80 mL", "and the initial drain", row => row.FalseInitialDrainQuiet)}
            {False("150 mL", "and the initial drain", row => row.FalseInitialDrainMiddle)}
            {False("200 mL", "and the initial drain", row => row.FalseInitialDrainLoud)}
            {False("the larger of 150 mL and 25 %", "and the initial drain", row => row.FalseInitialDrainUsual)}

            Asked for: at most 0.5, which every book keeps over all people. **Of people with a dry day alone, where nights differ by the larger of 150 mL and 25 %, books with cycles do not:** the initial
            drain and the first cycle add a fifth of a signal there, since what comes out after a dry day is little, and skewed. Where a chart of drains runs (initial drain of wet days, no cycles) it is kept at each SD. The means are good to 0.02, those of half the people to
            0.03. On the last page of the stable year (the larger of 150 mL and 25 %) rules (drains, dwell, bags, weight) add {rows.Average(row => row.RuleWarnings):0.00} warnings a person, {rows.Where(row => row.NightMilliliters >= 300).Average(row => row.RuleWarnings):0.00} where a
            night truly returns 300 mL or more; of those whose nights bring back less than went in that is said.

            ## A fifth of ultrafiltration is lost over {LossNights} nights: found within 30 nights of the day when a tenth is lost

            Half by faster transfer, half by lower conductance; the book has cycles.

            | night-to-night SD | all people | an oracle by the same sum | by the best sum | night returns 600 mL or more | the oracle by the best sum | half of these are found within |
            |---|---|---|---|---|---|---|
            {Lost("80 mL", row => row.LossQuiet, (row => row.OracleStableQuiet, row => row.OracleLossQuiet), (row => row.AgedStableQuiet, row => row.AgedLossQuiet))}
            {Lost("150 mL", row => row.LossMiddle, (row => row.OracleStableMiddle, row => row.OracleLossMiddle), (row => row.AgedStableMiddle, row => row.AgedLossMiddle))}
            {Lost("200 mL", row => row.LossLoud, (row => row.OracleStableLoud, row => row.OracleLossLoud), (row => row.AgedStableLoud, row => row.AgedLossLoud))}
            {Lost("the larger of 150 mL and 25 %", row => row.LossUsual, (row => row.OracleStableUsual, row => row.OracleLossUsual), (row => row.AgedStableUsual, row => row.AgedLossUsual))}

            Asked for: 80 %. **Where nights differ by 200 mL, or by the larger of 150 mL and 25 %, not even an oracle finds 80 % of these people at that rate of false alarms; at 150 mL it comes to {Whole(FoundByOracle(rows, rows, row => row.AgedStableMiddle, row => row.AgedLossMiddle))}, give or take one.** The oracle
            knows the membrane, the constants of how nights differ, and of the loss its cause and its slope; not when it begins. It has read all volumes of the same nights, by the exact likelihood of
            normal nights, summed over when the loss may have begun. Its limit is set at each SD so that it cries wolf in 0.5 of a year of nights. Summed as the review does, all beginnings alike
            (Shiryaev and Roberts), it finds a loss soonest on average; weighed by the fourth power of their age it finds most by this day, of the sums that were tried. What hides the rest is the slow wander:
            a tenth of the variance of a night, and more than half of that of a month. Heavy tails hide a point or two from a statistic for normal nights (computed apart from this study). Between oracle and review lies what the review has to
            leave open. In the review those weights were tried on a quarter of these people (apart from this study): at equal false alarms they find a few more where the SD is 25 %, no more elsewhere, and books of ultrafiltration
            alone then cry wolf more often than 0.5 times a year; so there all beginnings count alike. {rows.Average(row => row.NightMilliliters < 600 ? 100.0 : 0):0} % of these people
            have nights of less than 600 mL; a fifth of little is little, whatever the chart. Nights are counted from the crossing of a tenth; negative is before.

            ## Each drain leaves a further tenth behind: found within 14 nights, SD 150 mL

            | the book has | dry day | an oracle | wet day | an oracle | half are found within (dry, wet) |
            |---|---|---|---|---|---|
            {Faults("ultrafiltration of the night alone", row => row.FaultNightAlone)}
            {Faults("night and day in one number", row => row.FaultNightAndDay)}
            {Faults("and the initial drain", row => row.FaultInitialDrain, row => row.OracleStableInitialDrain, row => row.OracleFaultInitialDrain)}
            {Faults("the same, where a twentieth stays behind", row => row.HalfFaultInitialDrain)}
            {Faults("the same, where a fifth stays behind", row => row.DoubleFaultInitialDrain)}
            {Faults("a tenth; and cycle volumes and drain times", row => row.FaultCycles)}
            {TakenUp("ultrafiltration and initial drain, where a dry day takes up what stays behind", row => row.FaultTakenUpInitialDrain)}
            {TakenUp("the same; and cycle volumes and drain times", row => row.FaultTakenUpCycles)}

            Asked for: 90 %. After a dry day what stays in the morning comes out before the first fill, if it is still there, so the initial drain shows it at once. By simulation a dry day of 15 h takes up all of it:
            then ultrafiltration alone falls, by all that stays behind, and the initial drain says nothing. After a wet day nearly as
            much is left in the evening as in the morning: but for the first night ultrafiltration and initial drain are off by a hundred millilitres or less, in opposite directions, and only cycles and
            drain times show it soon. So where a book has an initial drain of wet days and neither of them, a chart of its own weighs both numbers together by the likelihood of a tenth left behind
            (summed over the last two weeks of nights on which it may have begun); without it {Whole(FoundWithin(WithWetDay(rows), row => row.FaultInitialDrainUnaided, 14))} of those after a wet day are found. In one number for night and day the fault cancels, but for what it dilutes.
            The oracle knows the membrane, how nights differ and how much a faulty drain leaves, reads the same numbers by the same sum, and spends all its false alarms, 0.5 a year, on this fault:
            **after a wet day without cycles or drain times it finds fewer than 90 % too.** The review spends most of its half a signal a year on other charts, and learns membrane and scatter from the nights; that
            is the difference. After a wet day a fault half as large is mostly missed within two weeks, one twice as large hardly ever.
            The limit was chosen on these people, so that other people may be found a little less often.

            What a chart of ultrafiltration alone can find at best, computed and not simulated: nights independent and normal, their mean and SD known, the shift lasting, the best
            cumulative sum (k of 0.25 to 1.25) that cries wolf once in two years. A shift of 200 mL is {200 / 150.0:0.00} SD where nights differ by 150 mL, and 2 where they differ by 100.

            | shift, SD | within 3 nights | 5 | 7 | 14 | 28 |
            |---|---|---|---|---|---|
            {AtBest()}

            ## What it was, and what the page said

            At the larger of 150 mL and 25 %, books with cycles; membrane changes take 40 % of ultrafiltration over {LossNights} nights, drains leave a tenth behind,
            a fifth of the dwell is lost ({LostMinutes} min a night, which the book does not say), bags are 40 % weaker, the day has half a litre less than is written, plasma glucose is 12 mmol/L higher, the total counts the day as well. Shares of all people, by the most compatible explanation
            at the first signal within 120 nights; last, how often the truth is among the two that are named.


            """);
        var causes = Enum.GetValues<ChangeCause>();
        page.Append("| in truth | ").AppendJoin(" | ", causes.Select(ChangeWords.Name)).Append(" | no signal | among the two |\n|").Append(string.Concat(Enumerable.Repeat("---|", causes.Length + 3))).Append('\n');
        foreach (var (name, read, truth) in Stories)
        {
            var of = truth == ChangeCause.DayDiffers ? WithWetDay(rows) : name == TakenUpByDay ? WithDryDay(rows) : rows;
            page.Append(CultureInfo.InvariantCulture, $"| {name} | ")
                .AppendJoin(" | ", causes.Select(cause => Whole(of.Average(row => read(row).StartsWith(cause.ToString(), StringComparison.Ordinal) ? 1.0 : 0))))
                .Append(CultureInfo.InvariantCulture, $" | {Whole(of.Average(row => read(row).Length == 0 ? 1.0 : 0))} | {Whole(of.Average(row => read(row).Split(' ').Contains(truth.ToString()) ? 1.0 : 0))} |\n");
        }

        return page.Append(CultureInfo.InvariantCulture, $"""

            Three faults of the membrane look alike from the nights of one regimen, as they do at 4 h of a dwell: the page names two and the test between them.
            High plasma glucose that is not written down looks like any of them. What is sure is the other half: drains are told from membranes, and dwell that is lost
            from both where the book has an average dwell. Without one it is hardly ever named: so much dwell moves ultrafiltration by little, and most books give no signal at all.
            The row of a drain fault in books without cycles mixes two kinds of people: after a dry day, where the initial drain shows the fault at once, drains are named first in {Whole(NamedFirst(WithDryDay(rows)))};
            after a wet day, where the chart of drains is needed, in {Whole(NamedFirst(WithWetDay(rows)))}.

            ## By how much

            The change of a night's ultrafiltration that the page tells, at the larger of 150 mL and 25 %, beside the true one of the night it is told of; of those with a signal. It is told of the last of four weeks
            of nights after the signal, or of later ones where the same change signals again.

            | in truth | told less true, share of the true: middle | from | to (four in five) | the true one is within the 90 % band |
            |---|---|---|---|---|
            {Sizes("faster transfer, 40 % in the end", row => row.FasterTransferMissed, row => row.FasterTransferErrors)}
            {Sizes("lower conductance, likewise", row => row.LowerConductanceMissed, row => row.LowerConductanceErrors)}
            {Sizes("weaker bags", row => row.WeakerBagsMissed, row => row.WeakerBagsErrors)}
            {Sizes("drain fault, dry day", row => row.DrainFaultMissed, row => row.DrainFaultErrors, WithDryDay(rows))}
            {Sizes("drain fault, wet day", row => row.DrainFaultMissed, row => row.DrainFaultErrors, WithWetDay(rows))}
            {Sizes("drain fault, dry day, initial drain and no cycles in the book", row => row.DrainFaultNoCyclesMissed, row => row.DrainFaultNoCyclesErrors, WithDryDay(rows))}
            {Sizes("its initial drain", row => row.DrainFaultInitialDrainMissed, row => row.DrainFaultInitialDrainErrors, WithDryDay(rows))}

            A positive share is a loss that is told too small, and an initial drain that is told too large. Each number has a size of its own: an explanation that holds night and day to one size told a loss by
            faster transfer a seventh too small, since a long day answers so large a change by less than the straight line through the fit. All nights since the change began are asked, as if no level had been
            learned anew after the signal. The true size of a drain fault is the mean of 4,000 nights.

            """).ToString();

        string Sizes(string truth, Func<RecordReviewRow, double?> missed, Func<RecordReviewRow, double?> errors, IReadOnlyList<RecordReviewRow>? some = null)
        {
            var of = some ?? rows;
            var shares = of.Select(missed).OfType<double>().Order().ToArray();
            return string.Create(
                CultureInfo.InvariantCulture,
                $"| {truth} | {Share(0.5)} | {Share(0.1)} | {Share(0.9)} | {Whole(of.Select(errors).OfType<double>().Average(error => Math.Abs(error) < 1.6449 ? 1.0 : 0))} |");

            string Share(double quantile) => string.Create(CultureInfo.InvariantCulture, $"{100 * SortedArrayStatistics.Quantile(shares, quantile):+0;−0;0} %");
        }

        static double NamedFirst(IReadOnlyList<RecordReviewRow> of) => of.Average(row => row.DrainFaultNoCycles.StartsWith(nameof(ChangeCause.DrainTrouble), StringComparison.Ordinal) ? 1.0 : 0);

        string False(string deviation, string book, Func<RecordReviewRow, int> read) => string.Create(
            CultureInfo.InvariantCulture,
            $"| {deviation} | {book} | {rows.Average(read):0.00} | {WithDryDay(rows).Average(read):0.00} | {WithWetDay(rows).Average(read):0.00} | {Whole(rows.Average(row => read(row) == 0 ? 1.0 : 0))} |");

        string Lost(string deviation, Func<RecordReviewRow, int> read, params (Func<RecordReviewRow, double> Stable, Func<RecordReviewRow, double> Lost)[] oracles)
        {
            var enough = rows.Where(row => row.NightMilliliters >= 600).ToList();
            var byOracles = string.Join(" | ", oracles.Select(oracle => Whole(FoundByOracle(rows, rows, oracle.Stable, oracle.Lost))));
            return $"| {deviation} | {Whole(FoundWithin(rows, read, 30))} | {byOracles} | {Whole(FoundWithin(enough, read, 30))} | {Whole(FoundByOracle(rows, enough, oracles[^1].Stable, oracles[^1].Lost))} | {Middle(enough, read)} |";
        }

        string TakenUp(string book, Func<RecordReviewRow, int?> read) =>
            $"| {book} | {Whole(FoundWithin(WithDryDay(rows), row => read(row)!.Value, 14))} | – | – | – | {Middle(WithDryDay(rows), row => read(row)!.Value)}, – |";

        string Faults(string book, Func<RecordReviewRow, int> read, Func<RecordReviewRow, double>? stable = null, Func<RecordReviewRow, double>? fault = null)
        {
            var (dry, wet) = (WithDryDay(rows), WithWetDay(rows));
            string Oracle(IReadOnlyList<RecordReviewRow> of) => stable is null ? "–" : Whole(FoundByOracle(of, of, stable, fault!));
            return $"| {book} | {Whole(FoundWithin(dry, read, 14))} | {Oracle(dry)} | {Whole(FoundWithin(wet, read, 14))} | {Oracle(wet)} | {Middle(dry, read)}, {Middle(wet, read)} |";
        }
    }

    /// <summary>People whose long dwell leaves an initial drain.</summary>
    public static IReadOnlyList<RecordReviewRow> WithWetDay(IReadOnlyList<RecordReviewRow> rows) => [.. rows.Where(row => row.Person % 2 == 1)];

    /// <summary>The others.</summary>
    public static IReadOnlyList<RecordReviewRow> WithDryDay(IReadOnlyList<RecordReviewRow> rows) => [.. rows.Where(row => row.Person % 2 == 0)];

    /// <summary>Share of people in whom a review found a change at most so many nights late.</summary>
    /// <param name="rows">The people.</param>
    /// <param name="delay">How late.</param>
    /// <param name="nights">How late it may be.</param>
    public static double FoundWithin(IReadOnlyList<RecordReviewRow> rows, Func<RecordReviewRow, int> delay, int nights) =>
        rows.Average(row => delay(row) > NotFound && delay(row) <= nights ? 1.0 : 0);

    /// <summary>Share of people in whom an oracle found a change that signals half a time in a stable year: without a signal stay exp(−0.5) of the people.</summary>
    /// <param name="all">People whose stable years set the limit. No less than a ratio of one, which speaks for neither.</param>
    /// <param name="of">People of whom the share is asked.</param>
    /// <param name="stable">The oracle's highest log ratio in a stable year.</param>
    /// <param name="changed">Its highest by the day that is asked for.</param>
    public static double FoundByOracle(IReadOnlyList<RecordReviewRow> all, IReadOnlyList<RecordReviewRow> of, Func<RecordReviewRow, double> stable, Func<RecordReviewRow, double> changed)
    {
        var limit = Math.Max(0, all.Select(stable).Order().ElementAt((int)(Math.Exp(-0.5) * all.Count)));
        return of.Average(row => changed(row) > limit ? 1.0 : 0);
    }

    private static string AtBest()
    {
        CusumChart[] charts = [.. new[] { 0.25, 0.5, 0.75, 1, 1.25 }.Select(k => CusumChart.Of(k, 730))];
        return string.Join('\n', new[] { 0.5, 1, 4.0 / 3, 2, 2.5 }.Select(shift => string.Create(
            CultureInfo.InvariantCulture, $"| {shift:0.##} | {string.Join(" | ", new[] { 3, 5, 7, 14, 28 }.Select(nights => Whole(charts.Max(chart => chart.FoundWithin(shift, nights)))))} |")));
    }

    private static string Middle(IReadOnlyList<RecordReviewRow> rows, Func<RecordReviewRow, int> read)
    {
        var sorted = rows.Select(row => read(row) > NotFound ? read(row) : int.MaxValue).Order().ToArray();
        return sorted[sorted.Length / 2] is var middle && middle == int.MaxValue ? "not found" : string.Create(CultureInfo.InvariantCulture, $"{middle} nights");
    }

    private static string Whole(double share) => string.Create(CultureInfo.InvariantCulture, $"{100 * share:0} %");
}
