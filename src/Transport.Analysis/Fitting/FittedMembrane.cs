using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.Random;

namespace Transport.Analysis;

/// <summary>A membrane estimated from observed exchanges, with what is needed to judge it.</summary>
public sealed class FittedMembrane
{
    private readonly Matrix<double> logCovariance;

    internal FittedMembrane(
        Patient patient,
        IReadOnlyList<ObservedExchange> exchanges,
        MembraneCoordinates coordinates,
        LeastSquaresResult optimum,
        FitStatus status,
        string summary,
        IReadOnlyList<FittedParameter> parameters,
        Matrix<double> logCovariance,
        IReadOnlyList<FitResidual> residuals,
        IReadOnlyList<Finding> findings,
        int evaluations)
    {
        Patient = patient;
        Exchanges = exchanges;
        Coordinates = coordinates;
        Optimum = optimum;
        Membrane = coordinates.Membrane(optimum.Coordinates);
        Status = status;
        Summary = summary;
        Parameters = parameters;
        this.logCovariance = logCovariance;
        Residuals = residuals;
        Findings = findings;
        Evaluations = evaluations;
    }

    /// <summary>Whose membrane it is.</summary>
    public Patient Patient { get; }

    /// <summary>What was fitted.</summary>
    public IReadOnlyList<ObservedExchange> Exchanges { get; }

    /// <summary>The estimate, at the patient's size. It states the plasma level that it is true with.</summary>
    public ThreePoreMembrane Membrane { get; }

    internal MembraneCoordinates Coordinates { get; }

    internal LeastSquaresResult Optimum { get; }

    /// <summary>Whether it may be believed.</summary>
    public FitStatus Status { get; }

    /// <summary>The status and what the data decided, in a sentence or two.</summary>
    public string Summary { get; }

    /// <summary>The free parameters.</summary>
    public IReadOnlyList<FittedParameter> Parameters { get; }

    /// <summary>Correlation of the estimates' logarithms, in the order of <see cref="Parameters"/>.</summary>
    public double Correlation(MembraneParameter first, MembraneParameter second)
    {
        int i = (int)first, j = (int)second;
        return logCovariance[i, j] / Math.Sqrt(logCovariance[i, i] * logCovariance[j, j]);
    }

    /// <summary>Every observation beside its prediction; those that were not fitted are a check of the model.</summary>
    public IReadOnlyList<FitResidual> Residuals { get; }

    /// <summary>What to know about how it was made.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>Dwells that were integrated.</summary>
    public int Evaluations { get; }

    /// <summary>The parameter by name.</summary>
    public FittedParameter this[MembraneParameter parameter] => Parameters[(int)parameter];

    /// <summary>This fit, if it converged.</summary>
    /// <exception cref="InvalidOperationException">It did not; the message is the summary.</exception>
    public FittedMembrane OrThrow() => Status == FitStatus.Converged ? this : throw new InvalidOperationException(Summary);

    /// <summary>Membranes that are compatible with the data and the prior: draws from the Gaussian at the optimum, in log coordinates.</summary>
    /// <param name="count">How many.</param>
    /// <param name="seed">Seed of the draw.</param>
    /// <exception cref="ArgumentOutOfRangeException">The count is less than 1.</exception>
    public MembraneEnsemble ToEnsemble(int count = 400, int seed = 20261125)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        var random = new MersenneTwister(seed);
        var free = Coordinates.Count;
        var factor = Optimum.Covariance().SubMatrix(0, free, 0, free).Cholesky().Factor;
        var center = Optimum.Coordinates.SubVector(0, free);
        var standard = Vector<double>.Build.Dense(free);
        var points = new Vector<double>[count];
        for (var i = 0; i < count; i++)
        {
            standard.MapInplace(_ => Normal.Sample(random, 0, 1), Zeros.Include);
            points[i] = center + factor * standard;
        }

        return Coordinates.Ensemble(EnsembleSource.Posterior, seed, Membrane, count, (i, j) => points[i][j]);
    }
}
