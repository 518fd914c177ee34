namespace Transport.Analysis;

/// <summary>Finds rules on some virtual patients, for use on others: the regimen that does best on average, for all and in each class.</summary>
public static class StrategyTraining
{
    /// <summary>The two rules that lose least on average. Population, seed and number of patients are the design's: give it others than the study's.</summary>
    /// <param name="design">Who the rules are learnt from, the space, the loss and the test that tells the class.</param>
    /// <param name="overall">Name of the rule for all.</param>
    /// <param name="byCategory">Name of the rule for classes.</param>
    /// <param name="control">Watches and stops.</param>
    /// <exception cref="ArgumentException">Patients differ in size, so that they have no regimens in common.</exception>
    /// <exception cref="OperationCanceledException">The run was stopped.</exception>
    public static (FixedStrategy Overall, CategoryStrategy ByCategory) Run(
        StrategyStudyDesign design, string overall, string byCategory, RunControl? control = null)
    {
        ArgumentNullException.ThrowIfNull(design);
        control ??= RunControl.None;
        var space = design.SpaceOf(design.Population[design.Seed, 0].Patient);
        design = design with { Space = space };
        var losses = new double[design.Patients][];
        var categories = new TransportCategory[design.Patients];
        IReadOnlyList<Regimen>? regimens = null;
        ParallelRuns.Run(design.Patients, design.Workers, control, 0, 1, () => new StrategyWorker(design), (worker, number) =>
        {
            var (truth, known, table) = worker.Meet(number, control);
            var common = Interlocked.CompareExchange(ref regimens, table.Regimens, null) ?? table.Regimens;
            if (!common.SequenceEqual(table.Regimens))
            {
                throw new ArgumentException("The patients have no regimens in common; train on patients of one size.", nameof(design));
            }

            var own = losses[number] = new double[table.Regimens.Count];
            table.Run(truth.Membrane, control, (i, figures) => own[i] = design.Loss.Of(figures));
            categories[number] = known.Category;
        });

        // In order of the patients, so that sums do not depend on who was ready first.
        var all = Best(Enumerable.Range(0, design.Patients));
        return (
            new(overall, all),
            new(byCategory, Enumerable.Range(0, design.Patients).GroupBy(number => categories[number]).ToDictionary(group => group.Key, Best), all));

        Regimen Best(IEnumerable<int> numbers)
        {
            var sums = new double[regimens!.Count];
            foreach (var number in numbers)
            {
                for (var i = 0; i < sums.Length; i++)
                {
                    sums[i] += losses[number][i];
                }
            }

            return regimens[Array.IndexOf(sums, sums.Min())];
        }
    }
}
