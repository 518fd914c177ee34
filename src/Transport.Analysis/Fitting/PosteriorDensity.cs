using System.Runtime.Intrinsics;

namespace Transport.Analysis;

/// <summary>Posterior density of the coordinates of a fit, at four points at once: one for each lane of the kinetics.</summary>
internal sealed class PosteriorDensity : ILogDensity
{
    private readonly EstimationProblem problem;
    private readonly IntegrationOptions integration;
    private readonly ExchangeModel<Lanes4>[] four;
    private readonly ExchangeModel<Real>[] one;
    private readonly Lanes4[] points;
    private readonly Lanes4[] whitened;
    private readonly Real[] alone;
    private readonly Real[] whitenedAlone;

    public PosteriorDensity(EstimationProblem problem, IntegrationOptions integration)
    {
        (this.problem, this.integration) = (problem, integration);
        four = [.. problem.Exchanges.Select(exchange => new ExchangeModel<Lanes4>(exchange, problem.Model))];
        one = [.. problem.Exchanges.Select(exchange => new ExchangeModel<Real>(exchange, problem.Model))];
        (points, alone) = (new Lanes4[Dimension], new Real[Dimension]);
        var rows = four.Select(exchange => exchange.FittedCount).Append(problem.Nights?.Count ?? 0).Max();
        (whitened, whitenedAlone) = (new Lanes4[rows], new Real[rows]);
    }

    /// <inheritdoc/>
    public int Dimension => problem.Dimension;

    /// <inheritdoc/>
    public void Evaluate(ReadOnlySpan<double> points, Span<double> logDensities)
    {
        for (var j = 0; j < Dimension; j++)
        {
            this.points[j] = new(Vector256.Create(points.Slice(Lanes4.Width * j, Lanes4.Width)));
        }

        try
        {
            var deviance = Deviance<Lanes4>(this.points, four, whitened);
            for (var lane = 0; lane < Lanes4.Width; lane++)
            {
                logDensities[lane] = LogDensity(deviance[lane]);
            }
        }
        catch (IntegrationException)
        {
            // One of the four empties the cavity: it alone has no density.
            for (var lane = 0; lane < Lanes4.Width; lane++)
            {
                logDensities[lane] = Alone(lane);
            }
        }
    }

    private static double LogDensity(double deviance) => double.IsFinite(deviance) ? -0.5 * deviance : double.NegativeInfinity;

    private double Alone(int lane)
    {
        for (var j = 0; j < Dimension; j++)
        {
            alone[j] = Real.Of(points[j][lane]);
        }

        try
        {
            return LogDensity(Deviance<Real>(alone, one, whitenedAlone).Value);
        }
        catch (IntegrationException)
        {
            return double.NegativeInfinity;
        }
    }

    // Minus twice the logarithm of the density, up to a constant.
    private T Deviance<T>(ReadOnlySpan<T> point, ExchangeModel<T>[] exchanges, Span<T> rows)
        where T : struct, ILane<T>
    {
        var ofMembrane = problem.Model.Count;
        var sum = T.Of(0);
        foreach (var coordinate in point[(problem.UsesPrior ? 0 : ofMembrane)..])
        {
            sum += coordinate * coordinate;
        }

        for (var e = 0; e < exchanges.Length; e++)
        {
            exchanges[e].Run(point[..ofMembrane], problem.ResidualVolumes[e].Value(point[ofMembrane + e]), integration);
            exchanges[e].Whiten(rows);
            foreach (var row in rows[..exchanges[e].FittedCount])
            {
                sum += problem.Deviance(row);
            }
        }

        if (problem.Nights is { } nights)
        {
            nights.Whiten(point[..ofMembrane], rows);
            foreach (var row in rows[..nights.Count])
            {
                sum += problem.Deviance(row);
            }
        }

        return sum;
    }
}
