using MathNet.Numerics.LinearAlgebra;

namespace Transport.Tests.Fitting.Statistics;

/// <summary>One certified regression: its data, starts and certified answer from reference-data, its model with exact slopes from here.</summary>
internal sealed class NistProblem : ILeastSquaresProblem
{
    public const string Folder = "nist-strd-nonlinear";

    private static readonly ILookup<string, double[]> Observations = File.ReadLines(Path.Combine(ReferenceData.Folder, Folder, "data.csv"))
        .Skip(1).Select(line => line.Split(','))
        .ToLookup(cells => cells[0], cells => cells.Skip(1).Where(cell => cell.Length > 0).Select(ReferenceData.ToNumber).ToArray());

    private static readonly ILookup<string, IReadOnlyDictionary<string, string>> Rows =
        ReferenceData.Rows(Folder).ToLookup(row => row["item"].Split('_')[0]);

    private readonly string name;
    private readonly Func<Slopes[], double[], Slopes> model;
    private readonly Func<double, double> response;
    private readonly double[] scales;

    public NistProblem(string name)
    {
        this.name = name;
        model = NistModels.Of(name);
        response = name == "nelson" ? Math.Log : y => y;
        ParameterCount = Values("certified").Length;
        scales = [.. Values("certified").Select(_ => 1.0)];
    }

    private NistProblem(string name, double[] scales)
        : this(name) => this.scales = scales;

    public static IReadOnlyList<string> Names { get; } = [.. Rows.Select(group => group.Key)];

    public int ParameterCount { get; }

    public int RowCount => Observations[name].Count();

    public ILeastSquaresProblem? Coarse => null;

    public double ResidualSumOfSquares => Rows[name].Single(row => row["item"].EndsWith("sum_of_squares", StringComparison.Ordinal)).Number("value");

    public double[] Deviations => [.. Parameters("certified").Select(row => row.Number("sd"))];

    public double[] Values(string condition) => [.. Parameters(condition).Select(row => row.Number("value"))];

    /// <summary>The same problem in coordinates that are one at a start, whose parameters differ by up to nine orders of magnitude.</summary>
    public NistProblem ScaledBy(double[] start) => new(name, start);

    public Vector<double> ToCoordinates(double[] parameters) => Vector<double>.Build.Dense(parameters.Length, j => parameters[j] / scales[j]);

    public double[] ToParameters(Vector<double> coordinates) => [.. coordinates.Zip(scales, (u, scale) => u * scale)];

    public double[] ToDeviations(Matrix<double> covariance) => [.. scales.Select((scale, j) => Math.Abs(scale) * Math.Sqrt(covariance[j, j]))];

    public bool Evaluate(Vector<double> coordinates, Vector<double> residuals, Matrix<double> slopes)
    {
        var b = coordinates.Select((u, j) => Slopes.Parameter(u * scales[j], j, ParameterCount)).ToArray();
        var row = 0;
        foreach (var observation in Observations[name])
        {
            var value = model(b, observation);
            residuals[row] = value.Value - response(observation[0]);
            for (var j = 0; j < ParameterCount; j++)
            {
                slopes[row, j] = value.By[j] * scales[j];
            }

            row++;
        }

        return residuals.ForAll(double.IsFinite) && slopes.ForAll(double.IsFinite);
    }

    private IEnumerable<IReadOnlyDictionary<string, string>> Parameters(string condition) =>
        Rows[name].Where(row => row["condition"] == condition && row["item"].Split('_')[1].StartsWith('b'));
}
