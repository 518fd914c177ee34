using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;

namespace Transport.Analysis;

/// <summary>Whether a fit may be believed, whatever the model.</summary>
internal sealed record FitJudgement(FitStatus Status, string Summary)
{
    // Where the prior leaves one in a thousand.
    private const double FarFromPeople = 3.3;

    public static FitJudgement Of(
        EstimationProblem problem,
        int observations,
        LeastSquaresResult optimum,
        Matrix<double>? covariance,
        IReadOnlyList<ParameterEstimate> parameters,
        IReadOnlyList<FitResidual> residuals,
        bool wasAskedFor)
    {
        var u = optimum.Coordinates;
        var misfit = optimum.Residuals.SubVector(0, observations);
        var probability = 1 - ChiSquared.CDF(observations, misfit.DotProduct(misfit));
        var stretched = Enumerable.Range(0, problem.UsesPrior ? parameters.Count : 0).Where(j => Math.Abs(u[j]) > FarFromPeople).ToArray();
        var untold = parameters.Where(parameter => covariance is null || wasAskedFor && problem.UsesPrior && parameter.SpreadLeft > FitWords.UntoldFrom).ToArray();
        var status = optimum.Status == LeastSquaresStatus.NotIdentifiable ? FitStatus.NotIdentifiable
            : !optimum.IsConverged ? FitStatus.IterationLimit
            : probability < 0.001 || stretched.Length > 0 ? FitStatus.DataContradictModel
            : problem.UsesPrior && parameters.All(parameter => parameter.Verdict == ParameterVerdict.FromPrior) ? FitStatus.PriorReturned
            : untold.Length > 0 ? FitStatus.NotIdentifiable
            : FitStatus.Converged;
        var furthest = stretched.Length > 0 ? parameters[stretched.MaxBy(j => Math.Abs(u[j]))] : null;
        return new(status, FitWords.Summary(status, parameters, residuals, furthest, covariance is null ? [] : untold));
    }
}
