using System.Globalization;

namespace Transport.Analysis;

/// <summary>A comparison in sentences.</summary>
internal static class ComparisonWords
{
    public static string Summary(IReadOnlyList<ComparedModel> models)
    {
        var best = models[0];
        ComparedModel[] level = [best, .. models.Where(model => model.Verdict == ModelVerdict.NotTold)];
        var sentences = new List<string>();
        foreach (var model in models)
        {
            switch (model.Verdict)
            {
                case ModelVerdict.Told:
                    sentences.Add($"The data speak for {Listed(level, "or")} against {model.Name}, above all {string.Join(", ", Carrying(model, best))}.");
                    break;
                case ModelVerdict.Leaning:
                    sentences.Add($"The data lean against {model.Name}, but few of them carry that: {string.Join(", ", Carrying(model, best))}. Check these before the model.");
                    break;
                default:
                    break;
            }
        }

        if (level.Length > 1)
        {
            sentences.Add($"The data do not tell {Listed(level, "and")} apart.");
        }

        return string.Join(" ", sentences);
    }

    // The data that take most from a model beside the best, until they make three quarters of what is taken.
    private static List<string> Carrying(ComparedModel model, ComparedModel best)
    {
        var taken = model.Checks.Zip(best.Checks, (own, other) => (own.Name, Loss: other.LeftOutLogDensity - own.LeftOutLogDensity ?? 0))
            .Where(row => row.Loss > 0).OrderByDescending(row => row.Loss).ToArray();
        var (names, sum) = (new List<string>(), 0.0);
        foreach (var (name, loss) in taken.TakeWhile(_ => sum < 0.75 * taken.Sum(row => row.Loss)))
        {
            names.Add(name);
            sum += loss;
        }

        return names;
    }

    public static IEnumerable<Finding> Undefined(IReadOnlyList<ComparedModel> models, int data)
    {
        if (models.Where(model => model.CorrectedAkaike is null).ToArray() is { Length: > 0 } without)
        {
            yield return new(Severity.Note, "comparison-aicc-undefined", FormattableString.Invariant(
                $"AICc is not defined for {Listed(without, "and")}: {data} data and {string.Join(" or ", without.Select(model => model.ParameterCount).Distinct().Order())} parameters that they alone would have to tell. Read the comparison by leaving one out, where the prior counts."));
        }
    }

    public static IEnumerable<Finding> Against(ComparedModel model) => model.Checks
        .Where(check => check.JudgedTailProbability < ModelComparison.SmallTail)
        .Select(check => new Finding(Severity.Warning, "comparison-datum-against-model", string.Create(CultureInfo.InvariantCulture,
            $"{Wording.Capital(check.Name)} speaks against {model.Name}: observed {Number(check, check.Observed)}{Space(check.Unit)}, {(check.LeftOut is null ? "replicated" : "predicted from all others")} {Number(check, check.Judged.Low)} to {Number(check, check.Judged.High)}{Space(check.Unit)} in 90 %; {Tail(check.JudgedTailProbability)}. One of a hundred does so by chance: check the datum before the model.")));

    /// <summary>"D/P sodium at 60 min", "mean initial drain".</summary>
    public static string Words(this Observation observation) => FitWords.Describe(observation).Replace(", mL", "", StringComparison.Ordinal);

    public static string Unit(this ObservedQuantity quantity) => quantity == ObservedQuantity.NetUltrafiltrationMilliliters || quantity.IsOfNights() ? "mL" : "";

    // Three digits, and as text a minus that is one.
    private static string Number(PredictiveCheck check, double value) =>
        value.ToString(check.Unit.Length == 0 ? "0.000" : check.Unit == "mL" ? "0" : "0.0", CultureInfo.InvariantCulture).Replace('-', '−');

    private static string Space(string unit) => unit.Length == 0 ? "" : " " + unit;

    private static string Tail(double probability) => probability < 0.001
        ? "tail probability under 0.001"
        : string.Create(CultureInfo.InvariantCulture, $"tail probability {probability:0.000}");

    private static string Listed(ComparedModel[] models, string last) => models.Length == 1
        ? models[0].Name
        : $"{string.Join(", ", models[..^1].Select(model => model.Name))} {last} {models[^1].Name}";
}
