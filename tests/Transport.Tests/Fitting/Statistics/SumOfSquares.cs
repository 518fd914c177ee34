using MathNet.Numerics.LinearAlgebra;

namespace Transport.Tests.Fitting.Statistics;

/// <summary>A small problem written as functions: residuals with their slopes, or nothing where it is not defined.</summary>
internal sealed class SumOfSquares(int parameters, int rows, Func<Slopes[], Slopes[]?> residualsOf) : ILeastSquaresProblem
{
    public int ParameterCount => parameters;

    public int RowCount => rows;

    public ILeastSquaresProblem? Coarse { get; init; }

    public List<double[]> Tried { get; } = [];

    public bool Evaluate(Vector<double> coordinates, Vector<double> residuals, Matrix<double> slopes)
    {
        Tried.Add(coordinates.ToArray());
        var values = residualsOf([.. coordinates.Select((u, j) => Slopes.Parameter(u, j, parameters))]);
        for (var i = 0; values is not null && i < rows; i++)
        {
            residuals[i] = values[i].Value;
            for (var j = 0; j < parameters; j++)
            {
                slopes[i, j] = values[i].By.Length > 0 ? values[i].By[j] : 0;
            }
        }

        return values is not null;
    }
}
