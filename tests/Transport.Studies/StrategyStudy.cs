using System.Globalization;

namespace Transport.Studies;

/// <summary>
/// Four ways to choose a night for 1,000 virtual patients: the same for all by habit, the one that does best on average, one for each transport class, one for each
/// patient by a search on the membrane that was fitted to his test. Judged by the true membrane.
/// </summary>
/// <remarks>
/// The loss is glucose absorbed in g, plus 1 g for each 10 mL of ultrafiltration outside 700 to 1,100 mL, 1 g for each 0.01 of weekly Kt/V below 1.5, 2 g a litre and
/// 2 g a cycle (choices, so that four strategies can be told apart by one number; no statement about patients).
/// </remarks>
public sealed class StrategyStudy : Study<StrategyRow>
{
    private const int Seed = 2024;
    private const int TrainingSeed = 2025;
    private const int Trained = 200;

    private static readonly Patient Person = Patient.Example;
    private static readonly RegimenGoals Goals = new(FluidTarget.Between(Volume.FromMilliliters(700), Volume.FromMilliliters(1_100)));
    private static readonly RegimenSearchOptions Options = new() { Layers = DoubtLayers.ParametersAlone };
    private static readonly Lazy<Regimens> Space = new(() => new());
    private static readonly Lazy<(int Fixed, IReadOnlyDictionary<TransportCategory, int> ByCategory)> Rules = new(Train);

    /// <inheritdoc/>
    public override string Name => "dwell-strategies";

    /// <inheritdoc/>
    public override int Count => 1000;

    /// <inheritdoc/>
    public override StrategyRow Row(int number)
    {
        var space = Space.Value;
        var (truth, test, _, _) = VirtualTest.Of(Seed, number, DialysisSolution.Glucose386, World.AsModelled);
        var category = Category(test);
        var fit = MembraneFit.Run(test);
        var actual = space.Run(truth);
        var individual = Least(space.Run(fit.Membrane));
        var (overall, byCategory) = Rules.Value;
        var own = byCategory.GetValueOrDefault(category, overall);
        return new()
        {
            Patient = number,
            Category = category,
            BestLoss = Round(actual[Least(actual)].Loss),
            UsualLoss = Round(actual[space.Usual].Loss),
            FixedLoss = Round(actual[overall].Loss),
            CategoryLoss = Round(actual[own].Loss),
            IndividualLoss = Round(actual[individual].Loss),
            UsualUltrafiltration = Round(actual[space.Usual].Ultrafiltration),
            FixedUltrafiltration = Round(actual[overall].Ultrafiltration),
            CategoryUltrafiltration = Round(actual[own].Ultrafiltration),
            IndividualUltrafiltration = Round(actual[individual].Ultrafiltration),
            UsualGlucose = Round(actual[space.Usual].Glucose),
            FixedGlucose = Round(actual[overall].Glucose),
            CategoryGlucose = Round(actual[own].Glucose),
            IndividualGlucose = Round(actual[individual].Glucose),
        };
    }

    /// <inheritdoc/>
    protected override string Page(IReadOnlyList<StrategyRow> rows)
    {
        ArgumentNullException.ThrowIfNull(rows);
        var (overall, byCategory) = Rules.Value;
        var lines = new (string Name, Func<StrategyRow, double> Loss, Func<StrategyRow, double> Fluid, Func<StrategyRow, double> Glucose)[]
        {
            ("the usual for all", row => row.UsualLoss, row => row.UsualUltrafiltration, row => row.UsualGlucose),
            ("one for all, the best on average", row => row.FixedLoss, row => row.FixedUltrafiltration, row => row.FixedGlucose),
            ("one for each class", row => row.CategoryLoss, row => row.CategoryUltrafiltration, row => row.CategoryGlucose),
            ("one for each patient, by search on the fit", row => row.IndividualLoss, row => row.IndividualUltrafiltration, row => row.IndividualGlucose),
        };
        var table = string.Concat(lines.Select((line, i) => string.Create(
            CultureInfo.InvariantCulture,
            $"| {line.Name} | {rows.Average(line.Fluid):0} | {100 * rows.Average(row => line.Fluid(row) is >= 700 and <= 1_100 ? 1.0 : 0):0} % | {rows.Average(line.Glucose):0} | {Interval(rows.Select(row => line.Loss(row) - row.BestLoss))} | {(i == 0 ? "" : Interval(rows.Select(row => line.Loss(row) - lines[i - 1].Loss(row))))} |\n")));
        return string.Create(CultureInfo.InvariantCulture, $"""
            # Four strategies for a night, {rows.Count} virtual patients

            Made by `dotnet run -c Release --project tests/Transport.Studies -- {Name}`; seeds {Seed} and {TrainingSeed}; the rows are in `{Name}.csv`. Nobody here exists.
            Each patient's membrane is drawn from the prior, tested for 4 h at 3.86 % with the errors of a laboratory, and fitted from the sheet. Strategies choose among
            the {Space.Value.Count} regimens of the usual space that can be carried out; rules for all and for classes were chosen on {Trained} other virtual patients. Outcomes are
            those of the true membrane. Loss: glucose in g, 1 g for 10 mL of ultrafiltration outside 700 to 1,100 mL, 1 g for 0.01 of weekly Kt/V below 1.5, 2 g a litre, 2 g a
            cycle (choices). In brackets 95 % intervals of paired means.

            | strategy | mean UF, mL | UF in range | glucose, g | regret against the individual optimum, g | against the line before, g |
            |---|---|---|---|---|---|
            {table}
            The usual: {Space.Value.Describe(Space.Value.Usual)}.
            The best on average: {Space.Value.Describe(overall)}.
            {string.Join("\n", byCategory.OrderBy(pair => pair.Key).Select(pair => $"{pair.Key}: {Space.Value.Describe(pair.Value)}."))}

            """);
    }

