using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Double;
using MathNet.Numerics.Optimization;

namespace Transport.Analysis;

/// <summary>A problem as MathNet's minimizer asks for it, one evaluation a point, and the best point that was seen.</summary>
/// <remarks>
/// MathNet 5.0.0's own objective evaluates twice (values, slopes), once more at the end, inverts the curvature at the end by singular values, and hands out
/// the last point tried, even one that was refused. Here values and slopes come from one evaluation, the last is never repeated, no covariance
/// is asked for, and <see cref="Point"/> is the best. A point is accepted where the deviance falls, which is the minimizer's own rule. To stop
/// the search, a zero is returned for the gradient.
/// </remarks>
internal sealed class LeastSquaresObjective : IObjectiveModel
{
    private readonly ILeastSquaresProblem problem;
    private readonly Func<LeastSquaresObjective, bool> isDone;
    private readonly CancellationToken cancellation;
    private readonly Vector<double> gradient;
    private readonly Vector<double> zero;
    private readonly Matrix<double> hessian;
    private Vector<double>? step;
    private Vector<double> trialResiduals;
    private Matrix<double> trialSlopes;

    public LeastSquaresObjective(ILeastSquaresProblem problem, Func<LeastSquaresObjective, bool> isDone, CancellationToken cancellation)
    {
        (this.problem, this.isDone, this.cancellation) = (problem, isDone, cancellation);
        var (rows, columns) = (problem.RowCount, problem.ParameterCount);
        (Residuals, trialResiduals) = (Vector<double>.Build.Dense(rows), Vector<double>.Build.Dense(rows));
        (Slopes, trialSlopes) = (Matrix<double>.Build.Dense(rows, columns), Matrix<double>.Build.Dense(rows, columns));
        (gradient, zero, Point) = (new OneThread(columns), new OneThread(columns), Vector<double>.Build.Dense(columns));
        hessian = Matrix<double>.Build.Dense(columns, columns);
    }

    /// <summary>The best point since the last start.</summary>
    public Vector<double> Point { get; }

    /// <summary>Residuals at the best point.</summary>
    public Vector<double> Residuals { get; private set; }

    /// <summary>Their derivatives.</summary>
    public Matrix<double> Slopes { get; private set; }

    /// <summary>Sum of squares at the best point; infinite before any was defined.</summary>
    public double Deviance { get; private set; } = double.PositiveInfinity;

    /// <summary>Sum of squares at the last point tried; infinite where the model is not defined.</summary>
    public double Value { get; private set; }

    /// <summary>From the best point to the optimum of the linearized problem: −(JᵀJ)⁻¹g.</summary>
    /// <remarks>A ridge of 1e-14 of the diagonal, near its rounding, keeps a singular curvature solvable.</remarks>
    private Vector<double> FullStep => step ??= Solved();

    /// <summary>Squared length of the full step in standard errors, gᵀ(JᵀJ)⁻¹g: the fall of the deviance that it promises.</summary>
    public double SquaredDistance()
    {
        var distance = -FullStep.DotProduct(gradient);
        return double.IsFinite(distance) ? Math.Max(0, distance) : gradient.DotProduct(gradient);
    }

    /// <summary>From the best point to where the minimizer would go first.</summary>
    /// <param name="damping">Its damping, as a share of the largest curvature.</param>
    public Vector<double> Step(double damping)
    {
        Square();
        hessian.SetDiagonal(hessian.Diagonal() + damping * hessian.Diagonal().Maximum());
        return hessian.Solve(-gradient);
    }

    /// <summary>Forgets the best point and evaluates a start.</summary>
    /// <returns>Whether the model is defined there.</returns>
    public bool TryStart(Vector<double> start)
    {
        Deviance = double.PositiveInfinity;
        EvaluateAt(start);
        return double.IsFinite(Deviance);
    }

