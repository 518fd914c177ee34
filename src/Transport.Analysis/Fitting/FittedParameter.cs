namespace Transport.Analysis;

/// <summary>One estimated parameter of a three-pore membrane.</summary>
public sealed record FittedParameter : ParameterEstimate
{
    internal FittedParameter(MembraneParameter parameter, double surfaceFactor, Coordinate coordinate, double u, double error)
        : base(parameter.Name(), parameter.Unit(), parameter.PerUnit(surfaceFactor), coordinate, u, error) => Parameter = parameter;

    /// <summary>Which.</summary>
    public MembraneParameter Parameter { get; }
}