    private static (int Fixed, IReadOnlyDictionary<TransportCategory, int> ByCategory) Train()
    {
        var space = Space.Value;
        var overall = new double[space.Count];
        Dictionary<TransportCategory, double[]> byCategory = [];
        for (var person = 0; person < Trained; person++)
        {
            var (truth, test, _, _) = VirtualTest.Of(TrainingSeed, person, DialysisSolution.Glucose386, World.AsModelled);
            var category = Category(test);
            var own = byCategory.TryGetValue(category, out var known) ? known : byCategory[category] = new double[space.Count];
            var outcomes = space.Run(truth);
            for (var i = 0; i < outcomes.Length; i++)
            {
                overall[i] += outcomes[i].Loss;
                own[i] += outcomes[i].Loss;
            }
        }

        return (Lowest(overall), byCategory.ToDictionary(pair => pair.Key, pair => Lowest(pair.Value)));
    }

    private static TransportCategory Category(EquilibrationTest test) =>
        CategoryCuts.Twardowski1987Creatinine.Of(
            test.Dialysate[^1].Creatinine!.Value.MillimolesPerLiter / test.Plasma[0].Creatinine!.Value.MillimolesPerLiter);

    private static int Least((double Loss, double Ultrafiltration, double Glucose)[] outcomes) => Lowest([.. outcomes.Select(outcome => outcome.Loss)]);

    private static int Lowest(double[] losses) => Array.IndexOf(losses, losses.Min());

    private static string Interval(IEnumerable<double> differences)
    {
        double[] all = [.. differences];
        var mean = all.Average();
        var half = 1.96 * Math.Sqrt(all.Sum(value => (value - mean) * (value - mean)) / (all.Length - 1) / all.Length);
        return string.Create(CultureInfo.InvariantCulture, $"{mean:0.0} ({mean - half:0.0} to {mean + half:0.0})");
    }

    private static double Round(double value) => Math.Round(value, 2);

    // The usual space, asked by shared exchanges. Several threads take turns.
    private sealed class Regimens : IDisposable
    {
        private readonly List<Regimen> regimens;
        private readonly RegimenRingOf?[] rings;
        private readonly RegimenCatalog catalog;
        private readonly ThreadLocal<RingWorker> workers;

        public Regimens()
        {
            var judge = new CenterJudge(Person, Goals with { LongestNight = TimeSpan.FromHours(10) });
            regimens = [.. RegimenSpace.Usual(Person, Goals).All().Where(regimen => judge.Limits(regimen) is null)];
            catalog = new(Person, Options.Screening, regimens[0], Goals.Pressure);
            List<CycleKind> scratch = [];
            rings = [.. regimens.Select(regimen => catalog.Add(regimen, scratch))];
            catalog.Complete(Options);
            workers = new(() => new(Person, catalog, Options.Screening, Options, Goals.Pressure, seesPeak: false));
            var usual = Regimen.Cycling(TimeSpan.FromHours(9), 5, Volume.FromLiters(2), DialysisSolution.Glucose227, new(DialysisSolution.Glucose136, Volume.FromLiters(2)));
            Usual = regimens.FindIndex(regimen => regimen.Equals(usual));
        }

        public void Dispose() => workers.Dispose();

        public int Count => regimens.Count;

        public int Usual { get; }

        public string Describe(int index) => regimens[index].Describe();

        public (double Loss, double Ultrafiltration, double Glucose)[] Run(ThreePoreMembrane membrane)
        {
            var worker = workers.Value!;
            worker.Prepare(membrane);
            var figures = new double[RegimenFigures.Count];
            var outcomes = new (double, double, double)[Count];
            for (var i = 0; i < outcomes.Length; i++)
            {
                RegimenFigures.ReadPlan(regimens[i], figures);
                worker.Run(regimens[i], rings[i], figures);
                var fluid = figures[(int)RegimenMeasure.Ultrafiltration];
                var glucose = figures[(int)RegimenMeasure.GlucoseAbsorbed];
                var outside = Math.Max(0, Math.Max(700 - fluid, fluid - 1_100));
                var missing = Math.Max(0, 1.5 - figures[(int)RegimenMeasure.UreaDose]);
                var loss = glucose + outside / 10 + 100 * missing + 2 * figures[(int)RegimenMeasure.FluidUsed] + 2 * figures[(int)RegimenMeasure.Cycles];
                outcomes[i] = (loss, fluid, glucose);
            }

            return outcomes;
        }
    }
}
