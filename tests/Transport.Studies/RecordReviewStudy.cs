using System.Globalization;
using System.Text;

namespace Transport.Studies;

/// <summary>What a review of nights finds, how soon, and how often it cries wolf: virtual people whose fit is as wrong as a fit is.</summary>
public sealed class RecordReviewStudy : Study<RecordReviewRow>
{
    private const int Seed = 2026;
    private const int Learning = 90;
    private const int Year = 365;
    private const int Begins = 150;
    private const double Fault = 0.1;
    private const double Loss = 0.2;
    private const int LossNights = 60;

    private static readonly DialysisSolution Tested = DialysisSolution.Glucose227;
    private static readonly DialysisSolution[] NightFluids = [DialysisSolution.Glucose136, DialysisSolution.Glucose227, DialysisSolution.OfGlucose(100.75)];

    private static readonly (string Name, Func<RecordReviewRow, string> Read, ChangeCause Truth)[] Stories =
    [
        ("faster transfer", row => row.FasterTransfer, ChangeCause.FasterTransfer),
        ("lower conductance", row => row.LowerConductance, ChangeCause.LowerConductance),
        ("more fluid loss", row => row.MoreFluidLoss, ChangeCause.MoreFluidLoss),
        ("drain fault", row => row.DrainFault, ChangeCause.DrainTrouble),
        ("weaker bags", row => row.WeakerBags, ChangeCause.RunDiffers),
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
        var (truth, test, _, _) = VirtualTest.Of(Seed, number, Tested, World.AsModelled);
        var ensemble = MembraneFit.Run(test).ToEnsemble(200, unchecked(Seed + 7919 * number));
        var regimen = Regimen.Cycling(
            TimeSpan.FromHours(9), 5, Volume.FromLiters(2), NightFluids[number % 3], number % 2 == 0 ? null : new(Tested, Volume.FromLiters(1.5)));
        var writer = new VirtualBook(Patient.Example, truth, regimen);
        var usual = Math.Max(150, 0.25 * writer.NightMilliliters);
        var seed = unchecked(31 * Seed + number);
        var stable = Stable(BookKind.WithCycles, usual);
        return new()
        {
            Person = number,
            NightMilliliters = Math.Round(writer.NightMilliliters, 1),
            FalseQuiet = Signals(Stable(BookKind.WithCycles, 80)),
            FalseUsual = Signals(stable),
            FalseLoud = Signals(Stable(BookKind.WithCycles, 200)),
            FalseNightAlone = Signals(Stable(BookKind.NightAlone, usual)),
            RuleWarnings = stable.Findings.Count(finding => finding.Severity == Severity.Warning && finding.Code != "record-change-found"),
            LossQuiet = LossFound(80),
            LossUsual = LossFound(usual),
            LossMiddle = LossFound(150),
            LossLoud = LossFound(200),
            FaultNightAlone = FaultFound(BookKind.NightAlone),
            FaultNightAndDay = FaultFound(BookKind.NightAndDayAlone),
            FaultInitialDrain = FaultFound(BookKind.WithInitialDrain),
            FaultCycles = FaultFound(BookKind.WithCycles),
            FasterTransfer = Told(BookStory.FasterTransfer, 0.4, LossNights),
            LowerConductance = Told(BookStory.LowerConductance, 0.4, LossNights),
            MoreFluidLoss = Told(BookStory.MoreFluidLoss, 0.4, LossNights),
            DrainFault = Told(BookStory.DrainFault, Fault, 0),
            WeakerBags = Told(BookStory.WeakerBags, 1, 0),
            HighPlasmaGlucose = Told(BookStory.HighPlasmaGlucose, 12, 0),
            CountsOtherwise = Told(BookStory.CountsOtherwise, 1, 0),
        };

        RecordReview Stable(BookKind kind, double deviation) => Review(writer.Write(seed, Learning + Year, deviation, kind));

        RecordReview Review(IReadOnlyList<NightRecord> nights) =>
            RecordReview.Run(test.Patient, ensemble, RecordBook.From(nights, "virtual"), new() { Tested = Tested });

        int Signals(RecordReview review) => review.Changes.Count(change => NightOf(change) >= Learning);

        int LossFound(double deviation)
        {
            var story = number % 4 < 2 ? BookStory.FasterTransfer : BookStory.LowerConductance;
            var review = Review(writer.Write(seed, Begins + LossNights + 90, deviation, BookKind.WithCycles, story, Begins, Loss, LossNights));
            return First(review, Begins) is { } change ? NightOf(change) - (Begins + LossNights / 2) : -1000;
        }

        int FaultFound(BookKind kind)
        {
            var review = Review(writer.Write(seed, Begins + 90, 150, kind, BookStory.DrainFault, Begins, Fault));
            return First(review, Begins) is { } change ? NightOf(change) - Begins : -1000;
        }

        string Told(BookStory story, double size, int over)
        {
            var review = Review(writer.Write(seed, Begins + 120, usual, BookKind.WithCycles, story, Begins, size, over));
            if (review.Findings.Any(finding => finding.Code == "record-uf-counts-otherwise"))
            {
                return $"{ChangeCause.BookCountsOtherwise} {ChangeCause.BookCountsOtherwise}";
            }

            return First(review, Begins) is { } change ? $"{change.Explanations[0].Cause} {change.Explanations[1].Cause}" : "";
        }
    }

    private static int NightOf(ChangeFound change) => change.SignalledOn.DayNumber - new DateOnly(2025, 1, 1).DayNumber;

    private static ChangeFound? First(RecordReview review, int from) => review.Changes.FirstOrDefault(change => NightOf(change) >= from);

    /// <inheritdoc/>
    protected override string Page(IReadOnlyList<RecordReviewRow> rows)
    {
        var page = new StringBuilder();
        page.Append(CultureInfo.InvariantCulture, $"""
            # What a review of nights finds: {rows.Count} virtual people

            Made by `dotnet run -c Release --project tests/Transport.Studies -- {Name}`; seed {Seed}; the rows are in `{Name}.csv`.

            | a stable year after {Learning} nights of learning | signals a patient-year | people with none |
            |---|---|---|
            | SD 80 mL, all channels | {rows.Average(row => row.FalseQuiet):0.00} | {Percent(rows.Average(row => row.FalseQuiet == 0 ? 1.0 : 0))} |
            | SD the larger of 150 mL and 25 %, all channels | {rows.Average(row => row.FalseUsual):0.00} | {Percent(rows.Average(row => row.FalseUsual == 0 ? 1.0 : 0))} |
            | SD 200 mL, all channels | {rows.Average(row => row.FalseLoud):0.00} | {Percent(rows.Average(row => row.FalseLoud == 0 ? 1.0 : 0))} |
            | SD the larger of 150 mL and 25 %, ultrafiltration alone | {rows.Average(row => row.FalseNightAlone):0.00} | {Percent(rows.Average(row => row.FalseNightAlone == 0 ? 1.0 : 0))} |

            """);
        return page.ToString();
    }

    private static string Percent(double share) => string.Create(CultureInfo.InvariantCulture, $"{100 * share:0.0} %");
}
