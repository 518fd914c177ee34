using MathNet.Numerics.LinearAlgebra;

namespace Transport.Analysis;

/// <summary>Estimates a three-pore membrane from observed exchanges: maximum a posteriori in log coordinates.</summary>
/// <remarks>
/// The minimiser is MathNet's Levenberg-Marquardt, run without bounds in standardised log coordinates from several starts; whether its answer is an
/// optimum is decided by the gradient, not by its exit code (<see cref="LeastSquares"/>, docs/decisions/0003).
/// </remarks>
public static class MembraneFit
{
    // Coordinates of the starts: the centre, and away from it in the directions that people differ in.
    internal static readonly (double Area, double Glucose, double Conductance)[] Starts =
        [(0, 0, 0), (1, 0.5, -1), (-1, -0.5, 1), (1, 0.5, 1), (-1, -0.5, -1)];

    // Of the nights' parabola: how far an optimum may move, in standard errors, and how often it is made again.
    private const double Moved = 0.05;
    private const int MostRounds = 12;

    /// <summary>Fits one equilibration test.</summary>
    /// <param name="test">The test.</param>
    /// <param name="options">How.</param>
    /// <param name="nights">Nights of the same person; null: none.</param>
    /// <exception cref="ArgumentException">The solution is not a glucose solution, nothing was measured that can be fitted, or the nights are of somebody else.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The fill is not positive, or the dwell not between 0 and 48 h.</exception>
    /// <exception cref="IntegrationException">The cavity runs empty with every membrane that was tried.</exception>
    public static FittedMembrane Run(EquilibrationTest test, MembraneFitOptions? options = null, ObservedNights? nights = null) =>
        Run([ObservedExchange.From(test)], options, nights: nights);

    /// <summary>Fits exchanges and nights of one person jointly: one membrane, a residual volume for each exchange, and nights with reasons of their own.</summary>
    /// <param name="exchanges">Tests and drains. With nights it may be empty: then the prior and the nights speak alone.</param>
    /// <param name="options">How.</param>
    /// <param name="control">Stops the run.</param>
    /// <param name="nights">Nights of a record book; null: none.</param>
    /// <exception cref="ArgumentException">There is nothing to fit, or it is of several people.</exception>
    /// <exception cref="IntegrationException">The cavity runs empty with every membrane that was tried.</exception>
    /// <exception cref="OperationCanceledException">The run was stopped.</exception>
    public static FittedMembrane Run(
        IReadOnlyList<ObservedExchange> exchanges, MembraneFitOptions? options = null, RunControl? control = null, ObservedNights? nights = null)
    {
        ArgumentNullException.ThrowIfNull(exchanges);
        options ??= MembraneFitOptions.Default;
        control ??= RunControl.None;
        var patient = nights?.Patient ?? (exchanges.Count > 0 ? exchanges[0].Patient : throw new ArgumentException("Expected at least one exchange, or nights.", nameof(exchanges)));
        ObservedExchange.RequireOf(patient, exchanges);
        var problem = new ThreePoreProblem(
            [.. exchanges],
            new(options.Prior.Center.ScaledTo(patient.BodySurface), options.Prior, options.Free ?? FreeBy(exchanges, options.Prior.Center.Pores)),
            options.UsesPrior,
            options.StudentDegreesOfFreedom);
        return nights is null ? OfExchanges(problem, options, control) : WithNights(problem, nights, options, control);
    }

    /// <summary>Fits exchanges with nights beside them, as a comparison does that leaves one datum out.</summary>
    internal static FittedMembrane Again(ThreePoreProblem exchanges, ObservedNights nights, RunControl control) => WithNights(exchanges, nights, MembraneFitOptions.Default, control);

    private static FittedMembrane OfExchanges(ThreePoreProblem problem, MembraneFitOptions options, RunControl control)
    {
        var squares = new FitProblem(problem, options.Integration);
        return squares.ObservationCount == 0
            ? throw new ArgumentException("Expected something to fit: creatinine or glucose after time zero, or a drained volume.")
            : Result(problem, squares, Search(problem, squares, options, control), options.Free);
    }

