using System.Globalization;
using System.Text;
using static Transport.Studies.ComparedModels;

namespace Transport.Studies;

/// <summary>
/// Which of three models the data of one test speak for, in worlds that are known: virtual people are tested, three models are fitted to each sheet, and each is asked how
/// well it would have foretold every datum from the others.
/// </summary>
public sealed class ModelComparisonStudy : Study<ModelComparisonRow>
{
    private const int Seed = 1999;
    private const int People = 150;

    /// <inheritdoc/>
    public override string Name => "model-comparison";

    /// <inheritdoc/>
    public override int Count => People * Enum.GetValues<ComparisonWorld>().Length;

    /// <inheritdoc/>
    public override ModelComparisonRow Row(int number)
    {
        // A person is the same with and without sodium, and so are the errors.
        var (world, person) = ((ComparisonWorld)(number / People), number % People);
        var seed = unchecked(Seed * 1_000_003 + person);
        var fits = Fits(Test(Truth(world, seed), seed, hasSodium: world != ComparisonWorld.ThreePoresWithoutSodium));
        var lost = fits.FirstOrDefault(fit => !fit.Fit.Optimum.IsConverged);
        var compared = lost is null ? ModelComparison.Run(fits, Quick) : null;
        return new()
        {
            Test = number,
            World = world,
            LeadOverNoUltrasmall = Lead(WithoutUltrasmall),
            LeadOverBarrier = Lead(ComparedModels.OneBarrier),
            ThreePores = Of(Pores)?.Verdict,
            NoUltrasmallPores = Of(WithoutUltrasmall)?.Verdict,
            OneBarrier = Of(ComparedModels.OneBarrier)?.Verdict,
            WithoutOptimum = lost?.Name ?? "",
        };

        ComparedModel? Of(string name) => compared?.Models.Single(model => model.Name == name);

        double? Lead(string over) => compared is null ? null : Math.Round(Of(Pores)!.LeaveOneOut - Of(over)!.LeaveOneOut, 3);
    }

    /// <inheritdoc/>
    protected override string Page(IReadOnlyList<ModelComparisonRow> rows)
    {
        var page = new StringBuilder();
        page.Append(CultureInfo.InvariantCulture, $"""
            # Three models compared on tests of {People} virtual people in each of four worlds

            Made by `dotnet run -c Release --project tests/Transport.Studies -- {Name}`; seed {Seed}; the rows are in `{Name}.csv`.
            Each person's membrane is drawn from the prior of the world's own model and tested for 4 h at 3.86 % (samples at 0, 1, 2 and 4 h, drained volume, errors of
            `AssayErrors.Default`, a residual volume that nobody measured). Three models are fitted to the sheet and compared by leaving each datum out (1000 draws).

            ## How far three pores are ahead

            Difference of the log predictive densities. Up to 4 two models predict alike.

            | data made by | sodium | over no ultrasmall pores: middle (5 % to 95 %) | ahead by more than 4 | behind by more than 4 | over one barrier: middle (5 % to 95 %) | ahead by more than 4 | behind by more than 4 |
            |---|---|---|---|---|---|---|---|

            """);
        foreach (var (world, name, sodium) in Worlds)
        {
            var of = rows.Where(row => row.World == world).ToList();
            page.Append(CultureInfo.InvariantCulture, $"| {name} | {sodium} | {Lead(of, row => row.LeadOverNoUltrasmall)} | {Lead(of, row => row.LeadOverBarrier)} |\n");
        }

        page.Append(CultureInfo.InvariantCulture, $"""

            ## What is said of each model

            Speaks against: behind the best by more than 4 and by more than twice the error of the difference. Leans: behind by more than 4, but not by so much. Tests of {People}.

            | data made by | sodium | said of | best | not told from it | leans against | speaks against |
            |---|---|---|---|---|---|---|

            """);
        foreach (var (world, name, sodium) in Worlds)
        {
            foreach (var (model, verdict) in new (string, Func<ModelComparisonRow, ModelVerdict?>)[]
                { (Pores, row => row.ThreePores), (WithoutUltrasmall, row => row.NoUltrasmallPores), (ComparedModels.OneBarrier, row => row.OneBarrier) })
            {
                var of = rows.Where(row => row.World == world).ToLookup(verdict);
                page.Append(CultureInfo.InvariantCulture, $"| {name} | {sodium} | {model} | {string.Join(" | ", Enum.GetValues<ModelVerdict>().Select(each => of[each].Count()))} |\n");
            }
        }

        var lost = rows.Where(row => row.WithoutOptimum.Length > 0).GroupBy(row => row.WithoutOptimum).Select(group => string.Create(CultureInfo.InvariantCulture, $"of {group.Key} in {group.Count()}"));
        page.Append(CultureInfo.InvariantCulture, $"\nA fit that finds no optimum is not compared: {(lost.Any() ? string.Join(", ", lost) : "none")} of {rows.Count} tests.\n");

        return page.ToString();
    }

    private static (ComparisonWorld World, string Name, string Sodium)[] Worlds =>
    [
        (ComparisonWorld.ThreePores, Pores, "measured"),
        (ComparisonWorld.ThreePoresWithoutSodium, Pores, "not measured"),
        (ComparisonWorld.NoUltrasmallPores, WithoutUltrasmall, "measured"),
        (ComparisonWorld.OneBarrier, ComparedModels.OneBarrier, "measured"),
    ];

    private static string Lead(IReadOnlyList<ModelComparisonRow> rows, Func<ModelComparisonRow, double?> read)
    {
        double[] leads = [.. rows.Select(read).OfType<double>().Order()];
        return $"{Signed(At(0.5))} ({Signed(At(0.05))} to {Signed(At(0.95))}) | {leads.Count(lead => lead > ModelComparison.Alike)} | {leads.Count(lead => lead < -ModelComparison.Alike)}";

        double At(double share) => leads[(int)(share * leads.Length)];

        static string Signed(double value) => value.ToString("+0.0;−0.0;0.0", CultureInfo.InvariantCulture);
    }

    private static IMembrane Truth(ComparisonWorld world, int seed)
    {
        if (world == ComparisonWorld.OneBarrier)
        {
            return DrawnBarrier(seed ^ 0x7E57);
        }

        var people = PopulationPrior.IncidentAdults();
        return (world == ComparisonWorld.NoUltrasmallPores ? people.WithoutUltrasmallPores() : people).ToEnsemble(Patient.Example.BodySurface, 1, seed ^ 0x7E57)[0];
    }
}
