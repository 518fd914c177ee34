namespace Transport.Analysis;

/// <summary>Several models of the membrane fitted to the same data: which would have foretold them better, and which data speak against which.</summary>
/// <remarks>With three to ten data the usual answer is that they do not tell. Formulas and sources: docs/concepts/estimation.md.</remarks>
public sealed class ModelComparison
{
    /// <summary>Difference of log predictive densities up to which two models predict alike.</summary>
    internal const double Alike = 4;

    /// <summary>Tail probability under which an observation speaks against a model (choice: of ten data of a true model one in ten would do so by chance).</summary>
    internal const double SmallTail = 0.01;

    private ModelComparison(IReadOnlyList<ComparedModel> models, int dataCount, IReadOnlyList<Finding> findings)
    {
        Models = models;
        DataCount = dataCount;
        Findings = findings;
        Summary = ComparisonWords.Summary(models);
    }

    /// <summary>The models, the best first.</summary>
    public IReadOnlyList<ComparedModel> Models { get; }

    /// <summary>Fitted observations.</summary>
    public int DataCount { get; }

    /// <summary>What the data say, in a sentence or two.</summary>
    public string Summary { get; }

    /// <summary>What to know: data that speak against a model, criteria that are not defined, chains that do not agree.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>Compares models that were fitted to the same exchanges.</summary>
    /// <param name="fits">At least two, with names of their own.</param>
    /// <param name="options">How many draws.</param>
    /// <param name="control">Watches and stops.</param>
    /// <exception cref="ArgumentException">
    /// Fewer than two, two of one name, fits of different data (nights count, which one barrier cannot be asked for), one without its prior, or one that found no optimum.
    /// </exception>
    /// <exception cref="OperationCanceledException">The run was stopped.</exception>
    public static ModelComparison Run(IReadOnlyList<NamedFit> fits, ModelComparisonOptions? options = null, RunControl? control = null)
    {
        ArgumentNullException.ThrowIfNull(fits);
        options ??= ModelComparisonOptions.Default;
        control ??= RunControl.None;
        Check(fits);
        var runs = new List<ComparisonRun>();
        foreach (var fit in fits)
        {
            runs.Add(new ComparisonRun(fit, options, control));
            control.Progress?.Report((double)runs.Count / fits.Count);
        }

        var best = runs.MaxBy(run => run.LeftOut.Sum())!;
        ComparedModel[] models = [.. runs.Select(run => run.ToModel(best)).OrderBy(model => model.Verdict != ModelVerdict.Best).ThenByDescending(model => model.LeaveOneOut)];
        return new(models, best.LeftOut.Count, [.. runs.SelectMany(run => run.Findings), .. ComparisonWords.Undefined(models, best.LeftOut.Count), .. models.SelectMany(ComparisonWords.Against)]);
    }

    private static void Check(IReadOnlyList<NamedFit> fits)
    {
        if (fits.Count < 2 || fits.Select(fit => fit.Name).Distinct().Count() < fits.Count)
        {
            throw new ArgumentException("Expected at least two fits, each with a name of its own.", nameof(fits));
        }

        var data = Data(fits[0].Fit);
        foreach (var (name, fit) in fits)
        {
            var reason = !fit.Estimation.UsesPrior ? "does not use its prior, and a prediction needs one"
                : fit.Status is FitStatus.IterationLimit || !fit.Optimum.IsConverged ? "found no optimum"
                : !data.SequenceEqual(Data(fit)) ? $"is of other data than \"{fits[0].Name}\"; nights count, and only pores can be asked for them"
                : null;
            if (reason is not null)
            {
                throw new ArgumentException($"The fit \"{name}\" {reason}.", nameof(fits));
            }
        }

        static IEnumerable<(int, Observation)> Data(FittedModel fit) => fit.Exchanges
            .SelectMany((exchange, e) => exchange.Observations.Where(observation => observation.IsFitted).Select(observation => (e, observation)))
            .Concat(fit.Estimation.Nights?.Nights.Means.Select(mean => (-1, mean.Observation)) ?? []);
    }
}