    // The expected nights are a parabola around the optimum of the exchanges alone (without any, of the prior), and then around each optimum until it stays where it is.
    private static FittedMembrane WithNights(ThreePoreProblem alone, ObservedNights nights, MembraneFitOptions options, RunControl control)
    {
        var before = alone.Exchanges.Count == 0 ? null : Search(alone, new(alone, options.Integration), options, control);
        var point = before?.Coordinates ?? Vector<double>.Build.Dense(alone.Dimension);
        var covariance = before is { Status: not (LeastSquaresStatus.NotIdentifiable or LeastSquaresStatus.Undefined) }
            ? before.Covariance()
            : Matrix<double>.Build.DenseIdentity(alone.Dimension);
        for (var round = 1; ; round++)
        {
            control.Cancellation.ThrowIfCancellationRequested();
            var problem = alone with { Nights = NightSurface.Around(nights, alone.Membrane, point, covariance) };
            var squares = new FitProblem(problem, options.Integration);
            var optimum = LeastSquares.Run(squares, [point], SearchOf(options), control);
            var moved = optimum.Coordinates - point;
            if (!optimum.IsConverged || moved.DotProduct(covariance.Cholesky().Solve(moved)) < Moved * Moved)
            {
                return Result(problem, squares, optimum, options.Free, before);
            }

            if (round == MostRounds)
            {
                return Result(problem, squares, optimum with { Status = LeastSquaresStatus.IterationLimit }, options.Free, before);
            }

            (point, covariance) = (optimum.Coordinates, optimum.Covariance());
        }
    }

    private static LeastSquaresResult Search(ThreePoreProblem problem, FitProblem squares, MembraneFitOptions options, RunControl control)
    {
        var starts = Starts.Select(start => Vector<double>.Build.Dense(problem.Dimension, j => j >= problem.Membrane.Count ? 0 : problem.Membrane.Free[j] switch
        {
            MembraneParameter.DiffusionArea => start.Area,
            MembraneParameter.GlucosePermeabilityScale => start.Glucose,
            MembraneParameter.OsmoticConductance => start.Conductance,
            _ => 0,
        }));
        return LeastSquares.Run(squares, [.. starts], SearchOf(options), control);
    }

    private static LeastSquaresOptions SearchOf(MembraneFitOptions options) => new() { MaximumIterations = options.MaximumIterations };

    // Everything that the prior knows of moves fluid and small solutes, so its doubt is carried; of the large pores only protein tells. Pores that the prior's
    // membrane does not have stay away.
    private static IReadOnlyList<MembraneParameter> FreeBy(IReadOnlyList<ObservedExchange> exchanges, PoreSystem pores) =>
    [
        .. Enum.GetValues<MembraneParameter>().Where(parameter => parameter switch
        {
            MembraneParameter.UltrasmallFraction => pores.UltrasmallFraction > 0,
            MembraneParameter.LargePoreFraction => pores.LargeFraction > 0
                && exchanges.Any(exchange => exchange.Observations.Any(observation => observation.IsFitted && observation.Quantity.IsOfProtein())),
            _ => true,
        }),
    ];

    private static FittedMembrane Result(
        ThreePoreProblem problem, FitProblem squares, LeastSquaresResult optimum, IReadOnlyList<MembraneParameter>? asked, LeastSquaresResult? before = null)
    {
        var covariance = FittedModel.CovarianceOf(optimum);
        var parameters = problem.Membrane.Free.Select((parameter, j) => new FittedParameter(
            parameter, problem.Patient.SurfaceFactor, problem.Membrane[j], optimum.Coordinates[j], FittedModel.ErrorOf(covariance, j))).ToArray();
        return new(problem, squares, optimum, covariance, parameters, asked is not null)
        {
            NightEvidence = problem.Nights is null || covariance is null ? [] : Evidence(problem, optimum.Coordinates, covariance, before),
        };
    }

    // Beside the exchanges alone; where there are none, or they leave some direction open, beside the prior.
    private static NightEvidence[] Evidence(ThreePoreProblem problem, Vector<double> u, Matrix<double> covariance, LeastSquaresResult? before)
    {
        var known = before is { Status: not (LeastSquaresStatus.NotIdentifiable or LeastSquaresStatus.Undefined) } ? before.Covariance() : null;
        return [.. problem.Membrane.Free.Select((parameter, j) =>
        {
            var spread = problem.Membrane[j].Spread;
            return new NightEvidence(
                parameter, spread * Math.Sqrt(known?[j, j] ?? 1), spread * Math.Sqrt(covariance[j, j]), spread * (u[j] - (known is null ? 0 : before!.Coordinates[j])));
        })];
    }
}