    /// <summary>Takes the full Gauss-Newton step if it brings the gradient closer to zero, whatever the rounding of the deviance says.</summary>
    /// <remarks>The deviance is flat to half its digits around the optimum: steps are still good where differences of it no longer are.</remarks>
    /// <returns>Whether the step was taken.</returns>
    public bool TryPolish()
    {
        var distance = SquaredDistance();
        var step = Slopes.QR().Solve(-Residuals);
        if (!step.ForAll(double.IsFinite))
        {
            return false;
        }

        var (point, deviance) = (Point.Clone(), Deviance);
        Deviance = double.PositiveInfinity;
        EvaluateAt(point + step);
        if (Deviance <= deviance * (1 + 1e-10) && SquaredDistance() < distance)
        {
            return true;
        }

        // The step swapped the buffers: the old best is in the trial ones, unless the model was not defined there.
        if (double.IsFinite(Deviance))
        {
            Swap();
            point.CopyTo(Point);
        }

        Deviance = deviance;
        return false;
    }

    /// <inheritdoc/>
    public void EvaluateAt(Vector<double> parameters)
    {
        if (double.IsFinite(Deviance) && parameters.Equals(Point))
        {
            Value = Deviance;
            return;
        }

        cancellation.ThrowIfCancellationRequested();
        FunctionEvaluations++;
        var sum = problem.Evaluate(parameters, trialResiduals, trialSlopes) ? trialResiduals.DotProduct(trialResiduals) : double.PositiveInfinity;
        Value = double.IsNaN(sum) ? double.PositiveInfinity : sum;
        if (Value < Deviance)
        {
            Deviance = Value;
            parameters.CopyTo(Point);
            Swap();
        }
    }

    /// <inheritdoc/>
    public Vector<double> Gradient
    {
        get
        {
            // The minimizer damps the curvature that it was handed.
            Square();
            return isDone(this) ? zero : gradient;
        }
    }

    /// <inheritdoc/>
    public Matrix<double> Hessian => hessian;

    /// <inheritdoc/>
    public int FunctionEvaluations { get; set; }

    /// <inheritdoc/>
    public int JacobianEvaluations { get; set; }

    /// <summary>Less than one, so that the minimizer computes no covariance.</summary>
    public int DegreeOfFreedom => 0;

    /// <inheritdoc/>
    public bool IsGradientSupported => true;

    /// <inheritdoc/>
    public bool IsHessianSupported => true;

    /// <inheritdoc/>
    public Vector<double> ObservedY => zero;

    /// <inheritdoc/>
    public Matrix<double> Weights => hessian;

    /// <inheritdoc/>
    public Vector<double> ModelValues => Residuals;

    /// <inheritdoc/>
    public void SetParameters(Vector<double> initialGuess, List<bool>? isFixed = null)
    {
    }

    /// <inheritdoc/>
    public IObjectiveModel CreateNew() => throw new NotSupportedException();

    /// <inheritdoc/>
    public IObjectiveModel Fork() => throw new NotSupportedException();

    /// <inheritdoc/>
    public IObjectiveFunction ToObjectiveFunction() => throw new NotSupportedException();

    private Vector<double> Solved()
    {
        Square();
        var ridged = hessian.Clone();
        ridged.SetDiagonal(hessian.Diagonal().Map(curvature => Math.Max(curvature * (1 + 1e-14), double.Epsilon)));
        return ridged.Solve(-gradient);
    }

    private void Square()
    {
        Slopes.TransposeThisAndMultiply(Residuals, gradient);
        Slopes.TransposeThisAndMultiply(Slopes, hessian);
    }

    private void Swap()
    {
        (Residuals, trialResiduals) = (trialResiduals, Residuals);
        (Slopes, trialSlopes) = (trialSlopes, Slopes);
        step = null;
    }

    // MathNet shares the largest of eight numbers out among threads, which takes longer than the rest of a step.
    private sealed class OneThread(int length) : DenseVector(length)
    {
        public override double InfinityNorm()
        {
            var largest = 0.0;
            foreach (var value in Values)
            {
                largest = Math.Max(largest, Math.Abs(value));
            }

            return largest;
        }
    }
}
