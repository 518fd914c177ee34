using System.Globalization;

namespace Transport.Studies;

/// <summary>
/// Four ways to choose a night for 1,000 virtual patients: the same for all by habit, the one that does best on average, one for each transport class, one for each
/// patient by a search on the membrane that was fitted to his test. Judged by the true membrane.
/// </summary>
public sealed class DwellStrategiesStudy : Study<DwellStrategiesRow>
{
    private const int Seed = 2024;
    private const int TrainingSeed = 2025;
    private const int Trained = 200;
    private const string Usual = "the usual for all";
    private const string Overall = "one for all, the best on average";
    private const string ByCategory = "one for each class";
    private const string Individual = "one for each patient, by search on the fit";

    private static readonly FluidTarget Fluid = FluidTarget.Between(Volume.FromMilliliters(700), Volume.FromMilliliters(1_100));
    private static readonly StrategyStudyDesign Shared = new()
    {
        Population = VirtualPopulation.OfPrior(PopulationPrior.IncidentAdults(), Patient.Example),
        Loss = new(Fluid),
        Limits = new(Fluid) { LongestNight = TimeSpan.FromHours(10) },
        Patients = Trained,
        Seed = TrainingSeed,
        Strategies =
        [
            new FixedStrategy(Usual, Regimen.Cycling(
                TimeSpan.FromHours(9), 5, Volume.FromLiters(2), DialysisSolution.Glucose227, new(DialysisSolution.Glucose136, Volume.FromLiters(2)))),
        ],
    };

    private static readonly Lazy<StrategyStudyDesign> Trial = new(Train);

    /// <inheritdoc/>
    public override string Name => "dwell-strategies";

    /// <inheritdoc/>
    public override int Count => 1000;

    /// <inheritdoc/>
    public override DwellStrategiesRow Row(int number) => Row(StrategyStudy.RowsOf(Trial.Value, number, RunControl.None));

    /// <summary>Goes on where an earlier run was stopped: parts lie in a folder beside the table.</summary>
    protected override IReadOnlyList<DwellStrategiesRow> Rows(string directory, Action<int> progress)
    {
        var result = StrategyStudy.Run(
            Trial.Value, Path.Combine(directory, Name), new() { Progress = new Sink(share => progress((int)Math.Round(share * Count))) });
        return [.. result.Rows.Chunk(Trial.Value.Strategies.Length).Select(Row)];
    }

    /// <inheritdoc/>
    protected override string Page(IReadOnlyList<DwellStrategiesRow> rows)
    {
        ArgumentNullException.ThrowIfNull(rows);
        var design = Trial.Value;
        var lines = new (string Name, Func<DwellStrategiesRow, double> Loss, Func<DwellStrategiesRow, double> Fluid, Func<DwellStrategiesRow, double> Glucose)[]
        {
            (Usual, row => row.UsualLoss, row => row.UsualUltrafiltration, row => row.UsualGlucose),
            (Overall, row => row.FixedLoss, row => row.FixedUltrafiltration, row => row.FixedGlucose),
            (ByCategory, row => row.CategoryLoss, row => row.CategoryUltrafiltration, row => row.CategoryGlucose),
            (Individual, row => row.IndividualLoss, row => row.IndividualUltrafiltration, row => row.IndividualGlucose),
        };
        var table = string.Concat(lines.Select((line, i) => string.Create(
            CultureInfo.InvariantCulture,
            $"| {line.Name} | {rows.Average(line.Fluid):0} | {100 * rows.Average(row => line.Fluid(row) is >= 700 and <= 1_100 ? 1.0 : 0):0} % | {rows.Average(line.Glucose):0} | {MeanInterval.Of(rows.Select(row => line.Loss(row) - row.BestLoss))} | {(i == 0 ? "" : MeanInterval.Of(rows.Select(row => line.Loss(row) - lines[i - 1].Loss(row))))} |\n")));
        var (fixedRule, classRule) = ((FixedStrategy)design.Strategies[1], (CategoryStrategy)design.Strategies[2]);
        return string.Create(CultureInfo.InvariantCulture, $"""
            # Four strategies for a night, {rows.Count} virtual patients

            Made by `dotnet run -c Release --project tests/Transport.Studies -- {Name}` with `StrategyStudy`; seeds {Seed} and {TrainingSeed}; the rows are in `{Name}.csv`. Nobody here exists.
            Each patient's membrane is drawn from the prior, tested for 4 h at 3.86 % with the errors of a laboratory, and fitted from the sheet. Strategies choose among
            the {new RegimenTable(Patient.Example, RegimenSpace.Usual(Patient.Example, design.Limits), design.Limits).Regimens.Count} regimens of the usual space that can be carried out; rules for all and for classes were chosen on {Trained} other virtual patients. Outcomes are
            those of the true membrane. Loss: glucose in g, 1 g for 10 mL of ultrafiltration outside 700 to 1,100 mL, 1 g for 0.01 of weekly Kt/V below 1.5, 2 g a litre, 2 g a
            cycle (choices). In brackets 95 % intervals of paired means.

            | strategy | mean UF, mL | UF in range | glucose, g | regret against the individual optimum, g | against the line before, g |
            |---|---|---|---|---|---|
            {table}
            The usual: {((FixedStrategy)design.Strategies[0]).Regimen}.
            The best on average: {fixedRule.Regimen}.
            {string.Join("\n", classRule.Regimens.Select(pair => $"{pair.Key}: {pair.Value}."))}

            """);
    }

    private static StrategyStudyDesign Train()
    {
        var (overall, byCategory) = StrategyTraining.Run(Shared, Overall, ByCategory);
        return Shared with
        {
            Patients = 1000,
            Seed = Seed,
            Strategies = [Shared.Strategies[0], overall, byCategory, new LeastLossStrategy(Individual, Shared.Loss)],
        };
    }

    private static DwellStrategiesRow Row(StrategyRow[] rows) => new()
    {
        Patient = rows[0].Patient,
        Category = rows[0].Category,
        BestLoss = Round(rows[0].BestLossGrams),
        UsualLoss = Round(rows[0].LossGrams),
        FixedLoss = Round(rows[1].LossGrams),
        CategoryLoss = Round(rows[2].LossGrams),
        IndividualLoss = Round(rows[3].LossGrams),
        UsualUltrafiltration = Round(rows[0].UltrafiltrationMilliliters),
        FixedUltrafiltration = Round(rows[1].UltrafiltrationMilliliters),
        CategoryUltrafiltration = Round(rows[2].UltrafiltrationMilliliters),
        IndividualUltrafiltration = Round(rows[3].UltrafiltrationMilliliters),
        UsualGlucose = Round(rows[0].GlucoseAbsorbedGrams),
        FixedGlucose = Round(rows[1].GlucoseAbsorbedGrams),
        CategoryGlucose = Round(rows[2].GlucoseAbsorbedGrams),
        IndividualGlucose = Round(rows[3].GlucoseAbsorbedGrams),
    };

    private static double Round(double value) => Math.Round(value, 2);

    // Told on the thread that works, so that lines stand in order.
    private sealed class Sink(Action<double> told) : IProgress<double>
    {
        public void Report(double value) => told(value);
    }
}
