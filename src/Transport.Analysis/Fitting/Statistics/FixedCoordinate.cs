using MathNet.Numerics.LinearAlgebra;

namespace Transport.Analysis;

/// <summary>A problem with one of its coordinates held.</summary>
internal sealed class FixedCoordinate(ILeastSquaresProblem problem, int coordinate) : ILeastSquaresProblem
{
    private readonly Vector<double> all = Vector<double>.Build.Dense(problem.ParameterCount);
    private readonly Matrix<double> allSlopes = Matrix<double>.Build.Dense(problem.RowCount, problem.ParameterCount);

    /// <summary>Where it is held.</summary>
    public double Value { get; set; }

    public int ParameterCount => problem.ParameterCount - 1;

    public int RowCount => problem.RowCount;

    /// <summary>None: the search starts from its neighbor.</summary>
    public ILeastSquaresProblem? Coarse => null;

    /// <summary>The other coordinates.</summary>
    public static Vector<double> Without(Vector<double> coordinates, int coordinate) => coordinates.Count == 1
        ? coordinates
        : Vector<double>.Build.Dense(coordinates.Count - 1, j => coordinates[Source(j, coordinate)]);

    public bool Evaluate(Vector<double> coordinates, Vector<double> residuals, Matrix<double> slopes)
    {
        for (var j = 0; j < coordinates.Count; j++)
        {
            all[Source(j, coordinate)] = coordinates[j];
        }

        all[coordinate] = Value;
        var isDefined = problem.Evaluate(all, residuals, allSlopes);
        for (var j = 0; j < coordinates.Count; j++)
        {
            for (var i = 0; i < RowCount; i++)
            {
                slopes[i, j] = allSlopes[i, Source(j, coordinate)];
            }
        }

        return isDefined;
    }

    /// <summary>The deviance where no other coordinate is left; infinite where the model is not defined.</summary>
    public double DevianceAlone()
    {
        all[coordinate] = Value;
        var residuals = Vector<double>.Build.Dense(RowCount);
        return problem.Evaluate(all, residuals, allSlopes) ? residuals.DotProduct(residuals) : double.PositiveInfinity;
    }

    private static int Source(int index, int held) => index < held ? index : index + 1;
}
