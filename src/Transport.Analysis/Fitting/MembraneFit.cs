using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;

namespace Transport.Analysis;

/// <summary>Estimates a three-pore membrane from observed exchanges: maximum a posteriori in log coordinates.</summary>
/// <remarks>
/// The minimiser is MathNet's Levenberg-Marquardt, run without bounds in standardised log coordinates from several starts; whether its answer is an
/// optimum is decided by the gradient, not by its exit code (<see cref="LeastSquares"/>, docs/decisions/0003).
/// </remarks>
public static class MembraneFit
{
    // Coordinates of the starts: the centre, and away from it in the directions that people differ in.
    private static readonly (double Area, double Glucose, double Conductance)[] Starts =
        [(0, 0, 0), (1, 0.5, -1), (-1, -0.5, 1), (1, 0.5, 1), (-1, -0.5, -1)];

    /// <summary>Fits one equilibration test.</summary>
    /// <exception cref="ArgumentException">The solution is not a glucose solution, or nothing was measured that can be fitted.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The fill is not positive, or the dwell not between 0 and 48 h.</exception>
    /// <exception cref="IntegrationException">The cavity runs empty with every membrane that was tried.</exception>
    public static FittedMembrane Run(EquilibrationTest test, MembraneFitOptions? options = null) => Run([ObservedExchange.From(test)], options);

    /// <summary>Fits exchanges of one person jointly: one membrane, a residual volume for each exchange.</summary>
    /// <exception cref="ArgumentException">The list is empty, holds exchanges of several people, or nothing that can be fitted.</exception>
    /// <exception cref="IntegrationException">The cavity runs empty with every membrane that was tried.</exception>
    /// <exception cref="OperationCanceledException">The run was stopped.</exception>
    public static FittedMembrane Run(IReadOnlyList<ObservedExchange> exchanges, MembraneFitOptions? options = null, RunControl? control = null)
    {
        ArgumentNullException.ThrowIfNull(exchanges);
        options ??= MembraneFitOptions.Default;
        control ??= RunControl.None;
        if (exchanges.Count == 0 || exchanges.Any(exchange => exchange.Patient.Code != exchanges[0].Patient.Code))
        {
            throw new ArgumentException("Expected at least one exchange, all of one person.", nameof(exchanges));
        }

        var problem = new EstimationProblem(
            [.. exchanges],
            new(options.Prior.Center.ScaledTo(exchanges[0].Patient.BodySurface), options.Prior, options.Free ?? FreeBy(exchanges)),
            options.UsesPrior,
            options.StudentDegreesOfFreedom);
        var squares = new FitProblem(problem, options.Integration);
        if (squares.ObservationCount == 0)
        {
            throw new ArgumentException("Expected something to fit: creatinine or glucose after time zero, or a drained volume.", nameof(exchanges));
        }

        var starts = Starts.Select(start => Vector<double>.Build.Dense(problem.Dimension, j => j >= problem.Membrane.Count ? 0 : problem.Membrane.Free[j] switch
        {
            MembraneParameter.DiffusionArea => start.Area,
            MembraneParameter.GlucosePermeabilityScale => start.Glucose,
            MembraneParameter.OsmoticConductance => start.Conductance,
            _ => 0,
        }));
        var optimum = LeastSquares.Run(squares, [.. starts], new() { MaximumIterations = options.MaximumIterations }, control);
        return Result(problem, squares, optimum, options.Free);
    }

    // Everything that the prior knows of moves fluid and small solutes, so its doubt is carried; of the large pores only protein tells.
    private static IReadOnlyList<MembraneParameter> FreeBy(IReadOnlyList<ObservedExchange> exchanges) =>
    [
        .. Enum.GetValues<MembraneParameter>().Where(parameter => parameter != MembraneParameter.LargePoreFraction
            || exchanges.Any(exchange => exchange.Observations.Any(observation => observation.IsFitted && observation.Quantity.IsOfProtein()))),
    ];

    private static FittedMembrane Result(
        EstimationProblem problem, FitProblem squares, LeastSquaresResult optimum, IReadOnlyList<MembraneParameter>? asked)
    {
        // Where no start could be integrated, this throws.
        var u = optimum.Coordinates;
        var residuals = squares.Residuals(u);

        // The inverse of the curvature at the optimum is the posterior's covariance.
        var covariance = optimum.Status == LeastSquaresStatus.NotIdentifiable ? null : optimum.Covariance();
        var parameters = problem.Membrane.Free.Select((_, j) => Parameter(problem, j, u[j], covariance)).ToArray();
        var misfit = optimum.Residuals.SubVector(0, squares.ObservationCount);
        var probability = 1 - ChiSquared.CDF(squares.ObservationCount, misfit.DotProduct(misfit));
        var stretched = Enumerable.Range(0, problem.UsesPrior ? parameters.Length : 0).Where(j => Math.Abs(u[j]) > 3.3).ToArray();
        var untold = parameters.Where(parameter => covariance is null || asked is not null && problem.UsesPrior && parameter.SpreadLeft > FitWords.UntoldFrom).ToArray();
        var status = optimum.Status == LeastSquaresStatus.NotIdentifiable ? FitStatus.NotIdentifiable
            : !optimum.IsConverged ? FitStatus.IterationLimit
            : probability < 0.001 || stretched.Length > 0 ? FitStatus.DataContradictModel
            : problem.UsesPrior && parameters.All(parameter => parameter.Verdict == ParameterVerdict.FromPrior) ? FitStatus.PriorReturned
            : untold.Length > 0 ? FitStatus.NotIdentifiable
            : FitStatus.Converged;
        var furthest = stretched.Length > 0 ? parameters[stretched.MaxBy(j => Math.Abs(u[j]))] : null;
        return new(
            problem, optimum, covariance, status, FitWords.Summary(status, parameters, residuals, furthest, covariance is null ? [] : untold), parameters, residuals,
            squares.Evaluations);
    }

    private static FittedParameter Parameter(EstimationProblem problem, int j, double u, Matrix<double>? covariance)
    {
        var parameter = problem.Membrane.Free[j];
        var coordinate = problem.Membrane[j];
        var perUnit = parameter.PerUnit(problem.Exchanges[0].Patient.SurfaceFactor);
        var error = covariance is null ? double.PositiveInfinity : Math.Sqrt(covariance[j, j]);
        return new()
        {
            Parameter = parameter,
            Value = perUnit * coordinate.Value(u),
            Low = perUnit * coordinate.Value(u - 1.6449 * error),
            High = perUnit * coordinate.Value(u + 1.6449 * error),
            LogStandardError = coordinate.Spread * error,
            PriorMedian = perUnit * coordinate.Value(0.0),
            PriorLogDeviation = coordinate.Spread,
        };
    }
}
