namespace Transport.Analysis;

/// <summary>One estimated number of one barrier.</summary>
public sealed record FittedLumpedParameter : ParameterEstimate
{
    internal FittedLumpedParameter(LumpedParameter parameter, double surfaceFactor, Coordinate coordinate, double u, double error)
        : base(parameter.Name(), parameter.Unit(), parameter.PerUnit(surfaceFactor), coordinate, u, error) => Parameter = parameter;

    /// <summary>Which.</summary>
    public LumpedParameter Parameter { get; }
}
