using MathNet.Numerics.LinearAlgebra;

namespace Transport.Analysis;

/// <summary>A fit as least squares: whitened residuals and their exact derivatives in standardised coordinates.</summary>
/// <remarks>
/// The prior is a unit Gaussian of the coordinates, so its rows of the residual are the coordinates themselves. First the membrane's, then the residual volume of
/// each exchange. Derivatives ride along in the integration, eight at a time. Nights come after the exchanges and have no coordinate of their own.
/// </remarks>
internal sealed class FitProblem : ILeastSquaresProblem
{
    // Errors of a hundredth of a standard error, for half the time.
    private const double CoarseTolerance = 1e-4;

    private readonly EstimationProblem problem;
    private readonly IntegrationOptions integration;
    private readonly FitProblem? coarse;
    private readonly ExchangeModel<Dual>[] exchanges;
    private readonly Dual[] point;
    private readonly Dual[] whitened;
    private int evaluations;

    public FitProblem(EstimationProblem problem, IntegrationOptions integration)
    {
        (this.problem, this.integration) = (problem, integration);
        exchanges = [.. problem.Exchanges.Select(exchange => new ExchangeModel<Dual>(exchange, problem.Model))];
        var nights = problem.Nights?.Count ?? 0;
        ObservationCount = exchanges.Sum(exchange => exchange.FittedCount) + nights;
        point = new Dual[Membrane.Count];
        whitened = new Dual[exchanges.Select(exchange => exchange.FittedCount).Append(nights).Max()];
        coarse = exchanges.Length > 0 && integration.RelativeTolerance < CoarseTolerance ? new(this) : null;
    }

    // The same in the same memory, integrated coarsely.
    private FitProblem(FitProblem exact)
    {
        (problem, integration) = (exact.problem, exact.integration with { RelativeTolerance = CoarseTolerance });
        (exchanges, point, whitened, ObservationCount) = (exact.exchanges, exact.point, exact.whitened, exact.ObservationCount);
    }

    private IMembraneModel Membrane => problem.Model;

    public int ParameterCount => problem.Dimension;

    public int ObservationCount { get; }

    public int RowCount => ObservationCount + ParameterCount - FirstWithPrior;

    /// <summary>Dwells integrated so far.</summary>
    public int Evaluations => evaluations + (coarse?.Evaluations ?? 0);

    /// <inheritdoc/>
    public ILeastSquaresProblem? Coarse => coarse;

    /// <summary>Writes whitened residuals (predicted − observed; then the prior's) and their derivatives by the coordinates.</summary>
    /// <returns>Whether the dwells could be integrated there.</returns>
    public bool Evaluate(Vector<double> u, Vector<double> residuals, Matrix<double> slopes)
    {
        residuals.Clear();
        slopes.Clear();
        var row = 0;
        try
        {
            for (var e = 0; e < exchanges.Length; e++)
            {
                for (var first = 0; first <= Membrane.Count; first += Dual.Width)
                {
                    Run(e, u, first);
                    exchanges[e].Whiten(whitened);
                    for (var i = 0; i < exchanges[e].FittedCount; i++)
                    {
                        (residuals[row + i], var slope) = problem.Root(whitened[i].Value);
                        for (var j = first; j < Math.Min(Membrane.Count + 1, first + Dual.Width); j++)
                        {
                            slopes[row + i, j < Membrane.Count ? j : j + e] = slope * whitened[i].Slopes[j - first];
                        }
                    }
                }

                row += exchanges[e].FittedCount;
            }
        }
        catch (IntegrationException)
        {
            return false;
        }

        if (problem.Nights is { } nights)
        {
            for (var first = 0; first < Membrane.Count; first += Dual.Width)
            {
                Point(u, first);
                nights.Whiten<Dual>(point, whitened);
                for (var i = 0; i < nights.Count; i++)
                {
                    (residuals[row + i], var slope) = problem.Root(whitened[i].Value);
                    for (var j = first; j < Math.Min(Membrane.Count, first + Dual.Width); j++)
                    {
                        slopes[row + i, j] = slope * whitened[i].Slopes[j - first];
                    }
                }
            }

            row += nights.Count;
        }

        for (var j = FirstWithPrior; j < ParameterCount; j++, row++)
        {
            residuals[row] = u[j];
            slopes[row, j] = 1;
        }

        return true;
    }

    /// <summary>Every observation, fitted or not, beside its prediction.</summary>
    /// <exception cref="IntegrationException">A dwell cannot be integrated there.</exception>
    public IReadOnlyList<FitResidual> Residuals(Vector<double> u)
    {
        var residuals = new List<FitResidual>();
        for (var e = 0; e < exchanges.Length; e++)
        {
            Run(e, u, 0);
            residuals.AddRange(exchanges[e].Residuals(dual => dual.Value));
        }

        Point(u, 0);
        residuals.AddRange(problem.Nights?.Nights.Means.Select((mean, i) => new FitResidual(mean.Observation, problem.Nights.Predicted<Dual>(i, point).Value)) ?? []);
        return residuals;
    }

    /// <summary>Every observation's prediction and how it follows the coordinates; null where a dwell cannot be integrated.</summary>
    public IReadOnlyList<Sensitivity>? Sensitivities(Vector<double> u)
    {
        var rows = new List<Sensitivity>();
        try
        {
            for (var e = 0; e < exchanges.Length; e++)
            {
                var own = problem.Exchanges[e].Observations.Select(observation => new Sensitivity(e, observation, 0, new double[ParameterCount])).ToArray();
                for (var first = 0; first <= Membrane.Count; first += Dual.Width)
                {
                    Run(e, u, first);
                    for (var i = 0; i < own.Length; i++)
                    {
                        var predicted = exchanges[e].Predicted(own[i].Observation);
                        own[i] = own[i] with { Predicted = predicted.Value };
                        var scale = own[i].Observation.Quantity == ObservedQuantity.NetUltrafiltrationMilliliters ? 1 : 1 / predicted.Value;
                        for (var j = first; j < Math.Min(Membrane.Count + 1, first + Dual.Width); j++)
                        {
                            own[i].Slopes[j < Membrane.Count ? j : j + e] = scale * predicted.Slopes[j - first];
                        }
                    }
                }

                rows.AddRange(own);
            }
        }
        catch (IntegrationException)
        {
            return null;
        }

        return rows;
    }

    private int FirstWithPrior => problem.UsesPrior ? 0 : Membrane.Count;

    // The derivatives by eight coordinates from the first on; the exchange's own stands after the membrane's.
    private void Run(int exchange, Vector<double> u, int first)
    {
        evaluations++;
        Point(u, first);
        exchanges[exchange].Run(
            point, problem.ResidualVolumes[exchange].Value(At(u[Membrane.Count + exchange], Membrane.Count - first)), integration);
    }

    private void Point(Vector<double> u, int first)
    {
        for (var j = 0; j < point.Length; j++)
        {
            point[j] = At(u[j], j - first);
        }
    }

    private static Dual At(double value, int slot) => slot is >= 0 and < Dual.Width ? Dual.Parameter(value, slot) : Dual.Of(value);
}
