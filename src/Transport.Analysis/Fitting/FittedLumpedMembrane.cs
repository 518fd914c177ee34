using MathNet.Numerics.LinearAlgebra;

namespace Transport.Analysis;

/// <summary>One barrier estimated from observed exchanges: a second opinion beside a <see cref="FittedMembrane"/> of the same data.</summary>
public sealed class FittedLumpedMembrane : FittedModel
{
    internal FittedLumpedMembrane(
        EstimationProblem problem,
        LumpedCoordinates membrane,
        FitProblem squares,
        LeastSquaresResult optimum,
        Matrix<double>? covariance,
        IReadOnlyList<FittedLumpedParameter> parameters)
        : base(problem, squares, optimum, covariance, parameters, wasAskedFor: false)
    {
        Membrane = membrane.Membrane(optimum.Coordinates.AsArray());
        Parameters = parameters;
    }

    /// <summary>The estimate, at the patient's size.</summary>
    public LumpedMembrane Membrane { get; }

    /// <inheritdoc/>
    public override IReadOnlyList<FittedLumpedParameter> Parameters { get; }

    /// <summary>The parameter by name.</summary>
    public FittedLumpedParameter this[LumpedParameter parameter] => Parameters[(int)parameter];
}
