using MathNet.Numerics.Statistics;
using Transport.Studies;

namespace Transport.Tests.Studies;

/// <summary>The committed tables of the long studies: what they hold is what the library makes today, and what it promises.</summary>
public sealed class StudyTests
{
    private static readonly string Tables = Path.Combine(Repository.Root, "docs", "studies");

    public static TheoryData<string> Names => [.. Study.All.Select(study => study.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void A_random_fiftieth_of_a_table_is_made_again(string name)
    {
        // 2 % of the rows, other ones in every run; a failure names the rows, which can be made again by number. Tolerance 1e-5: other processors
        // round otherwise, and an adaptive step may then differ.
        var study = Study.All.Single(study => study.Name == name);
        var numbers = Enumerable.Range(0, study.Count).ToArray();
        Random.Shared.Shuffle(numbers);
        Assert.Empty(study.Differences(Tables, numbers[..(study.Count / 50)]));
    }

    [Fact]
    public void Reviews_of_stable_years_stay_below_half_a_signal()
    {
        // 1,000 people, 365 nights after 90 of learning, all charts of a book together, at three standard deviations of nights and of a book with ultrafiltration alone.
        var rows = new RecordReviewStudy().Read(Tables);
        Assert.Equal(1000, rows.Count);
        Assert.InRange(rows.Average(row => row.FalseQuiet), 0, 0.5);
        Assert.InRange(rows.Average(row => row.FalseUsual), 0, 0.5);
        Assert.InRange(rows.Average(row => row.FalseLoud), 0, 0.5);
        Assert.InRange(rows.Average(row => row.FalseNightAlone), 0, 0.5);

        // With an initial drain and no cycles: over all people, and of those with a wet day, in whom a chart of drains runs as well, alone.
        foreach (var signals in new Func<RecordReviewRow, int>[] { row => row.FalseInitialDrainQuiet, row => row.FalseInitialDrainMiddle, row => row.FalseInitialDrainLoud, row => row.FalseInitialDrainUsual })
        {
            Assert.InRange(rows.Average(signals), 0, 0.5);
            Assert.InRange(RecordReviewStudy.WithWetDay(rows).Average(signals), 0, 0.5);
        }

        // Missed by people with a dry day alone where nights differ by the larger of 150 mL and 25 % and the book has cycles, and said on the page.
        Assert.InRange(RecordReviewStudy.WithDryDay(rows).Average(row => row.FalseUsual), 0.5, 0.6);
    }

    [Fact]
    public void A_slow_loss_is_found_in_time_where_nights_are_quiet_and_is_missed_where_an_oracle_misses_it()
    {
        // Asked for: 80 % within 30 nights of the crossing of a tenth. Reached at 80 mL; missed by the review and by an oracle that knows all but the day at 150 mL, 200 mL and the
        // larger of 150 mL and 25 %, whose limit is set for half a signal in a stable year (exp(-1/2) of people without one). Never more than 15 in 100 behind it.
        var rows = new RecordReviewStudy().Read(Tables);
        Assert.InRange(Review(row => row.LossQuiet), 0.80, 1);
        Missed(row => row.LossMiddle, row => row.OracleStableMiddle, row => row.OracleLossMiddle);
        Missed(row => row.LossLoud, row => row.OracleStableLoud, row => row.OracleLossLoud);
        Missed(row => row.LossUsual, row => row.OracleStableUsual, row => row.OracleLossUsual);

        // The same oracle by the sum that finds most by that day: more, and not 80 % either.
        Assert.InRange(Oracle(row => row.AgedStableMiddle, row => row.AgedLossMiddle), Oracle(row => row.OracleStableMiddle, row => row.OracleLossMiddle), 0.80);
        Assert.InRange(Oracle(row => row.AgedStableLoud, row => row.AgedLossLoud), Oracle(row => row.OracleStableLoud, row => row.OracleLossLoud), 0.80);
        Assert.InRange(Oracle(row => row.AgedStableUsual, row => row.AgedLossUsual), Oracle(row => row.OracleStableUsual, row => row.OracleLossUsual), 0.80);

        double Review(Func<RecordReviewRow, int> delay) => RecordReviewStudy.FoundWithin(rows, delay, 30);

        void Missed(Func<RecordReviewRow, int> delay, Func<RecordReviewRow, double> stable, Func<RecordReviewRow, double> lost)
        {
            var oracle = Oracle(stable, lost);
            Assert.InRange(oracle, 0, 0.80);
            Assert.InRange(Review(delay), oracle - 0.15, 0.80);
        }

        double Oracle(Func<RecordReviewRow, double> stable, Func<RecordReviewRow, double> lost) => RecordReviewStudy.FoundByOracle(rows, rows, stable, lost);
    }

    [Fact]
    public void A_drain_fault_is_found_within_a_fortnight_by_books_that_can_show_it()
    {
        // Asked for: 90 % within 14 nights at 150 mL. Every other person has a dry day, after which the initial drain is enough; after a wet day it takes cycles or drain times.
        // Books that cannot show it miss it, and that is asserted too: nightly ultrafiltration alone, and night and day in one number.
        var rows = new RecordReviewStudy().Read(Tables);
        var (dry, wet) = (RecordReviewStudy.WithDryDay(rows), RecordReviewStudy.WithWetDay(rows));
        Assert.InRange(Found(dry, row => row.FaultCycles), 0.9, 1);
        Assert.InRange(Found(wet, row => row.FaultCycles), 0.9, 1);
        Assert.InRange(Found(dry, row => row.FaultInitialDrain), 0.9, 1);
        Assert.InRange(Found(dry, row => row.FaultTakenUpInitialDrain!.Value), 0.9, 1);
        Assert.InRange(Found(dry, row => row.FaultTakenUpCycles!.Value), 0.9, 1);
        Assert.InRange(Found(dry, row => row.FaultNightAlone), 0, 0.85);
        Assert.InRange(Found(wet, row => row.FaultNightAlone), 0, 0.5);
        Assert.InRange(Found(rows, row => row.FaultNightAndDay), 0, 0.1);

        // By the initial drain of a wet day an oracle that knows all but the day misses 90 % as well; the review, which has a chart for it, comes within 15 in 100 of that.
        var oracle = Oracle(wet);
        Assert.InRange(Oracle(dry), 0.9, 1);
        Assert.InRange(oracle, 0, 0.9);
        Assert.InRange(Found(wet, row => row.FaultInitialDrain), oracle - 0.15, 0.9);
        Assert.InRange(Found(wet, row => row.HalfFaultInitialDrain), 0, 0.3);
        Assert.InRange(Found(wet, row => row.DoubleFaultInitialDrain), 0.9, 1);

        double Oracle(IReadOnlyList<RecordReviewRow> of) => RecordReviewStudy.FoundByOracle(of, of, row => row.OracleStableInitialDrain, row => row.OracleFaultInitialDrain);

        double Found(IReadOnlyList<RecordReviewRow> of, Func<RecordReviewRow, int> delay) => RecordReviewStudy.FoundWithin(of, delay, 14);
    }

    [Fact]
    public void Drains_and_the_clock_are_told_from_membranes_and_three_faults_of_a_membrane_are_not_told_apart()
    {
        // The truth among the two explanations that are named, of all thousand; each story that the table has, and a sum that the reader can make from it.
        var rows = new RecordReviewStudy().Read(Tables);
        Assert.InRange(Named(row => row.DrainFault, ChangeCause.DrainTrouble), 0.95, 1);
        Assert.InRange(Named(row => row.LostDwell, ChangeCause.LostDwell), 0.95, 1);
        Assert.InRange(Named(row => row.FasterTransfer, ChangeCause.FasterTransfer), 0.6, 0.8);
        Assert.InRange(Named(row => row.LowerConductance, ChangeCause.LowerConductance), 0.6, 0.8);
        Assert.InRange(Named(row => row.MoreFluidLoss, ChangeCause.MoreFluidLoss), 0.6, 0.8);
        Assert.InRange(Named(row => row.WeakerBags, ChangeCause.RunDiffers), 0.9, 1);

        // Half a litre less for the day is asked of people with a wet day; in half of the books without cycles a drain fault is told from it, and named beside it in most others.
        Assert.InRange(RecordReviewStudy.WithWetDay(rows).Average(row => row.SmallerDay.StartsWith("DayDiffers", StringComparison.Ordinal) ? 1.0 : 0), 0.75, 1);
        Assert.InRange(Named(row => row.DrainFaultNoCycles, ChangeCause.DrainTrouble), 0.8, 1);
        Assert.InRange(RecordReviewStudy.WithDryDay(rows).Average(row => row.DrainFaultTakenUp.StartsWith("DrainTrouble", StringComparison.Ordinal) ? 1.0 : 0), 0.95, 1);

        // Missed: dwell that is lost from a book without a clock, and a glucose or a way of counting of which the book says nothing.
        Assert.InRange(Named(row => row.LostDwellNoClock, ChangeCause.LostDwell), 0, 0.1);
        Assert.InRange(Named(row => row.HighPlasmaGlucose, ChangeCause.HighPlasmaGlucose), 0.3, 0.6);
        Assert.InRange(Named(row => row.CountsOtherwise, ChangeCause.BookCountsOtherwise), 0.3, 0.6);

        // No drain fault is taken for a membrane's, and no membrane's for a drain's.
        Assert.InRange(rows.Average(row => row.FasterTransfer.StartsWith("DrainTrouble", StringComparison.Ordinal) ? 1.0 : 0), 0, 0.02);
        Assert.InRange(rows.Average(row => row.LowerConductance.StartsWith("DrainTrouble", StringComparison.Ordinal) ? 1.0 : 0), 0, 0.02);

        double Named(Func<RecordReviewRow, string> told, ChangeCause truth) => rows.Average(row => told(row).Split(' ').Contains(truth.ToString()) ? 1.0 : 0);
    }

    [Fact]
    public void The_size_of_a_change_is_told_with_a_band_that_holds_it()
    {
        // 90 % bands: nine in ten hold the truth, within three binomial standard deviations of a thousand and a point (4 %); of half of them
        // 6 %, and an initial drain has a doubt of 20 mL at least, which is wide for some. The middle is told to a tenth.
        var rows = new RecordReviewStudy().Read(Tables);
        foreach (var (missed, errors) in new (Func<RecordReviewRow, double?> Missed, Func<RecordReviewRow, double?> Errors)[]
        {
            (row => row.FasterTransferMissed, row => row.FasterTransferErrors),
            (row => row.LowerConductanceMissed, row => row.LowerConductanceErrors),
            (row => row.WeakerBagsMissed, row => row.WeakerBagsErrors),
            (row => row.DrainFaultMissed, row => row.DrainFaultErrors),
        })
        {
            Assert.InRange(rows.Select(errors).OfType<double>().Average(error => Math.Abs(error) < 1.6449 ? 1.0 : 0), 0.86, 0.94);
            Assert.InRange(rows.Select(missed).OfType<double>().Median(), -0.1, 0.1);
        }

        var dry = RecordReviewStudy.WithDryDay(rows);
        Assert.InRange(dry.Select(row => row.DrainFaultNoCyclesErrors).OfType<double>().Average(error => Math.Abs(error) < 1.6449 ? 1.0 : 0), 0.84, 0.96);
        Assert.InRange(dry.Select(row => row.DrainFaultInitialDrainErrors).OfType<double>().Average(error => Math.Abs(error) < 1.6449 ? 1.0 : 0), 0.84, 0.97);
    }

    [Fact]
    public void Models_are_told_apart_by_sodium_and_the_true_one_is_hardly_ever_spoken_against()
    {
        // 150 people in each world. A true model behind by more than 4 is wrongly left: at most one in twenty, which the limit of 4 was not set for and which the table shows it to keep.
        var rows = new ModelComparisonStudy().Read(Tables);
        Assert.Equal(600, rows.Count);
        Assert.InRange(rows.Count(row => row.WithoutOptimum.Length > 0), 0, 6);
        foreach (var world in Enum.GetValues<ComparisonWorld>())
        {
            var truth = rows.Where(row => row.World == world && row.WithoutOptimum.Length == 0).Select(row => world switch
            {
                ComparisonWorld.NoUltrasmallPores => row.NoUltrasmallPores,
                ComparisonWorld.OneBarrier => row.OneBarrier,
                _ => row.ThreePores,
            }).ToList();
            Assert.InRange(truth.Average(verdict => verdict is ModelVerdict.Best or ModelVerdict.NotTold ? 1.0 : 0), 0.95, 1);
        }

        // With sodium most people with ultrasmall pores are told from those without; without it hardly anybody is, which is asserted as the miss it is.
        Assert.InRange(Ahead(ComparisonWorld.ThreePores, row => row.LeadOverNoUltrasmall), 0.8, 1);
        Assert.InRange(Ahead(ComparisonWorld.ThreePoresWithoutSodium, row => row.LeadOverNoUltrasmall), 0, 0.05);
        Assert.InRange(Ahead(ComparisonWorld.NoUltrasmallPores, row => -row.LeadOverNoUltrasmall), 0.35, 0.65);
        Assert.InRange(Ahead(ComparisonWorld.OneBarrier, row => -row.LeadOverBarrier), 0.15, 0.4);

        double Ahead(ComparisonWorld world, Func<ModelComparisonRow, double?> lead) =>
            rows.Where(row => row.World == world && row.WithoutOptimum.Length == 0).Average(row => lead(row) > 4 ? 1.0 : 0);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Intervals_hold_what_they_promise_where_the_world_is_as_the_model_says(bool isStrong)
    {
        // 1,000 virtual people tested at 2.27 % or 3.86 % and fitted from the sheet. A 90 % interval has to hold 87 to 93 %: three binomial standard
        // deviations of 0.95 %. The same for ultrafiltration of a later dwell, at the tested strength and at the other, with the night's noise.
        var rows = new RecoveryStudy(World.AsModelled, isStrong).Read(Tables);
        Assert.Equal(1000, rows.Count);
        Assert.InRange(Held(row => row.DiffusionAreaPlace), 0.87, 0.93);
        Assert.InRange(Held(row => row.GlucoseScalePlace), 0.87, 0.93);
        Assert.InRange(Held(row => row.OsmoticConductancePlace), 0.87, 0.93);
        Assert.InRange(Held(row => row.TransientPlace), 0.87, 0.93);
        Assert.InRange(Held(row => row.LymphPlace), 0.87, 0.93);
        Assert.InRange(Held(row => row.UltrasmallPlace), 0.87, 0.93);
        Assert.InRange(Held(row => row.SodiumPermeabilityPlace), 0.87, 0.93);
        Assert.InRange(rows.Average(row => row.TestedLow <= row.TestedMilliliters && row.TestedMilliliters <= row.TestedHigh ? 1.0 : 0), 0.87, 0.93);
        Assert.InRange(rows.Average(row => row.OtherLow <= row.OtherMilliliters && row.OtherMilliliters <= row.OtherHigh ? 1.0 : 0), 0.87, 0.93);

        double Held(Func<RecoveryRow, double?> place) => rows.Average(row => Math.Abs(place(row)!.Value - 0.5) <= 0.45 ? 1.0 : 0);
    }
}
