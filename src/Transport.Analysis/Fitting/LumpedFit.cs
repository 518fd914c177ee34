using MathNet.Numerics.LinearAlgebra;

namespace Transport.Analysis;

/// <summary>Estimates one barrier from observed exchanges, as <see cref="MembraneFit"/> estimates pores: the same data, errors, search and status.</summary>
public static class LumpedFit
{
    /// <summary>Fits one equilibration test.</summary>
    /// <param name="test">The test.</param>
    /// <param name="prior">What is known before it; null: adults near the start of dialysis.</param>
    /// <exception cref="ArgumentException">The solution is not a glucose solution, nothing was measured that can be fitted, or a protein was, which needs pores.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The fill is not positive, or the dwell not between 0 and 48 h.</exception>
    /// <exception cref="IntegrationException">The cavity runs empty with every membrane that was tried.</exception>
    public static FittedLumpedMembrane Run(EquilibrationTest test, LumpedPrior? prior = null) => Run([ObservedExchange.From(test)], prior);

    /// <summary>Fits exchanges of one person jointly: one membrane, a residual volume for each exchange.</summary>
    /// <param name="exchanges">Tests and drains, at least one.</param>
    /// <param name="prior">What is known before them; null: adults near the start of dialysis.</param>
    /// <param name="control">Stops the run.</param>
    /// <exception cref="ArgumentException">There is nothing to fit, it is of several people, or a protein was measured, which needs pores.</exception>
    /// <exception cref="IntegrationException">The cavity runs empty with every membrane that was tried.</exception>
    /// <exception cref="OperationCanceledException">The run was stopped.</exception>
    public static FittedLumpedMembrane Run(IReadOnlyList<ObservedExchange> exchanges, LumpedPrior? prior = null, RunControl? control = null)
    {
        ArgumentNullException.ThrowIfNull(exchanges);
        prior ??= LumpedPrior.IncidentAdults;
        var patient = exchanges.Count > 0 ? exchanges[0].Patient : throw new ArgumentException("Expected at least one exchange.", nameof(exchanges));
        ObservedExchange.RequireOf(patient, exchanges);
        if (exchanges.Any(exchange => exchange.Observations.Any(observation => observation.Quantity.IsOfProtein())))
        {
            throw new ArgumentException("One barrier says nothing of proteins: expected exchanges without albumin and immunoglobulin G.", nameof(exchanges));
        }

        var options = MembraneFitOptions.Default;
        var membrane = new LumpedCoordinates(prior.Center.ScaledTo(patient.BodySurface), prior);
        var problem = new EstimationProblem([.. exchanges], membrane, UsesPrior: true, StudentDegreesOfFreedom: null);
        var squares = new FitProblem(problem, options.Integration);
        if (squares.ObservationCount == 0)
        {
            throw new ArgumentException("Expected something to fit: creatinine or glucose after time zero, or a drained volume.", nameof(exchanges));
        }

        // The centre, and away from it in the directions that people differ in: coefficient, glucose's beside it, conductance.
        var starts = MembraneFit.Starts.Select(start => Vector<double>.Build.Dense(problem.Dimension, j => j switch
        {
            0 => start.Area,
            1 => start.Glucose,
            2 => start.Conductance,
            _ => 0,
        }));
        var optimum = LeastSquares.Run(squares, [.. starts], new() { MaximumIterations = options.MaximumIterations }, control);
        var covariance = FittedModel.CovarianceOf(optimum);
        return new(problem, membrane, squares, optimum, covariance, [.. Enum.GetValues<LumpedParameter>().Select(parameter => new FittedLumpedParameter(
            parameter, patient.SurfaceFactor, membrane[(int)parameter], optimum.Coordinates[(int)parameter], FittedModel.ErrorOf(covariance, (int)parameter)))]);
    }
}
