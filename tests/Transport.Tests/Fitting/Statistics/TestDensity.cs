namespace Transport.Tests.Fitting.Statistics;

/// <summary>A density of one point, evaluated lane by lane.</summary>
internal sealed class TestDensity(int dimension, Func<double[], double> logDensity) : ILogDensity
{
    public int Dimension => dimension;

    public int Evaluations { get; private set; }

    public void Evaluate(ReadOnlySpan<double> points, Span<double> logDensities)
    {
        Evaluations++;
        for (var lane = 0; lane < ILogDensity.Lanes; lane++)
        {
            var point = new double[dimension];
            for (var j = 0; j < dimension; j++)
            {
                point[j] = points[ILogDensity.Lanes * j + lane];
            }

            logDensities[lane] = logDensity(point);
        }
    }
}
