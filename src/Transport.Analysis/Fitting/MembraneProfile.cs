namespace Transport.Analysis;

/// <summary>Profile likelihood of a fitted membrane's parameters. It asks for no symmetry, and says where the data set no limit.</summary>
public static class MembraneProfile
{
    /// <summary>The interval of one parameter.</summary>
    /// <param name="fit">The fit.</param>
    /// <param name="parameter">One of its free parameters.</param>
    /// <param name="confidence">Between 0 and 1.</param>
    /// <param name="control">Stops the run.</param>
    /// <exception cref="ArgumentException">The parameter was not free.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is not between 0 and 1.</exception>
    /// <exception cref="OperationCanceledException">The run was stopped.</exception>
    public static ParameterProfile Run(FittedMembrane fit, MembraneParameter parameter, double confidence = 0.9, RunControl? control = null)
    {
        ArgumentNullException.ThrowIfNull(fit);
        Require.InRange(confidence, 1e-6, 1 - 1e-6, "");
        var estimate = fit[parameter].Value;
        var place = fit.Problem.Membrane.Free.ToList().IndexOf(parameter);
        var coordinate = fit.Problem.Membrane[place];
        var perUnit = parameter.PerUnit(fit.Patient.SurfaceFactor);
        var found = Profile.Run(
            new FitProblem(fit.Problem, MembraneFitOptions.Default.Integration), fit.Optimum, place, new() { Confidence = confidence }, control);
        return new(
            parameter,
            estimate,
            found.Low is { } low ? perUnit * coordinate.Value(low) : null,
            found.High is { } high ? perUnit * coordinate.Value(high) : null,
            confidence,
            [.. found.Points.Select(point => (perUnit * coordinate.Value(point.Coordinate), point.Rise))],
            found.FoundBetter);
    }
}
