using MathNet.Numerics.LinearAlgebra;

namespace Transport.Analysis;

/// <summary>A sum of squares to be made least: residuals and their exact derivatives in coordinates that know no bounds.</summary>
/// <remarks>Residuals are best whitened (of unit variance): then the deviance is minus twice a log-likelihood and distances are in standard errors.</remarks>
internal interface ILeastSquaresProblem
{
    /// <summary>Coordinates.</summary>
    public int ParameterCount { get; }

    /// <summary>Residuals, those of a prior included.</summary>
    public int RowCount { get; }

    /// <summary>Nearly the same problem at a smaller cost, with which a search begins; null: none.</summary>
    public ILeastSquaresProblem? Coarse { get; }

    /// <summary>Writes the residuals (model − data) and their derivatives, rows by coordinates.</summary>
    /// <returns>Whether the model is defined there; if not, what was written is not read.</returns>
    public bool Evaluate(Vector<double> coordinates, Vector<double> residuals, Matrix<double> slopes);
}
