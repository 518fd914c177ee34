using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.Optimization;

namespace Transport.Analysis;

/// <summary>Makes a sum of squares least: MathNet's Levenberg-Marquardt from several starts, with a status of our own.</summary>
/// <remarks>
/// Converged: the distance to the optimum, √(gᵀ(JᵀJ)⁻¹g), is at most the tolerance, or the fall of the deviance that a full step promises is lost in the rounding
/// of the deviance (1e-14 of it), and the information is regular. Several starts: they are tried in order; one that comes within the join
/// distance (in the metric of the curvature there) of an optimum found before has reached it and stops there. Once enough starts have reached the best
/// optimum, the rest is left out. The best optimum wins.
/// </remarks>
internal static class LeastSquares
{
    private const double Rounding = 1e-14;

    /// <summary>Searches from each start in turn.</summary>
    /// <exception cref="ArgumentException">No start, or one of the wrong length.</exception>
    /// <exception cref="OperationCanceledException">The run was stopped, at most one evaluation after it was asked to.</exception>
    public static LeastSquaresResult Run(
        ILeastSquaresProblem problem, IReadOnlyList<Vector<double>> starts, LeastSquaresOptions? options = null, RunControl? control = null)
    {
        options ??= LeastSquaresOptions.Default;
        control ??= RunControl.None;
        if (starts.Count == 0 || starts.Any(start => start.Count != problem.ParameterCount))
        {
            throw new ArgumentException("Expected at least one start, each with a value for every coordinate.", nameof(starts));
        }

        var optima = new List<Optimum>();
        var objective = new LeastSquaresObjective(
            problem, model => IsAtRest(model, options) || Reached(optima, model.Point, options) is not null, control.Cancellation);
        var tried = 0;
        foreach (var start in starts)
        {
            tried++;
            if (objective.TryStart(start))
            {
                Descend(objective, start, options);
                if (Reached(optima, objective.Point, options) is { } known && objective.Deviance >= known.Deviance - Math.Pow(options.JoinDistance, 2))
                {
                    known.Starts++;
                }
                else
                {
                    optima.Add(Optimum.Of(objective, options));
                }
            }

            control.Progress?.Report((double)tried / starts.Count);
            if (optima.MinBy(optimum => optimum.Deviance) is { Status: LeastSquaresStatus.Converged } best && best.Starts >= options.AgreeingStarts)
            {
                break;
            }
        }

        var found = optima.MinBy(optimum => optimum.Deviance) ?? Optimum.None(starts[0], problem);
        return new(
            found.Status, found.Point, found.Residuals, found.Slopes, found.Deviance, found.Distance, objective.FunctionEvaluations, tried, found.Starts);
    }

    private static void Descend(LeastSquaresObjective objective, Vector<double> start, LeastSquaresOptions options)
    {
        // The gradient decides, through the objective; the minimizer's own tests are set so that they end only a search that is stuck.
        new LevenbergMarquardtMinimizer(options.InitialDamping, 0, 1e-13, 0, options.MaximumIterations).FindMinimum(objective, start);
        for (var i = 0; i < 20 && options.Tolerance == 0 && objective.TryPolish(); i++)
        {
        }
    }

    private static bool IsAtRest(LeastSquaresObjective objective, LeastSquaresOptions options) =>
        objective.SquaredDistance() <= Math.Max(options.Tolerance * options.Tolerance, Rounding * objective.Deviance);

    private static Optimum? Reached(List<Optimum> optima, Vector<double> point, LeastSquaresOptions options) =>
        optima.Find(optimum => optimum.Status == LeastSquaresStatus.Converged
            && (optimum.Slopes * (point - optimum.Point)).L2Norm() <= options.JoinDistance);

    private sealed record Optimum(
        LeastSquaresStatus Status, Vector<double> Point, Vector<double> Residuals, Matrix<double> Slopes, double Deviance, double Distance)
    {
        public int Starts { get; set; } = 1;

        public static Optimum Of(LeastSquaresObjective objective, LeastSquaresOptions options) => new(
            Information.IsSingular(objective.Slopes) ? LeastSquaresStatus.NotIdentifiable
                : IsAtRest(objective, options) ? LeastSquaresStatus.Converged
                : LeastSquaresStatus.IterationLimit,
            objective.Point.Clone(),
            objective.Residuals.Clone(),
            objective.Slopes.Clone(),
            objective.Deviance,
            Math.Sqrt(objective.SquaredDistance()));

        public static Optimum None(Vector<double> start, ILeastSquaresProblem problem) => new(
            LeastSquaresStatus.Undefined,
            start,
            Vector<double>.Build.Dense(problem.RowCount),
            Matrix<double>.Build.Dense(problem.RowCount, problem.ParameterCount),
            double.PositiveInfinity,
            double.PositiveInfinity)
        { Starts = 0 };
    }
}
