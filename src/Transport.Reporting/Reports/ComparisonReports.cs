namespace Transport.Reporting;

/// <summary>Reports of comparisons of models.</summary>
public static class ComparisonReports
{
    /// <summary>What the data say of each model, the criteria behind it, and each datum beside what each model would have measured.</summary>
    public static ReportBlock Of(ModelComparison comparison)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        var models = comparison.Models;
        return new ReportBlock()
            .Sentence(comparison.Summary)
            .Table(new(
                ["model", "the data", "#log density, each\ndatum left out", "#less than the\nbest ± error"],
                [.. models.Select(model => (IReadOnlyList<string>)
                [
                    model.Name,
                    Words(model.Verdict),
                    Digits.Fixed(model.LeaveOneOut, 1),
                    model.Verdict == ModelVerdict.Best ? "–" : $"{Digits.Fixed(-model.Difference, 1)} ± {Digits.Fixed(model.DifferenceError, 1)}",
                ])]))
            .FindingList(comparison.Findings)
            .Folded("Each datum beside what each model predicts of it from all the others: middle 90 %, and below it the tail probability", new(
                ["^what", "#observed", .. models.Select(model => $"#{model.Name}")],
                [.. models[0].Checks.Select((check, i) => (IReadOnlyList<string>)
                [
                    check.Unit.Length == 0 ? check.Name : $"{check.Name}, {check.Unit}",
                    Value(check, check.Observed),
                    .. models.Select(model => $"{Value(check, model.Checks[i].Judged.Low)} to {Value(check, model.Checks[i].Judged.High)}\n{Tail(model.Checks[i])}"),
                ])]))
            .Folded("Other criteria", new(
                ["model", "#log density\nby WAIC", "#AICc", "#log likelihood\nat the fit", "#parameters\nfree, moved"],
                [.. models.Select(model => (IReadOnlyList<string>)
                [
                    model.Name,
                    Digits.Fixed(model.WidelyApplicable, 1),
                    model.CorrectedAkaike is { } criterion ? Digits.Fixed(criterion, 1) : "not defined",
                    Digits.Fixed(model.LogLikelihood, 1),
                    $"{model.ParameterCount}, {Digits.Fixed(model.EffectiveParameters, 1)}",
                ])]))
            .Folded("Whether to believe the densities", new(
                ["model", "#error of\nthe density", "#largest\nPareto shape", "#data left out\nby drawing anew"],
                [.. models.Select(model => (IReadOnlyList<string>)
                [
                    model.Name,
                    Digits.Fixed(model.LeaveOneOutError, 1),
                    Digits.Fixed(model.LargestParetoShape, 2),
                    Digits.Fixed(model.DrawnAnew, 0),
                ])]))
            .Small($"{comparison.DataCount} data. Natural logarithms; a difference of up to 4 means that two models predict alike, and with few data the errors are too small, by up to twice. Interval and tail probability are of a datum predicted from all the others; a fall of sodium, which is made of two, is replicated from the fit to all of them. A model that foretells a test better is not thereby true, and no better for what was not measured.");
    }

    /// <summary>What follows "the data".</summary>
    private static string Words(ModelVerdict verdict) => verdict switch
    {
        ModelVerdict.Best => "are foretold best",
        ModelVerdict.NotTold => "do not tell it from the best",
        ModelVerdict.Leaning => "lean against it; few carry that",
        _ => "speak against it",
    };

    private static string Value(PredictiveCheck check, double value) => check.Unit.Length == 0 ? Digits.Fixed(value, 3) : Digits.Fixed(value, check.Unit == "mL" ? 0 : 1);

    private static string Tail(PredictiveCheck check) => check.JudgedTailProbability is >= 0.001 and var tail ? Digits.Fixed(tail, 3) : "< 0.001";
}
