using System.Globalization;

namespace Transport.Analysis;

/// <summary>A fit in a sentence or two.</summary>
internal static class FitWords
{
    /// <summary>Share of a prior's spread from which on the data are said not to tell a parameter that was asked for (choice).</summary>
    public const double UntoldFrom = 0.9;

    public static FitResidual Worst(IReadOnlyList<FitResidual> residuals) =>
        residuals.Where(residual => residual.Observation.IsFitted).MaxBy(residual => Math.Abs(residual.Standardized))!;

    public static string Summary(
        FitStatus status,
        IReadOnlyList<ParameterEstimate> parameters,
        IReadOnlyList<FitResidual> residuals,
        ParameterEstimate? stretched,
        IReadOnlyList<ParameterEstimate> untold)
    {
        var worst = Worst(residuals);
        var first = status switch
        {
            FitStatus.Converged => "The fit converged and agrees with the data.",
            FitStatus.PriorReturned => "The data moved no parameter: this is the population's membrane, not the patient's.",
            FitStatus.NotIdentifiable when untold.Count == 0 =>
                "Some combination of the free parameters changes nothing that was measured. Free fewer, measure more, or use the prior.",
            FitStatus.NotIdentifiable => $"The data do not tell {string.Join(", ", untold.Select(parameter => parameter.Name))}, which was asked for.",
            FitStatus.DataContradictModel when stretched is not null => string.Create(
                CultureInfo.InvariantCulture,
                $"The data can only be met with {$"{stretched.Name} {stretched.Value:G3} {stretched.Unit}".TrimEnd()}, far from what people have. Check the sheet before reading further."),
            FitStatus.DataContradictModel => string.Create(
                CultureInfo.InvariantCulture,
                $"The data lie further from the model than their errors allow; the worst is {Describe(worst.Observation)}: observed {worst.Observation.Value:G3}, fitted {worst.Predicted:G3}. Check the sheet before reading further."),
            _ => "The search stopped before an optimum was found. Do not use the result.",
        };
        var fromPrior = parameters.Where(parameter => parameter.Verdict == ParameterVerdict.FromPrior).Select(parameter => parameter.Name).ToArray();
        return fromPrior.Length == 0 || status is FitStatus.PriorReturned or FitStatus.NotIdentifiable
            ? first
            : $"{first} The data say little about: {string.Join(", ", fromPrior)}.";
    }

    internal static string Describe(Observation observation) => observation.Quantity.IsOfNights()
        ? observation.Quantity.Name()
        : string.Create(CultureInfo.InvariantCulture, $"{observation.Quantity.Name()} at {observation.Time.TotalMinutes:0} min");
}
