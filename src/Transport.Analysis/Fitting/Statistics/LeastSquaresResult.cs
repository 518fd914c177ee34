using MathNet.Numerics.LinearAlgebra;

namespace Transport.Analysis;

/// <summary>Where a sum of squares was found least.</summary>
/// <param name="Status">Whether it is an optimum.</param>
/// <param name="Coordinates">Where.</param>
/// <param name="Residuals">The residuals there.</param>
/// <param name="Slopes">Their derivatives there.</param>
/// <param name="Deviance">Sum of the squared residuals; infinite where the model is defined at no start.</param>
/// <param name="Distance">Distance from the optimum of the linearized problem, standard errors of whitened residuals.</param>
/// <param name="Evaluations">Evaluations of residuals and slopes, over all starts, by the coarse problem too.</param>
/// <param name="StartsTried">Starts that were used before enough of them agreed.</param>
/// <param name="StartsThere">Those of them that ended here.</param>
internal sealed record LeastSquaresResult(
    LeastSquaresStatus Status,
    Vector<double> Coordinates,
    Vector<double> Residuals,
    Matrix<double> Slopes,
    double Deviance,
    double Distance,
    int Evaluations,
    int StartsTried,
    int StartsThere)
{
    /// <summary>Whether the status is <see cref="LeastSquaresStatus.Converged"/>.</summary>
    public bool IsConverged => Status == LeastSquaresStatus.Converged;

    /// <summary>Inverse of the information: the covariance of the coordinates for whitened residuals.</summary>
    /// <remarks>By an orthogonal factorization of the slopes: forming and inverting their square would lose twice the digits.</remarks>
    /// <exception cref="InvalidOperationException">The information is singular.</exception>
    public Matrix<double> Covariance()
    {
        if (Status is LeastSquaresStatus.NotIdentifiable or LeastSquaresStatus.Undefined)
        {
            throw new InvalidOperationException("The information is singular: there is no covariance.");
        }

        var inverse = Information.InverseFactor(Slopes);
        return inverse.TransposeAndMultiply(inverse);
    }
}
