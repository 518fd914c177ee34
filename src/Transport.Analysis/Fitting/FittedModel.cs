using MathNet.Numerics.LinearAlgebra;

namespace Transport.Analysis;

/// <summary>A model of the membrane fitted to observed exchanges, with what is needed to judge it: three kinds of pores, or one barrier.</summary>
public abstract class FittedModel
{
    private readonly Matrix<double>? covariance;

    // What was named to be freed has to be told by the data; what is free of itself need not.
    private protected FittedModel(
        EstimationProblem problem,
        FitProblem squares,
        LeastSquaresResult optimum,
        Matrix<double>? covariance,
        IReadOnlyList<ParameterEstimate> parameters,
        bool wasAskedFor)
    {
        // Where no start could be integrated, this throws.
        Residuals = squares.Residuals(optimum.Coordinates);
        Optimum = optimum;
        this.covariance = covariance;
        var judgement = FitJudgement.Of(problem, squares.ObservationCount, optimum, covariance, parameters, Residuals, wasAskedFor);
        Status = judgement.Status;
        Summary = judgement.Summary;
        Estimation = problem;
        ResidualVolumes = [.. problem.ResidualVolumes.Select((coordinate, e) =>
        {
            var (u, error) = (optimum.Coordinates[problem.Model.Count + e], ErrorOf(covariance, problem.Model.Count + e));
            return new Band<Volume>(At(u), At(u - NormalDistribution.Quantile95 * error), At(u + NormalDistribution.Quantile95 * error), 0.90, Doubt.Parameters);

            Volume At(double place) => Volume.FromMilliliters(double.IsFinite(place) ? coordinate.Value(place) : coordinate.Value(Math.Sign(place) * NormalDistribution.Quantile95));
        })];
        Findings = [.. problem.Exchanges.SelectMany(exchange => exchange.Findings), .. problem.Nights?.Nights.Findings ?? []];
        Evaluations = squares.Evaluations;
    }

    internal LeastSquaresResult Optimum { get; }

    /// <summary>What was estimated from what, whatever the model.</summary>
    internal EstimationProblem Estimation { get; }

    /// <summary>Whose membrane it is.</summary>
    public Patient Patient => Estimation.Patient;

    /// <summary>What was fitted.</summary>
    public IReadOnlyList<ObservedExchange> Exchanges => Estimation.Exchanges;

    /// <summary>The residual volume before each exchange, each its own, with its 90 % interval; where the data identify nothing, that of what was known before.</summary>
    public IReadOnlyList<Band<Volume>> ResidualVolumes { get; }

    /// <summary>Whether it may be believed.</summary>
    public FitStatus Status { get; }

    /// <summary>The status and what the data decided, in a sentence or two.</summary>
    public string Summary { get; }

    /// <summary>The free parameters.</summary>
    public abstract IReadOnlyList<ParameterEstimate> Parameters { get; }

    /// <summary>Every observation beside its prediction; those that were not fitted are a check of the model.</summary>
    public IReadOnlyList<FitResidual> Residuals { get; }

    /// <summary>The fitted observation that lies furthest from its prediction: what says so where the data contradict the model.</summary>
    public FitResidual WorstResidual => FitWords.Worst(Residuals);

    /// <summary>What to know about how it was made.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>Dwells that were integrated.</summary>
    public int Evaluations { get; }

    /// <summary>The inverse of the curvature at an optimum, the posterior's covariance; null where there is none.</summary>
    internal static Matrix<double>? CovarianceOf(LeastSquaresResult optimum) =>
        optimum.Status is LeastSquaresStatus.NotIdentifiable or LeastSquaresStatus.Undefined ? null : optimum.Covariance();

    /// <summary>Standard error of a coordinate; infinite without a covariance.</summary>
    internal static double ErrorOf(Matrix<double>? covariance, int coordinate) =>
        covariance is null ? double.PositiveInfinity : Math.Sqrt(covariance[coordinate, coordinate]);

    /// <summary>Covariance of all coordinates at the optimum.</summary>
    internal Matrix<double> Covariance => covariance ?? throw new InvalidOperationException(Summary);
}
