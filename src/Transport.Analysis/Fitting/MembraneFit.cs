using System.Globalization;
using MathNet.Numerics.Distributions;
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
    private static readonly double[][] Starts = [[0, 0, 0, 0], [1, 0.5, -1, 0], [-1, -0.5, 1, 0], [1, 0.5, 1, 0], [-1, -0.5, -1, 0]];

    /// <summary>Fits one equilibration test.</summary>
    /// <exception cref="ArgumentException">The solution is not a glucose solution, or nothing was measured that can be fitted.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The fill is not positive, or the dwell not between 0 and 48 h.</exception>
    /// <exception cref="IntegrationException">The cavity runs empty with every membrane that was tried.</exception>
    public static FittedMembrane Run(EquilibrationTest test, MembraneFitOptions? options = null) => Run([ObservedExchange.From(test)], options);

    /// <summary>Fits exchanges of one person jointly: one membrane, a residual volume for each exchange.</summary>
    /// <exception cref="ArgumentException">The list is empty, holds exchanges of several people, or nothing that can be fitted.</exception>
    /// <exception cref="IntegrationException">The cavity runs empty with every membrane that was tried.</exception>
    /// <exception cref="OperationCanceledException">The run was stopped.</exception>
    public static FittedMembrane Run(IReadOnlyList<ObservedExchange> exchanges, MembraneFitOptions? options = null, RunControl? control = null)
    {
        ArgumentNullException.ThrowIfNull(exchanges);
        options ??= MembraneFitOptions.Default;
        control ??= RunControl.None;
        if (exchanges.Count == 0 || exchanges.Any(exchange => exchange.Patient.Code != exchanges[0].Patient.Code))
        {
            throw new ArgumentException("Expected at least one exchange, all of one person.", nameof(exchanges));
        }

        var patient = exchanges[0].Patient;
        var center = options.Prior.Center.ScaledTo(patient.BodySurface);
        var problem = new FitProblem(exchanges, new(center, options.Prior), options.Integration);
        if (problem.ObservationCount == 0)
        {
            throw new ArgumentException("Expected something to fit: creatinine or glucose after time zero, or a drained volume.", nameof(exchanges));
        }

        var starts = Starts.Select(start => Vector<double>.Build.Dense(problem.ParameterCount, j => j < start.Length ? start[j] : 0));
        var optimum = LeastSquares.Run(problem, [.. starts], new() { MaximumIterations = options.MaximumIterations }, control);
        return Result(problem, optimum, patient, exchanges);
    }

    private static FittedMembrane Result(
        FitProblem problem,
        LeastSquaresResult optimum,
        Patient patient,
        IReadOnlyList<ObservedExchange> exchanges)
    {
        // Where no start could be integrated, this throws.
        var u = optimum.Coordinates;
        var fitted = problem.Residuals(u);

        // The inverse of the curvature at the optimum is the posterior's covariance; prior rows keep it regular.
        var covariance = optimum.Covariance();
        var membrane = problem.Membrane;
        var count = membrane.Count;
        var logCovariance = Matrix<double>.Build.Dense(
            count, count, (i, j) => membrane[i].Spread * membrane[j].Spread * covariance[i, j]);

        var size = patient.SurfaceFactor;
        var parameters = new[]
        {
            Parameter(MembraneParameter.DiffusionArea, "A0/Δx", "cm per 1.73 m²", 1 / size),
            Parameter(MembraneParameter.GlucosePermeabilityScale, "glucose permeability scale", "", 1),
            Parameter(MembraneParameter.UltrafiltrationCoefficient, "LpS", "mL/min/mmHg per 1.73 m²", 1 / size),
            Parameter(MembraneParameter.TransientAmplitude, "initial transient F0", "", 1),
        };

        var misfit = optimum.Residuals.SubVector(0, problem.ObservationCount);
        var probability = 1 - ChiSquared.CDF(problem.ObservationCount, misfit.DotProduct(misfit));
        var stretched = Enumerable.Range(0, count).MaxBy(j => Math.Abs(u[j]));
        var contradicts = probability < 0.001 || Math.Abs(u[stretched]) > 3.3;
        var status = !optimum.IsConverged ? FitStatus.IterationLimit
            : contradicts ? FitStatus.DataContradictModel
            : parameters.All(parameter => parameter.Verdict == ParameterVerdict.FromPrior) ? FitStatus.PriorReturned
            : FitStatus.Converged;
        var summary = Summarize(status, parameters, fitted, parameters[stretched], Math.Abs(u[stretched]) > 3.3);
        return new(
            patient, exchanges, membrane, optimum, status, summary, parameters, logCovariance, fitted,
            [.. exchanges.SelectMany(exchange => exchange.Findings)], problem.Evaluations);

        FittedParameter Parameter(MembraneParameter parameter, string name, string unit, double perUnit)
        {
            var j = (int)parameter;
            return new(
                parameter,
                name,
                unit,
                membrane[j].Value(u[j]) * perUnit,
                membrane[j].Spread * Math.Sqrt(covariance[j, j]),
                membrane[j].Value(0) * perUnit,
                membrane[j].Spread);
        }
    }

    private static string Summarize(
        FitStatus status, FittedParameter[] parameters, IReadOnlyList<FitResidual> residuals, FittedParameter stretched, bool isStretched)
    {
        var worst = residuals.Where(residual => residual.Observation.IsFitted).MaxBy(residual => Math.Abs(residual.Standardized))!;
        var first = status switch
        {
            FitStatus.Converged => "The fit converged and agrees with the data.",
            FitStatus.PriorReturned => "The data moved no parameter: this is the population's membrane, not the patient's.",
            FitStatus.DataContradictModel when isStretched => string.Create(
                CultureInfo.InvariantCulture,
                $"The data can only be met with {stretched.Name} {stretched.Value:G3} {stretched.Unit}, far from what people have. Check the sheet before reading further.").Replace("  ", " ", StringComparison.Ordinal),
            FitStatus.DataContradictModel => string.Create(
                CultureInfo.InvariantCulture,
                $"The data lie further from the model than their errors allow; the worst is {Describe(worst.Observation)}: observed {worst.Observation.Value:G3}, fitted {worst.Predicted:G3}. Check the sheet before reading further."),
            _ => "The search stopped before an optimum was found. Do not use the result.",
        };
        var fromPrior = parameters.Where(parameter => parameter.Verdict == ParameterVerdict.FromPrior).Select(parameter => parameter.Name).ToArray();
        return fromPrior.Length == 0 || status == FitStatus.PriorReturned
            ? first
            : $"{first} Prior returned (the data say nothing about it): {string.Join(", ", fromPrior)}.";
    }

    private static string Describe(Observation observation)
    {
        var name = observation.Quantity switch
        {
            ObservedQuantity.CreatinineToPlasma => "D/P creatinine",
            ObservedQuantity.UreaToPlasma => "D/P urea",
            ObservedQuantity.SodiumToPlasma => "D/P sodium",
            ObservedQuantity.GlucoseToInitial => "D/D0 glucose",
            ObservedQuantity.GlucoseToFresh => "glucose over fresh solution",
            _ => "net ultrafiltration, mL,",
        };
        return string.Create(CultureInfo.InvariantCulture, $"{name} at {observation.Time.TotalMinutes:0} min");
    }
}
