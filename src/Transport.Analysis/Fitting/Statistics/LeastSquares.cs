using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.Optimization;

namespace Transport.Analysis;

/// <summary>Makes a sum of squares least: MathNet's Levenberg-Marquardt from several starts, with a status of our own.</summary>
/// <remarks>
/// Converged: the distance to the optimum, √(gᵀ(JᵀJ)⁻¹g), is at most the tolerance, or the fall of the deviance that a full step promises is lost in the rounding
/// of the deviance (1e-14 of it), and the information is regular. Several starts: they are tried in order; one that comes within the join
/// distance (in the metric of the curvature there) of an optimum found before has reached it and stops there. Once enough starts have reached the best
/// optimum, the rest is left out. The best optimum wins. Far from an optimum a search goes by the coarse problem, where there is one; an optimum, its
/// status and its slopes are always the exact problem's.
/// </remarks>
internal static class LeastSquares
{
    private const double Rounding = 1e-14;

    // Distance at which the coarse problem has served: the step from there is as good by it.
    private const double Near = 0.3;

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
            problem, model => IsAtRest(model, options) || Reached(optima, model, options) is not null, control.Cancellation);
        var coarse = problem.Coarse is null ? null : new LeastSquaresObjective(
            problem.Coarse, model => model.SquaredDistance() <= Near * Near || Reached(optima, model, options) is not null, control.Cancellation);
        var tried = 0;
        foreach (var start in starts)
        {
            tried++;
            var isNear = coarse is not null && coarse.TryStart(start);
            if (isNear)
            {
                Descend(coarse!, options);
            }

            if (isNear && Joined(optima, coarse!, options) is { } near)
            {
                near.Starts++;
            }
            else if (isNear && TryGoOn(objective, coarse!, options) || objective.TryStart(start))
            {
                Descend(objective, options);
                if (Joined(optima, objective, options) is { } known)
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
        var evaluations = objective.FunctionEvaluations + (coarse?.FunctionEvaluations ?? 0);
        return new(found.Status, found.Point, found.Residuals, found.Slopes, found.Deviance, found.Distance, evaluations, tried, found.Starts);
    }

    // Where the coarse search would go next, if the deviance is no higher there; otherwise where it ended.
    private static bool TryGoOn(LeastSquaresObjective objective, LeastSquaresObjective coarse, LeastSquaresOptions options) =>
        objective.TryStart(coarse.Point + coarse.Step(options.InitialDamping)) && objective.Deviance <= coarse.Deviance || objective.TryStart(coarse.Point);

    private static void Descend(LeastSquaresObjective objective, LeastSquaresOptions options)
    {
        // The gradient decides, through the objective; the minimizer's own tests are set so that they end only a search that is stuck.
        new LevenbergMarquardtMinimizer(options.InitialDamping, 0, 1e-13, 0, options.MaximumIterations).FindMinimum(objective, objective.Point.Clone());
        for (var i = 0; i < 20 && options.Tolerance == 0 && objective.TryPolish(); i++)
        {
        }
    }

    private static bool IsAtRest(LeastSquaresObjective objective, LeastSquaresOptions options) =>
        objective.SquaredDistance() <= Math.Max(options.Tolerance * options.Tolerance, Rounding * objective.Deviance);

    // The optimum found before that this search has ended at; one with a lower deviance has ended elsewhere.
    private static Optimum? Joined(List<Optimum> optima, LeastSquaresObjective objective, LeastSquaresOptions options) =>
        Reached(optima, objective, options) is { } known && objective.Deviance >= known.Deviance - Math.Pow(options.JoinDistance, 2) ? known : null;

    private static Optimum? Reached(List<Optimum> optima, LeastSquaresObjective objective, LeastSquaresOptions options) =>
        optima.Find(optimum => optimum.Status == LeastSquaresStatus.Converged
            && (optimum.Slopes * (objective.Point - optimum.Point)).L2Norm() <= options.JoinDistance);

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
